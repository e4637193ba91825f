import { expect, test } from "vitest";
import { stepped, typed, written } from "./step";

test("a hand stands on whole millimetres or sixteenths of an inch", () => {
  expect(stepped(2231.6, "metric")).toBe(2232);
  expect(stepped(25.4 * 3 + 0.7, "imperial")).toBeCloseTo(25.4 * 3, 9);
});

test("places are written as people write them, fractions at their shortest", () => {
  expect(written(2232.2, "metric")).toBe("2232 mm");
  expect(written(25.4 * 87.875, "imperial")).toBe("87 7/8 in");
  expect(written(25.4 / 16, "imperial")).toBe("1/16 in");
  expect(written(-25.4 * 1.5, "imperial")).toBe("-1 1/2 in");
  expect(written(0, "imperial")).toBe("0 in");
});

test("a job in millimetres keeps bare numbers", () => {
  expect(typed(2232, "metric", "mm")).toBe(2232);
  expect(typed(2232, "metric", "in")).toBe("2232 mm");
  expect(typed(25.4, "imperial", "mm")).toBe("1 in");
});
