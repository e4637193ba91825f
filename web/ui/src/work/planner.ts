import type { Answer, Request } from "../planner/protocol";

/** Whoever answers what a screen asks. A question is superseded by the next of its kind. */
export interface Planner {
  /** Resolves to null when a newer question of the kind has taken its place. */
  ask(question: Omit<Request, "id">): Promise<Answer | null>;
}
