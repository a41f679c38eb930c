// Photos of the field: scaled, named by their digest, kept in this browser, handed over with a job's file.
import { Unzip, UnzipInflate, Zip, ZipPassThrough } from "fflate";
import { ask, change } from "./kept/database";

const longSide = 2048;
const smallSide = 256;
const quality = 0.82;
const named = /^photos\/([0-9a-f]{64})\.jpg$/;
const jobName = "field.json";
// A file of one device for another is not larger; one that would unpack to more is not unpacked.
const mostJson = 64 * 2 ** 20;
const mostPhoto = 8 * 2 ** 20;

interface PhotoRow { job: string; sha256: string; width: number; height: number; at: number; data: Uint8Array<ArrayBuffer>; small: Uint8Array<ArrayBuffer> }
interface Taken { name: string; sha256?: string; width?: number; height?: number; bytes?: number; fault?: string }

/** Scales each chosen picture and keeps it, one after the other: none is held twice. The answer is JSON, one for each file; those with a fault are not kept. */
export async function take(job: string, input: HTMLInputElement): Promise<string> {
  const chosen = [...(input.files ?? [])];
  const taken: Taken[] = [];
  for (const file of chosen) taken.push(await takeOne(job, file));
  input.value = "";
  return JSON.stringify(taken);
}

async function takeOne(job: string, file: File): Promise<Taken> {
  let row: PhotoRow;
  try {
    row = await scaled(job, file);
  } catch {
    return { name: file.name, fault: "unread" };
  }
  try {
    await keep(row);
  } catch (fault) {
    return { name: file.name, fault: (fault as Error).message.startsWith("full:") ? "full" : "shelf" };
  }
  return { name: file.name, sha256: row.sha256, width: row.width, height: row.height, bytes: row.data.length };
}

/** Upright, its long side at most so many pixels, a JPEG of its own: what the camera wrote beside the picture, its place among it, does not come along. */
async function scaled(job: string, picture: Blob): Promise<PhotoRow> {
  const { width, height } = await size(picture);
  const large = await drawn(picture, width, height, longSide);
  const small = await drawn(large.blob, large.width, large.height, smallSide);
  const data = new Uint8Array(await large.blob.arrayBuffer());
  return { job, sha256: await digest(data), width: large.width, height: large.height, at: Date.now(), data, small: new Uint8Array(await small.blob.arrayBuffer()) };
}

async function size(picture: Blob): Promise<{ width: number; height: number }> {
  const address = URL.createObjectURL(picture);
  try {
    const image = new Image();
    await new Promise((done, failed) => { image.onload = done; image.onerror = failed; image.src = address; });
    return { width: image.naturalWidth, height: image.naturalHeight };
  } finally {
    URL.revokeObjectURL(address);
  }
}

async function drawn(picture: Blob, width: number, height: number, side: number): Promise<{ blob: Blob; width: number; height: number }> {
  const scale = Math.min(1, side / Math.max(width, height));
  const w = Math.max(1, Math.round(width * scale)), h = Math.max(1, Math.round(height * scale));
  const bitmap = await createImageBitmap(picture, { resizeWidth: w, resizeHeight: h, resizeQuality: "high" });
  try {
    const canvas = Object.assign(document.createElement("canvas"), { width: w, height: h });
    const pen = canvas.getContext("2d")!;
    pen.fillStyle = "white"; // what is transparent would come out black
    pen.fillRect(0, 0, w, h);
    pen.drawImage(bitmap, 0, 0);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
    if (!blob) throw new Error("The browser cannot write this picture.");
    return { blob, width: w, height: h };
  } finally {
    bitmap.close();
  }
}

async function digest(data: Uint8Array<ArrayBuffer>): Promise<string> {
  return [...new Uint8Array(await crypto.subtle.digest("SHA-256", data))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function keep(row: PhotoRow): Promise<void> {
  return change(["photos"], (transaction) => { transaction.objectStore("photos").put(row); });
}

/** Digests of the photos of a job that are here, one to a line. */
export async function kept(job: string): Promise<string> {
  return (await ask("photos", (store) => store.index("job").getAllKeys(job))).map((key) => (key as string[])[1]).join("\n");
}

/** What there is to say of a photo, as JSON; empty where it is not here. */
export async function about(job: string, sha256: string): Promise<string> {
  const row = await ask<PhotoRow | undefined>("photos", (store) => store.get([job, sha256]));
  return row ? JSON.stringify({ name: "", sha256, width: row.width, height: row.height, bytes: row.data.length } satisfies Taken) : "";
}

/** Shows a photo in an element; false where it is not here. */
export async function show(job: string, sha256: string, image: HTMLImageElement, small: boolean): Promise<boolean> {
  const row = await ask<PhotoRow | undefined>("photos", (store) => store.get([job, sha256]));
  if (!row) return false;
  const address = URL.createObjectURL(new Blob([small && row.small.length > 0 ? row.small : row.data], { type: "image/jpeg" }));
  image.onload = image.onerror = () => URL.revokeObjectURL(address);
  image.src = address;
  return true;
}

/** Saves a job's file together with its photos, which go from the shelf into the file one by one. */
export async function handOver(fileName: string, job: string, json: Uint8Array<ArrayBuffer>, digests: string[]): Promise<number> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((fault, part) => { if (fault) throw fault; parts.push(part as Uint8Array<ArrayBuffer>); });
  const add = (name: string, data: Uint8Array): void => { const file = new ZipPassThrough(name); zip.add(file); file.push(data, true); };
  add(jobName, json);
  let went = 0;
  for (const sha256 of digests) {
    const row = await ask<PhotoRow | undefined>("photos", (store) => store.get([job, sha256]));
    if (!row) continue;
    add(`photos/${sha256}.jpg`, row.data);
    went++;
  }
  zip.end();
  const address = URL.createObjectURL(new Blob(parts, { type: "application/zip" }));
  const link = Object.assign(document.createElement("a"), { href: address, download: fileName });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return went;
}

/** The file that was chosen last; its photos are looked at once its job is known. */
let chosen: File | undefined;

/** The job's own part of a file another device made; empty where it has none. Throws 'shelf: large' where it is larger than any such file. */
export async function jobPart(input: HTMLInputElement): Promise<Uint8Array> {
  const file = input.files?.[0];
  chosen = undefined;
  try {
    if (!file) return new Uint8Array();
    if (!await zipped(file)) {
      if (file.size > mostJson) throw new Error("shelf: large");
      return new Uint8Array(await file.arrayBuffer());
    }
    let json = new Uint8Array();
    await unpack(file, (name) => (name === jobName ? mostJson : undefined), (_, data) => { json = data; return Promise.resolve(); });
    chosen = file;
    return json;
  } finally {
    input.value = "";
  }
}

async function zipped(file: File): Promise<boolean> {
  const head = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  return head[0] === 0x50 && head[1] === 0x4b;
}

/** Keeps those photos of the chosen file that are wanted, where each is what its name says. How many came. */
export async function photosOf(job: string, wanted: string[]): Promise<number> {
  if (!chosen) return 0;
  const open = new Set(wanted);
  let came = 0;
  const digestOf = (name: string): string => named.exec(name)?.[1] ?? "";
  await unpack(chosen, (name) => (open.has(digestOf(name)) ? mostPhoto : undefined), async (name, data) => { if (await keepForeign(job, digestOf(name), data)) came++; });
  return came;
}

/** Hands over each part of a zip file that is wanted, up to the size that is given for it; the rest is not unpacked. */
async function unpack(file: File, most: (name: string) => number | undefined, take: (name: string, data: Uint8Array<ArrayBuffer>) => Promise<void>): Promise<void> {
  const whole: { name: string; data: Uint8Array<ArrayBuffer> }[] = [];
  let tooLarge = false;
  const unzip = new Unzip((entry) => {
    const limit = most(entry.name);
    if (limit === undefined) return;
    const chunks: Uint8Array[] = [];
    let size = 0;
    entry.ondata = (fault, chunk, final) => {
      if (fault) throw fault;
      size += chunk.length;
      if (size > limit) { tooLarge = true; entry.terminate(); return; }
      chunks.push(chunk);
      if (final) whole.push({ name: entry.name, data: joined(chunks, size) });
    };
    entry.start();
  });
  unzip.register(UnzipInflate);
  const reader = file.stream().getReader();
  for (let read = await reader.read(); ; read = await reader.read()) {
    unzip.push(read.value ?? new Uint8Array(), read.done);
    if (tooLarge) { await reader.cancel(); throw new Error("shelf: large"); }
    for (const part of whole.splice(0)) await take(part.name, part.data);
    if (read.done) return;
  }
}

function joined(chunks: Uint8Array[], size: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) { whole.set(chunk, at); at += chunk.length; }
  return whole;
}

async function keepForeign(job: string, sha256: string, data: Uint8Array<ArrayBuffer>): Promise<boolean> {
  if (await digest(data) !== sha256) return false; // damaged on the way: it stays as not here
  if (await ask("photos", (store) => store.getKey([job, sha256])) !== undefined) return false;
  const picture = new Blob([data], { type: "image/jpeg" });
  let row: PhotoRow;
  try {
    const { width, height } = await size(picture);
    const small = await drawn(picture, width, height, smallSide);
    row = { job, sha256, width, height, at: Date.now(), data, small: new Uint8Array(await small.blob.arrayBuffer()) };
  } catch {
    return false; // no picture, whatever its name says
  }
  await keep(row);
  return true;
}

interface Sign { program: boolean; promised: boolean; used?: number; quota?: number }

/** Whether the program opens without a connection, whether the browser promised to keep what is here, and how much room there is, as JSON. Asks for the promise where it is wanted. */
export async function sign(ask: boolean): Promise<string> {
  const promised = ask ? await navigator.storage?.persist?.() : await navigator.storage?.persisted?.();
  const room = await navigator.storage?.estimate?.();
  // A worker is active once every file of the program is kept.
  const program = (await navigator.serviceWorker?.getRegistration())?.active != null;
  return JSON.stringify({ program, promised: promised ?? false, ...(room?.usage === undefined ? {} : { used: room.usage }), ...(room?.quota === undefined ? {} : { quota: room.quota }) } satisfies Sign);
}
