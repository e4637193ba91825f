import type { Change } from "../document/change";
import { differences } from "../document/change";
import { at, isObject, type Json, type Path } from "../document/json";
import type { Job } from "../planner/job";
import { isKey, say } from "../words";

// Differences of documents in words: where, what it was, what it is.

export interface Difference {
  place: string;
  before: string;
  after: string;
}

/** The differences of two documents, place by place, in words. */
export function inWords(before: Job, after: Job): Difference[] {
  const [a, b] = [before as unknown as Json, after as unknown as Json];
  return differences(a, b).map((c) => difference(c, a, b));
}

function difference(c: Change, before: Json, after: Json): Difference {
  if (!("at" in c)) {
    return { place: place(c.path, before, after), before: value(c.before), after: value(c.after) };
  }
  return { place: place(c.path, before, after), before: list(c.removed), after: list(c.added) };
}

function list(items: Json[]): string {
  return items.length === 0 ? say("place.nothing") : items.map(value).join(", ");
}

/** "Wall A · left window · width": the things on the way by their names, the rest by what they are. */
export function place(path: Path, ...docs: Json[]): string {
  const words: string[] = [];
  path.forEach((key, i) => {
    if (typeof key === "number") words.splice(-1, 1, thing(path.slice(0, i + 1), docs));
    else if (!(key === "room" && i < path.length - 1)) words.push(keyWord(key));
  });
  return words.join(" · ");
}

const lists = ["walls", "openings", "fittings", "papers", "hang", "rolls"] as const;

/** An entry of a list: by its name, or by where it stands. */
function thing(path: Path, docs: Json[]): string {
  const key = String(path.at(-2));
  const n = Number(path.at(-1)) + 1;
  const entry = docs.map((d) => at(d, path)).find(isObject);
  const name = entry?.["name"] ?? entry?.["paper"] ?? entry?.["kind"];
  const known = lists.find((l) => l === key);
  if (known && name !== undefined) return say(`place.${known}`, { name: String(name) });
  return `${keyWord(key)} ${say("place.item", { n })}`;
}

/** A member of the document in words; its own name where there is none. */
export function keyWord(key: string): string {
  const known = `key.${key}`;
  return isKey(known) ? say(known) : key;
}

/** A value as people write it. */
export function value(v: Json | undefined): string {
  if (v === undefined || v === null) return say("place.nothing");
  if (typeof v === "boolean") return say(v ? "value.yes" : "value.no");
  if (Array.isArray(v)) return v.map(value).join(", ") || say("place.nothing");
  if (!isObject(v)) return String(v);
  const name = v["name"];
  if (name !== undefined) return String(name);
  return Object.entries(v)
    .map(([k, x]) => `${keyWord(k)} ${value(x)}`)
    .join(", ");
}
