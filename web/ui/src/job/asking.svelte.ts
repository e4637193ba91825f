import { planner } from "../planners";
import type { Answer, Kind, Request } from "../planner/protocol";
import { settings } from "../settings.svelte";
import type { Work } from "./work.svelte";

/**
 * A question about the job that takes a while, and its answer. The answer stays when
 * the job changes, and is then known to be of an earlier state.
 */
export class Asking<T> {
  answer = $state.raw<T | null>(null);
  /** The version of the job that the answer is of. */
  version = $state(0);
  working = $state(false);
  failure = $state("");

  #kind: Kind;
  #take: (answer: Answer) => T | undefined;
  #turn = 0;

  constructor(kind: Kind, take: (answer: Answer) => T | undefined) {
    this.#kind = kind;
    this.#take = take;
  }

  async ask(work: Work, more: Partial<Request> = {}): Promise<void> {
    const turn = ++this.#turn;
    this.working = true;
    this.failure = "";
    try {
      const answer = await planner.ask({ kind: this.#kind, version: work.version, job: work.job, words: settings.words, ...more });
      if (answer && turn === this.#turn) this.#show(answer);
    } catch (error) {
      if (turn === this.#turn) this.failure = error instanceof Error ? error.message : String(error);
    } finally {
      if (turn === this.#turn) this.working = false;
    }
  }

  #show(answer: Answer): void {
    this.failure = answer.failure ?? answer.problems?.[0]?.text ?? "";
    this.answer = this.#take(answer) ?? null;
    this.version = answer.version;
  }

  /** Forgets question and answer. */
  drop(): void {
    this.#turn++;
    this.answer = null;
    this.working = false;
    this.failure = "";
  }
}
