import { bounds } from "../parts/shapes";
import type { Hang, Job, Name } from "../planner/job";
import type { Band, Wall } from "../planner/protocol";

// Places at which a start is worth offering: a drop or a seam on the middle of a wall,
// of an opening, or between two windows. The job names what it is centred on, so that
// it stays centred when sizes change; the places here are for the drawing alone.

export interface Offer {
  x: number; // of the start line along the band, in millimetres
  of: "drop" | "seam";
  /** What it is centred on, by name; empty: the wall. */
  what: string[];
  start: NonNullable<Hang["start"]>;
}

/** The offers of one wall, for paper of a width. */
export function offers(job: Job, wall: Wall, width: number): Offer[] {
  const things = [{ middle: ["wall"] as Name[], what: [] as string[], x: wall.x + wall.width / 2 }, ...named(job, wall)];
  return things.flatMap(({ middle, what, x }) =>
    (["drop", "seam"] as const).map((of) => ({ x: of === "drop" ? x - width / 2 : x, of, what, start: { wall: wall.name, middle, of } })),
  );
}

function named(job: Job, wall: Wall) {
  const there = job.room.walls[wall.index]?.openings ?? [];
  const found = (wall.openings ?? []).flatMap((o) => {
    const name = there[o.index]?.name;
    const b = bounds(o.outline);
    return name === undefined ? [] : [{ middle: [name], what: [String(name)], x: (b.left + b.right) / 2, kind: o.kind }];
  });
  const windows = found.filter((f) => f.kind === "window");
  const [left, right] = windows;
  if (windows.length !== 2 || !left || !right) return found;
  return [...found, { middle: [...left.middle, ...right.middle], what: [...left.what, ...right.what], x: (left.x + right.x) / 2 }];
}

/** The offer nearest to a place and no farther than so much; undefined: none. */
export function nearest(all: readonly Offer[], x: number, within: number): Offer | undefined {
  const close = all.filter((o) => Math.abs(o.x - x) <= within);
  return close.reduce<Offer | undefined>((n, o) => (!n || Math.abs(o.x - x) < Math.abs(n.x - x) ? o : n), undefined);
}

/** The wall of a band on which a place stands: the last one at its end. */
export function wallAt(band: Band, x: number): Wall {
  return band.walls.find((w) => x < w.x + w.width) ?? band.walls.at(-1)!;
}
