import { expect, test } from "vitest";
import type { Job } from "../planner/job";
import { choose, cornerRule, fix, fixed, hangPanels, hangWidths, setCornerRule } from "./hang";

const bare = (): Job => ({ firstdrop: 1, room: { closed: true, walls: [] }, papers: [{ name: "P", width: 530, roll: "10 m", match: "free" }] });

test("what a job fixes is put where it has no entry, and taken away again", () => {
  const job = bare();
  fix(job, 0, "start", undefined);
  expect(job.hang).toBeUndefined();
  fix(job, 0, "start", { wall: "A", edge: 100 });
  expect(job.hang).toEqual([{ paper: "P", start: { wall: "A", edge: 100 } }]);
  expect(fixed(job, 0)).toEqual(["start"]);
  fix(job, 0, "start", undefined);
  expect(fixed(job, 0)).toEqual([]);
});

test("a plan that is chosen leaves the rest of the entry as it is", () => {
  const job = bare();
  job.hang = [{ paper: "P", from: 900, carry: ["A|B"] }];
  choose(job, [{ hang: 0, set: { kill: { corner: "D|A" }, carry: null as never } }]);
  expect(job.hang).toEqual([{ paper: "P", from: 900, kill: { corner: "D|A" } }]);
});

test("a corner is carried round, or begins anew, or neither", () => {
  const job = bare();
  setCornerRule(job, 0, "A|B", "carry");
  expect(cornerRule(job, 0, "A|B")).toBe("carry");
  setCornerRule(job, 0, "B|C", "new_drop");
  setCornerRule(job, 0, "A|B", "new_drop");
  expect(job.hang![0]).toEqual({ paper: "P", new_drop: ["B|C", "A|B"] });
  setCornerRule(job, 0, "A|B", "free");
  setCornerRule(job, 0, "B|C", "free");
  expect(job.hang![0]).toEqual({ paper: "P" });
});

test("equal panels leave nothing fixed, and full widths again nothing of the panels", () => {
  const job = bare();
  job.hang = [{ paper: "P", start: { wall: "A", edge: 0 }, set_to: [{ wall: "A", to: "ceiling" }], hung: ["A"], from: 900 }];
  hangPanels(job, 0);
  expect(job.hang).toEqual([{ paper: "P", from: 900, panels: "equal" }]);
  job.hang[0]!.trim = 30;
  hangWidths(job, 0);
  expect(job.hang).toEqual([{ paper: "P", from: 900 }]);
});
