import { expect, test } from "vitest";
import { faced, facing, kept, panned, placeAt, tall, whole, zoomed, type Extent } from "./view";

const room: Extent = { left: 0, top: -2500, right: 15000, bottom: 0 };
const phone = { width: 375, height: 250 };

test("whole shows all, tall the full height from the left", () => {
  expect(whole(room, phone)).toEqual({ x: 7500, y: -1250, per: 40 });
  expect(tall(room, phone)).toEqual({ x: 1875, y: -1250, per: 10 });
});

test("an empty room can still be looked at", () => {
  expect(whole({ left: 0, top: 0, right: 0, bottom: 0 }, phone).per).toBe(1);
});

test("zooming leaves the place under the finger where it is", () => {
  const before = tall(room, phone);
  const finger = { x: 300, y: 50 };
  const after = zoomed(before, 2.5, finger, phone);
  expect(after.per).toBe(4);
  expect(placeAt(after, finger, phone)).toEqual(placeAt(before, finger, phone));
});

test("one cannot look past the ends, nor from further off than all", () => {
  expect(kept(panned(tall(room, phone), 500, 90), room, phone)).toEqual(tall(room, phone));
  expect(kept({ x: 0, y: 0, per: 4000 }, room, phone)).toEqual(whole(room, phone));
});

test("heights count upwards", () => {
  const v = tall(room, phone);
  expect(placeAt(v, { x: 0, y: 250 }, phone)).toEqual([0, 0]);
  expect(placeAt(v, { x: 0, y: 0 }, phone)).toEqual([0, 2500]);
});

test("the first and the last wall can be faced, and what is asked for is", () => {
  const v = tall(room, phone);
  expect(facing(v, room, phone)).toBe(0);
  expect(facing(faced(15000, v, room, phone), room, phone)).toBe(15000);
  expect(facing(faced(4200, v, room, phone), room, phone)).toBeCloseTo(4200, 6);
  expect(facing(whole(room, phone), room, phone)).toBeNull();
});
