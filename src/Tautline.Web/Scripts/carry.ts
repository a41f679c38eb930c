// Carries what a job's devices share to and from the server. It may be broken off anywhere: what was not acknowledged goes again, and the server knows the same thing by its digest.
import { begin, carried, carriedJobs, keepCarried, type Carried } from "./kept/carried";
import { ask, change } from "./kept/database";
import { call, jobPath, raw, Refused } from "./kept/server";

const mostItems = 200;
const mostBytes = 700_000;
const often = 30_000;
const seldom = 300_000;

interface Item { kind: string; body: string; hash: string }
interface Page { items: { hash: string }[]; cursor: number; more: boolean }
interface Answer { taken: { index: number; hash: string }[]; refused: { index: number; code: string; message: string }[] }
interface PhotoRow { job: string; sha256: string; width: number; height: number; at: number; data: Uint8Array<ArrayBuffer>; small: Uint8Array<ArrayBuffer> }
interface Desk { invokeMethodAsync(name: string): Promise<unknown> }

async function digest(text: string): Promise<string> {
  return [...new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** True where the job is shared with the company. */
export async function isShared(job: string): Promise<boolean> { return await carried(job) !== undefined; }

export async function share(job: string): Promise<void> {
  if (!await carried(job)) await keepCarried(begin(job));
}

/** What is known of a job's carrying, bound to a company: the one that is signed in when it is carried for the first time. */
async function rowOf(job: string): Promise<Carried> {
  const row = await carried(job) ?? begin(job);
  if (row.company) return row;
  const { company } = await call<{ company?: { id: string } }>("GET", "api/me");
  if (!company) throw new Refused({ status: 401, code: "signed-out", words: "" });
  const bound = { ...row, company: company.id };
  await keepCarried(bound);
  return bound;
}

/** The server refuses what is meant for another company than the one that is signed in at that moment. */
function meant(row: Carried): Record<string, string> { return { "Tautline-Company": row.company! }; }

/** Pages that were fetched and are not taken in yet. */
let fetched: { row: Carried; cursor: number; hashes: string[] } | undefined;

/**
 * What the server has that came after what this device took last: the server's pages as they are, one after the other with a record separator between; empty where there is nothing
 * new. They are read by the page, for a script would round the numbers in them. Call 'taken' once all is kept.
 */
export async function pull(job: string): Promise<Uint8Array> {
  let row = begin(job);
  let pages: string[] = [];
  let hashes: string[] = [];
  let cursor = 0;
  try {
    row = await rowOf(job);
    cursor = row.cursor;
    let known = new Set(row.known);
    for (let more = true; more;) {
      const text = await (await raw("GET", jobPath(job, `/items?after=${cursor}`), undefined, meant(row))).text();
      const page = JSON.parse(text) as Page;
      if (page.cursor < cursor) {
        // The server was put back from a copy: what it lost must go again, and all it has be looked at anew.
        row = begin(job, row.company);
        [cursor, known, pages, hashes] = [0, new Set(), [], []];
        await keepCarried(row);
        continue;
      }
      const fresh = page.items.map((item) => item.hash).filter((hash) => !known.has(hash));
      if (fresh.length > 0) pages.push(text);
      hashes.push(...fresh);
      more = page.more && page.cursor > cursor;
      cursor = page.cursor;
    }
  } catch (fault) {
    // The server does not have the job yet: it gets it now.
    if (!(fault instanceof Refused && fault.why.code === "not-there")) throw told(fault);
    row = begin(job, row.company);
    [cursor, pages, hashes] = [0, [], []];
    await keepCarried(row);
  }
  fetched = { row, cursor, hashes };
  return new TextEncoder().encode(pages.join("\u001e"));
}

/** What was fetched is kept: the next time goes on from there. */
export async function taken(): Promise<void> {
  if (!fetched) return;
  const { row, cursor, hashes } = fetched;
  fetched = undefined;
  if (cursor === row.cursor && hashes.length === 0) return;
  await keepCarried({ ...row, cursor, known: [...row.known, ...hashes] });
}

/** Sends what the server does not have. The roots and changes come one to a line, 'kind TAB json'; the log is read off the shelf. The answer is JSON. */
export async function push(job: string, lines: string): Promise<string> {
  const row = await rowOf(job).catch((fault: unknown) => { throw told(fault); });
  const known = new Set(row.known);
  const items = await itemsOf(lines);
  for (const body of await entriesOf(job)) items.push({ kind: "entry", body, hash: await digest(body) });
  const waiting = items.filter((item) => !known.has(item.hash));
  const refused: { kind: string; message: string }[] = [];
  let sent = 0;
  try {
    for (const batch of batches(waiting)) {
      const body = `{"items":[${batch.map((item) => `{"kind":"${item.kind}","body":${item.body}}`).join(",")}]}`;
      const answer = await (await raw("POST", jobPath(job, "/items"), body, { "Content-Type": "application/json", ...meant(row) })).json() as Answer;
      for (const one of answer.taken) known.add(batch[one.index]!.hash).add(one.hash);
      refused.push(...answer.refused.map((one) => ({ kind: batch[one.index]!.kind, message: one.message })));
      sent += answer.taken.length;
      await keepCarried({ ...(await carried(job) ?? row), known: [...known] });
    }
  } catch (fault) {
    throw told(fault);
  }
  return JSON.stringify({ sent, refused });
}

/** How much of a job's log the server does not have yet. */
export async function waiting(job: string): Promise<number> {
  const row = await carried(job);
  if (!row) return 0;
  const known = new Set(row.known);
  let count = 0;
  for (const body of await entriesOf(job)) if (!known.has(await digest(body))) count++;
  return count;
}

/** Photos go and come by their names; how many came. */
export async function carryPhotos(job: string): Promise<number> {
  try {
    const row = await rowOf(job);
    const there = new Set((await call<{ sha256: string }[]>("GET", jobPath(job, "/photos"), undefined, meant(row))).map((photo) => photo.sha256));
    const here = new Set((await ask("photos", (store) => store.index("job").getAllKeys(job))).map((key) => (key as string[])[1]!));
    for (const sha256 of [...here].filter((name) => !there.has(name))) {
      const photo = await ask<PhotoRow>("photos", (store) => store.get([job, sha256]));
      // One that is not taken keeps no other back.
      await raw("PUT", jobPath(job, `/photos/${sha256}`), new Blob([photo.data]), { "Content-Type": "image/jpeg", ...meant(row) })
        .catch((fault: unknown) => { if (!bad(fault)) throw fault; });
    }
    const wanted = [...there].filter((name) => !here.has(name));
    for (const sha256 of wanted) {
      const data = new Uint8Array(await (await raw("GET", jobPath(job, `/photos/${sha256}`), undefined, meant(row))).arrayBuffer());
      const picture = await createImageBitmap(new Blob([data])).catch(() => undefined);
      if (!picture) continue;
      await change(["photos"], (transaction) => {
        transaction.objectStore("photos").put({ job, sha256, width: picture.width, height: picture.height, at: Date.now(), data, small: new Uint8Array() } satisfies PhotoRow);
      });
      picture.close();
    }
    return wanted.length;
  } catch (fault) {
    throw told(fault);
  }
}

/** Sends the logs of jobs that are shared and not open. What goes wrong waits for the next time. */
export async function pushOthers(open: string): Promise<void> {
  for (const job of await carriedJobs()) if (job !== open && await waiting(job) > 0) await push(job, "").catch(() => undefined);
}

let timer = 0;
let failures = 0;

/** Calls the desk whenever it is worth trying: now and then, after failures less often, and as soon as there is a signal again. */
export function watch(desk: Desk): void {
  const next = (wait: number) => { clearTimeout(timer); timer = setTimeout(run, wait); };
  const run = async () => {
    if (document.visibilityState === "visible") failures = await desk.invokeMethodAsync("CarryNow").catch(() => false) ? 0 : failures + 1;
    next(Math.min(seldom, often * 2 ** Math.min(failures, 4)));
  };
  addEventListener("online", () => next(0));
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") next(0); });
  next(often);
}

async function itemsOf(lines: string): Promise<Item[]> {
  const items: Item[] = [];
  for (const line of lines.split("\n").filter((text) => text.length > 0)) {
    const at = line.indexOf("\t");
    items.push({ kind: line.slice(0, at), body: line.slice(at + 1), hash: await digest(line.slice(at + 1)) });
  }
  return items;
}

async function entriesOf(job: string): Promise<string[]> {
  const rows = await ask<{ json: Uint8Array }[]>("entries", (store) => store.index("job").getAll(job));
  return rows.map((row) => new TextDecoder().decode(row.json));
}

function* batches(items: Item[]): Generator<Item[]> {
  let batch: Item[] = [], bytes = 0;
  for (const item of items) {
    if (batch.length >= mostItems || (batch.length > 0 && bytes + item.body.length > mostBytes)) {
      yield batch;
      [batch, bytes] = [[], 0];
    }
    batch.push(item);
    bytes += item.body.length;
  }
  if (batch.length > 0) yield batch;
}

/** True where the server judged the thing itself, so that it would say the same again. */
function bad(fault: unknown): boolean { return fault instanceof Refused && [400, 413, 415, 422].includes(fault.why.status); }

// The page tells these apart by their first word.
function told(fault: unknown): Error {
  if (!(fault instanceof Refused)) return fault as Error;
  const { status, code, words } = fault.why;
  return new Error(status === 0 || code === "no-server" ? "no-signal" : status === 401 ? "signed-out" : `refused: ${words}`);
}
