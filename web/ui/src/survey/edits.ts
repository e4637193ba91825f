import type { Corner, Fitting, Hang, Job, Length, Opening, Wall } from "../planner/job";
import { systemOf, written } from "../parts/hand";

// Edits of the room that touch more than one place. Each works on a copy of the job.

/** Calls back for every place of a job that names a wall, a corner's "A|B" as both its names. */
function eachName(job: Job, change: (name: string) => string): void {
  const one = (name: string | number) => change(String(name));
  const both = (corner: string) => corner.split("|").map(one).join("|");
  for (const d of job.room.diagonals ?? []) [d.from, d.to] = [both(d.from), both(d.to)];
  for (const h of job.hang ?? []) {
    if (h.walls) h.walls = h.walls.map(one);
    if (h.hung) h.hung = h.hung.map(one);
    if (h.start) h.start.wall = one(h.start.wall);
    if (h.kill?.wall !== undefined) h.kill.wall = one(h.kill.wall);
    if (h.kill?.corner) h.kill.corner = both(h.kill.corner);
    if (h.new_drop) h.new_drop = h.new_drop.map(both);
    if (h.carry) h.carry = h.carry.map(both);
    for (const k of h.keep_off ?? []) k.wall = one(k.wall);
  }
}

/** Gives a wall another name, wherever the job speaks of it. A name that another wall has is left for the planner to refuse. */
export function renameWall(job: Job, index: number, name: string): void {
  const wall = job.room.walls[index];
  if (!wall) return;
  const old = String(wall.name);
  const taken = job.room.walls.some((w, i) => i !== index && (String(w.name) === old || String(w.name) === name));
  wall.name = name;
  if (!taken) eachName(job, (n) => (n === old ? name : n));
}

/** The first of the given names that no wall has. */
export function freeName(job: Job, name: (letter: string) => string): string {
  const taken = new Set(job.room.walls.map((w) => String(w.name)));
  for (let i = 0; ; i++) {
    const letter = i < 26 ? String.fromCharCode(65 + i) : String(i + 1);
    if (!taken.has(name(letter))) return name(letter);
  }
}

/** Puts a wall behind another, as wide as a metre, or a yard. */
export function addWall(job: Job, after: number, name: string): void {
  job.room.walls.splice(after + 1, 0, { name, width: written(systemOf(job.units) === "imperial" ? 914.4 : 1000, job.units) });
}

/** Takes a wall away, and with it what is decided about it. */
export function removeWall(job: Job, index: number): void {
  const [wall] = job.room.walls.splice(index, 1);
  if (!wall) return;
  const name = String(wall.name);
  const speaks = (corner: string) => corner.split("|").includes(name);
  if (job.room.diagonals) job.room.diagonals = job.room.diagonals.filter((d) => !speaks(d.from) && !speaks(d.to));
  for (const h of job.hang ?? []) forget(h, name, speaks);
}

function forget(h: Hang, name: string, speaks: (corner: string) => boolean): void {
  const other = (n: string | number) => String(n) !== name;
  if (h.walls) h.walls = h.walls.filter(other);
  if (h.hung) h.hung = h.hung.filter(other);
  if (h.start && !other(h.start.wall)) delete h.start;
  if (h.kill && ((h.kill.wall !== undefined && !other(h.kill.wall)) || (h.kill.corner && speaks(h.kill.corner)))) delete h.kill;
  if (h.new_drop) h.new_drop = h.new_drop.filter((c) => !speaks(c));
  if (h.carry) h.carry = h.carry.filter((c) => !speaks(c));
  if (h.keep_off) h.keep_off = h.keep_off.filter((k) => other(k.wall));
}

// Sizes to begin with (common practice), to be measured over: width, height, sill.
const usual: Record<Opening["kind"], [width: number, height: number, sill: number | null]> = {
  door: [830, 2030, null],
  window: [1200, 1200, 900],
  arch: [1000, 2100, null],
  fireplace: [1100, 1000, null],
  furniture: [1000, 2000, null],
  panel: [1000, 600, 1000],
};

/** An opening in the middle of a wall of so many millimetres, kept narrower than the wall. */
export function newOpening(kind: Opening["kind"], name: string, wallWidth: number, units: Job["units"]): Opening {
  const [wide, height, sill] = usual[kind];
  const width = Math.min(wide, Math.max(wallWidth * 0.6, 100));
  return {
    name,
    kind,
    left: written((wallWidth - width) / 2, units),
    width: written(width, units),
    ...(sill !== null && { sill: written(sill, units) }),
    height: written(height, units),
  };
}

// Middle height and size of a fitting to begin with (common practice).
const plates: Record<Fitting["kind"], [middle: number, width: number, height: number]> = {
  socket: [450, 146, 86],
  switch: [1200, 86, 86],
  light: [1800, 100, 100],
  radiator: [450, 1000, 600],
  bracket: [1800, 60, 60],
  vent: [2200, 230, 150],
};

export function newFitting(kind: Fitting["kind"], name: string, wallWidth: number, units: Job["units"]): Fitting {
  const [middle, width, height] = plates[kind];
  return {
    name,
    kind,
    at: [written(wallWidth / 2, units), written(middle, units)],
    size: [written(Math.min(width, wallWidth * 0.8), units), written(height, units)],
  };
}

/** A wall's openings or fittings, made where there are none. */
export function listOf<K extends "openings" | "fittings">(wall: Wall, kind: K): NonNullable<Wall[K]> {
  return (wall[kind] ??= [] as Wall[K])!;
}

/** A rectangle on a wall, in millimetres: left edge from the wall's left end, sill over the datum. */
export interface Box {
  left: number;
  sill: number;
  width: number;
  height: number;
}

/**
 * Puts an opening where a box is. Only the sides that moved are written, so that what was
 * typed elsewhere stays as typed. An outline moves as a whole.
 */
export function placeOpening(o: Opening, before: Box, after: Box, units: Job["units"], outline: readonly (readonly [number, number])[]): void {
  const moved = (k: keyof Box) => Math.abs(before[k] - after[k]) > 1e-6;
  if (o.outline) {
    const [dx, dy] = [after.left - before.left, after.sill - before.sill];
    o.outline = outline.map(([x, y]) => [written(x + dx, units), written(y + dy, units)]);
    return;
  }
  if (moved("left")) o.left = written(after.left, units);
  if (moved("width")) o.width = written(after.width, units);
  if (moved("height")) o.height = written(after.height, units);
  if (moved("sill")) o.sill = written(after.sill, units);
}

/** What a corner says, taken apart. */
export interface CornerParts {
  kind: "inside" | "outside";
  angle: Length | undefined;
  left: Length | undefined; // lean of the wall on the left
  right: Length | undefined;
  sight: Wall["sight"];
}

export function cornerParts(corner: Corner | undefined): CornerParts {
  if (typeof corner === "string") {
    const [, kind, angle] = /^\s*(inside|outside)?\s*(.*?)\s*$/.exec(corner)!;
    return { kind: kind === "outside" ? "outside" : "inside", angle: angle || undefined, left: undefined, right: undefined, sight: undefined };
  }
  return { kind: corner?.kind ?? "inside", angle: corner?.angle, left: corner?.lean?.left, right: corner?.lean?.right, sight: corner?.sight };
}

/** A corner as short as it can be said; undefined for a square inside one. */
export function cornerOf(p: CornerParts): Corner | undefined {
  const lean = { ...(p.left !== undefined && { left: p.left }), ...(p.right !== undefined && { right: p.right }) };
  const leans = Object.keys(lean).length > 0;
  if (!leans && !p.sight && p.angle === undefined) return p.kind === "inside" ? undefined : "outside";
  return {
    kind: p.kind,
    ...(p.angle !== undefined && { angle: p.angle }),
    ...(leans && { lean }),
    ...(p.sight && { sight: p.sight }),
  };
}

// Keys under which a figure is no length, but in lists of things with keys of their own.
const counts = new Set(["firstdrop", "soak_minutes", "pack", "available", "tolerance", "weights", "angle", "name", "note", "batch", "paper", "wall", "walls", "hung", "middle", "match", "price"]);

/**
 * Takes another unit for bare numbers. Those that are there get the old one written
 * behind them: what was measured stays what it was.
 */
export function setUnits(job: Job, units: NonNullable<Job["units"]>): void {
  const old = job.units;
  if (old && old !== units) Object.assign(job, withUnit(job, old));
  job.units = units;
}

function withUnit<T>(v: T, unit: string): T {
  if (Array.isArray(v)) return v.map((x) => bare(x, unit)) as T;
  if (typeof v !== "object" || v === null) return v;
  return Object.fromEntries(Object.entries(v).map(([k, x]) => [k, counts.has(k) && !things(x) ? x : bare(x, unit)])) as T;
}

const things = (v: unknown) => Array.isArray(v) && v.some((x) => typeof x === "object");

function bare(v: unknown, unit: string): unknown {
  if (typeof v === "number" && v !== 0) return `${v} ${unit}`;
  if (typeof v === "string" && /^[-+]?\d[\d\s./,½¼¾]*$/.test(v.trim())) return `${v.trim()} ${unit}`;
  return withUnit(v, unit);
}
