// Lists the company has already, as CSV: first it is said what would happen, then it is done.
import { raw } from "../kept/server";
import { attempt, button, el, section, table } from "./parts";
import { named, say } from "./words";

interface Line { line: number; column: string; message: string }
interface Answer { taken: number; already?: number; lines: Line[]; invited?: { name: string; email: string; role: string; token: string }[] }

export function list(kind: "jobs" | "people", done: () => Promise<void>): HTMLElement {
  const report = el("div");
  const input = el("input", { type: "file", accept: ".csv,text/csv" });
  const send = async (dry: boolean): Promise<Answer> => await (await raw("POST", `api/import/${kind}?dry=${dry}`, input.files![0]!, { "Content-Type": "text/csv" })).json() as Answer;
  input.onchange = () => attempt(report, async () => {
    if (!input.files?.[0]) return;
    const would = await send(true);
    report.replaceChildren(...told(would));
    if (would.taken > 0) {
      report.append(button("takeIn", async () => {
        const did = await send(false);
        input.value = "";
        report.replaceChildren(...told(did), ...invited(did));
        if (!did.invited) await done();
      }, () => report, true));
    }
  });
  return section(say(kind === "jobs" ? "importJobs" : "importPeople"), el("p", { className: "hint", textContent: say(kind === "jobs" ? "jobColumns" : "peopleColumns") }), el("label", {}, say("file"), input), report);
}

function told(answer: Answer): HTMLElement[] {
  const parts: HTMLElement[] = [Object.assign(el("p", { textContent: say("wouldTake", { n: `${answer.taken}`, already: `${answer.already ?? 0}`, wrong: `${new Set(answer.lines.map((one) => one.line)).size}` }) }), { role: "status" })];
  if (answer.lines.length > 0) {
    parts.push(table(say("report"), [say("line"), say("column"), ""], answer.lines.slice(0, 200).map((one) =>
      el("tr", {}, el("td", { className: "figure", textContent: `${one.line}` }), el("td", { textContent: one.column || "–" }), el("td", { className: "name", textContent: one.message })))));
  }
  return parts;
}

function invited(answer: Answer): HTMLElement[] {
  if (!answer.invited || answer.invited.length === 0) return [];
  return [el("p", { textContent: say("once") }), table(say("invitations"), [say("person"), say("email"), say("role"), ""], answer.invited.map((one) =>
    el("tr", {}, el("td", { textContent: one.name }), el("td", { textContent: one.email }), el("td", { textContent: named(one.role) }), el("td", { className: "name", textContent: new URL(`company.html#join=${one.token}`, document.baseURI).href }))))];
}
