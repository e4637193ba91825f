import { expect, test } from "vitest";
import { linePath } from "./shapes";

test("a line runs from low to high, and leans to the right as it says", () => {
  expect(linePath({ x: 100, low: 0, high: 2400 })).toBe("M100 0L100 -2400");
  expect(linePath({ x: 100, low: 10, high: 2400, lean: -12.5 })).toBe("M100 -10L87.5 -2400");
});
