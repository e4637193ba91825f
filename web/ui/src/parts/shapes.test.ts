import { expect, test } from "vitest";
import { linePath, ringPath } from "./shapes";

test("a line runs from low to high, and leans to the right as it says", () => {
  expect(linePath({ x: 100, low: 0, high: 2400 })).toBe("M100 0L100 -2400");
  expect(linePath({ x: 100, low: 10, high: 2400, lean: -12.5 })).toBe("M100 -10L87.5 -2400");
});

test("rings that were only moved have the same path, counted from where they stand", () => {
  const ring = (x: number): [number, number][] => [[x, 0], [x + 530.1, 0], [x + 530.1, 2400], [x, 2400]];
  expect(ringPath([ring(0)])).toBe("M0 0L530.1 0L530.1 -2400L0 -2400Z");
  for (const x of [0.1, 1234.567891, 98765.4]) expect(ringPath([ring(x)], x)).toBe(ringPath([ring(0)]));
});
