import type { Progress } from "../planner/planner";

/** How far the planner and the printer are, where that is known. */
class Known {
  planned = $state.raw<Progress | null>(null);
  printed = $state<number | undefined>(undefined); // from 0 to 1
}

export const progress = new Known();
