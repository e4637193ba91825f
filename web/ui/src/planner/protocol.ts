// Written by web/wasm/types from the Go package screen. Do not edit: run make types.
import type * as job from "./job";

/** Cutting is what is cut from which roll, and what to buy. */
export interface Cutting {
  papers: PaperCutting[];
}

/** PaperCutting is the cutting of one paper. */
export interface PaperCutting {
  name: string;
  rolls: Roll[];
  /** what to buy, in words */
  order: string[];
  /** why so many: the proof, what exact cutting saves, the area estimate */
  why: string[];
  /** batch, goals, what is on trust */
  notes: string[];
  /** the same count by several roads, for a picture */
  counts: Count[];
}

/** Count is a number of rolls and how it is counted. */
export interface Count {
  label: string;
  rolls: number;
  /** the one that is planned */
  ours: boolean;
}

/**
 * Roll is what one roll gives, for one range of starts of its design. Where the
 * cutting depends on the start, there is more than one order of cuts.
 */
export interface Roll {
  number: number;
  name?: string;
  batch?: string;
  in_hand?: boolean;
  length: number;
  orders: Order[];
}

/** Order is one order of cuts. */
export interface Order {
  /** which starts it serves; empty: any */
  when?: string;
  cuts: Cut[];
  /** behind the last cut */
  left: number;
  /** the same in words, with what it can still patch */
  rest: string;
}

/** Cut is one cut off a roll. */
export interface Cut {
  from: number;
  to: number;
  /** one, or narrow ones side by side */
  pieces: Piece[];
  /** as in the cutting list: length, mark to look for, head or foot first */
  text: string;
  /** Marks are where the design begins anew within the cut; none without a repeat. */
  marks?: number[];
}

/** Piece is what a cut gives. */
export interface Piece {
  name: string;
  drop: number;
  wall: string;
  run: string;
  length: string;
}

/** Certainty is how sure a number of rolls is. */
export interface Certainty {
  papers: Curve[];
  /** what is simulated, in words, with sources */
  inputs: string[];
}

/** Curve is the chance of having enough, by number of rolls. */
export interface Curve {
  name: string;
  planned: number;
  points: Share[];
  text: string;
  /** why it cannot be said */
  refused?: string;
}

/** Share is the share of jobs for which so many rolls are enough. */
export interface Share {
  rolls: number;
  /** from 0 to 1 */
  chance: number;
}

/** Cliff is a change at which the count becomes another. */
export interface Cliff {
  paper: string;
  /** more; negative: saved */
  rolls: number;
  text: string;
}

/** Plan is a plan ready to be drawn. It passed the audit, or it would not be here. */
export interface Plan {
  runs: RunPlan[];
  papers: PaperSummary[];
  findings: Finding[];
  /** what to know first, in words: first line, kill seam, closing */
  lines: string[];
}

/** RunPlan is the layout of one run along its band ({@link Survey.runs}). */
export interface RunPlan {
  /** from left to right */
  drops: Drop[];
  seams: Seam[];
  plumbs: Line[];
  start: Start;
  /** Design is the place of the repeat that the first drop shows at the datum. */
  design: number;
  kill?: Seam;
  /**
   * Settled says that no start, kill seam or height on the grid is better; Untried,
   * why that is not known.
   */
  settled: boolean;
  untried?: string;
}

/** Start is where hanging begins. */
export interface Start {
  wall: string;
  /** of the first drop's left edge, from the wall's left end */
  edge: number;
  /** the same along the band */
  x: number;
  text: string;
  /** Fixed says that the job fixes it; otherwise the search has found it. */
  fixed: boolean;
}

/** Drop is one width of paper as it hangs. */
export interface Drop {
  /** in hanging order; 0: needs no paper */
  number: number;
  reversed?: boolean;
  parts: Part[];
  /** what a screen reader says: number, wall, from–to, length */
  label: string;
}

/** Part is what one sheet covers of one wall. */
export interface Part {
  /** index in the band's walls */
  wall: number;
  /**
   * Rings bound what is covered, as it will be trimmed: outer rings and holes, to
   * be filled by the even-odd rule.
   */
  rings: Point[][];
  /**
   * Tile takes a point of the design (x from the left edge of the width, y
   * downwards from the beginning of the repeat, in millimetres) to the band:
   * X = a·x + c·y + e, Y = b·x + d·y + f, as [a b c d e f].
   */
  tile: [number, number, number, number, number, number];
}

/** Seam is where two sheets meet. */
export interface Seam {
  /** butt, carried, turned, renewed, kill */
  kind: string;
  wall: string;
  /** along the band, at Low */
  x: number;
  low: number;
  high: number;
  /** how far it stands to the right of X at High */
  lean?: number;
  /** where it stands, measured from a named corner */
  text: string;
  /** empty where the design meets */
  misfit?: string;
}

/** Line is a plumb line to draw on the wall, or one that leans as its sheets are to. */
export interface Line {
  wall: string;
  /** along the band, at Low */
  x: number;
  low: number;
  high: number;
  /** how far it stands to the right of X at High */
  lean?: number;
  drop: number;
  text: string;
}

/** PaperSummary is what one paper comes to. */
export interface PaperSummary {
  name: string;
  /** of the design's tile */
  width: number;
  /** 0: none */
  repeat: number;
  /** as the job names it */
  picture?: string;
  drops: number;
  buy: number;
  bound: number;
  proven: boolean;
  /** "7 rolls to buy; fewer are impossible" */
  text: string;
  cost?: string;
}

/**
 * Choice is what an entry of a job's hang list must say so that a plan comes out
 * again: members to put in place of those that are there, as a job says them.
 */
export interface Choice {
  /** index in the list; 0 where a job has none, for its only paper */
  hang: number;
  /** members of the entry; null takes one away */
  set: { [K in keyof job.Hang]?: job.Hang[K] | null };
}

/**
 * Alternative is one of several plans to choose from; the first is the best on
 * the whole.
 */
export interface Alternative {
  /** in what it is the best, in words */
  title: string;
  /** what it saves or does better than the first */
  gains: string[];
  /** what it costs or does worse */
  losses: string[];
  choose: Choice[];
  plan: Plan;
}

/** Why compares what the user proposes with the plan of the job. */
export interface Why {
  /** the verdict, one sentence */
  text: string;
  gains: string[];
  losses: string[];
  choose: Choice[];
  /** as proposed */
  plan: Plan;
}

/** PaperTry is the room in one of the papers to compare. */
export interface PaperTry {
  name: string;
  problems?: Problem[];
  buy: number;
  cost?: string;
  text: string;
  /** the gravest findings, in words */
  looks: string[];
  plan?: Plan;
}

/**
 * Progress says how far the work on a question is: how much of the part that is under way
 * is done, and how much of the whole.
 */
export interface Progress {
  what: Counted;
  /** below Of */
  done: number;
  of: number;
  /**
   * Whole is how much of all that a question asks for is done, from 0 to below 1. Of one
   * question it never falls. It is a guess: no part knows beforehand how long it takes.
   */
  whole: number;
}

/** Counted is what the parts of some work are. */
export type Counted =
  /** of a run, tried */
  | "starts"
  /** compared; at most so many */
  | "choices"
  /** to set the walls, tried */
  | "ways"
  /** planned in full */
  | "layouts"
  /** simulated */
  | "jobs"
  /** looked at; at most so many */
  | "sizes"
  /** planned with */
  | "papers";

/** Request asks for one thing about one version of one job. */
export interface Request {
  /** given back in the answer */
  id: number;
  /** of the job as the screen counts it; given back */
  version: number;
  kind: Kind;
  /** the job document as JSON */
  job?: job.Job;
  words: Words;
  /** why: which run, counted from 0 */
  run?: number;
  /** why: "why not from here?", as a job says it */
  start?: NonNullable<job.Hang["start"]>;
  /** why: "why not here?", as a job says it */
  kill?: NonNullable<job.Hang["kill"]>;
  /** papers: those to compare in place of Paper, as a job says them */
  papers?: job.Paper[];
  /** papers: the name of the job's paper whose place they take */
  paper?: string;
  /** certainty: how many are simulated */
  jobs?: number;
  /** alternatives: at most so many */
  most?: number;
}

/** Words says in which words and units texts are wanted. */
export interface Words {
  /** "en-GB", "en-US", "de", "fr" */
  locale: string;
  /** "metric" or "imperial" */
  units: string;
}

/** Kind is what is asked for. */
export type Kind =
  /** Survey: the room, as far as it makes sense */
  | "survey"
  /** Survey and Plan */
  | "plan"
  /** Alternatives */
  | "alternatives"
  /** Why */
  | "why"
  /** Papers: the room in several papers */
  | "papers"
  /** Cutting: rolls, cuts, what to buy, why so many */
  | "cutting"
  /** Certainty */
  | "certainty"
  /** Cliffs */
  | "cliffs"
  /** Document: the plan for other programs */
  | "document";

/**
 * Answer is what one request is told. Problems say why a job cannot be planned;
 * then only what still makes sense is filled.
 */
export interface Answer {
  id: number;
  version: number;
  kind: Kind;
  problems?: Problem[];
  /** something that should not happen, in words */
  failure?: string;
  survey?: Survey;
  plan?: Plan;
  alternatives?: Alternative[];
  why?: Why;
  papers?: PaperTry[];
  cutting?: Cutting;
  certainty?: Certainty;
  cliffs?: Cliff[];
  /** Document is what the command line prints with --json. */
  document?: unknown;
}

/** Problem is one contradiction in a job, at the place in the document where it is. */
export interface Problem {
  /** "room.walls[2].width" */
  path: string;
  text: string;
}

/** Point is x and y in millimetres. */
export type Point = [number, number];

/** Survey is the room as measured: every run unrolled, and the floor seen from above. */
export interface Survey {
  runs: Band[];
  floor: Floor;
  /** questions about sizes, before anything is planned */
  findings: Finding[];
}

/** Floor is the floor plan, adjusted so that it closes where the room is closed. */
export interface Floor {
  closed: boolean;
  /** in the order of the job */
  walls: Edge[];
}

/**
 * Edge is one wall seen from above, from its left end to its right end as one
 * faces it from inside the room. y runs away from the reader.
 */
export interface Edge {
  wall: string;
  from: Point;
  to: Point;
  /** Width is in words; Sight is the job's word for who sees the wall. */
  width: string;
  sight?: string;
}

/** Band is one run of walls, unrolled from left to right. */
export interface Band {
  name: string;
  /** its entry in the job's hang; −1 where it cannot be told */
  hang: number;
  paper: string;
  closed: boolean;
  width: number;
  /** lowest point of all walls */
  low: number;
  /** highest */
  high: number;
  walls: Wall[];
}

/** Wall is one wall of a band. */
export interface Wall {
  name: string;
  /** in the job's room.walls */
  index: number;
  /** of its left end along the band */
  x: number;
  width: number;
  /** along the band */
  outline: Point[];
  openings?: Opening[];
  fittings?: Fitting[];
  /** at its right end; nil at the end of an open run */
  corner?: Corner;
  /** "4200 × 2440 mm" */
  sizes: string;
  keep_off?: Stretch[];
}

/** Stretch is a part of a wall on which the job lets no seam stand. */
export interface Stretch {
  /** in the keep_off of the band's entry of hang */
  index: number;
  /** along the band */
  from: number;
  to: number;
  /** from where to where on the wall, in words */
  label: string;
}

/** Opening is a door, a window, or anything else that keeps paper off the wall. */
export interface Opening {
  /** in the job's openings of the wall */
  index: number;
  name: string;
  /** as in the job */
  kind: string;
  outline: Point[];
  /** name and sizes, in words */
  label: string;
}

/** Fitting is a thing that is papered round or under. */
export interface Fitting {
  index: number;
  name: string;
  kind: string;
  /** its middle */
  at: Point;
  size: Point;
  label: string;
}

/** Corner is the fold between two walls. */
export interface Corner {
  /** "A|B" */
  name: string;
  /** "inside" or "outside" */
  kind: string;
  /** degrees through the room; 90 or 270 where not measured */
  angle: number;
  /**
   * Lean of the wall's right end and of the next wall's left end: how far the head
   * stands to the right of the foot.
   */
  lean: [number, number];
  /** "leans 6 mm to the right"; empty when plumb */
  text?: string;
}

/** Finding is something people must know. */
export interface Finding {
  /** as on the drawings and sheets; 0 for one without a place */
  number: number;
  code: string;
  severity: string;
  text: string;
  /** in words */
  place?: string;
  /** what the rule behind it asks, in words */
  rule?: string;
  /** where the rule comes from */
  source?: string;
  /** index of the band; −1: about the whole room */
  run: number;
  /** along the band */
  at?: Point;
  /** of what was measured, in the document */
  path?: string;
}
