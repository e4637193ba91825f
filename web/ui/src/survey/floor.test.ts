import { describe, expect, test } from "vitest";
import type { Point } from "../planner/protocol";
import { clear, squared, wallsOf } from "./floor";

const letter = (i: number) => "ABCDEFGH"[i]!;

describe("a drawn floor", () => {
  test("is a room whichever way round it was drawn", () => {
    const square: Point[] = [[0, 0], [0, 3000], [4000, 3000], [4000, 0]];
    const walls = wallsOf(square, true, "mm", letter);
    expect(walls).toEqual([
      { name: "A", width: 3000 },
      { name: "B", width: 4000 },
      { name: "C", width: 3000 },
      { name: "D", width: 4000 },
    ]);
    const back = wallsOf(square.toReversed(), true, "mm", letter);
    expect(back.map((w) => w.corner)).toEqual([undefined, undefined, undefined, undefined]);
    expect(back.map((w) => w.width).sort()).toEqual([3000, 3000, 4000, 4000]);
  });

  test("has outside corners where one turns to the left", () => {
    // An L: clockwise from the lower left.
    const walls = wallsOf([[0, 0], [0, 4000], [2000, 4000], [2000, 2000], [5000, 2000], [5000, 0]], true, "mm", letter);
    expect(walls.map((w) => w.corner)).toEqual([undefined, undefined, "outside", undefined, undefined, undefined]);
  });

  test("says the angle of corners that are not square", () => {
    const walls = wallsOf([[0, 0], [0, 3000], [3000, 3000], [4000, 2000], [4000, 0]], true, "cm", letter);
    expect(walls.map((w) => w.corner)).toEqual([undefined, "inside 135", "inside 135", undefined, undefined]);
    expect(walls[2]!.width).toBe(141.4);
  });

  test("may stay open", () => {
    const walls = wallsOf([[0, 0], [0, 3000], [4000, 3000]], false, undefined, letter);
    expect(walls).toEqual([
      { name: "A", width: "3000 mm" },
      { name: "B", width: "4000 mm" },
    ]);
  });

  test("never crosses itself, nor comes back on itself", () => {
    const drawn: Point[] = [[0, 0], [0, 3000], [4000, 3000], [4000, 1000]];
    expect(clear(drawn, [-1000, 1000])).toBe(false);
    expect(clear(drawn, [2000, 1000])).toBe(true);
    expect(clear(drawn, [4000, 2000])).toBe(false);
    expect(clear(drawn, [0, 0], true)).toBe(true);
    expect(clear([[0, 0], [0, 3000], [4000, 3000], [4000, 4000]], [0, 0], true)).toBe(false);
  });

  test("stands square where the hand meant it", () => {
    expect(squared([0, 0], [3040, 230], 100)).toEqual([3000, 0]);
    expect(squared([0, 0], [2040, 2230], 100)).toEqual([2000, 2200]);
    expect(squared(undefined, [149, 151], 100)).toEqual([100, 200]);
  });
});
