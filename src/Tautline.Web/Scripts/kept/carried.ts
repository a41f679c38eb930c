// What of each job the server is known to hold. It lies beside the device's name: a row here means that the job is shared with the company.
import { ask, change } from "./database";

/** "company" is the one it was first carried for: nothing of it goes to another. */
export interface Carried { one: string; job: string; company?: string; cursor: number; known: string[] }

const prefix = "carried ";

export function carriedKey(job: string): string { return prefix + job; }

export async function carried(job: string): Promise<Carried | undefined> {
  return ask<Carried | undefined>("device", (store) => store.get(carriedKey(job)));
}

export function keepCarried(row: Carried): Promise<void> {
  return change(["device"], (transaction) => { transaction.objectStore("device").put(row); });
}

export function begin(job: string, company?: string): Carried { return { one: carriedKey(job), job, ...(company ? { company } : {}), cursor: 0, known: [] }; }

/** Jobs that are shared with the company. */
export async function carriedJobs(): Promise<string[]> {
  const rows = await ask<Carried[]>("device", (store) => store.getAll(IDBKeyRange.bound(prefix, prefix + "\uffff")) as IDBRequest<Carried[]>);
  return rows.map((row) => row.job);
}
