import type { Point } from "../planner/protocol";

// From places on a band (heights upwards) to SVG (y downwards).

/** A closed path round rings, counted from a place along the band. */
export function ringPath(rings: readonly (readonly Point[])[], from = 0): string {
  return rings.map((ring) => `M${ring.map(([x, y]) => `${beyond(x, from)} ${-y}`).join("L")}Z`).join("");
}

/** How far one place lies beyond another, in whole nanometres: what is only moved has the same shape. */
function beyond(x: number, from: number): number {
  return Math.round((x - from) * 1e6) / 1e6;
}

/** A line from low to high that may lean. */
export function linePath({ x, low, high, lean = 0 }: { x: number; low: number; high: number; lean?: number }): string {
  return `M${x} ${-low}L${x + lean} ${-high}`;
}

/** The transformation of a design's tile, y turned over, as a DOMMatrix takes it. */
export function tileMatrix([a, b, c, d, e, f]: readonly [number, number, number, number, number, number]): number[] {
  return [a, -b, c, -d, e, -f];
}

/** The rectangle round points: left, bottom, right, top, heights upwards. */
export function bounds(points: readonly Point[]): { left: number; low: number; right: number; high: number } {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { left: Math.min(...xs), low: Math.min(...ys), right: Math.max(...xs), high: Math.max(...ys) };
}
