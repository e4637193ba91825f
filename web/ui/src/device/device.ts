import type { Revision } from "../document/tree";
import type { Job } from "../planner/job";
import { openDatabase, result, transact } from "./database";

// What this device keeps. A save names the head that it was made from; another tab
// may have moved the head since, and then nothing is written over: both branches are
// kept, and the record names the one that lost its place as a conflict.

/** A job as this device keeps it. */
export interface Kept {
  id: string;
  name: string;
  made: number; // milliseconds since 1970
  changed: number;
  head: string; // the revision that is on the screen
  document: Job; // at the head
  conflicts: string[]; // heads of other branches that await a decision
  binned?: number; // when it was put into the bin
  erased?: number; // when it was deleted for good; a note of that stays
  note?: Note; // deleted: all that is left of it
  server?: Sent; // missing: never sent
  named?: string[]; // revisions of which the server has not got the name
}

/** What is known of a job that was deleted on this device. */
export interface Note {
  heard: boolean; // a server knows that it was deleted
  version?: number; // the last that there was
  again?: boolean; // a server had it again, and was told a second time
}

/** What the server has of a job, as far as this device knows. */
export interface Sent {
  version: number; // as the server counts
  revision: string; // the one of ours that says the same
  binned?: boolean;
}

/** A new head for a job. */
export interface Step {
  base: string; // the head that it was made from
  head: string;
  document: Job;
}

interface Stored extends Revision {
  job: string;
}

export class Device {
  #db: Promise<IDBDatabase>;

  constructor(db: Promise<IDBDatabase> = openDatabase()) {
    this.#db = db;
  }

  /** All jobs, those in the bin too, last changed first. Deleted ones are not among them. */
  async jobs(): Promise<Kept[]> {
    return (await this.records()).filter((k) => k.erased === undefined);
  }

  /** Every record that there is. */
  async records(): Promise<Kept[]> {
    const all = await transact(await this.#db, "readonly", (jobs) => result<Kept[]>(jobs.getAll()));
    return all.sort((a, b) => b.changed - a.changed);
  }

  async job(id: string): Promise<Kept | undefined> {
    return transact(await this.#db, "readonly", (jobs) => result<Kept | undefined>(jobs.get(id)));
  }

  async revisions(id: string): Promise<Revision[]> {
    return transact(await this.#db, "readonly", async (_, revisions) => {
      const stored: Stored[] = await result(revisions.index("job").getAll(id));
      return stored.map(({ job: _job, ...r }) => r);
    });
  }

  /** Keeps a new job with its first revision. */
  async add(kept: Kept, revisions: Revision[]): Promise<void> {
    await transact(await this.#db, "readwrite", async (jobs, store) => {
      await result(jobs.add(kept));
      for (const r of revisions) await result(store.put(stored(kept.id, r)));
    });
  }

  /**
   * Saves a new head of a job, and the revisions that led to it; undefined: the job has
   * been deleted. A head that another tab has put there meanwhile becomes a conflict.
   */
  async save(id: string, step: Step, revisions: readonly Revision[]): Promise<Kept | undefined> {
    return this.amend(
      id,
      (there) => {
        const overtaken = there.head !== step.base && there.head !== step.head;
        const conflicts = overtaken ? [...there.conflicts, there.head] : there.conflicts;
        return {
          ...there,
          ...named(step.document),
          changed: Date.now(),
          head: step.head,
          document: step.document,
          conflicts: conflicts.filter((c) => c !== step.head),
        };
      },
      revisions,
    );
  }

  /** Changes a job's record as it stands by now; undefined: there is none. */
  async amend(id: string, change: (kept: Kept) => Kept, revisions: readonly Revision[] = []): Promise<Kept | undefined> {
    return transact(await this.#db, "readwrite", async (jobs, store) => {
      const there = await result<Kept | undefined>(jobs.get(id));
      if (!there) return undefined;
      for (const r of revisions) await result(store.put(stored(id, r)));
      const next = change(there);
      await result(jobs.put(next));
      return next;
    });
  }

  /** Changes some revisions of a job as they stand by now, each by itself. */
  async revise(id: string, change: (r: Revision) => Revision, revisions: readonly string[]): Promise<void> {
    await transact(await this.#db, "readwrite", async (_, store) => {
      for (const key of revisions) {
        const there: Stored | undefined = await result(store.get([id, key]));
        if (there) await result(store.put({ ...there, ...change(there) }));
      }
    });
  }

  /** Takes a job and its history off this device for good. */
  async remove(id: string): Promise<void> {
    await transact(await this.#db, "readwrite", async (jobs, revisions) => {
      await result(jobs.delete(id));
      await forget(revisions, id);
    });
  }

  /** Takes a deleted job and its history off this device, but for a note that it was deleted. */
  async bury(id: string, note: Note): Promise<void> {
    await transact(await this.#db, "readwrite", async (jobs, revisions) => {
      const { erased = Date.now() } = (await result<Kept | undefined>(jobs.get(id))) ?? {};
      const document: Job = { firstdrop: 1, room: { closed: true, walls: [] }, papers: [] };
      await result(jobs.put({ id, name: "", made: erased, changed: erased, head: "", document, conflicts: [], erased, note } satisfies Kept));
      await forget(revisions, id);
    });
  }
}

async function forget(revisions: IDBObjectStore, job: string): Promise<void> {
  for (const key of await result(revisions.index("job").getAllKeys(job))) await result(revisions.delete(key));
}

function stored(job: string, r: Revision): Stored {
  return { ...r, job };
}

function named(document: Job): { name: string } {
  return { name: String(document.name ?? "") };
}
