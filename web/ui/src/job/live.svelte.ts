import type { Job } from "../planner/job";
import type { Answer, Finding, Plan, Problem, Survey, Words } from "../planner/protocol";
import { parsePath, pathText, same, type Json } from "../document/json";
import type { Planner } from "../planner/planner";

/**
 * What the planner says of the job on the screen, as it is edited. While a job cannot
 * be planned the last plan stays, and is marked as stale: a drawing that vanishes under
 * a half-typed figure helps nobody.
 */
export class Live {
  survey = $state.raw<Survey | null>(null);
  plan = $state.raw<Plan | null>(null);
  problems = $state.raw<Problem[]>([]);
  /** The plan is of an earlier state of the job. */
  stale = $state(false);
  working = $state(false);
  failure = $state("");

  /** The version of the job that the plan is of. */
  planned = $state(0);

  #planner: Planner;
  #latest = 0;
  #shown = 0;

  constructor(planner: Planner) {
    this.#planner = planner;
  }

  /**
   * Asks for the survey and the plan of a state of the job. Answers are shown in the
   * order of the questions, so that a drawing follows while a newer one is being asked.
   */
  async ask(job: Job, version: number, words: Words): Promise<void> {
    const turn = ++this.#latest;
    this.working = true;
    try {
      const answer = await this.#planner.ask({ kind: "plan", version, job, words });
      if (answer && turn > this.#shown) this.#show(answer, turn);
    } catch (error) {
      if (turn === this.#latest) this.failure = error instanceof Error ? error.message : String(error);
    } finally {
      if (turn === this.#latest) this.working = false;
    }
  }

  #show(answer: Answer, turn: number): void {
    this.#shown = turn;
    this.failure = answer.failure ?? "";
    this.problems = answer.problems ?? [];
    // A room that is as it was need not be drawn anew.
    if (answer.survey && !same(answer.survey as unknown as Json, this.survey as unknown as Json)) this.survey = answer.survey;
    if (answer.plan) {
      this.plan = answer.plan;
      this.planned = answer.version;
    }
    this.stale = !answer.plan;
  }

  /** What is wrong at a place in the document, or within it; undefined: nothing. */
  problem(...path: (string | number)[]): string | undefined {
    const at = pathText(path);
    return this.problems.find((p) => p.path === at || p.path.startsWith(at + ".") || p.path.startsWith(at + "["))?.text;
  }

  /** How many problems lie under one of the document's first keys. */
  problemsUnder(...keys: string[]): number {
    return this.problems.filter((p) => keys.includes(String(parsePath(p.path)[0] ?? ""))).length;
  }

  /** The findings of one run, those of the whole room among them. */
  findings(run: number): Finding[] {
    const all = this.plan && !this.stale ? this.plan.findings : (this.survey?.findings ?? []);
    return all.filter((f) => f.run === run || f.run < 0);
  }
}
