import type { Job, Length } from "../planner/job";

// From a place on the drawing to a length in the job. What is typed never passes
// here: it stays as typed.

type Units = Job["units"];

const inch = 25.4;

/** The finest steps in which a hand places things, in millimetres, from fine to coarse. */
function steps(units: Units): number[] {
  return imperial(units) ? [inch / 16, inch / 8, inch / 4, inch / 2, inch] : [1, 2, 5, 10, 20];
}

export function imperial(units: Units): boolean {
  return units === "in" || units === "ft" || units === "yd";
}

/** The coarsest step that is not seen at a scale of so many millimetres to the pixel. */
export function step(units: Units, per: number): number {
  const all = steps(units);
  return all.findLast((s) => s <= per) ?? all[0]!;
}

/** What an arrow key moves by: 1 mm or 1/16 in, and ten or eight of them with Shift. */
export function keyStep(units: Units, far: boolean): number {
  if (imperial(units)) return far ? inch / 2 : inch / 16;
  return far ? 10 : 1;
}

/** The nearest multiple of a step. */
export function snapped(mm: number, step: number): number {
  return Math.round(mm / step) * step;
}

/**
 * A drawn length as the job writes it: a bare number where the job's units are exact for
 * it, otherwise with a unit. Metric ones are whole millimetres, others whole 1/16 inches.
 */
export function written(mm: number, units: Units): Length {
  if (units === "in") return Math.round((mm / inch) * 16) / 16;
  if (units === "ft" || units === "yd") return `${Math.round((mm / inch) * 16) / 16} in`;
  const whole = Math.round(mm);
  if (units === "mm") return whole;
  if (units === "cm") return whole / 10;
  if (units === "m") return whole / 1000;
  return `${whole} mm`;
}
