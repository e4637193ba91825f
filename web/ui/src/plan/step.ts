import type { Job, Length } from "../planner/job";
import type { UnitSystem } from "../settings.svelte";

// How a hand moves along a wall: in whole millimetres, or in sixteenths of an inch. What
// it comes to stand on is written into the job as people write it, so that it is exact.

const sixteenth = 25.4 / 16; // millimetres

/** The steps of an arrow key, and of one with Shift or of a page key, in millimetres. */
export function steps(units: UnitSystem): { fine: number; coarse: number } {
  return units === "imperial" ? { fine: sixteenth, coarse: 8 * sixteenth } : { fine: 1, coarse: 10 };
}

/** The nearest place on which a hand may come to stand. */
export function stepped(mm: number, units: UnitSystem): number {
  const { fine } = steps(units);
  return Math.round(mm / fine) * fine;
}

/** A length in words: 2232 mm, 87 7/8 in. */
export function written(mm: number, units: UnitSystem): string {
  const n = Math.round(mm / steps(units).fine);
  return units === "imperial" ? `${inches(n)} in` : `${n} mm`;
}

/** The same for the job document, as short as people write it. */
export function typed(mm: number, units: UnitSystem, job: Job["units"]): Length {
  return units === "metric" && job === "mm" ? Math.round(mm) : written(mm, units);
}

function inches(sixteenths: number): string {
  const sign = sixteenths < 0 ? "-" : "";
  let part = Math.abs(sixteenths) % 16;
  const whole = (Math.abs(sixteenths) - part) / 16;
  if (part === 0) return `${sign}${whole}`;
  let of = 16;
  for (; part % 2 === 0; part /= 2) of /= 2;
  return `${sign}${whole ? `${whole} ` : ""}${part}/${of}`;
}
