// What a page asks of its browser: how it looks, its keys, its place in this tab, and the worker that keeps it for offline.

interface Desk { invokeMethodAsync(name: string, ...values: unknown[]): Promise<unknown> }

const openJob = "tautline.open";

function stored(store: () => Storage, key: string): string {
  try { return store().getItem(key) ?? ""; } catch { return ""; }
}

function store(where: () => Storage, key: string, value: string): void {
  try { if (value) where().setItem(key, value); else where().removeItem(key); } catch { /* private windows may refuse: it is only kept for this visit */ }
}

const lasting = () => localStorage;
const tab = () => sessionStorage;

/** A choice that was kept, such as the theme; empty where none was. */
export function choice(name: string): string { return stored(lasting, `tautline.${name}`); }

export function choose(name: string, value: string): void {
  store(lasting, `tautline.${name}`, value);
  if (name === "theme") look(value);
  if (name === "language") document.documentElement.lang = value;
}

export function look(theme: string): void {
  document.documentElement.dataset.theme = theme;
}

export function languages(): string { return navigator.languages.join(","); }

/** The job this tab had open before it was loaded again. */
export function openedJob(): string { return stored(tab, openJob); }

export function setOpenedJob(id: string): void { store(tab, openJob, id); }

/** The field with letters that are not taken over yet. */
let written: EventTarget | null = null;

/** Keys that work everywhere on the page but where text is being typed: there the browser's own undo is meant, until Enter or leaving takes the text over. */
export function listen(desk: Desk): void {
  addEventListener("input", (event) => { written = event.target; }, true);
  addEventListener("change", () => { written = null; }, true);
  addEventListener("keydown", (pressed) => {
    const key = pressed.key.toLowerCase();
    const command = (pressed.ctrlKey || pressed.metaKey) && !pressed.altKey;
    if (command && (key === "z" || key === "y") && !(typing(pressed.target) && written === pressed.target)) {
      pressed.preventDefault();
      void desk.invokeMethodAsync("Pressed", key === "y" || pressed.shiftKey ? "redo" : "undo");
    } else if (command && key === "s") {
      pressed.preventDefault();
      void desk.invokeMethodAsync("Pressed", "save");
    } else if (pressed.altKey && !command && /^[1-9]$/.test(pressed.key)) {
      pressed.preventDefault();
      void desk.invokeMethodAsync("Pressed", `step ${pressed.key}`);
    } else if (key === "escape" && !document.querySelector("dialog[open]") && !typing(pressed.target)) {
      void desk.invokeMethodAsync("Pressed", "escape");
    }
  });
  addEventListener("beforeunload", (leaving) => { if (unkept) leaving.preventDefault(); });
}

function typing(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || target instanceof HTMLTextAreaElement
    || (target instanceof HTMLInputElement && !["checkbox", "radio", "button", "file", "range"].includes(target.type)));
}

let unkept = false;

/** While something is not yet kept the browser asks before it leaves the page. */
export function setUnkept(value: boolean): void { unkept = value; }

export function showDialog(dialog: HTMLDialogElement): void { if (!dialog.open) dialog.showModal(); }

export function closeDialog(dialog: HTMLDialogElement): void { if (dialog.open) dialog.close(); }

export function focusOn(id: string): void {
  const element = document.getElementById(id);
  element?.focus({ preventScroll: true });
  element?.scrollIntoView({ block: "nearest" });
}

/** Puts the caret of a text where a line and column are, both from 1, and shows it. */
export function caretTo(id: string, line: number, column: number): void {
  const text = document.getElementById(id) as HTMLTextAreaElement | null;
  if (!text) return;
  const lines = text.value.split("\n");
  const before = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
  const at = Math.min(before + column - 1, text.value.length);
  text.focus();
  text.setSelectionRange(at, Math.min(at + 1, before + (lines[line - 1]?.length ?? 0)));
  const height = parseFloat(getComputedStyle(text).lineHeight) || 18;
  text.scrollTop = Math.max(0, (line - 4) * height);
}

/** Keeps the page for offline use. A new program waits until the person lets it in: never in the middle of a job. */
export async function keepOffline(desk: Desk): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    const kept = await navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" });
    const tell = () => { if (kept.waiting && navigator.serviceWorker.controller) void desk.invokeMethodAsync("NewProgram"); };
    tell();
    kept.addEventListener("updatefound", () => kept.installing?.addEventListener("statechange", tell));
    await navigator.serviceWorker.ready;
    void desk.invokeMethodAsync("ReadyOffline");
  } catch { /* without a worker the page works while there is a connection */ }
}

/** Lets the waiting program in and loads the page with it. */
export async function letNewProgramIn(): Promise<void> {
  const kept = await navigator.serviceWorker.getRegistration();
  if (!kept?.waiting) { location.reload(); return; }
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  kept.waiting.postMessage("let in");
}
