// Ticks on lists: what of a plan is cut, and what hangs. They are no part of the job, since
// how far somebody has come changes no plan; they are kept beside it, each with the time
// when it was last set or taken away, so that of two devices the later word counts.

export interface Tick {
  key: string;
  on: boolean;
  at: number; // milliseconds since 1970
}

interface Written {
  all: Record<string, [on: boolean, at: number]>;
  unsent: string[]; // keys that the server has not got
}

export class TickShelf {
  #told = new Set<(job: string, own: boolean) => void>();
  #held = new Map<string, Written>(); // where the browser refuses to keep anything

  constructor() {
    globalThis.addEventListener?.("storage", (e: StorageEvent) => {
      if (e.key?.startsWith(prefix)) this.#tell(e.key.slice(prefix.length), false);
    });
  }

  /** Is told of every change: of which job, and whether it was made here. Returns what ends that. */
  listen(told: (job: string, own: boolean) => void): () => void {
    this.#told.add(told);
    return () => void this.#told.delete(told);
  }

  /** All ticks of a job, those taken away too. */
  all(job: string): Tick[] {
    return Object.entries(this.#read(job).all).map(([key, [on, at]]) => ({ key, on, at }));
  }

  /** Sets ticks, or takes them away. */
  set(job: string, keys: readonly string[], on: boolean): void {
    const { all, unsent } = this.#read(job);
    for (const key of keys) all[key] = [on, Math.max(Date.now(), (all[key]?.[1] ?? 0) + 1)];
    this.#write(job, { all, unsent: [...new Set([...unsent, ...keys])] }, true);
  }

  /** What the server has not got. */
  unsent(job: string): Tick[] {
    const { all, unsent } = this.#read(job);
    return unsent.flatMap((key) => (all[key] ? [{ key, on: all[key][0], at: all[key][1] }] : []));
  }

  /** Notes that some were sent, and takes over what the server answered but for what was changed meanwhile. */
  answered(job: string, sent: readonly Tick[], answer: readonly Tick[]): void {
    const { all, unsent } = this.#read(job);
    const still = unsent.filter((key) => !sent.some((t) => t.key === key && t.at === all[key]?.[1]));
    const before = JSON.stringify(all);
    for (const { key, on, at } of answer) if (!still.includes(key)) all[key] = [on, at];
    if (still.length < unsent.length || JSON.stringify(all) !== before) this.#write(job, { all, unsent: still }, false);
  }

  #read(job: string): Written {
    try {
      return written(JSON.parse(localStorage.getItem(prefix + job) ?? "null")) ?? this.#held.get(job) ?? { all: {}, unsent: [] };
    } catch {
      return this.#held.get(job) ?? { all: {}, unsent: [] };
    }
  }

  #write(job: string, ticks: Written, own: boolean): void {
    try {
      localStorage.setItem(prefix + job, JSON.stringify(ticks));
    } catch {
      this.#held.set(job, ticks); // private windows may refuse; then it lasts as long as the window
    }
    this.#tell(job, own);
  }

  #tell(job: string, own: boolean): void {
    for (const told of this.#told) told(job, own);
  }
}

const prefix = "firstdrop.ticks.";

/** Reads what was kept. A list of keys is how ticks were kept when they stayed on their device. */
function written(kept: unknown): Written | null {
  if (Array.isArray(kept)) {
    const keys = kept.filter((k): k is string => typeof k === "string");
    return { all: Object.fromEntries(keys.map((k) => [k, [true, 1]])), unsent: keys };
  }
  const { all, unsent } = (kept ?? {}) as Partial<Written>;
  return all && unsent ? { all, unsent } : null;
}

export const tickShelf = new TickShelf();
