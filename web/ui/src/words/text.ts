// A message is a text with {holes}, or one text for each plural form of {n}.

export type Plural = { one: string; other: string };
export type Message = string | Plural;

type HolesIn<S> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | HolesIn<Rest> : never;

/** The names of the holes in a message. */
export type Holes<M> = M extends Plural ? "n" | HolesIn<M["one"]> | HolesIn<M["other"]> : HolesIn<M>;

/** What fills the holes. Numbers are written as the language does. */
export type Filling<M> = { [hole in Holes<M>]: hole extends "n" ? number : string | number };

const pluralRules = new Map<string, Intl.PluralRules>();
const numberFormats = new Map<string, Intl.NumberFormat>();

function cached<T>(map: Map<string, T>, locale: string, make: () => T): T {
  const known = map.get(locale) ?? make();
  map.set(locale, known);
  return known;
}

export function formatNumber(locale: string, n: number): string {
  return cached(numberFormats, locale, () => new Intl.NumberFormat(locale)).format(n);
}

/** A message in words, its holes filled. A hole without filling stays, to be seen in tests. */
export function fill(locale: string, message: Message, filling: Record<string, string | number> = {}): string {
  const text = typeof message === "string" ? message : plural(locale, message, Number(filling["n"]));
  return text.replace(/\{(\w+)\}/g, (hole, name: string) => {
    const v = filling[name];
    if (v === undefined) return hole;
    return typeof v === "number" ? formatNumber(locale, v) : v;
  });
}

function plural(locale: string, message: Plural, n: number): string {
  const form = cached(pluralRules, locale, () => new Intl.PluralRules(locale)).select(n);
  return form === "one" ? message.one : message.other;
}
