import type { Tick } from "../device/ticks";
import type { Job } from "../planner/job";

// The server's API, as far as the screen uses it (its description: /api/openapi.json).

/** A job as the server tells of it. */
export interface Summary {
  id: string;
  name: string;
  version: number; // counts every save
  label: string;
  saved: string;
  binned?: string;
}

export interface Stored extends Summary {
  document: Job;
}

/** A revision to be sent: it counts once, however often it is sent. */
export interface Sending {
  key: string;
  label: string;
  made: string;
  document: Job;
}

/** A version of a job that somebody has given a name. */
export interface Named {
  version: number;
  name: string;
  label: string;
  made: string;
}

export type Pushed = { version: number } | { current: Stored };

/** Why a server gave no answer that can be used. */
export class ServerTrouble extends Error {
  constructor(
    readonly kind: "away" | "token" | "refused",
    message: string,
  ) {
    super(message);
  }
}

const patience = 15_000; // milliseconds that a request may take

/** Asks the server. Trouble is a {@link ServerTrouble}; an answer of an expected status is returned. */
async function ask(method: string, path: string, expected: readonly number[], body?: unknown): Promise<{ status: number; body: unknown }> {
  let response: Response;
  try {
    response = await fetch(new URL(`api/${path}`, document.baseURI), {
      method,
      signal: AbortSignal.timeout(patience),
      ...(body !== undefined && { body: JSON.stringify(body), headers: { "Content-Type": "application/json" } }),
    });
  } catch (error) {
    throw new ServerTrouble("away", error instanceof Error ? error.message : String(error));
  }
  if (response.status === 401) throw new ServerTrouble("token", "the server asks for its token");
  const isJSON = /\bjson\b/.test(response.headers.get("Content-Type") ?? "");
  if (!isJSON && response.status !== 204) throw new ServerTrouble("away", `no answer from the API (${response.status})`);
  const told: unknown = isJSON ? await response.json() : null;
  if (expected.includes(response.status)) return { status: response.status, body: told };
  const detail = (told as { detail?: string } | null)?.detail;
  throw new ServerTrouble(response.status >= 500 ? "away" : "refused", detail ?? `the server answered ${response.status}`);
}

/** Sends or gets bytes; null: there are none. */
async function picture(method: string, path: string, body?: Blob): Promise<Blob | null> {
  let response: Response;
  try {
    response = await fetch(new URL(`api/${path}`, document.baseURI), {
      method,
      signal: AbortSignal.timeout(4 * patience),
      ...(body && { body, headers: { "Content-Type": body.type } }),
    });
  } catch (error) {
    throw new ServerTrouble("away", error instanceof Error ? error.message : String(error));
  }
  if (response.status === 404) return null;
  if (!response.ok) throw new ServerTrouble(response.status >= 500 ? "away" : "refused", `the server answered ${response.status}`);
  return response.blob();
}

const at = (id: string) => encodeURIComponent(id);

export const server = {
  async jobs(): Promise<Summary[]> {
    return ((await ask("GET", "jobs", [200])).body as { jobs: Summary[] }).jobs;
  },

  /** What is in the bin, and the ids of what is deleted for good. */
  async bin(): Promise<{ jobs: Summary[]; erased: string[] }> {
    const { jobs, erased = [] } = (await ask("GET", "bin", [200])).body as { jobs: Summary[]; erased?: string[] };
    return { jobs, erased };
  },

  /** A job as it stands; null: there is none. */
  async job(id: string): Promise<Stored | null> {
    const { status, body } = await ask("GET", `jobs/${at(id)}`, [200, 404]);
    return status === 404 ? null : (body as Stored);
  },

  /** Sends what was done since a version (0: the job is new). When the job has moved on since, nothing is saved and its current state comes back. */
  async push(id: string, base: number, revisions: Sending[]): Promise<Pushed> {
    const { status, body } = await ask("POST", `jobs/${at(id)}/revisions`, [200, 201, 412], { base, revisions });
    return status === 412 ? { current: (body as { current: Stored }).current } : { version: (body as Summary).version };
  },

  /** Gives a version a name; empty: takes it away. A version that there is not is none to name. */
  async name(id: string, version: number, name: string): Promise<void> {
    await ask("PUT", `jobs/${at(id)}/history/${version}/name`, [204, 404], { name });
  },

  /** The versions of a job that have names, the newest first, as far as its last thousand go. */
  async named(id: string): Promise<Named[]> {
    const { status, body } = await ask("GET", `jobs/${at(id)}/history?most=1000`, [200, 404]);
    return status === 404 ? [] : (body as { versions: Named[] }).versions.filter((v) => v.name);
  },

  /** A job as it stood at a version; null: there is none. */
  async version(id: string, version: number): Promise<Stored | null> {
    const { status, body } = await ask("GET", `jobs/${at(id)}/history/${version}`, [200, 404]);
    return status === 404 ? null : (body as Stored);
  },

  async discard(id: string): Promise<void> {
    await ask("DELETE", `jobs/${at(id)}`, [204, 404]);
  },

  async recover(id: string): Promise<void> {
    await ask("POST", `bin/${at(id)}/recover`, [204, 404]);
  },

  async erase(id: string): Promise<void> {
    await ask("DELETE", `bin/${at(id)}`, [204, 404]);
  },
};

/** The pictures of a job, by their names. */
export const pictureServer = {
  async names(id: string): Promise<string[]> {
    const { status, body } = await ask("GET", `jobs/${at(id)}/pictures`, [200, 404]);
    return status === 404 ? [] : (body as { pictures: { name: string }[] }).pictures.map((p) => p.name);
  },

  async get(id: string, name: string): Promise<Blob | null> {
    return picture("GET", `jobs/${at(id)}/pictures/${encodeURIComponent(name)}`);
  },

  async add(id: string, shown: Blob): Promise<void> {
    await picture("POST", `jobs/${at(id)}/pictures`, shown);
  },
};

/** The ticks on a job's lists. */
export const tickServer = {
  /** Sends ticks and gets all that there are; null: there is no such job. */
  async ticks(id: string, ticks: Tick[]): Promise<Tick[] | null> {
    const { status, body } = await ask("POST", `jobs/${at(id)}/ticks`, [200, 404], { ticks });
    return status === 404 ? null : (body as { ticks: Tick[] }).ticks;
  },
};

export type TickServer = typeof tickServer;
export type Server = typeof server;
export type PictureServer = typeof pictureServer;
