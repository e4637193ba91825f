import { describe, expect, test } from "vitest";
import { sampleJob } from "../document/beginnings";
import { sampleNames } from "../document/sample";
import { addPaper, freePaperName, hangPaper, hungPaper, isHung, removePaper, renamePaper } from "./papers";

const first = "Trellis (invented)";

describe("the papers of a job", () => {
  test("are compared without being hung", () => {
    const job = sampleJob(sampleNames);
    addPaper(job, job.papers[0]!, "Paper 2");
    expect(job.papers.map((p) => p.name)).toEqual([first, "Paper 2"]);
    expect(job.papers[1]).toMatchObject({ width: 520, repeat: 530 });
    expect(job.papers[1]).not.toHaveProperty("price");
    expect(hungPaper(job)).toBe(first);
    expect([isHung(job, first), isHung(job, "Paper 2")]).toEqual([true, false]);
  });

  test("take each other's place, and what was decided for seams is searched again", () => {
    const job = sampleJob(sampleNames);
    job.hang = [{ paper: first, walls: ["A"], start: { wall: "A", edge: 1 }, keep_off: [] }];
    addPaper(job, job.papers[0]!, "Paper 2");
    hangPaper(job, "Paper 2");
    expect(job.hang).toEqual([{ paper: "Paper 2", walls: ["A"], keep_off: [] }]);
    removePaper(job, 0);
    expect(hungPaper(job)).toBe("Paper 2");
  });

  test("are renamed with what hangs in them, but never mixed up", () => {
    const job = sampleJob(sampleNames);
    addPaper(job, job.papers[0]!, "Paper 2");
    renamePaper(job, 0, "Paper 2");
    expect(job.hang).toEqual([{ paper: first }]);
    renamePaper(job, 0, first);
    renamePaper(job, 0, "Vines (invented)");
    expect(job.hang).toEqual([{ paper: "Vines (invented)" }]);
    expect(freePaperName(job, (n) => `Paper ${n}`)).toBe("Paper 3");
  });
});
