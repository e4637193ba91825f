import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Download, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, picture, type Journey, type Traveller } from "./browser";
import { beginJob, settle } from "./hand";

// Files that are taken away and brought back, made in the browser. The PDF is read by
// pdftotext (poppler) and checked by qpdf, the workbook by Python's openpyxl.

let journey: Journey;
let t: Traveller;
const folder = mkdtempSync(join(tmpdir(), "firstdrop-print-"));
beforeAll(async () => {
  journey = await begin();
  t = await journey.travel({ viewport: { width: 820, height: 1180 } });
  await beginJob(t.page, "sample", "print");
});
afterAll(async () => {
  expect(t.complaints()).toEqual([]);
  await journey.end();
});

/** What a button lets one save, as a file in the folder. */
async function taken(page: Page, button: string): Promise<string> {
  const coming: Promise<Download> = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("button", { name: button }).click();
  const download = await coming;
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  return file;
}

test("the sheets are a sound PDF that says what to buy", async () => {
  const file = await taken(t.page, "Make the PDF");
  expect(file).toMatch(/back-bedroom-sample-invented-sheets\.pdf$/);
  execFileSync("qpdf", ["--check", file]);
  const text = execFileSync("pdftotext", ["-layout", file, "-"]).toString();
  expect(text).toContain("Trellis (invented)");
  expect(text).toMatch(/9 rolls/);
  await t.page.getByText("is ready").waitFor();
  await expectAccessible(t.page);
  await picture(t.page, "print-ready");
}, 120_000);

test("the workbook can be read by others", async () => {
  const file = await taken(t.page, "Make the workbook");
  const sheets = execFileSync("/usr/bin/python3", ["-c", "import openpyxl, sys; print(openpyxl.load_workbook(sys.argv[1]).sheetnames)", file]).toString();
  expect(sheets.length).toBeGreaterThan(5);
});

test("lists come as CSV, and a wall as a drawing, each by its name", async () => {
  const lines = (file: string) => readFileSync(file, "utf8").trimEnd().split("\r\n");
  const [hung, cut, rolls] = [await taken(t.page, "Cutting list, as hung (CSV)"), await taken(t.page, "Cutting list, roll by roll (CSV)"), await taken(t.page, "Map of the rolls (CSV)")];
  expect([hung, cut, rolls].map((f) => f.replace(/.*invented-/, ""))).toEqual(["cutting-list.csv", "cutting-list-as-cut.csv", "roll-map.csv"]);
  expect(lines(hung)).toHaveLength(35); // 34 pieces and a header
  expect(lines(cut)).toHaveLength(35);
  expect(lines(rolls)[0]).toMatch(/^roll,/);
  const wall = await taken(t.page, "Wall B");
  expect(wall).toMatch(/wall-b\.svg$/);
  execFileSync("rsvg-convert", ["-o", join(folder, "wall.png"), wall]);
}, 120_000);

// Words that stand in the catalogues of the sheets, and are no English.
test.each([
  ["de", "PDF machen", ["Zuschnittliste", "Rolle", "Bahn"]],
  ["fr", "Faire le PDF", ["Liste de coupe", "rouleau", "lé"]],
] as const)("sheets and workbook speak %s", { timeout: 180_000 }, async (locale, button, words) => {
  const other = await journey.travel({ viewport: { width: 820, height: 1180 } });
  await settle(other.page, { locale });
  await beginJob(other.page, "sample", "print");
  const file = await taken(other.page, button);
  execFileSync("qpdf", ["--check", file]);
  const text = execFileSync("pdftotext", ["-layout", file, "-"]).toString();
  for (const word of words) expect(text).toContain(word);
  expect(text).not.toMatch(/\bdrop\b|\broll\b/);
  expect(text).toMatch(/\d,\d/); // the decimal sign
  expect(other.complaints()).toEqual([]);
  await other.close();
});

test("a job goes out as YAML and JSON, and comes back the same", async () => {
  const [yaml, json] = [await taken(t.page, "Save as a YAML file"), await taken(t.page, "Save as a JSON file")];
  expect(readFileSync(yaml, "utf8")).toContain("picture: tulips");
  const document = JSON.parse(readFileSync(json, "utf8")) as { room: { walls: unknown[] } };
  expect(document.room.walls).toHaveLength(4);
  for (const file of [yaml, json]) {
    await t.page.goto("/#/");
    await t.page.locator("input[type=file]").setInputFiles(file);
    await t.page.waitForURL(/survey/);
    await t.page.getByRole("button", { name: "Wall A, 4200 × 2440 mm" }).waitFor();
  }
});

test("a file with mistakes is told with line and column, and loses nothing", async () => {
  await t.page.goto("/#/");
  const bad = "firstdrop: 1\nunits: mm\nroom:\n  closed: true\n  height: 2440\n  walls:\n    - name: A\n      width: long\npapers: []\n";
  await t.page.locator("input[type=file]").setInputFiles({ name: "bad.yaml", mimeType: "application/yaml", buffer: Buffer.from(bad) });
  await t.page.getByText("Line 8, column").first().waitFor();
  await expectAccessible(t.page);
  await picture(t.page, "import-mistakes");
  await t.page.getByRole("button", { name: "Close" }).last().click();
  await t.page.locator("input[type=file]").setInputFiles({ name: "no.json", mimeType: "application/json", buffer: Buffer.from("{") });
  expect(await t.page.getByRole("dialog").innerText()).toMatch(/Line \d/);
  await t.page.getByRole("button", { name: "Close" }).last().click();
});

const examples = join(import.meta.dirname, "../../../examples");
test("every example can be opened", async () => {
  for (const name of readdirSync(examples).filter((n) => n.endsWith(".yaml"))) {
    await t.page.goto("/#/");
    await t.page.locator("input[type=file]").setInputFiles(join(examples, name));
    await t.page.waitForURL(/survey/);
    await t.page.getByRole("group", { name: /walls unrolled/ }).first().waitFor({ timeout: 20_000 }).catch(async (e) => {
      await picture(t.page, "example-fails");
      throw new Error(`${name}: ${e}`);
    });
    expect(t.complaints(), name).toEqual([]);
  }
}, 120_000);
