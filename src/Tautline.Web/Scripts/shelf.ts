// Jobs kept in this browser, as the page asks for them.
import { carriedKey } from "./kept/carried";
import { ask, change } from "./kept/database";

const automaticKept = 12;
const namedKept = 60;
const binnedDays = 30;
const day = 86_400_000;

interface JobRow { id: string; name: string; changed: number; bytes: number; binned?: number }
interface TextRow { id: string; json: Uint8Array }
// Two different entries may carry one number, as after a restored backup: the second one lies under its number and digest.
interface EntryRow { job: string; device: string; sequence: number | string; json: Uint8Array }
interface DeviceRow { one: 1; id: string; last: number }
interface VersionRow { key?: number; job: string; at: number; label: string; automatic: boolean; bytes: number; json: Uint8Array }

/** All jobs, the last changed first, as JSON; those in the bin are among them until their time is over. */
export async function list(): Promise<string> {
  const jobs = await ask<JobRow[]>("jobs", (store) => store.getAll());
  const over = jobs.filter((job) => job.binned !== undefined && job.binned < Date.now() - binnedDays * day);
  for (const job of over) await remove(job.id);
  return JSON.stringify(jobs.filter((job) => !over.includes(job)).sort((a, b) => b.changed - a.changed));
}

/** The text of a job; empty where it is not on the shelf. */
export async function read(id: string): Promise<Uint8Array> {
  return (await ask<TextRow | undefined>("texts", (store) => store.get(id)))?.json ?? new Uint8Array();
}

/** Keeps a job. Done when it is on disk. */
export function write(id: string, name: string, json: Uint8Array): Promise<void> {
  return change(["jobs", "texts", "shared"], (transaction) => {
    // How the job first came here is what others' edits are compared with.
    const shared = transaction.objectStore("shared");
    const known = shared.getKey(id);
    known.onsuccess = () => { if (known.result === undefined) shared.put({ id, json } satisfies TextRow); };
    transaction.objectStore("jobs").put({ id, name, changed: Date.now(), bytes: json.length } satisfies JobRow);
    transaction.objectStore("texts").put({ id, json } satisfies TextRow);
  });
}

/** How the job first came to this device, or what was shared of it since; empty where it is not on the shelf. */
export async function readShared(id: string): Promise<Uint8Array> {
  return (await ask<TextRow | undefined>("shared", (store) => store.get(id)))?.json ?? new Uint8Array();
}

/**
 * Keeps a job, what is shared of it, and entries of its log that others wrote: all or nothing, for a job that lags behind what is shared would look like an edit that takes it
 * back. An entry that is there already stays as it is.
 */
export function writeShared(id: string, name: string, job: Uint8Array, json: Uint8Array, devices: string[], sequences: number[], variants: string[], texts: string[]): Promise<void> {
  return change(["jobs", "texts", "shared", "entries"], (transaction) => {
    transaction.objectStore("jobs").put({ id, name, changed: Date.now(), bytes: job.length } satisfies JobRow);
    transaction.objectStore("texts").put({ id, json: job } satisfies TextRow);
    transaction.objectStore("shared").put({ id, json } satisfies TextRow);
    const store = transaction.objectStore("entries");
    devices.forEach((device, i) => {
      const sequence = variants[i] ? `${sequences[i]} ${variants[i]}` : sequences[i]!;
      const known = store.getKey([id, device, sequence]);
      known.onsuccess = () => {
        if (known.result === undefined) store.put({ job: id, device, sequence, json: new TextEncoder().encode(texts[i]) } satisfies EntryRow);
      };
    });
  });
}

/** Puts a job into the bin, or takes it out again. */
export function bin(id: string, binned: boolean): Promise<void> {
  return change(["jobs"], (transaction) => {
    const jobs = transaction.objectStore("jobs");
    const found = jobs.get(id) as IDBRequest<JobRow | undefined>;
    found.onsuccess = () => {
      if (found.result) jobs.put({ ...found.result, binned: binned ? Date.now() : undefined });
    };
  });
}

export function remove(id: string): Promise<void> {
  return change(["jobs", "texts", "versions", "entries", "shared", "photos", "device"], (transaction) => {
    transaction.objectStore("shared").delete(id);
    transaction.objectStore("device").delete(carriedKey(id));
    transaction.objectStore("jobs").delete(id);
    transaction.objectStore("texts").delete(id);
    const keys = transaction.objectStore("versions").index("job").getAllKeys(id);
    keys.onsuccess = () => keys.result.forEach((key) => transaction.objectStore("versions").delete(key));
    const photos = transaction.objectStore("photos").index("job").getAllKeys(id);
    photos.onsuccess = () => photos.result.forEach((key) => transaction.objectStore("photos").delete(key));
    const log = transaction.objectStore("entries").index("job").getAllKeys(id);
    log.onsuccess = () => log.result.forEach((key) => transaction.objectStore("entries").delete(key));
  });
}

/** Versions of a job, the newest first, as JSON without their texts. */
export async function versions(job: string): Promise<string> {
  const rows = await ask<VersionRow[]>("versions", (store) => store.index("job").getAll(job));
  return JSON.stringify(rows.reverse().map(({ key, at, label, automatic, bytes }) => ({ key, at, label, automatic, bytes })));
}

export async function readVersion(key: number): Promise<Uint8Array> {
  return (await ask<VersionRow | undefined>("versions", (store) => store.get(key)))?.json ?? new Uint8Array();
}

/** Keeps a version; of its kind the oldest beyond a bound go. */
export function addVersion(job: string, label: string, automatic: boolean, json: Uint8Array): Promise<void> {
  return change(["versions"], (transaction) => {
    const store = transaction.objectStore("versions");
    store.add({ job, at: Date.now(), label, automatic, bytes: json.length, json } satisfies VersionRow);
    const rows = store.index("job").getAll(job) as IDBRequest<VersionRow[]>;
    rows.onsuccess = () => {
      const alike = rows.result.filter((row) => row.automatic === automatic);
      alike.slice(0, Math.max(0, alike.length - (automatic ? automaticKept : namedKept))).forEach((row) => store.delete(row.key!));
    };
  });
}

/** A number for the next entry of this device, and the name the device gave itself at its first: 'name number'. A number is given out once, used or not. */
export async function nextNumber(): Promise<string> {
  let given: DeviceRow | undefined;
  await change(["device"], (transaction) => {
    const store = transaction.objectStore("device");
    const found = store.get(1) as IDBRequest<DeviceRow | undefined>;
    found.onsuccess = () => {
      given = { one: 1, id: found.result?.id ?? crypto.randomUUID(), last: (found.result?.last ?? 0) + 1 };
      store.put(given);
    };
  });
  return `${given!.id} ${given!.last}`;
}

/** The device takes a new name, for others know entries of the old one that it does not. */
export async function renameDevice(): Promise<string> {
  const id = crypto.randomUUID();
  await change(["device"], (transaction) => { transaction.objectStore("device").put({ one: 1, id, last: 0 } satisfies DeviceRow); });
  return id;
}

/** The name the device gave itself; empty before its first entry. */
export async function deviceName(): Promise<string> {
  return (await ask<DeviceRow | undefined>("device", (store) => store.get(1)))?.id ?? "";
}

/** Keeps an entry of a log; never over another. Done when it is on disk. */
export function addEntry(job: string, device: string, sequence: number, json: Uint8Array): Promise<void> {
  return change(["entries"], (transaction) => { transaction.objectStore("entries").add({ job, device, sequence, json } satisfies EntryRow); });
}

/** The entries of a job's log, one to a line. */
export async function entries(job: string): Promise<Uint8Array> {
  const rows = await ask<EntryRow[]>("entries", (store) => store.index("job").getAll(job));
  return new Uint8Array(await new Blob(rows.flatMap((row) => [row.json as Uint8Array<ArrayBuffer>, "\n"])).arrayBuffer());
}

export function countEntries(job: string): Promise<number> {
  return ask("entries", (store) => store.index("job").count(job));
}

interface Keeper { invokeMethodAsync(name: string, ...values: unknown[]): Promise<unknown> }

let release: (() => void) | undefined;

/**
 * Takes a job for this tab. False where another tab has it and it is not to be taken over. When another tab takes it over later, the keeper
 * is told once.
 */
export function take(job: string, force: boolean, keeper: Keeper): Promise<boolean> {
  letGo();
  if (!navigator.locks) return Promise.resolve(true);
  return new Promise((answer) => {
    let mine = false;
    let given = false;
    navigator.locks
      .request(`tautline job ${job}`, force ? { steal: true } : { ifAvailable: true }, (lock) => {
        mine = lock !== null;
        answer(mine);
        return mine ? new Promise<void>((done) => { release = () => { given = true; done(); }; }) : undefined;
      })
      .catch(() => {
        if (mine && !given) { release = undefined; void keeper.invokeMethodAsync("TakenOver", job); }
      });
  });
}

export function letGo(): void {
  release?.();
  release = undefined;
}
