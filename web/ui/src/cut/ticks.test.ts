import { beforeEach, expect, test } from "vitest";
import type { Cutting } from "../planner/protocol";
import { hanging, lines, Ticks } from "./ticks.svelte";

const piece = (name: string, drop: number, length = "2540") => ({ name, drop, wall: "A", run: "room", length });
const cutting = (...cuts: ReturnType<typeof piece>[][]): Cutting => ({
  papers: [
    {
      name: "P",
      order: [],
      why: [],
      notes: [],
      counts: [],
      rolls: [{ number: 1, length: 10050, orders: [{ left: 0, rest: "", cuts: cuts.map((pieces, i) => ({ from: i, to: i + 1, pieces, text: "" })) }] }],
    },
  ],
});

const kept = new Map<string, string>();
beforeEach(() => {
  kept.clear();
  globalThis.localStorage = { getItem: (k: string) => kept.get(k) ?? null, setItem: (k: string, v: string) => void kept.set(k, v) } as Storage;
});

test("pieces are listed as they are cut, and as they are hung", () => {
  const all = lines(cutting([piece("3", 3)], [piece("1", 1)], [piece("2a", 2), piece("2b", 2)]));
  expect(all.map((l) => l.piece)).toEqual(["3", "1", "2a", "2b"]);
  expect(hanging(all).map((l) => l.piece)).toEqual(["1", "2a", "2b", "3"]);
});

test("ticks last, and those of pieces that have changed are told of", () => {
  const before = lines(cutting([piece("1", 1)], [piece("2", 2)]));
  const ticks = new Ticks("job");
  ticks.set("cut", before[0]!.key, true);
  ticks.set("hung", before[0]!.key, true);
  ticks.set("cut", before[1]!.key, true);
  ticks.set("hung", before[0]!.key, false);
  const again = new Ticks("job");
  expect([again.count("cut", before), again.count("hung", before), again.lost(before)]).toEqual([2, 0, 0]);

  const after = lines(cutting([piece("1", 1)], [piece("2", 2, "2600")]));
  expect([again.count("cut", after), again.lost(after)]).toEqual([1, 1]);
  again.tidy(after);
  expect(again.lost(after)).toBe(0);
  expect(new Ticks("another").count("cut", before)).toBe(0);
});
