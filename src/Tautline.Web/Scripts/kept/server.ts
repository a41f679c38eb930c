// What the page asks of the server it came from. An answer that refuses says so in words of its own.

export interface Refusal { status: number; code: string; words: string; companies?: { id: string; name: string }[] }

export class Refused extends Error {
  constructor(readonly why: Refusal) { super(why.words); }
}

/** An answer's JSON, or nothing where it has none. Throws 'Refused' with the server's words; status 0 where the server cannot be reached. */
export async function call<T>(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<T> {
  const answer = await raw(method, path, body === undefined ? undefined : JSON.stringify(body), { ...(body === undefined ? {} : { "Content-Type": "application/json" }), ...headers });
  return (answer.status === 204 ? undefined : await answer.json()) as T;
}

/** The answer itself. */
export async function raw(method: string, path: string, body?: BodyInit, headers?: Record<string, string>): Promise<Response> {
  let answer: Response;
  try {
    answer = await fetch(path, { method, body: body ?? null, headers: { Tautline: "1", ...headers }, cache: "no-store", credentials: "same-origin" });
  } catch {
    throw new Refused({ status: 0, code: "no-signal", words: "" });
  }
  if (answer.ok) return answer;
  const told = await answer.json().catch(() => ({})) as { code?: string; detail?: string; companies?: { id: string; name: string }[] };
  // What no server of ours wrote comes from something between.
  throw new Refused({ status: answer.status, code: told.code ?? (answer.status === 404 ? "no-server" : ""), words: told.detail ?? "", ...(told.companies ? { companies: told.companies } : {}) });
}

/** The address of a job's part. */
export function jobPath(job: string, part = ""): string { return `api/jobs/${encodeURIComponent(job)}${part}`; }
