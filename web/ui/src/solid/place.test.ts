import { expect, test } from "vitest";
import type { Edge, Point, Wall } from "../planner/protocol";
import { inRoom, inwards, ofDesign, outlines } from "./place";

// The back wall of a room, faced from inside: from left to right, the room before it.
const edge: Edge = { wall: "A", from: [0, 3000], to: [4000, 3000], width: "" };
const wall: Wall = { name: "A", index: 0, x: 1000, width: 4000, outline: [], sizes: "" };

test("a wall stands where the floor plan has it", () => {
  expect(inRoom(wall, edge, [1000, 0])).toEqual([0, 0, -3]);
  expect(inRoom(wall, edge, [3000, 2500])).toEqual([2, 2.5, -3]);
  expect(inwards(edge)).toEqual([0, 1]);
});

test("the design is found again where its tile puts it", () => {
  // Its left edge at 1200 along the band, its beginning at 2000 over the datum.
  const tile = [1, 0, 0, -1, 1200, 2000] as const;
  expect(ofDesign([...tile], 530, 640, [1200, 2000])).toEqual([0, -0]);
  expect(ofDesign([...tile], 530, 640, [1465, 1680])).toEqual([0.5, 0.5]);
  // Upside down, both run the other way.
  expect(ofDesign([-1, 0, 0, 1, 1730, 0], 530, 640, [1730, 320])).toEqual([-0, 0.5]);
});

test("holes are given to the outlines they lie in", () => {
  const square = (x: number, y: number, side: number): Point[] => [[x, y], [x + side, y], [x + side, y + side], [x, y + side]];
  const [a, hole, b] = [square(0, 0, 100), square(20, 20, 10), square(200, 0, 100)];
  expect(outlines([a, hole, b])).toEqual([{ outline: a, holes: [hole] }, { outline: b, holes: [] }]);
});
