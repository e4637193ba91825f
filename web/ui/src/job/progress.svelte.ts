import type { Kind } from "../planner/protocol";
import type { Far } from "../planner/worker";
import { say } from "../words";

/** How far the planner and the printer are, where that is known. */
class Known {
  planned = $state.raw<Partial<Record<Kind, Far>>>({}); // by what is asked
  printed = $state<number | undefined>(undefined); // from 0 to 1

  /** Notes how far the work on a question is; null: it is over. */
  tell(kind: Kind, far: Far | null): void {
    const { [kind]: _, ...others } = this.planned;
    this.planned = far ? { ...others, [kind]: far } : others;
  }
}

/** The part of the work that is under way, in words; empty where it is not known. */
export function inWords({ what, done, of }: Far): string {
  return what ? say(`progress.${what}`, { done, of }) : "";
}

export const progress = new Known();
