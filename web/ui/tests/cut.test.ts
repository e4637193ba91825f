import { execFileSync } from "node:child_process";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoSidewaysScroll, picture, sizes, type Journey, type Themes } from "./browser";
import { beginJob, settle } from "./hand";

// Cut and order: rolls, ticks, certainty, cliffs, a roll that has been opened, and the
// sheets as PDF, read back with pdftotext.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const slow = { timeout: 60_000 };

test.each<[keyof typeof sizes, Themes]>([
  ["small", "light"],
  ["tablet", "sunlight"],
  ["wide", "dark"],
])("what is cut, bought and sure, %s %s", { timeout: 400_000 }, async (size, theme) => {
  const t = await journey.travel({ viewport: sizes[size], hasTouch: size !== "wide" });
  const { page } = t;
  await settle(page, { theme });
  await beginJob(page, "sample", "cut");
  await page.getByRole("heading", { name: "What to buy" }).waitFor(slow);

  // A cut is tapped, and its drop shows on the wall.
  const cut = page.locator(".strip .cut").nth(3);
  await cut.scrollIntoViewIfNeeded();
  await cut.click();
  expect(await cut.getAttribute("aria-pressed")).toBe("true");
  await expect.poll(() => page.locator('[data-spot="drop"][aria-pressed="true"]').count()).toBe(1);

  // A tick stays on the device.
  await page.getByRole("checkbox").first().check();
  await page.getByText(/^1 of \d+ pieces cut$/).waitFor();

  await page.locator("#certainty").scrollIntoViewIfNeeded();
  await page.getByRole("img", { name: /share of jobs/ }).waitFor(slow);
  await page.getByRole("row", { name: /As planned: 9 rolls/ }).waitFor();
  await page.getByRole("row", { name: /One less: 8 rolls/ }).waitFor();
  await page.locator(".cliffs li").first().waitFor(slow);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await picture(page, `cut-sure-${size}-${theme}`);

  // A roll has come and is short: the cutting is laid out again from it.
  await page.getByRole("button", { name: "Add an opened roll" }).click();
  await page.getByLabel("True length").fill("9.2 m");
  await page.getByText("in hand", { exact: true }).first().waitFor({ timeout: 180_000 });
  await expectAccessible(page);
  await picture(page, `cut-opened-${size}-${theme}`);

  if (size === "wide") {
    await page.getByRole("link", { name: "Print and export" }).click();
    const download = page.waitForEvent("download", { timeout: 120_000 });
    await page.getByRole("button", { name: /PDF/ }).first().click();
    const text = execFileSync("pdftotext", ["-layout", await (await download).path(), "-"], { encoding: "utf8" });
    expect(text).toContain("Trellis (invented)");
    expect(text).toMatch(/9[.,]200 m|9200 mm|9[.,]2 m/); // the very roll
  }
  expect(t.complaints()).toEqual([]);
  await t.close();
});
