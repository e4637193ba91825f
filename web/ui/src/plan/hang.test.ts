import { expect, test } from "vitest";
import type { Job } from "../planner/job";
import type { Band } from "../planner/protocol";
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

/** A band of walls in a row, each with the kind of corner at its right end. */
const band = (closed: boolean, ...walls: [string, ("inside" | "outside")?][]) =>
  ({ hang: 0, closed, walls: walls.map(([name, kind]) => ({ name, ...(kind && { corner: { kind } }) })) }) as unknown as Band;

test("equal panels take each stretch between inside corners by itself, and what was fixed goes", () => {
  const job = bare();
  job.hang = [{ paper: "P", start: { wall: "A", edge: 0 }, from: 900 }];
  hangPanels(job, band(false, ["A", "inside"], ["B", "outside"], ["C", "outside"], ["D", "inside"], ["E"]));
  expect(job.hang).toEqual([["A"], ["B", "C", "D"], ["E"]].map((walls) => ({ paper: "P", from: 900, panels: "equal", walls })));
});

test("in a closed room a stretch may go on from the last wall to the first", () => {
  const job = bare();
  hangPanels(job, band(true, ["A", "inside"], ["B", "inside"], ["C", "inside"], ["D", "outside"]));
  expect(job.hang!.map((h) => h.walls)).toEqual([["B"], ["C"], ["D", "A"]]);
});

test("full widths again make one run of panels that take all walls, and leave others alone", () => {
  const job = bare();
  job.room.walls = ["A", "B", "C"].map((name) => ({ name, width: 2000 }));
  hangPanels(job, band(true, ["A", "inside"], ["B", "inside"], ["C", "inside"]));
  job.hang![1]!.trim = 30;
  hangWidths(job, 1);
  expect(job.hang).toEqual([{ paper: "P" }]);
  job.hang = [{ paper: "P", walls: ["A"], panels: "equal", trim: 30 }, { paper: "P", walls: ["B"] }];
  hangWidths(job, 0);
  expect(job.hang).toEqual([{ paper: "P", walls: ["A"] }, { paper: "P", walls: ["B"] }]);
});
