// Written by web/wasm/types from the Go package screen/printing. Do not edit: run make types.
import type * as job from "./job";
import type * as protocol from "./protocol";

/** PrintRequest asks for one thing to be read or made. */
export interface PrintRequest {
  /** given back in the answer */
  id: number;
  kind: PrintKind;
  /** the job document; all kinds but read */
  job?: job.Job;
  words: protocol.Words;
  /** read: of the file */
  name?: string;
  /** read: what stands in it */
  text?: string;
  /**
   * Sheets are those wanted: survey, order, hanging, cutting, rolls, labels, steps,
   * record; none: all.
   */
  sheets?: string[];
  /** sheets: A4, A3, letter or tabloid; none: that of the language */
  paper_size?: string;
  /** sheets: n for elevations at 1:n; 0: the largest that fits */
  scale?: number;
  /** sheets: plain, 3x8, 3x7 or 3x10; none: plain */
  labels?: string;
  /** sheets, wall: of the papers' designs */
  pictures?: Picture[];
  /** wall: which of the plan's runs */
  run?: number;
  /** wall: which of the run's walls */
  wall?: number;
  /** cutting-list, roll-map: of which paper, by its name */
  paper?: string;
  /** cutting-list: roll by roll, not in hanging order */
  as_cut?: boolean;
}

/** Picture is a picture that a job names. */
export interface Picture {
  /** as the job has it */
  name: string;
  /** PNG, JPEG or GIF, in base64 */
  data: string;
}

/** PrintKind is what is asked for. */
export type PrintKind =
  /** Job: a file in YAML or JSON, with the user's own notation, even where Problems are told */
  | "read"
  /** File: the job for people */
  | "yaml"
  /** File: the sheets for the wall, as PDF */
  | "sheets"
  /** File: the lists, for spreadsheets */
  | "workbook"
  /** File: one wall, as SVG */
  | "wall"
  /** File: the pieces of one paper, as CSV */
  | "cutting-list"
  /** File: the cuts of its rolls, as CSV */
  | "roll-map";

/**
 * PrintAnswer is what one request is told. Problems say why a job cannot be
 * printed, or what is wrong with one that was read.
 */
export interface PrintAnswer {
  id: number;
  kind: PrintKind;
  problems?: Fault[];
  /** why it cannot be done, in words */
  failure?: string;
  job?: job.Job;
  file?: File;
}

/** Fault is a problem of a job, and where it stands in the file it was read from. */
export interface Fault {
  /** as of a problem on the screen */
  path: string;
  /** from 1 */
  line?: number;
  column?: number;
  text: string;
}

/** File is something to be saved. */
export interface File {
  /** "sheets.pdf" */
  name: string;
  /** its media type */
  type: string;
  data: string;
}
