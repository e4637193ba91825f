import { describe, expect, test } from "vitest";
import { keyStep, snapped, step, written } from "./size";

describe("a drawn length", () => {
  test.each([
    [1234.4, "mm", 1234],
    [1234.6, "cm", 123.5],
    [1234, "m", 1.234],
    [1234, undefined, "1234 mm"],
    [1016, "in", 40],
    [1000, "in", 39.375],
    [1000, "ft", "39.375 in"],
    [-20, "mm", -20],
  ] as const)("of %d mm in %s is %s", (mm, units, want) => expect(written(mm, units)).toBe(want));

  test("is placed in steps that a pixel can show", () => {
    expect(step("mm", 0.3)).toBe(1);
    expect(step("mm", 7)).toBe(5);
    expect(step("in", 8)).toBe(25.4 / 4);
    expect(snapped(1237, 5)).toBe(1235);
  });

  test("moves by a millimetre or ten, by a sixteenth of an inch or a half", () => {
    expect([keyStep("cm", false), keyStep("cm", true), keyStep("ft", false), keyStep("ft", true)]).toEqual([1, 10, 25.4 / 16, 25.4 / 2]);
  });
});
