import type { Job, Length } from "../planner/job";
import type { UnitSystem } from "../settings.svelte";

// How a hand places things on a drawing: in whole millimetres, or in sixteenths of an
// inch, so that what it comes to stand on can be written exactly. What is typed never
// passes here: it stays as typed. Lengths are millimetres.

type Units = Job["units"];

const inch = 25.4;

/** The system that a job's unit of bare numbers belongs to. */
export function systemOf(units: Units): UnitSystem {
  return units === "in" || units === "ft" || units === "yd" ? "imperial" : "metric";
}

/** The steps of an arrow key, and of one with Shift or of a page key. */
export function steps(system: UnitSystem): { fine: number; coarse: number } {
  return system === "imperial" ? { fine: inch / 16, coarse: inch / 2 } : { fine: 1, coarse: 10 };
}

/** The coarsest step that is not seen at a scale of so many millimetres to the pixel. */
export function stepAt(per: number, system: UnitSystem): number {
  const all = system === "imperial" ? [inch / 16, inch / 8, inch / 4, inch / 2, inch] : [1, 2, 5, 10, 20];
  return all.findLast((s) => s <= per) ?? all[0]!;
}

/** The nearest multiple of a step. */
export function stepped(mm: number, step: number): number {
  return Math.round(mm / step) * step;
}

/** A length for the eye, as the planner's texts have it: 2232 mm, 7' 3 7/8". */
export function sizeText(mm: number, system: UnitSystem): string {
  return system === "imperial" ? feetAndInches(Math.round(mm / (inch / 16))) : `${Math.round(mm)} mm`;
}

/**
 * A length for the job document: a bare number where its units are exact for whole
 * millimetres or sixteenths of an inch, otherwise with its own units.
 */
export function written(mm: number, units: Units, system = systemOf(units)): Length {
  const fine = Math.round(mm / steps(system).fine);
  if (system === "imperial") return units === "in" ? fine / 16 : sizeText(mm, system);
  if (units === "mm") return fine;
  if (units === "cm") return fine / 10;
  return units === "m" ? fine / 1000 : sizeText(mm, system);
}

function feetAndInches(sixteenths: number): string {
  const all = Math.abs(sixteenths);
  const feet = Math.floor(all / 192);
  const inches = [Math.floor((all % 192) / 16) || "", fraction(all % 16)].filter(Boolean).join(" ");
  const parts = [feet ? `${feet}'` : "", inches || !feet ? `${inches || 0}"` : ""];
  return (sixteenths < 0 ? "-" : "") + parts.filter(Boolean).join(" ");
}

/** Sixteenths at their shortest: 3/8; none as nothing. */
function fraction(part: number): string {
  let of = 16;
  if (part === 0) return "";
  for (; part % 2 === 0; part /= 2) of /= 2;
  return `${part}/${of}`;
}
