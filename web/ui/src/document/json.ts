// Plain JSON, as a job document is made of, and places in it.

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** A place in a document: keys of objects and indices of lists, from the root. */
export type Path = readonly (string | number)[];

/** Whether two values say the same. The order of an object's keys says nothing. */
export function same(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((v, i) => same(v, b[i]));
  if (!isObject(a) || !isObject(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((k) => k in b && same(a[k], b[k]));
}

export function isObject(v: Json | undefined): v is { [key: string]: Json } {
  return typeof v === "object" && v !== null && !Array.isArray(v);
}

/** A copy that shares nothing with the value. */
export function copy<T>(v: T): T {
  if (Array.isArray(v)) return v.map(copy) as T;
  if (typeof v !== "object" || v === null) return v;
  return Object.fromEntries(Object.entries(v).map(([k, x]) => [k, copy(x)])) as T;
}

/** What stands at a place; undefined where nothing does. */
export function at(doc: Json | undefined, path: Path): Json | undefined {
  return path.reduce<Json | undefined>((v, key) => {
    if (Array.isArray(v)) return typeof key === "number" ? v[key] : undefined;
    return isObject(v) ? v[key] : undefined;
  }, doc);
}

/** The document with another value at a place; undefined takes an object's key away. */
export function put(doc: Json, path: Path, value: Json | undefined): Json {
  const [key, ...rest] = path;
  if (key === undefined) {
    if (value === undefined) throw new Error("a document cannot be taken away from itself");
    return value;
  }
  if (Array.isArray(doc) && typeof key === "number") {
    return doc.with(key, put(doc[key] ?? null, rest, value));
  }
  if (!isObject(doc)) throw new Error(`nothing can stand at ${pathText(path)}`);
  const inner = rest.length ? put(doc[key] ?? null, rest, value) : value;
  if (inner !== undefined) return { ...doc, [key]: inner };
  const { [key]: _, ...others } = doc;
  return others;
}

/** A place as planner and problems write it: room.walls[2].width */
export function pathText(path: Path): string {
  return path.reduce<string>((s, k) => (typeof k === "number" ? `${s}[${k}]` : s ? `${s}.${k}` : k), "");
}

/** The place that such a text names. */
export function parsePath(text: string): Path {
  return [...text.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map((m) => (m[1] === undefined ? m[0] : Number(m[1])));
}
