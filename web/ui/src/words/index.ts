import { settings } from "../settings.svelte";
import { de } from "./de";
import { enGB } from "./en-GB";
import { enUS } from "./en-US";
import { fr } from "./fr";
import type { Locale } from "./locales";
import { fill, formatNumber, type Filling, type Message, type Holes } from "./text";

type Messages = typeof enGB;
export type Key = keyof Messages;

/** Every message of each language. American English says only what it says differently. */
export const catalogues: Record<Locale, Record<Key, Message>> = {
  "en-GB": enGB,
  "en-US": { ...enGB, ...enUS },
  de,
  fr,
};

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
  return fill(settings.locale, catalogues[settings.locale][key], filling as Record<string, string | number> | undefined);
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
