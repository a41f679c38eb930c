// All jobs of the company, and the way from here to one of them.
import { keepCarried, begin, carried } from "../kept/carried";
import { call, jobPath, raw, Refused } from "../kept/server";
import { read, writeShared } from "../shelf";
import { attempt, button, choice, el, field, form, section, status, table } from "./parts";
import { list as fromList } from "./lists";
import { day, moment, named, say } from "./words";

interface Row {
  id: string; name: string; state: string; changed: string; ready: boolean; fault: string; conflicts: number; problems: number; postsSet: number; posts: number;
  fabricHung: number; fabric: number; punch: number; ticket: string; ticketEnds?: string;
}
interface ServerItem { number: number; kind: string; hash: string; body: { device: string; sequence: number } }
interface Page { items: ServerItem[]; cursor: number; more: boolean }

const states = ["lead", "quoted", "won", "building", "done", "lost"];
const papers = ["site", "drawings", "takeoff", "reasons", "submittal", "packet"];
const warnAhead = 3 * 86_400_000;

export async function jobs(role: string): Promise<HTMLElement> {
  const list = el("div");
  const search = el("input", { type: "search", name: "find" });
  const state = choice("state", "state", [["", "–"], ...states.map((one): [string, string] => [one, named(one)])]);
  let again = 0;
  const show = () => attempt(list, async () => {
    clearTimeout(again);
    const chosen = state.querySelector("select")!.value;
    const rows = await call<Row[]>("GET", `api/jobs?find=${encodeURIComponent(search.value)}${chosen ? `&state=${chosen}` : ""}`);
    const none = search.value || chosen ? say("noneFound") : say("noJobs");
    // What has just come is put together by the server in a moment.
    if (rows.some((row) => !row.ready)) again = setTimeout(() => { if (list.isConnected) void show(); }, 1000);
    list.replaceChildren(rows.length > 0 ? tableOf(rows, role, list) : el("p", { className: "empty", textContent: none }));
  });
  let typing = 0;
  search.oninput = () => { clearTimeout(typing); typing = setTimeout(show, 250); };
  state.onchange = show;
  await show();
  const filters = el("form", { className: "wide" }, el("label", {}, say("find"), search), state);
  filters.onsubmit = (event) => { event.preventDefault(); void show(); };
  const made = section(say("jobs"), filters, list);
  if (role === "owner" || role === "estimator") made.append(fromList("jobs", async () => { await show(); }));
  return made;
}

function tableOf(rows: Row[], role: string, place: HTMLElement): HTMLElement {
  const may = role === "owner" || role === "estimator";
  const lines = rows.map((job) => el("tr", { data: { job: job.id } },
    el("td", { className: "name" }, job.name || job.id, job.fault !== "" && el("p", { className: "bad", textContent: job.fault })),
    el("td", {}, may ? stateOf(job, place) : named(job.state)),
    el("td", { className: "figure", textContent: `${job.postsSet} / ${job.posts}` }),
    el("td", { className: "figure", textContent: job.fabric > 0 ? `${Math.floor(100 * job.fabricHung / job.fabric)} %` : "–" }),
    el("td", { className: `figure ${job.problems > 0 ? "bad" : ""}`, textContent: `${job.problems}` }),
    el("td", { className: `figure ${job.conflicts > 0 ? "bad" : ""}`, textContent: `${job.conflicts}` }),
    el("td", { className: "figure", textContent: `${job.punch}` }),
    ticketOf(job),
    el("td", { textContent: moment(job.changed) }),
    el("td", {}, el("div", { className: "row-buttons" }, button("open", () => open(job.id, job.name), () => place), may && button("link", () => share(job, place), () => place)))));
  return table(say("jobs"), [say("job"), say("state"), [say("progress"), "figure"], [say("fabric"), "figure"], [say("problems"), "figure"], [say("conflicts"), "figure"], [say("punch"), "figure"], say("ticket"), say("changed"), ""], lines);
}

function ticketOf(job: Row): HTMLElement {
  if (!job.ticketEnds) return el("td", { textContent: job.ticket || "–" });
  const left = new Date(job.ticketEnds).getTime() - Date.now();
  return el("td", { className: left < 0 ? "bad" : left < warnAhead ? "soon" : "", textContent: say(left < 0 ? "ranOut" : "runsOut", { n: job.ticket, day: day(job.ticketEnds) }) });
}

function stateOf(job: Row, place: HTMLElement): HTMLSelectElement {
  const select = el("select", {}, ...states.map((one) => el("option", { value: one, textContent: named(one) })));
  select.value = job.state;
  select.setAttribute("aria-label", `${say("state")}: ${job.name}`);
  select.onchange = () => attempt(place, () => call("PUT", jobPath(job.id, "/state"), { state: select.value }));
  return select;
}

async function share(job: Row, place: HTMLElement): Promise<void> {
  const links = await call<{ id: string; paper: string; expires: string; opened: number }[]>("GET", jobPath(job.id, "/links"));
  const made = form("makeLink", async (values, it) => {
    const link = await call<{ token: string }>("POST", jobPath(job.id, "/links"), { paper: values["paper"], language: document.documentElement.lang.slice(0, 2), days: Number(values["days"]) });
    it.append(el("p", { textContent: say("once") }), el("a", { className: "token", href: `s/${link.token}`, textContent: new URL(`s/${link.token}`, document.baseURI).href }));
  }, choice("paper", "paper", papers.map((one) => [one, one])), field("days", "days", { type: "number", min: "1", max: "90", value: "14" }));
  const rows = links.map((link) => {
    const line = el("tr", {}, el("td", { textContent: link.paper }), el("td", { textContent: day(link.expires) }), el("td", { className: "figure", textContent: `${link.opened}` }),
      el("td", {}, button("withdraw", async () => { await call("DELETE", jobPath(job.id, `/links/${link.id}`)); line.remove(); }, () => place)));
    return line;
  });
  place.querySelector("section.links")?.remove();
  const part = section(`${say("link")}: ${job.name}`, made, rows.length > 0 && table(say("links"), [say("paper"), say("until"), [say("opened"), "figure"], ""], rows));
  part.className = "links";
  place.append(part);
  part.querySelector("select")?.focus();
}

/** Puts the job onto this browser's shelf, unless it is there, and opens it at the desk. */
async function open(job: string, name: string): Promise<void> {
  status(say("opening"));
  if ((await read(job)).length === 0) await fetchJob(job, name);
  else if (!await carried(job)) await keepCarried(begin(job, await mine()));
  sessionStorage.setItem("tautline.open", job);
  location.assign("./");
}

async function mine(): Promise<string | undefined> { return (await call<{ company?: { id: string } }>("GET", "api/me")).company?.id; }

async function fetchJob(job: string, name: string): Promise<void> {
  const { head, number } = await headOf(job);
  const bodies: Record<string, string[]> = { root: [], change: [], entry: [] };
  const entries: { device: string; sequence: number; text: string }[] = [];
  const hashes: string[] = [];
  let cursor = 0;
  // Not past what the head knows: a job behind what is shared would look like an edit that takes it back.
  for (let more = true; more && cursor < number;) {
    const text = await (await raw("GET", jobPath(job, `/items?after=${cursor}`))).text();
    const page = JSON.parse(text) as Page;
    const texts = bodiesOf(text);
    for (const [at, item] of page.items.entries()) {
      if (item.number > number) break;
      const body = texts[at]!;
      bodies[item.kind]?.push(body);
      if (item.kind === "entry") entries.push({ device: item.body.device, sequence: item.body.sequence, text: body });
      hashes.push(item.hash);
    }
    more = page.more;
    cursor = page.cursor;
  }
  const shared = `{"format":"tautline-exchange","version":2,"job":${JSON.stringify(job)},"roots":[${bodies["root"]!.join()}],"changes":[${bodies["change"]!.join()}],"log":[]}`;
  const bytes = new TextEncoder();
  const seen = new Map<string, number>();
  // Two entries under one number, as after a restored backup: the second is kept under a name of its own.
  const variants = entries.map((entry) => { const key = `${entry.device} ${entry.sequence}`, n = seen.get(key) ?? 0; seen.set(key, n + 1); return n === 0 ? "" : `server ${n}`; });
  await writeShared(job, name, head, bytes.encode(shared), entries.map((e) => e.device), entries.map((e) => e.sequence), variants, entries.map((e) => e.text));
  await keepCarried({ ...begin(job, await mine()), cursor: number, known: hashes });
}

async function headOf(job: string): Promise<{ head: Uint8Array; number: number }> {
  for (let tries = 0; ; tries++) {
    try {
      const answer = await raw("GET", jobPath(job));
      return { head: new Uint8Array(await answer.arrayBuffer()), number: Number(answer.headers.get("Tautline-Number")) };
    } catch (fault) {
      if (!(fault instanceof Refused) || fault.why.code !== "not-yet" || tries > 20) throw fault;
      await new Promise((done) => setTimeout(done, 500));
    }
  }
}

/** The bodies of a page's items as they stand there, for a script would round the numbers in them. Each is the last part of its item, and no text before it can hold its name unescaped. */
function bodiesOf(page: string): string[] {
  const bodies: string[] = [];
  let depth = 0, quoted = false, from = 0;
  for (let at = page.indexOf("[", page.indexOf('"items":')) + 1; at < page.length; at++) {
    const sign = page[at];
    if (quoted) { if (sign === "\\") at++; else if (sign === '"') quoted = false; }
    else if (sign === '"') quoted = true;
    else if (sign === "]" && depth === 0) return bodies;
    else if (sign === "{" || sign === "[") { if (depth++ === 0) from = at; }
    else if ((sign === "}" || sign === "]") && --depth === 0) {
      const item = page.slice(from, at);
      bodies.push(item.slice(item.indexOf('"body":') + '"body":'.length));
    }
  }
  throw new Error("The server's page ends within an item.");
}
