import type { Edge, Point, Wall } from "../planner/protocol";

// From places on an unrolled wall to places in the room, in metres:
//
//	y up   the wall's height          seen from above, as the floor plan has it,
//	│                                 its y (away from the reader) is −z
//	└── x
//   ╱
//	z towards the reader

export type Place = [x: number, y: number, z: number];

/** The place in the room of a point of a wall, given along its band. */
export function inRoom(wall: Wall, edge: Edge, [x, height]: Point): Place {
  const along = wall.width > 0 ? (x - wall.x) / wall.width : 0;
  const px = edge.from[0] + (edge.to[0] - edge.from[0]) * along;
  const py = edge.from[1] + (edge.to[1] - edge.from[1]) * along;
  return [px / 1000, height / 1000, -py / 1000];
}

/** The direction into the room, square to a wall, as x and z; of length 1. */
export function inwards(edge: Edge): [x: number, z: number] {
  const dx = edge.to[0] - edge.from[0];
  const dy = edge.to[1] - edge.from[1];
  const long = Math.hypot(dx, dy) || 1;
  return [dy / long, dx / long];
}

/** The place of the design, as parts of its width and of its repeat downwards, that shows at a point of the band. */
export function ofDesign(tile: readonly [number, number, number, number, number, number], width: number, repeat: number, [x, y]: Point): [u: number, v: number] {
  const [a, b, c, d, e, f] = tile;
  const det = a * d - b * c;
  const dx = x - e;
  const dy = y - f;
  return [(d * dx - c * dy) / det / width, (a * dy - b * dx) / det / repeat];
}

/** Rings by the even-odd rule, as outlines with the holes that lie in each. */
export function outlines(rings: readonly Point[][]): { outline: Point[]; holes: Point[][] }[] {
  const depth = rings.map((r, i) => rings.filter((other, k) => k !== i && within(r[0]!, other)).length);
  const outer = rings.map((ring, i) => ({ ring, i })).filter(({ i }) => depth[i]! % 2 === 0);
  return outer.map(({ ring, i }) => ({
    outline: ring,
    holes: rings.filter((hole, k) => depth[k] === depth[i]! + 1 && within(hole[0]!, ring)),
  }));
}

/** Whether a point lies in a ring. */
export function within([x, y]: Point, ring: readonly Point[]): boolean {
  let inside = false;
  ring.forEach(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) inside = !inside;
  });
  return inside;
}
