import { locales, type Locale } from "./words/locales";

export const themes = ["auto", "light", "dark", "sunlight"] as const;
export type Theme = (typeof themes)[number];
export const unitSystems = ["metric", "imperial"] as const;
export type UnitSystem = (typeof unitSystems)[number];

const key = "firstdrop.settings";

/** How this device speaks, measures and looks. Kept with each change. */
class Settings {
  locale = $state<Locale>("en-GB");
  units = $state<UnitSystem>("metric");
  theme = $state<Theme>("auto");

  constructor() {
    const kept = read();
    this.locale = one(locales, kept["locale"]) ?? preferred(navigator.languages);
    this.units = one(unitSystems, kept["units"]) ?? usual(this.locale);
    this.theme = one(themes, kept["theme"]) ?? "auto";
  }

  /** What the planner is told. */
  get words() {
    return { locale: this.locale, units: this.units };
  }

  /** Another language brings its usual units, until somebody chooses. */
  choose(change: { locale?: Locale; units?: UnitSystem; theme?: Theme }): void {
    Object.assign(this, change);
    try {
      localStorage.setItem(key, JSON.stringify({ locale: this.locale, units: this.units, theme: this.theme }));
    } catch {
      // private windows may refuse; then it lasts as long as the window
    }
  }
}

function read(): Record<string, unknown> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "{}");
    return typeof kept === "object" && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

function one<T extends string>(all: readonly T[], v: unknown): T | undefined {
  return all.find((a) => a === v);
}

/** The first of the wanted languages that there is. */
export function preferred(wanted: readonly string[]): Locale {
  for (const w of wanted) {
    const exact = one(locales, w);
    if (exact) return exact;
    const close = locales.find((l) => l.split("-")[0] === w.split("-")[0]);
    if (close) return close;
  }
  return "en-GB";
}

export function usual(locale: Locale): UnitSystem {
  return locale === "en-US" ? "imperial" : "metric";
}

export const settings = new Settings();
