// Who belongs to the company, on what devices; programs; what was done.
import { call } from "../kept/server";
import { button, choice, el, field, form, section, table } from "./parts";
import { list } from "./lists";
import { day, moment, named, say } from "./words";

interface Person { id: string; name: string; email: string; role: string; since: string }
interface Invitation { id: string; role: string; email: string; expires: string }
interface Device { id: string; name: string; personName: string; seen: string; mine: boolean }
interface Token { id: string; name: string; role: string; expires: string; used?: string }
interface Done { at: string; person: string; act: string; subject: string; detail: string }
interface Secret { id: string; token: string }

const roles = ["owner", "estimator", "foreman", "crew"];
const roleChoices = roles.map((role): [string, string] => [role, named(role)]);

export async function people(me: string): Promise<HTMLElement[]> {
  const all = await call<Person[]>("GET", "api/people");
  const rows = all.map((person) => {
    const role = choice("role", "role", roles.map((one) => [one, named(one)]), person.role).querySelector("select")!;
    role.setAttribute("aria-label", `${say("role")}: ${person.name}`);
    const place = el("td", { className: "name", textContent: person.name });
    const line = el("tr", { data: { person: person.email } }, place, el("td", { textContent: person.email }), el("td", {}, role), el("td", { textContent: day(person.since) }),
      el("td", {}, person.id !== me && button("end", async () => { await call("DELETE", `api/people/${person.id}`); line.remove(); }, () => place)));
    role.onchange = async () => {
      try { await call("PUT", `api/people/${person.id}`, { role: role.value }); } catch (fault) { role.value = person.role; place.append(Object.assign(el("p", { className: "fault", textContent: (fault as Error).message }), { role: "alert" })); }
    };
    return line;
  });
  return [section(say("people"), table(say("people"), [say("person"), say("email"), say("role"), say("since"), ""], rows)), await invitations(), list("people", async () => {})];
}

async function invitations(): Promise<HTMLElement> {
  const all = await call<Invitation[]>("GET", "api/invitations");
  const made = form("invite", async (values, it) => {
    const secret = await call<Secret>("POST", "api/invitations", { role: values["role"], email: values["email"], days: Number(values["days"]) });
    const address = new URL(`company.html#join=${secret.token}`, document.baseURI).href;
    it.querySelector(".made")?.remove();
    const qr = el("div", { className: "qr" });
    it.append(el("div", { className: "made" }, el("p", { textContent: say("once") }), el("a", { className: "token", href: address, textContent: address }), qr));
    const { qrSvg } = await import("./qr");
    qr.innerHTML = qrSvg(address);
  }, choice("role", "role", roleChoices, "crew"), field("emailMaybe", "email", { type: "email", required: false }), field("days", "days", { type: "number", min: "1", max: "30", value: "7" }));
  const rows = all.map((one) => {
    const line = el("tr", {}, el("td", { textContent: named(one.role) }), el("td", { textContent: one.email || "–" }), el("td", { textContent: day(one.expires) }),
      el("td", {}, button("withdraw", async () => { await call("DELETE", `api/invitations/${one.id}`); line.remove(); }, () => made)));
    return line;
  });
  return section(say("invitations"), made, rows.length > 0 && table(say("invitations"), [say("role"), say("email"), say("until"), ""], rows));
}

export async function devices(): Promise<HTMLElement> {
  const all = await call<Device[]>("GET", "api/devices");
  const rows = all.map((device) => {
    const place = el("td", { className: "name", textContent: device.name });
    const line = el("tr", {}, place, el("td", { textContent: device.personName }), el("td", { textContent: moment(device.seen) }),
      el("td", {}, !device.mine && button("shutOut", async () => { await call("DELETE", `api/devices/${device.id}`); line.remove(); }, () => place)));
    return line;
  });
  return section(say("devices"), el("p", { className: "hint", textContent: say("lost") }), table(say("devices"), [say("device"), say("who"), say("seen"), ""], rows));
}

export async function programs(): Promise<HTMLElement> {
  const all = await call<Token[]>("GET", "api/tokens");
  const made = form("makeToken", async (values, it) => {
    const secret = await call<Secret>("POST", "api/tokens", { name: values["name"], role: values["role"], days: Number(values["days"]) });
    it.append(el("p", { textContent: say("once") }), el("code", { className: "token", textContent: secret.token }));
  }, field("tokenFor", "name", { maxLength: 100 }), choice("role", "role", roleChoices, "crew"), field("days", "days", { type: "number", min: "1", max: "366", value: "90" }));
  const rows = all.map((token) => {
    const line = el("tr", {}, el("td", { className: "name", textContent: token.name }), el("td", { textContent: named(token.role) }), el("td", { textContent: day(token.expires) }),
      el("td", { textContent: token.used ? moment(token.used) : "–" }), el("td", {}, button("withdraw", async () => { await call("DELETE", `api/tokens/${token.id}`); line.remove(); }, () => made)));
    return line;
  });
  return section(say("tokens"), made, rows.length > 0 && table(say("tokens"), [say("tokenFor"), say("role"), say("until"), say("used"), ""], rows),
    el("p", {}, el("a", { href: "api/export", textContent: say("export") })));
}

export async function audit(): Promise<HTMLElement> {
  const all = await call<Done[]>("GET", "api/audit");
  const rows = all.map((one) => el("tr", {}, el("td", { textContent: moment(one.at) }), el("td", { textContent: one.person }), el("td", { textContent: one.act }), el("td", { className: "name", textContent: `${one.subject} ${one.detail}` })));
  return section(say("audit"), table(say("audit"), [say("when"), say("who"), say("what"), ""], rows));
}
