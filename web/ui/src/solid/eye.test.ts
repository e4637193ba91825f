import { expect, test } from "vitest";
import { line, nearer, turned, walked, yawTo, type Eye, type Limits } from "./eye";

const limits: Limits = { middle: [2, 1.2, -1.5], reach: 3, free: (x, z) => x > 0 && x < 4 && z < 0 && z > -3 };
const inside: Eye = { mode: "inside", yaw: 0, pitch: 0, distance: 8, at: [2, 1.6, -0.5] };

test("one walks the way one looks, and not through walls", () => {
  expect(walked(inside, 1, limits).at).toEqual([2, 1.6, -1.5]);
  expect(walked(inside, 5, limits)).toBe(inside);
  const right = turned(inside, Math.PI / 2, 0);
  expect(walked(right, 1, limits).at[0]).toBeCloseTo(3, 9);
});

test("from outside one looks at the middle, and never from below", () => {
  const round: Eye = { ...inside, mode: "round", pitch: -0.6 };
  expect(line(round, limits).to).toEqual(limits.middle);
  expect(line(round, limits).from[1]).toBeGreaterThan(limits.middle[1]);
  expect(turned(round, 0, 3).pitch).toBe(-0.05);
  expect(nearer(round, 1000, limits).distance).toBeCloseTo(1.8, 9);
});

test("a place is faced", () => {
  expect(yawTo([0, 0, 0], [0, 0, -2])).toBe(0);
  expect(yawTo([0, 0, 0], [2, 0, 0])).toBeCloseTo(Math.PI / 2, 9);
});
