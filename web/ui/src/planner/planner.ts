import { Ended, Mate, type Place, type Shop } from "./crew";
import type { Answer, Kind, Request } from "./protocol";
import type { Far } from "./worker";

/** A question to the planner; it numbers requests by itself. */
export type Question = Omit<Request, "id">;

/** What the live worker answers; all else is deep work. */
const live: ReadonlySet<Kind> = new Set<Kind>(["survey", "plan"]);

interface Waiting {
  question: Question;
  resolve(answer: Answer | null): void;
  reject(error: Error): void;
}

/**
 * The planner, in two workers: a live one, which answers drags and uses again what did
 * not change, and a deep one for whole searches, alternatives and simulations.
 *
 * A question is superseded by the next of its kind: then it resolves to null. In the
 * live worker the one that is being answered is finished all the same, since it takes
 * no longer than a worker takes to begin; of those that wait, only the latest is asked.
 * In the deep worker it is ended at once, and the worker begun anew.
 */
export class Planner {
  #live: Mate;
  #deep: Mate;
  #id = 0;
  #turn = new Map<Kind, number>();
  #queues = { live: new Map<Kind, Waiting>(), deep: new Map<Kind, Waiting>() };
  #busy: { live: Kind | null; deep: Kind | null } = { live: null, deep: null };
  /** Is told how far the work on a question is, where that is known, and null when it is over. */
  onprogress: ((kind: Kind, far: Far | null) => void) | null = null;

  constructor(place: Place, shop?: Shop) {
    this.#live = new Mate(place, shop);
    this.#deep = new Mate(place, shop);
  }

  /** Fetches and starts the live worker, so that the first question need not wait. */
  begin(): Promise<void> {
    return this.#live.begin();
  }

  /** Answers a question; null when a newer one of its kind has taken its place. */
  ask(question: Question): Promise<Answer | null> {
    const line = live.has(question.kind) ? "live" : "deep";
    const queue = this.#queues[line];
    queue.get(question.kind)?.resolve(null);
    queue.delete(question.kind);
    this.#turn.set(question.kind, (this.#turn.get(question.kind) ?? 0) + 1);
    const answer = new Promise<Answer | null>((resolve, reject) => queue.set(question.kind, { question, resolve, reject }));
    if (line === "deep" && this.#busy.deep === question.kind) this.#deep.end();
    void this.#work(line);
    return answer;
  }

  /** Drops the deep work of a kind, or all of it: those questions resolve to null. */
  drop(kind?: Kind): void {
    for (const [of, waiting] of this.#queues.deep) {
      if (kind && of !== kind) continue;
      waiting.resolve(null);
      this.#queues.deep.delete(of);
    }
    if (this.#busy.deep && (!kind || this.#busy.deep === kind)) this.#deep.end();
  }

  /** Answers what waits in a line, one after the other. */
  async #work(line: "live" | "deep"): Promise<void> {
    if (this.#busy[line]) return;
    const next = this.#queues[line].entries().next();
    if (next.done) return;
    const [kind, waiting] = next.value;
    this.#queues[line].delete(kind);
    this.#busy[line] = kind;
    let told = false;
    const mate = line === "live" ? this.#live : this.#deep;
    mate.onpart = (far) => {
      told = true;
      this.onprogress?.(kind, far);
    };
    const turn = this.#turn.get(kind);
    try {
      const answer = (await mate.ask({ ...waiting.question, id: ++this.#id })) as Answer;
      // A live answer that is late is still worth showing: it is told apart by its version.
      waiting.resolve(line === "deep" && turn !== this.#turn.get(kind) ? null : answer);
    } catch (error) {
      if (error instanceof Ended) waiting.resolve(null);
      else waiting.reject(error instanceof Error ? error : new Error(String(error)));
    } finally {
      if (told) this.onprogress?.(kind, null);
      this.#busy[line] = null;
      void this.#work(line);
    }
  }
}
