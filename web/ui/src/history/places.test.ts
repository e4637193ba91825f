import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";

vi.stubGlobal("navigator", { languages: ["en-GB"] });
vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => {} });
const { inWords } = await import("./places");
const { isKey } = await import("../words");
const { sampleJob } = await import("../document/beginnings");
const { sampleNames } = await import("../document/sample");
const { copy } = await import("../document/json");

test("differences are told by the names of things", () => {
  const before = sampleJob(sampleNames);
  const after = copy(before);
  after.name = "Hall";
  after.room.walls[0]!.openings![1]!.width = "1.25 m";
  after.room.walls[2]!.openings = [];
  after.papers[0]!.reversing = true;
  expect(inWords(before, after)).toEqual([
    { place: "name", before: "Room", after: "Hall" },
    { place: "Wall A · right window · width", before: "1200", after: "1.25 m" },
    { place: "Wall C · openings", before: "door", after: "nothing" },
    { place: "Paper Trellis (invented) · alternate drops reversed", before: "nothing", after: "yes" },
  ]);
});

// The schema names every member that a document can have.
test("every member of a job has a word", () => {
  const keys = new Set<string>();
  const visit = (v: unknown, key = "") => {
    if (typeof v !== "object" || v === null) return;
    if ("properties" in v && key !== "weights") for (const k of Object.keys(v.properties as object)) keys.add(k);
    for (const [k, x] of Object.entries(v)) visit(x, k);
  };
  visit(JSON.parse(readFileSync(new URL("../../../../job/schema.json", import.meta.url), "utf8")));
  for (const k of ["properties", "type"]) keys.delete(k);
  expect(keys.size).toBeGreaterThan(60);
  expect([...keys].filter((k) => !isKey(`key.${k}`))).toEqual([]);
});
