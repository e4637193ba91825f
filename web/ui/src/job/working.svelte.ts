import type { Progress } from "../planner/planner";

/** What the planner has been working on for longer than a second. */
class Working {
  on = $state.raw<Progress | null>(null);
}

export const working = new Working();
