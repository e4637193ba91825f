import { tickShelf, type TickShelf } from "../device/ticks";
import type { Cutting } from "../planner/protocol";

// What has been cut and hung is ticked off: a plan is one thing, how far somebody has come
// with it another. A tick belongs to a piece of a length on a roll; when the plan changes
// and the piece is no longer there, so is its tick, and that is said.

export type Stage = "cut" | "hung";

/** One piece in the list, in the order of cutting. */
export interface Line {
  key: string;
  paper: string;
  roll: number;
  rollName: string | undefined;
  piece: string;
  drop: number;
  wall: string;
  run: string;
  length: string;
  text: string; // of its cut
}

/** The pieces as they are cut, roll by roll, by the first order of cuts of each. */
export function lines(cutting: Cutting): Line[] {
  return cutting.papers.flatMap((paper) =>
    paper.rolls.flatMap((roll) =>
      (roll.orders[0]?.cuts ?? []).flatMap((cut) =>
        cut.pieces.map((p) => ({
          key: [paper.name, roll.name ?? roll.number, p.name, p.length].join("|"),
          paper: paper.name,
          roll: roll.number,
          rollName: roll.name,
          piece: p.name,
          drop: p.drop,
          wall: p.wall,
          run: p.run,
          length: p.length,
          text: cut.text,
        })),
      ),
    ),
  );
}

/** The same pieces as they are hung: run by run, drop by drop. */
export function hanging(all: readonly Line[]): Line[] {
  const runs = [...new Set(all.map((l) => l.run))];
  return [...all].sort((a, b) => runs.indexOf(a.run) - runs.indexOf(b.run) || a.drop - b.drop);
}

export class Ticks {
  #on = $state.raw(new Set<string>());

  constructor(
    private readonly job: string,
    private readonly shelf: TickShelf = tickShelf,
  ) {
    this.#read();
  }

  /** Follows what other tabs and devices tick; returns what ends that. */
  follow(): () => void {
    return this.shelf.listen((job) => job === this.job && this.#read());
  }

  has(stage: Stage, key: string): boolean {
    return this.#on.has(`${stage}|${key}`);
  }

  set(stage: Stage, key: string, on: boolean): void {
    this.shelf.set(this.job, [`${stage}|${key}`], on);
    this.#read();
  }

  count(stage: Stage, all: readonly Line[]): number {
    return all.filter((l) => this.has(stage, l.key)).length;
  }

  /** Ticks on pieces that the plan no longer has. */
  lost(all: readonly Line[]): number {
    return this.#lost(all).length;
  }

  /** Takes away the ticks that belong to none of the pieces. */
  tidy(all: readonly Line[]): void {
    this.shelf.set(this.job, this.#lost(all), false);
    this.#read();
  }

  #lost(all: readonly Line[]): string[] {
    const known = new Set(all.map((l) => l.key));
    return [...this.#on].filter((t) => !known.has(t.slice(t.indexOf("|") + 1)));
  }

  #read(): void {
    this.#on = new Set(this.shelf.all(this.job).flatMap((t) => (t.on ? [t.key] : [])));
  }
}
