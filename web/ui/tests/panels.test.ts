import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey } from "./browser";
import { importJob, settle } from "./hand";

// Goods whose seams show are hung in equal panels, and in full widths again.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const soon = { timeout: 60_000 };
const choice = (page: Page, name: string) => page.getByRole("radio", { name, exact: true });

/** The widths of the drops of the run in view, in millimetres. */
const widths = (page: Page) =>
  page.locator("path.part").evaluateAll((all) => all.map((p) => Math.round((p as SVGGeometryElement).getBBox().width)));

test.each(["phone", "wide"] as const)("panels of one width, and full widths again, %s", { timeout: 240_000 }, async (size) => {
  const t = await journey.travel({ viewport: sizes[size], hasTouch: size === "phone" });
  const { page } = t;
  await settle(page);
  await importJob(page, "grasscloth", "plan");
  await page.locator("path.part").first().waitFor({ state: "attached", ...soon });
  expect(await choice(page, "Equal panels").isChecked()).toBe(true);
  expect(await page.getByRole("group", { name: "Walls in view" }).locator("label").allInnerTexts()).toEqual(["wall A", "wall B", "walls C–E", "wall F"]);
  // Wall A, 3460 mm of paper 915 mm wide less twice 38 mm, takes 5 panels of 692 mm at the least: 3460 ÷ 839 = 4.12.
  await expect.poll(() => widths(page), soon).toEqual(Array(5).fill(692));
  expect(await page.getByRole("slider", { name: /start line/i }).count()).toBe(0);
  await page.getByLabel("Off each edge at the least").fill("150");
  // 3460 ÷ (915 − 300) = 5.63: six panels at the least, or more where seams stand better.
  await expect.poll(() => widths(page).then((all) => all.length), soon).toBeGreaterThan(5);
  const narrow = await widths(page);
  expect(new Set(narrow).size).toBe(1);
  await page.getByText("Equal panels", { exact: true }).scrollIntoViewIfNeeded();
  await expectAccessible(page);
  await expectNoStrayScroll(page);
  await picture(page, `panels-${size}`);

  await page.getByText("Full widths", { exact: true }).click();
  await page.getByRole("slider", { name: /start line/i }).waitFor(soon);
  await expect.poll(() => widths(page).then((all) => new Set(all).size), soon).toBeGreaterThan(1);
  expect(await page.getByLabel("Off each edge at the least").count()).toBe(0);
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await expect.poll(() => widths(page), soon).toEqual(narrow);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a closed room becomes a run for each wall between inside corners, and one run again", { timeout: 240_000 }, async () => {
  const t = await journey.travel({ viewport: sizes.tablet, hasTouch: true });
  const { page } = t;
  await settle(page);
  await importJob(page, "plain-room", "plan");
  await page.getByText("Equal panels", { exact: true }).click(soon);
  await page.getByRole("group", { name: "Walls in view" }).waitFor(soon);
  await expect.poll(() => widths(page).then((all) => new Set(all).size), soon).toBe(1);
  await picture(page, "panels-closed");
  await page.getByText("Full widths", { exact: true }).click();
  await page.getByRole("group", { name: "Walls in view" }).waitFor({ state: "detached", ...soon });
  await page.getByRole("slider", { name: /start line/i }).waitFor(soon);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("what is wrong with panels leads to where they are chosen", { timeout: 120_000 }, async () => {
  const t = await journey.travel({ viewport: sizes.phone, hasTouch: true });
  const { page } = t;
  await settle(page);
  const job = await importJob(page, "grasscloth", "paper");
  await page.getByText("straight", { exact: true }).click();
  await page.getByLabel("Repeat", { exact: true }).fill("320");
  await page.goto(`/#/job/${job}/plan`);
  await page.getByRole("button", { name: /panels .*Put right under Plan/ }).first().click(soon);
  await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset["at"]), soon).toBe("hang[0].panels");
  await expectAccessible(page);
  await picture(page, "panels-wrong-phone");
  await page.getByText("Full widths", { exact: true }).click();
  await expect.poll(() => page.getByRole("button", { name: /Put right under/ }).count(), soon).toBe(0);
  expect(t.complaints()).toEqual([]);
  await t.close();
});
