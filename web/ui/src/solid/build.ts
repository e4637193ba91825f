import {
  BufferAttribute,
  BufferGeometry,
  Color,
  FrontSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  RepeatWrapping,
  SRGBColorSpace,
  Shape,
  ShapeGeometry,
  TextureLoader,
  CanvasTexture,
  type Material,
  type Texture,
  Vector2,
} from "three";
import { bounds } from "../parts/shapes";
import type { Band, Edge, PaperSummary, Part, Plan, Point, Survey, Wall } from "../planner/protocol";
import { inRoom, inwards, ofDesign, outlines, type Place } from "./place";

// The papered room as meshes. Walls face inwards alone: whoever looks from outside sees
// through the near ones. There are no lamps; each wall is shaded by the way it faces.

export interface Built {
  group: Group;
  middle: Place;
  reach: number;
  /** Seams and the kill seam, to be shown or hidden. */
  seams: Group;
  dispose: () => void;
}

export interface Look {
  bare: string;
  glass: string;
  wood: string;
  floor: string;
  line: string;
  kill: string;
}

export async function build(survey: Survey, plan: Plan | null, pictures: (paper: string) => string | undefined, look: Look): Promise<Built> {
  const kept: { dispose: () => void }[] = [];
  const keep = <T extends { dispose: () => void }>(thing: T): T => (kept.push(thing), thing);
  const group = new Group();
  const seams = new Group();
  for (const [r, band] of survey.runs.entries()) {
    const run = plan?.runs[r];
    const paper = plan?.papers.find((p) => p.name === band.paper);
    const texture = run && paper && keep(await design(paper, pictures(paper.name)));
    for (const [w, wall] of band.walls.entries()) {
      const edge = survey.floor.walls[wall.index];
      if (!edge) continue;
      const place = (p: Point) => inRoom(wall, edge, p);
      const shade = shaded(edge);
      group.add(flat([wall.outline], holes(wall), place, keep(plain(look.bare, shade, true)), keep));
      for (const o of wall.openings ?? []) group.add(flat([o.outline], [], place, keep(plain(o.kind === "window" ? look.glass : look.wood, shade)), keep));
      group.add(lined(frames(wall), place, keep(new LineBasicMaterial({ color: look.line })), keep));
      if (!run || !paper || !texture) continue;
      const parts = run.drops.flatMap((d) => d.parts).filter((p) => p.wall === w);
      if (parts.length) group.add(papered(parts, paper, texture, place, shade, keep));
      const on = run.seams.filter((s) => s.wall === wall.name).flatMap((s) => clear(wall, s));
      seams.add(lined(on, (p) => lifted(place(p), edge), keep(new LineBasicMaterial({ color: look.line, transparent: true, opacity: 0.55 })), keep));
      if (run.kill && run.kill.wall === wall.name) seams.add(lined(clear(wall, run.kill), (p) => lifted(place(p), edge), keep(new LineBasicMaterial({ color: look.kill })), keep));
    }
  }
  group.add(seams);
  if (survey.floor.closed) group.add(floorOf(survey, look, keep));
  return { group, seams, ...extent(survey), dispose: () => kept.forEach((k) => k.dispose()) };
}

type Keep = <T extends { dispose: () => void }>(thing: T) => T;

/** Lighter or darker by the way it faces, as if light came over one's left shoulder. */
function shaded(edge: Edge): number {
  const [x, z] = inwards(edge);
  return 0.9 + 0.06 * x + 0.06 * z;
}

function plain(color: string, shade: number, behind = false): MeshBasicMaterial {
  return new MeshBasicMaterial({ color: new Color(color).multiplyScalar(shade), side: FrontSide, polygonOffset: behind, polygonOffsetFactor: 2, polygonOffsetUnits: 2 });
}

function holes(wall: Wall): Point[][] {
  return (wall.openings ?? []).map((o) => o.outline);
}

function shape(outline: readonly Point[], inner: readonly (readonly Point[])[]): Shape {
  const s = new Shape(outline.map(([x, y]) => new Vector2(x, y)));
  s.holes = inner.map((h) => new Shape(h.map(([x, y]) => new Vector2(x, y))));
  return s;
}

/** Moves a flat geometry from the band into the room. */
function stood(g: ShapeGeometry, place: (p: Point) => Place): ShapeGeometry {
  const at = g.getAttribute("position") as BufferAttribute;
  for (let i = 0; i < at.count; i++) at.setXYZ(i, ...place([at.getX(i), at.getY(i)]));
  at.needsUpdate = true;
  return g;
}

function flat(outer: Point[][], inner: Point[][], place: (p: Point) => Place, material: Material, keep: Keep): Mesh {
  return new Mesh(keep(stood(new ShapeGeometry(outer.map((o) => shape(o, inner))), place)), material);
}

function papered(parts: Part[], paper: PaperSummary, texture: Texture, place: (p: Point) => Place, shade: number, keep: Keep): Group {
  const material = keep(new MeshBasicMaterial({ map: texture, color: new Color(shade, shade, shade) }));
  const group = new Group();
  const repeat = paper.repeat || paper.width;
  for (const part of parts) {
    const g = keep(new ShapeGeometry(outlines(part.rings).map((o) => shape(o.outline, o.holes))));
    const at = g.getAttribute("position") as BufferAttribute;
    const uv = g.getAttribute("uv") as BufferAttribute;
    for (let i = 0; i < at.count; i++) {
      const [u, v] = ofDesign(part.tile, paper.width, repeat, [at.getX(i), at.getY(i)]);
      uv.setXY(i, u, -v);
    }
    group.add(new Mesh(stood(g, place), material));
  }
  return group;
}

function lined(lines: [Point, Point][], place: (p: Point) => Place, material: LineBasicMaterial, keep: Keep): LineSegments {
  const g = keep(new BufferGeometry());
  g.setAttribute("position", new BufferAttribute(new Float32Array(lines.flatMap(([a, b]) => [...place(a), ...place(b)])), 3));
  return new LineSegments(g, material);
}

/** A little off the wall, so that it is not hidden in it. */
function lifted([x, y, z]: Place, edge: Edge): Place {
  const [nx, nz] = inwards(edge);
  return [x + nx * 0.004, y, z + nz * 0.004];
}

/** What of an upright line on a wall stands on no opening. */
function clear(wall: Wall, s: { x: number; low: number; high: number; lean?: number }): [Point, Point][] {
  const at = (y: number): Point => [s.x + ((s.lean ?? 0) * (y - s.low)) / Math.max(s.high - s.low, 1), y];
  const over = holes(wall).map(bounds).filter((b) => b.left < s.x && s.x < b.right).sort((a, b) => a.low - b.low);
  const stretches: [Point, Point][] = [];
  let from = s.low;
  for (const b of over) {
    if (b.low > from) stretches.push([at(from), at(Math.min(b.low, s.high))]);
    from = Math.max(from, b.high);
  }
  if (from < s.high) stretches.push([at(from), at(s.high)]);
  return stretches;
}

/** The edges of a wall and of its openings, and the bars of its windows. */
function frames(wall: Wall): [Point, Point][] {
  const bars = (wall.openings ?? []).filter((o) => o.kind === "window").flatMap((o): [Point, Point][] => {
    const b = bounds(o.outline);
    const [x, y] = [(b.left + b.right) / 2, (b.low + b.high) / 2];
    return [[[x, b.low], [x, b.high]], [[b.left, y], [b.right, y]]];
  });
  return bars.concat(edges(wall));
}

function edges(wall: Wall): [Point, Point][] {
  return [wall.outline, ...holes(wall)].flatMap((ring) => ring.map((p, i): [Point, Point] => [p, ring[(i + 1) % ring.length]!]));
}

function floorOf(survey: Survey, look: Look, keep: Keep): Mesh {
  const corners = survey.floor.walls.map((w): Point => w.from);
  const low = Math.min(...survey.runs.flatMap((b) => b.walls.flatMap((w) => w.outline.map((p) => p[1]))), 0);
  return flat([corners], [], ([x, y]) => [x / 1000, low / 1000, -y / 1000], keep(plain(look.floor, 1)), keep);
}

function extent(survey: Survey): { middle: Place; reach: number } {
  const b = bounds(survey.floor.walls.flatMap((w) => [w.from, w.to]));
  const high = Math.max(...survey.runs.map((r: Band) => r.high), 1);
  const middle: Place = [(b.left + b.right) / 2000, high / 2000, -(b.low + b.high) / 2000];
  return { middle, reach: Math.hypot(b.right - b.left, b.high - b.low, high) / 2000 };
}

/** The design of one width and one repeat: the picture, or a plain net where there is none. */
async function design(paper: PaperSummary, picture: string | undefined): Promise<Texture> {
  const texture = picture ? await new TextureLoader().loadAsync(picture) : new CanvasTexture(net(paper));
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
}

function net(paper: PaperSummary): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  const [w, h] = [256, Math.round((256 * (paper.repeat || paper.width)) / paper.width)];
  canvas.width = w;
  canvas.height = h;
  const pen = canvas.getContext("2d")!;
  pen.fillStyle = "#f1ebdd";
  pen.fillRect(0, 0, w, h);
  if (!paper.repeat) return canvas;
  pen.strokeStyle = "#c9bda4";
  pen.lineWidth = 4;
  for (const x of [0, w / 2, w]) {
    pen.beginPath();
    pen.moveTo(x, h * 0.2);
    pen.lineTo(x + w * 0.22, h / 2);
    pen.lineTo(x, h * 0.8);
    pen.lineTo(x - w * 0.22, h / 2);
    pen.closePath();
    pen.stroke();
  }
  return canvas;
}
