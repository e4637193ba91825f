import { expect, test } from "vitest";
import { sampleJob } from "../document/beginnings";
import { sampleNames } from "../document/sample";
import type { Wall } from "../planner/protocol";
import { nearest, offers } from "./offers";

const window = (index: number, left: number) => ({
  index,
  name: "",
  kind: "window",
  label: "",
  outline: [
    [left, 900],
    [left + 1200, 900],
    [left + 1200, 2100],
    [left, 2100],
  ] as [number, number][],
});
const wall: Wall = { name: "A", index: 0, x: 1000, width: 4200, outline: [], sizes: "", openings: [window(0, 1620), window(1, 3380)] };

test("a wall offers its middle, its openings' and that between two windows, by drop and by seam", () => {
  const all = offers(sampleJob(sampleNames), wall, 520);
  expect(all.map((o) => [o.x, o.of, o.start.middle])).toEqual([
    [2840, "drop", ["wall"]],
    [3100, "seam", ["wall"]],
    [1960, "drop", ["left window"]],
    [2220, "seam", ["left window"]],
    [3720, "drop", ["right window"]],
    [3980, "seam", ["right window"]],
    [2840, "drop", ["left window", "right window"]],
    [3100, "seam", ["left window", "right window"]],
  ]);
});

test("the nearest is offered, and none that is far", () => {
  const all = offers(sampleJob(sampleNames), wall, 520);
  expect(nearest(all, 2210, 30)?.x).toBe(2220);
  expect(nearest(all, 2400, 30)).toBeUndefined();
});
