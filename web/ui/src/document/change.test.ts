import { expect, test } from "vitest";
import { apply, differences, revert } from "./change";
import { copy, parsePath, pathText, type Json } from "./json";

const job = (): Json => ({
  name: "Room",
  room: { closed: true, walls: [{ name: "A", width: 4000 }, { name: "B", width: "3 m" }, { name: "C", width: 4000 }] },
});

test("one typed figure is one change at its place", () => {
  const after = copy(job()) as { room: { walls: { width: unknown }[] } };
  after.room.walls[1]!.width = 3010;
  expect(differences(job(), after as Json)).toEqual([{ path: ["room", "walls", 1, "width"], before: "3 m", after: 3010 }]);
});

test("a wall put in the middle is one wall, not a change of all behind it", () => {
  const after = copy(job()) as { room: { walls: Json[] } };
  after.room.walls.splice(1, 0, { name: "A2", width: 500 });
  expect(differences(job(), after as unknown as Json)).toEqual([
    { path: ["room", "walls"], at: 1, removed: [], added: [{ name: "A2", width: 500 }] },
  ]);
});

test("null, nothing and a missing key are three things", () => {
  expect(differences({ a: null }, {})).toEqual([{ path: ["a"], before: null }]);
  expect(differences({}, { a: null })).toEqual([{ path: ["a"], after: null }]);
  expect(differences({ a: [] }, { a: {} })).toEqual([{ path: ["a"], before: [], after: {} }]);
});

// Made-up documents: whatever two say, the changes lead from one to the other and back.
test("changes lead there and back", () => {
  let seed = 7;
  const random = (n: number) => (seed = (seed * 48271) % 2147483647) % n;
  const value = (depth: number): Json => {
    switch (random(depth > 3 ? 4 : 7)) {
      case 0: return random(5);
      case 1: return "abc".slice(random(3));
      case 2: return random(2) === 0;
      case 3: return null;
      case 4: case 5: return Array.from({ length: random(4) }, () => value(depth + 1));
      default: return Object.fromEntries(Array.from({ length: random(4) }, () => ["wxyz"[random(4)]!, value(depth + 1)]));
    }
  };
  for (let i = 0; i < 3000; i++) {
    const before = { root: value(0) };
    const after = { root: value(0) };
    const changes = differences(before, after);
    expect(apply(before, changes)).toEqual(after);
    expect(revert(after, changes)).toEqual(before);
    expect(apply(before, JSON.parse(JSON.stringify(changes)))).toEqual(after); // as the device keeps them
  }
});

test("paths are written as the planner writes them", () => {
  for (const text of ["room.walls[2].width", "papers[0].rolls[1].flaws[0].from", "name", ""]) {
    expect(pathText(parsePath(text))).toBe(text);
  }
});
