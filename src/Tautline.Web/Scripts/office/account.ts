// Signing up, in, out and joining. Nothing here touches what waits on this device.
import { call, Refused } from "../kept/server";
import { button, choice, el, field, form, section, status, valuesOf } from "./parts";
import { named, say } from "./words";

export interface Me {
  mode: string; signUp: string; https: boolean; protocol: number;
  person?: { id: string; name: string; email: string; role: string }; company?: { id: string; name: string }; device?: { id?: string; name: string };
}

const deviceName = (): string => {
  const { platform, userAgent } = navigator;
  return `${/Firefox/.test(userAgent) ? "Firefox" : /Chrome/.test(userAgent) ? "Chrome" : /Safari/.test(userAgent) ? "Safari" : "browser"}, ${platform}`.slice(0, 90);
};

export function signedOut(me: Me, done: () => Promise<void>): HTMLElement[] {
  if (!me.https) return [el("p", { className: "fault", textContent: say("https") })];
  const parts = [signIn(done)];
  if (me.signUp !== "closed") parts.push(signUp(done));
  return parts;
}

function signIn(done: () => Promise<void>): HTMLElement {
  const made = form("signIn", (values) => choosing(made, (company) => call("POST", "api/account/sign-in", { ...values, device: deviceName(), company }), done),
    field("email", "email", { type: "email", autocomplete: "username" }), field("password", "password", { type: "password", autocomplete: "current-password" }));
  const passkey = button("withPasskey", async () => {
    const options = await call<PublicKeyCredentialRequestOptionsJSON>("POST", "api/account/passkey/sign-in/start", {});
    const answer = await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) }) as PublicKeyCredential;
    const asText = JSON.stringify(answer.toJSON());
    await choosing(made, (company) => call("POST", "api/account/passkey/sign-in", { passkey: asText, device: deviceName(), company }), done);
  }, () => made);
  return section(say("signIn"), made, passkey);
}

function signUp(done: () => Promise<void>): HTMLElement {
  const made = form("signUp", async (values) => {
    await call("POST", "api/account/sign-up", { ...values, device: deviceName() });
    await done();
  }, field("company", "company", { maxLength: 100 }), ...whoFields());
  return section(say("signUp"), made, insteadOfPassword(made, (values, passkey) => call("POST", "api/account/sign-up", { ...values, passkey, device: deviceName() }), done));
}

export async function join(token: string, done: () => Promise<void>): Promise<HTMLElement> {
  const seen = await call<{ company: string; role: string; email: string }>("POST", "api/invitations/look", { token });
  const accept = (values: Record<string, string>, passkey?: string) => call("POST", "api/invitations/accept", { ...values, token, ...(passkey ? { passkey } : {}), device: deviceName() });
  const made = form("join", async (values) => { await accept(values); await done(); }, ...whoFields(seen.email));
  return section(say("join"), el("p", { textContent: say("joinAs", { company: seen.company, role: named(seen.role) }) }), made, insteadOfPassword(made, accept, done));
}

/** Of somebody who is signed in already: the account there is joins. */
export async function joinSignedIn(token: string, done: () => Promise<void>): Promise<HTMLElement> {
  const seen = await call<{ company: string; role: string }>("POST", "api/invitations/look", { token });
  const made = form("join", async () => { await call("POST", "api/invitations/accept", { token, device: deviceName() }); await done(); });
  return section(say("join"), el("p", { textContent: say("joinAs", { company: seen.company, role: named(seen.role) }) }), made);
}

export function account(done: () => Promise<void>): HTMLElement {
  const made: HTMLElement = section(say("account"), el("div", { className: "row-buttons" },
    button("addPasskey", async () => {
      const passkey = await newPasskey({});
      await call("POST", "api/account/passkeys", { passkey, name: deviceName() });
      status(say("passkeyMade"));
    }, () => made),
    button("signOut", async () => { await call("POST", "api/account/sign-out", {}); await done(); }, () => made)));
  return made;
}

const whoFields = (email = ""): HTMLLabelElement[] => [
  field("name", "name", { autocomplete: "name", maxLength: 100 }), field("email", "email", { type: "email", autocomplete: "username", value: email }),
  field("newPassword", "password", { type: "password", autocomplete: "new-password", minLength: 12 }),
];

function insteadOfPassword(made: HTMLFormElement, send: (values: Record<string, string>, passkey: string) => Promise<unknown>, done: () => Promise<void>): HTMLButtonElement {
  return button("upPasskey", async () => {
    const { password: _, ...values } = valuesOf(made);
    await send(values, await newPasskey(values));
    await done();
  }, () => made);
}

async function newPasskey(who: Record<string, string>): Promise<string> {
  const options = await call<PublicKeyCredentialCreationOptionsJSON>("POST", "api/account/passkey/start", { name: who["name"], email: who["email"] });
  const made = await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) }) as PublicKeyCredential;
  return JSON.stringify(made.toJSON());
}

/** Who belongs to several companies is asked which. */
async function choosing(place: HTMLElement, send: (company?: string) => Promise<unknown>, done: () => Promise<void>): Promise<void> {
  try {
    await send();
    await done();
  } catch (fault) {
    if (!(fault instanceof Refused) || fault.why.code !== "which") throw fault;
    const chosen = form("open", async (values) => { await send(values["company"]); await done(); }, choice("which", "company", fault.why.companies!.map((one) => [one.id, one.name])));
    place.replaceWith(chosen);
  }
}
