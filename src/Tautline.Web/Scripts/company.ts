// The company page: who is here, all jobs, people. A page of its own, so that the desk's first visit does not carry it.
import { call, Refused } from "./kept/server";
import { account, join, joinSignedIn, signedOut, type Me } from "./office/account";
import { jobs } from "./office/jobs";
import { attempt, button, el, status } from "./office/parts";
import { audit, devices, people, programs } from "./office/people";
import { say, type Word } from "./office/words";

const main = (): HTMLElement => document.getElementById("company")!;

export async function start(): Promise<void> {
  document.title = `Tautline: ${say("title")}`;
  document.getElementById("to-desk")!.textContent = say("desk");
  addEventListener("hashchange", () => void show());
  await show();
}

async function show(): Promise<void> {
  status("");
  let me: Me;
  try {
    me = await call<Me>("GET", "api/me");
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    main().replaceChildren(el("p", { className: "empty", textContent: say("noServer") }), button("again", show, main));
    return;
  }
  document.getElementById("company-name")!.textContent = me.company?.name ?? "";
  const token = /^#join=([\w-]+)$/.exec(location.hash)?.[1];
  if (token) await joining(me, token);
  else if (me.person) await inside(me, "jobs");
  else main().replaceChildren(...signedOut(me, show));
}

async function joining(me: Me, token: string): Promise<void> {
  const done = async () => { history.replaceState(null, "", location.pathname); await show(); };
  main().replaceChildren();
  await attempt(main(), async () => { main().replaceChildren(await (me.person ? joinSignedIn(token, done) : join(token, done))); });
}

async function inside(me: Me, at: Word): Promise<void> {
  const role = me.person!.role;
  const places: Word[] = role === "owner" ? ["jobs", "people", "devices", "programs", "audit"] : ["jobs", "devices"];
  const bar = el("nav", {}, ...places.map((place) => {
    const made = el("button", { type: "button", textContent: say(place) });
    made.onclick = () => void inside(me, place);
    if (place === at) made.setAttribute("aria-current", "page");
    return made;
  }));
  bar.setAttribute("aria-label", say("title"));
  const body = el("div");
  main().replaceChildren(bar, body);
  await attempt(body, async () => {
    body.replaceChildren(...await parts(me, at));
    if (me.mode !== "own" && at === "devices") body.append(account(show));
  });
}

async function parts(me: Me, at: Word): Promise<HTMLElement[]> {
  switch (at) {
    case "people": return people(me.person!.id);
    case "devices": return [await devices()];
    case "programs": return [await programs()];
    case "audit": return [await audit()];
    default: return [await jobs(me.person!.role)];
  }
}
