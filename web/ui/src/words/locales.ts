/** The languages of the screen, as in the sheets. */
export const locales = ["en-GB", "en-US", "de", "fr"] as const;
export type Locale = (typeof locales)[number];

/** Each in its own words. */
export const localeNames: Record<Locale, string> = {
  "en-GB": "English (Britain)",
  "en-US": "English (America)",
  de: "Deutsch",
  fr: "Français",
};
