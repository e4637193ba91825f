import { settings } from "../settings.svelte";
import { enGB } from "./en-GB";
import { enUS } from "./en-US";
import type { Locale } from "./locales";
import { fill, formatNumber, type Filling, type Message, type Holes } from "./text";

type Messages = typeof enGB;
export type Key = keyof Messages;

type Catalogue = Record<Key, Message>;

/** Every message of each language that is here. American English says only what it says differently. */
const catalogues: Partial<Record<Locale, Catalogue>> & { "en-GB": Catalogue } = { "en-GB": enGB, "en-US": { ...enGB, ...enUS } };

/** The others are fetched when they are spoken. */
const fetched: Partial<Record<Locale, () => Promise<Catalogue>>> = {
  de: async () => (await import("./de")).de,
  fr: async () => (await import("./fr")).fr,
};

/** Fetches the words of a language, unless they are here; whether they are. To be called before it is spoken. */
export async function learn(locale: Locale): Promise<boolean> {
  const words = fetched[locale];
  try {
    if (words && !catalogues[locale]) catalogues[locale] = await words();
  } catch {
    // no network, and the service worker has not come to keep it yet
  }
  return catalogues[locale] !== undefined;
}

/** The keys that say a member of the document. */
type PlaceKey = Extract<Key, `key.${string}`>;

/** Whether there is a word for a member of the document. */
export function isKey(key: string): key is PlaceKey {
  return key.startsWith("key.") && key in enGB;
}

type Rest<K extends Key> = [Holes<Messages[K]>] extends [never] ? [] : [filling: Filling<Messages[K]>];

/**
 * A message in the language of this device. Read in a template, it changes with the
 * language at once.
 */
export function say<K extends Key>(key: K, ...[filling]: Rest<K>): string {
  return fill(settings.locale, (catalogues[settings.locale] ?? catalogues["en-GB"])[key], filling as Record<string, string | number> | undefined);
}

/** A whole number, as the language writes it. */
export function number(n: number): string {
  return formatNumber(settings.locale, n);
}

/** A point in time: today by the clock, otherwise with its date. */
export function when(at: number): string {
  const then = new Date(at);
  const today = then.toDateString() === new Date().toDateString();
  const form: Intl.DateTimeFormatOptions = today
    ? { hour: "numeric", minute: "2-digit" }
    : { day: "numeric", month: "short", year: "numeric", hour: "numeric", minute: "2-digit" };
  return new Intl.DateTimeFormat(settings.locale, form).format(then);
}
