import type { Job } from "../planner/job";
import { apply, revert, type Change } from "./change";
import type { Json } from "./json";

// Revisions of a job form a tree. Undoing goes to the parent, redoing to the child
// that was made last; an edit after undoing grows another branch. So nothing that
// was ever entered is lost, and a conflict is nothing but two branches:
//
//        ┌─ c ── d        undone, still in the history
//   a ── b
//        └─ e ── f        the head: what is on the screen

/** One edit of a job. */
export interface Revision {
  readonly id: string;
  readonly parent: string | null; // null: the job's beginning
  readonly at: number; // milliseconds since 1970
  readonly label: string; // what was done, in the words of whoever did it
  readonly changes: readonly Change[]; // from the parent
  readonly from?: "server" | "tab"; // somebody else's
  readonly name?: string; // given by people, to find it again
  readonly version?: number; // as the server counts what it shows; missing: the server has not got it
  readonly group?: string; // revisions in a row of one group are undone together: keys typed into one field
}

export class Tree {
  #byID = new Map<string, Revision>();
  #children = new Map<string, string[]>(); // in the order in which they were made

  constructor(revisions: Iterable<Revision> = []) {
    for (const r of [...revisions].sort((a, b) => a.at - b.at)) this.put(r);
  }

  /** The same tree as another object, for whoever watches it. */
  copy(): Tree {
    return new Tree(this.#byID.values());
  }

  /** Adds a revision, or puts it in place of the one with its id. */
  put(r: Revision): void {
    const known = this.#byID.has(r.id);
    this.#byID.set(r.id, r);
    if (known || r.parent === null) return;
    this.#children.set(r.parent, [...(this.#children.get(r.parent) ?? []), r.id]);
  }

  get(id: string): Revision | undefined {
    return this.#byID.get(id);
  }

  has(id: string): boolean {
    return this.#byID.has(id);
  }

  /** All revisions, newest first. */
  all(): Revision[] {
    return [...this.#byID.values()].sort((a, b) => b.at - a.at);
  }

  /** The child made last on this device; undefined for a revision without. */
  lastChild(id: string): Revision | undefined {
    const children = (this.#children.get(id) ?? []).map((c) => this.#byID.get(c)!);
    return children.findLast((r) => r.from === undefined);
  }

  childless(id: string): boolean {
    return !this.#children.has(id);
  }

  /** Where undoing leads from a revision; undefined: it is the beginning. */
  back(id: string): Revision | undefined {
    const from = this.#byID.get(id);
    const line = this.ancestry(id);
    return line.find((r, i) => i > 0 && !(from?.group !== undefined && r.group === from.group));
  }

  /** Where redoing leads from a revision; undefined: nothing was undone. */
  forth(id: string): Revision | undefined {
    let to = this.lastChild(id);
    for (let next = to; next && to?.group !== undefined && next.group === to.group; next = this.lastChild(next.id)) to = next;
    return to;
  }

  /** From a revision up to the beginning, the revision first. */
  ancestry(id: string): Revision[] {
    const line: Revision[] = [];
    for (let r = this.#byID.get(id); r; r = r.parent === null ? undefined : this.#byID.get(r.parent)) line.push(r);
    return line;
  }

  /** Revisions after one and up to another that grew from it, oldest first; null: it did not. */
  between(after: string, upTo: string): Revision[] | null {
    const line = this.ancestry(upTo);
    const end = line.findIndex((r) => r.id === after);
    return end < 0 ? null : line.slice(0, end).reverse();
  }

  /** The document at one revision, from the document at another. */
  documentAt(id: string, head: string, document: Job): Job {
    const up = this.ancestry(head);
    const down = this.ancestry(id);
    const common = up.find((r) => down.includes(r));
    if (!common) throw new Error("these revisions are not of one job");
    const back = up.slice(0, up.indexOf(common));
    const forth = down.slice(0, down.indexOf(common)).reverse();
    const base = back.reduce((d, r) => revert(d, r.changes), document as unknown as Json);
    return forth.reduce((d, r) => apply(d, r.changes), base) as unknown as Job;
  }
}

/** A name that no other revision or job has: a UUID of version 7 (RFC 9562), which begins with the time. */
export function newID(now = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let i = 0; i < 6; i++) bytes[i] = Math.floor(now / 256 ** (5 - i)) % 256;
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
