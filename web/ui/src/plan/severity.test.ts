import { expect, test, vi } from "vitest";
import type { Finding } from "../planner/protocol";

vi.stubGlobal("navigator", { languages: ["en-GB"] });
vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => {} });
const { byGravity, folded } = await import("./severity");

const finding = (number: number, code: string, severity = "caution"): Finding => ({ number, code, severity, text: `${number}`, run: 0 });

test("the gravest come first, and then as they are numbered", () => {
  const all = [finding(3, "a", "note"), finding(2, "b"), finding(0, "c"), finding(1, "d", "serious")];
  expect(byGravity(all).map((f) => f.code)).toEqual(["d", "b", "c", "a"]);
});

test("many findings of a kind are folded under the first, and none is lost", () => {
  const all = [1, 2, 3, 4].map((n) => finding(n, "cut"));
  const few = [5, 6, 7].map((n) => finding(n, "near"));
  const list = [all[0]!, few[0]!, all[1]!, all[2]!, few[1]!, all[3]!, few[2]!];
  expect(folded(list).map((k) => [k.first.number, k.more.map((f) => f.number)])).toEqual([
    [1, [2, 3, 4]],
    [5, []],
    [6, []],
    [7, []],
  ]);
});
