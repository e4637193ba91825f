import { at, isObject, put, same, type Json, type Path } from "./json";

// Changes say how one document becomes another, and back:
//
//   before ──apply──► after          set      path: one value in place of another
//   before ◄──revert── after         splice   path, at: entries of a list by others
//
// The differences of two documents are found place by place. Lists of different
// lengths are compared from both ends, so that a wall put in the middle is one new
// wall, and not a change of all behind it.

export type Change =
  | { path: Path; before?: Json; after?: Json } // a missing side: not there
  | { path: Path; at: number; removed: Json[]; added: Json[] };

/** What must be done to the first document to get the second, place by place. */
export function differences(before: Json | undefined, after: Json | undefined, path: Path = []): Change[] {
  if (same(before, after)) return [];
  if (isObject(before) && isObject(after)) {
    const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
    return [...keys].flatMap((key) => differences(before[key], after[key], [...path, key]));
  }
  if (Array.isArray(before) && Array.isArray(after)) return listDifferences(before, after, path);
  return [set(path, before, after)];
}

function set(path: Path, before: Json | undefined, after: Json | undefined): Change {
  return { path, ...(before !== undefined && { before }), ...(after !== undefined && { after }) };
}

function listDifferences(before: Json[], after: Json[], path: Path): Change[] {
  if (before.length === after.length) return before.flatMap((v, i) => differences(v, after[i], [...path, i]));
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && same(before[head], after[head])) head++;
  let tail = 0;
  while (tail < most - head && same(before[before.length - 1 - tail], after[after.length - 1 - tail])) tail++;
  const removed = before.slice(head, before.length - tail);
  return [{ path, at: head, removed, added: after.slice(head, after.length - tail) }];
}

/** The document with the changes made. */
export function apply<T extends Json>(doc: T, changes: readonly Change[]): T {
  return changes.reduce<Json>((d, c) => ("at" in c ? splice(d, c, c.removed, c.added) : put(d, c.path, c.after)), doc) as T;
}

/** The document with the changes taken back. */
export function revert<T extends Json>(doc: T, changes: readonly Change[]): T {
  return changes.reduceRight<Json>((d, c) => ("at" in c ? splice(d, c, c.added, c.removed) : put(d, c.path, c.before)), doc) as T;
}

function splice(doc: Json, c: { path: Path; at: number }, away: Json[], there: Json[]): Json {
  const list = at(doc, c.path);
  if (!Array.isArray(list)) throw new Error("a list has gone from the document");
  return put(doc, c.path, list.toSpliced(c.at, away.length, ...there));
}
