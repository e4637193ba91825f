// Ticks on lists: what of a plan is cut, and what hangs. They are no part of the job, since
// how far somebody has come changes no plan; they are kept beside it.
//
// Clocks of devices may be hours apart, so none is asked which of two words on a tick is the
// later: each word has a turn, one above the greatest that its device has seen of that tick.
// What has heard of another word stands above it. Where two have not heard of each other the
// greater turn counts, and of one turn the tick that is set, so that nothing done is lost;
// every device, and the server, come to the same.

export interface Tick {
  key: string;
  on: boolean;
  turn: number; // from 1
}

/** Whether one word on a tick counts before another on the same. */
export function above(a: Tick, b: Tick): boolean {
  return a.turn > b.turn || (a.turn === b.turn && a.on && !b.on);
}

interface Written {
  /** Ticks kept by earlier releases have the time in place of the turn, and count on from it. */
  all: Record<string, [on: boolean, turn: number]>;
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
    return Object.entries(this.#read(job).all).map(([key, [on, turn]]) => ({ key, on, turn }));
  }

  /** Sets ticks, or takes them away. */
  set(job: string, keys: readonly string[], on: boolean): void {
    const { all, unsent } = this.#read(job);
    for (const key of keys) all[key] = [on, (all[key]?.[1] ?? 0) + 1];
    this.#write(job, { all, unsent: [...new Set([...unsent, ...keys])] }, true);
  }

  /** What the server has not got. */
  unsent(job: string): Tick[] {
    const { all, unsent } = this.#read(job);
    return unsent.flatMap((key) => (all[key] ? [{ key, on: all[key][0], turn: all[key][1] }] : []));
  }

  /**
   * Notes that some were sent, and takes over what counts before what is here. What counts before
   * the answer is sent again: it was changed meanwhile, or the server's backup was brought back.
   */
  answered(job: string, sent: readonly Tick[], answer: readonly Tick[]): void {
    const { all, unsent } = this.#read(job);
    const before = JSON.stringify([all, unsent]);
    const still = new Set(unsent.filter((key) => !sent.some((t) => t.key === key && t.turn === all[key]?.[1])));
    for (const theirs of answer) {
      const { key, on, turn } = theirs;
      const own = all[key] && { key, on: all[key][0], turn: all[key][1] };
      if (!own || above(theirs, own)) all[key] = [on, turn];
      if (own && above(own, theirs)) still.add(key);
      else still.delete(key);
    }
    if (JSON.stringify([all, [...still]]) !== before) this.#write(job, { all, unsent: [...still] }, false);
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
