import { written } from "../parts/hand";
import type { Corner, Job, Wall } from "../planner/job";
import type { Point } from "../planner/protocol";

// A floor plan drawn corner by corner becomes walls. Seen from above, the walls of a
// room follow each other clockwise, since one turns to the right inside it:
//
//        ──► A ──►          a right turn is an inside corner (180° − turn),
//       ▲         │         a left turn an outside one (180° + turn)
//       D         B
//       │         ▼
//        ◄── C ◄──
//
// The drawing gives sizes to begin with. Each is measured over afterwards.

/** Twice the area within, positive when the corners follow each other clockwise (y upwards). */
function clockwise(corners: readonly Point[]): number {
  return corners.reduce((sum, [x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length]!;
    return sum + (u - x) * (v + y);
  }, 0);
}

/** Whether two straight lines from a to b and from c to d cross or touch. */
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  const within = (p: Point, q: Point, r: Point) =>
    Math.min(p[0], q[0]) <= r[0] && r[0] <= Math.max(p[0], q[0]) && Math.min(p[1], q[1]) <= r[1] && r[1] <= Math.max(p[1], q[1]);
  const s = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)] as const;
  if (s[0] !== s[1] && s[2] !== s[3]) return true;
  return (s[0] === 0 && within(a, b, c)) || (s[1] === 0 && within(a, b, d)) || (s[2] === 0 && within(c, d, a)) || (s[3] === 0 && within(c, d, b));
}

/** Whether a wall from the last corner to a point keeps clear of all walls drawn. */
export function clear(corners: readonly Point[], to: Point, closing = false): boolean {
  const last = corners.at(-1);
  if (!last) return true;
  if (last[0] === to[0] && last[1] === to[1]) return false;
  for (let i = closing ? 1 : 0; i + 2 < corners.length; i++) {
    if (cross(corners[i]!, corners[i + 1]!, last, to)) return false;
  }
  const before = corners.at(-2);
  return !before || !back(before, last, to);
}

/** Whether one comes back along the wall one has just drawn. */
function back(a: Point, b: Point, c: Point): boolean {
  const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  return turn === 0 && (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;
}

/** A point drawn near level or upright of the last corner stands exactly so. */
export function squared(last: Point | undefined, to: Point, grid: number): Point {
  const on = (v: number) => Math.round(v / grid) * grid;
  const p: Point = [on(to[0]), on(to[1])];
  if (!last) return p;
  const dx = Math.abs(p[0] - last[0]);
  const dy = Math.abs(p[1] - last[1]);
  const near = Math.tan((12 * Math.PI) / 180);
  if (dy <= dx * near) p[1] = last[1];
  else if (dx <= dy * near) p[0] = last[0];
  return p;
}

export const distance = (a: Point, b: Point) => Math.hypot(b[0] - a[0], b[1] - a[1]);

/**
 * The walls of a drawn floor, in the order of a job. Corners that are square say only
 * whether they are inside or outside; others say their angle, to a tenth of a degree.
 */
export function wallsOf(drawn: readonly Point[], closed: boolean, units: Job["units"], name: (i: number) => string): Wall[] {
  const corners = closed && clockwise(drawn) < 0 ? drawn.toReversed() : [...drawn];
  const count = closed ? corners.length : corners.length - 1;
  const at = (i: number) => corners[i % corners.length]!;
  return Array.from({ length: count }, (_, i) => {
    const wall: Wall = { name: name(i), width: written(distance(at(i), at(i + 1)), units) };
    const corner = closed || i + 1 < count ? cornerAt(at(i), at(i + 1), at(i + 2)) : undefined;
    return corner === undefined ? wall : { ...wall, corner };
  });
}

/** The corner in the middle of three; undefined for a square inside one, which is what walls have anyway. */
function cornerAt(a: Point, b: Point, c: Point): Corner | undefined {
  const turn = Math.atan2(b[1] - a[1], b[0] - a[0]) - Math.atan2(c[1] - b[1], c[0] - b[0]);
  const right = Math.round(((turn * 180) / Math.PI) * 10) / 10; // to the right positive
  const angle = (((180 - right) % 360) + 360) % 360;
  if (Math.abs(angle - 90) < 0.05) return undefined;
  if (Math.abs(angle - 270) < 0.05) return "outside";
  return `${angle < 180 ? "inside" : "outside"} ${Math.round(angle * 10) / 10}`;
}
