import { expect, test } from "vitest";
import { signOf, signs, wordOf } from "./match";

test.each([
  ["free", "free"],
  ["Straight", "straight"],
  ["half  drop", "half"],
  ["64/32 cm", "offset"],
  ["third drop", "offset"],
  [undefined, "free"],
] as const)("%s is shown by the sign %s", (match, sign) => expect(signOf(match)).toBe(sign));

test("a sign's word has that sign again", () => {
  for (const s of signs) expect(signOf(wordOf[s])).toBe(s);
});
