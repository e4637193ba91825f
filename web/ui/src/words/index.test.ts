import { describe, expect, test } from "vitest";
import { fill, type Message } from "./text";
import { de } from "./de";
import { enGB } from "./en-GB";
import { enUS } from "./en-US";
import { fr } from "./fr";

const holes = (m: Message) => {
  const text = typeof m === "string" ? m : `${m.one} ${m.other}`;
  return [...new Set([...text.matchAll(/\{(\w+)\}/g)].map((h) => h[1]))].filter((h) => h !== "n").sort();
};

describe.each([
  ["de", de],
  ["fr", fr],
])("%s", (_, words: Record<string, Message>) => {
  test("says every message, and no other", () => {
    expect(Object.keys(words).sort()).toEqual(Object.keys(enGB).sort());
  });

  test("has the holes of British English, and nothing empty", () => {
    for (const [key, message] of Object.entries(enGB)) {
      expect([key, holes(words[key]!)]).toEqual([key, holes(message)]);
      expect(key + ": " + JSON.stringify(words[key])).not.toMatch(/: ""|"(one|other)":""/);
    }
  });

  test("does not leave sentences in English", () => {
    const left = Object.entries(enGB).filter(([key, m]) => typeof m === "string" && m.split(" ").length > 4 && words[key] === m);
    expect(left).toEqual([]);
  });
});

test("a design that does not meet misses no target, and is not lacking", () => {
  const said = (words: Record<string, Message>) => Object.values(words).map((m) => JSON.stringify(m)).join("\n");
  expect(said(de)).not.toMatch(/verfehl/i);
  expect(said(fr)).not.toMatch(/motif[^.]*manqu/i);
});

test("American English differs only in what British English has", () => {
  for (const [key, message] of Object.entries(enUS)) {
    const british: Message | undefined = (enGB as Record<string, Message>)[key];
    expect([key, british && holes(british)]).toEqual([key, holes(message)]);
    expect([key, message]).not.toEqual([key, british]);
  }
});

test("holes are filled, and plural forms chosen by the language", () => {
  const rolls = { one: "{n} rouleau", other: "{n} rouleaux" };
  expect(fill("fr", rolls, { n: 0 })).toBe("0 rouleau"); // CLDR: 0 and 1 are one in French
  expect(fill("en-GB", { one: "{n} roll", other: "{n} rolls" }, { n: 0 })).toBe("0 rolls");
  expect(fill("de", "{a} von {b}", { a: 1234, b: "vielen" })).toBe("1.234 von vielen");
});
