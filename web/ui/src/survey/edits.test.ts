import { describe, expect, test } from "vitest";
import type { Job } from "../planner/job";
import { sampleJob } from "../document/beginnings";
import { sampleNames } from "../document/sample";
import { addWall, cornerOf, cornerParts, freeName, newOpening, placeOpening, removeWall, renameWall, setUnits } from "./edits";

function hung(): Job {
  const job = sampleJob(sampleNames);
  job.room.diagonals = [{ from: "A|B", to: "C|D", length: 5532 }];
  job.hang = [
    {
      paper: "Trellis (invented)",
      walls: ["A", "B"],
      start: { wall: "A", edge: 300 },
      kill: { corner: "A|B" },
      keep_off: [{ wall: "B", from: 0, to: 100 }],
      new_drop: ["A|B"],
    },
  ];
  return job;
}

describe("walls", () => {
  test("are renamed wherever the job speaks of them", () => {
    const job = hung();
    renameWall(job, 0, "Window wall");
    expect(job.room.diagonals![0]!.from).toBe("Window wall|B");
    expect(job.hang![0]).toMatchObject({ walls: ["Window wall", "B"], start: { wall: "Window wall" }, kill: { corner: "Window wall|B" }, new_drop: ["Window wall|B"] });
  });

  test("keep what is decided apart when two have one name for a while", () => {
    const job = hung();
    renameWall(job, 1, "A");
    expect(job.hang![0]!.walls).toEqual(["A", "B"]);
  });

  test("that go take with them what was decided about them", () => {
    const job = hung();
    removeWall(job, 0);
    expect(job.room.walls.map((w) => w.name)).toEqual(["B", "C", "D"]);
    expect(job.room.diagonals).toEqual([]);
    expect(job.hang![0]).toEqual({ paper: "Trellis (invented)", walls: ["B"], keep_off: [{ wall: "B", from: 0, to: 100 }], new_drop: [] });
  });

  test("that come have a name of their own", () => {
    const job = hung();
    addWall(job, 1, freeName(job, (l) => l));
    expect(job.room.walls.map((w) => w.name)).toEqual(["A", "B", "E", "C", "D"]);
  });
});

describe("openings", () => {
  test("fit their wall to begin with", () => {
    expect(newOpening("window", "window", 1000, "mm")).toEqual({ name: "window", kind: "window", left: 200, width: 600, sill: 900, height: 1200 });
    expect(newOpening("door", "door", 4000, "mm")).not.toHaveProperty("sill");
  });

  test("keep what was typed on the sides that stay", () => {
    const o = newOpening("window", "window", 4000, "mm");
    o.width = "120 cm";
    const before = { left: 1400, sill: 900, width: 1200, height: 1200 };
    placeOpening(o, before, { ...before, left: 1500 }, "mm", []);
    expect(o).toMatchObject({ left: 1500, width: "120 cm", sill: 900 });
  });

  test("with an outline move as a whole", () => {
    const o = { kind: "arch" as const, outline: [[0, 0], [10, 0], [5, 10]] as [number, number][] };
    const box = { left: 0, sill: 0, width: 10, height: 10 };
    placeOpening(o, box, { ...box, left: 100 }, "mm", [[0, 0], [10, 0], [5, 10]]);
    expect(o.outline).toEqual([[100, 0], [110, 0], [105, 10]]);
  });
});

describe("corners", () => {
  test.each([undefined, "outside", { kind: "inside", angle: 135 }, { kind: "outside", lean: { left: 4 } }] as const)("%j is said as shortly again", (corner) => {
    expect(cornerOf(cornerParts(corner))).toEqual(corner);
  });
  test("are read from a text", () => {
    expect(cornerParts("inside 89°30'")).toMatchObject({ kind: "inside", angle: "89°30'" });
    expect(cornerParts("outside")).toMatchObject({ kind: "outside", angle: undefined });
  });
});

test("another unit leaves what was measured as it was", () => {
  const job = hung();
  setUnits(job, "cm");
  expect(job.units).toBe("cm");
  expect(job.room.height).toBe("2440 mm");
  expect(job.room.walls[1]!.fittings![0]!.at).toEqual(["900 mm", "300 mm"]);
  expect(job.papers[0]).toMatchObject({ width: "520 mm", roll: "10.05 m", soak_minutes: 8, price: "27.90 EUR" });
  expect(job.firstdrop).toBe(1);
});
