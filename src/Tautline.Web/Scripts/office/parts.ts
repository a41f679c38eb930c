// Pieces the company page is put together from.
import { Refused } from "../kept/server";
import { say, type Word } from "./words";

type Child = Node | string | undefined | false;

export function el<K extends keyof HTMLElementTagNameMap>(tag: K, with_: Partial<HTMLElementTagNameMap[K]> & { data?: Record<string, string> } = {}, ...children: Child[]): HTMLElementTagNameMap[K] {
  const { data, ...properties } = with_;
  const made = Object.assign(document.createElement(tag), properties);
  for (const [name, value] of Object.entries(data ?? {})) made.dataset[name] = value;
  made.append(...children.filter((child): child is Node | string => child !== undefined && child !== false));
  return made;
}

export function status(text: string): void { document.getElementById("said")!.textContent = text; }

/** Does something the server may refuse; its words stand where the people look. */
export async function attempt(place: HTMLElement, work: () => Promise<void>): Promise<void> {
  place.querySelector(":scope > [role=alert]")?.remove();
  try {
    await work();
  } catch (fault) {
    if (fault instanceof DOMException) return; // somebody closed the browser's own dialog
    const words = fault instanceof Refused ? fault.why.status === 0 ? say("noServer") : fault.why.words : String(fault);
    place.append(Object.assign(el("p", { className: "fault", textContent: words }), { role: "alert" }));
  }
}

export function button(word: Word, press: () => Promise<void>, place: () => HTMLElement, main = false): HTMLButtonElement {
  const made = el("button", { type: "button", className: main ? "main" : "", textContent: say(word) });
  made.onclick = async () => {
    made.disabled = true;
    await attempt(place(), press);
    made.disabled = false;
  };
  return made;
}

export function field(word: Word, name: string, more: Partial<HTMLInputElement> = {}): HTMLLabelElement {
  return el("label", {}, say(word), el("input", { name, required: true, ...more }));
}

export function choice(word: Word, name: string, options: [string, string][], value?: string): HTMLLabelElement {
  const select = el("select", { name }, ...options.map(([key, text]) => el("option", { value: key, textContent: text })));
  if (value) select.value = value;
  return el("label", {}, say(word), select);
}

/** A form whose one button sends what is in it. */
export function form(word: Word, send: (values: Record<string, string>, made: HTMLFormElement) => Promise<void>, ...children: Child[]): HTMLFormElement {
  const press = el("button", { type: "submit", className: "main", textContent: say(word) });
  const made = el("form", {}, ...children, press);
  made.onsubmit = async (event) => {
    event.preventDefault();
    press.disabled = true;
    await attempt(made, () => send(valuesOf(made), made));
    press.disabled = false;
  };
  return made;
}

export function valuesOf(made: HTMLFormElement): Record<string, string> {
  return Object.fromEntries([...new FormData(made)].map(([name, value]) => [name, String(value)]));
}

export function table(label: string, heads: (string | [string, string])[], rows: Node[]): HTMLElement {
  const head = el("tr", {}, ...heads.map((one) => one === "" ? el("td") : el("th", { scope: "col", textContent: typeof one === "string" ? one : one[0], className: typeof one === "string" ? "" : one[1] })));
  const made = el("table", {}, el("thead", {}, head), el("tbody", {}, ...rows));
  made.setAttribute("aria-label", label);
  const around = el("div", { className: "scroll", tabIndex: 0 }, made);
  around.setAttribute("role", "group");
  around.setAttribute("aria-label", label);
  return around;
}

export function section(title: string, ...children: Child[]): HTMLElement {
  const made = el("section", {}, el("h2", { textContent: title }), ...children);
  made.setAttribute("aria-label", title);
  return made;
}
