import { describe, expect, test } from "vitest";
import { sizeText, stepAt, stepped, steps, written } from "./hand";

const inch = 25.4; // exactly, since the International Yard and Pound agreement of 1959

describe("a drawn length in the job document", () => {
  test.each([
    [1234.4, "mm", 1234],
    [1234.6, "cm", 123.5],
    [1234, "m", 1.234],
    [1234, undefined, "1234 mm"],
    [1016, "in", 40],
    [1000, "in", 39.375],
    [1000, "ft", `3' 3 3/8"`],
    [-20, "mm", -20],
  ] as const)("of %d mm in %s is %s", (mm, units, want) => expect(written(mm, units)).toBe(want));

  test("says its own units where the job has others", () => {
    expect(written(2232, "in", "metric")).toBe("2232 mm");
    expect(written(inch, "mm", "imperial")).toBe(`1"`);
  });
});

test("a hand moves in steps that a pixel can show", () => {
  expect(stepAt(0.3, "metric")).toBe(1);
  expect(stepAt(7, "metric")).toBe(5);
  expect(stepAt(8, "imperial")).toBe(inch / 4);
});

test("keys move by a millimetre or ten, by a sixteenth of an inch or a half", () => {
  expect(steps("metric")).toEqual({ fine: 1, coarse: 10 });
  expect(steps("imperial")).toEqual({ fine: inch / 16, coarse: inch / 2 });
});

test("a hand comes to stand on whole steps", () => {
  expect(stepped(1237, 5)).toBe(1235);
  expect(stepped(2231.6, steps("metric").fine)).toBe(2232);
  expect(stepped(inch * 3 + 0.7, steps("imperial").fine)).toBeCloseTo(inch * 3, 9);
});

test.each([
  [2232.2, "metric", "2232 mm"],
  [inch * 87.875, "imperial", `7' 3 7/8"`],
  [inch / 16, "imperial", `1/16"`],
  [inch * 12, "imperial", `1'`],
  [inch * 12.5, "imperial", `1' 1/2"`],
  [-1.5 * inch, "imperial", `-1 1/2"`],
  [0, "imperial", `0"`],
] as const)("%d mm are said, %s, as %s", (mm, system, want) => expect(sizeText(mm, system)).toBe(want));
