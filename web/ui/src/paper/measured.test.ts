import { expect, test } from "vitest";
import { measuredOf } from "./measured";

test("what was measured is said once there is a repeat and a second strip", () => {
  expect(measuredOf({ lower: [] }, false)).toBeUndefined();
  expect(measuredOf({ repeat: 640, lower: [] }, false)).toBeUndefined();
  expect(measuredOf({ lower: [320] }, false)).toBeUndefined();
  expect(measuredOf({ repeat: 640, lower: [undefined, 0] }, false)).toBeUndefined();
  expect(measuredOf({ repeat: 640, lower: [320, undefined] }, false)).toEqual({ repeat: 640, lower: [320] });
  expect(measuredOf({ repeat: "25 1/4", lower: [0, undefined, 3] }, false)).toEqual({ repeat: "25 1/4", lower: [0, "", 3] });
});

test("what is cleared stays as empty until all is, and takes nothing else with it", () => {
  expect(measuredOf({ lower: [320, 0] }, true)).toEqual({ repeat: "", lower: [320, 0] });
  expect(measuredOf({ repeat: 640, lower: [undefined, 0, 318] }, true)).toEqual({ repeat: 640, lower: ["", 0, 318] });
  expect(measuredOf({ repeat: 640, lower: [undefined] }, true)).toEqual({ repeat: 640, lower: [""] });
  expect(measuredOf({ lower: [""] }, true)).toBeUndefined();
});
