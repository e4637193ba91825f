import { execFileSync } from "node:child_process";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey, type Themes } from "./browser";
import { beginJob, importJob, kept, settle } from "./hand";

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

  // A tick is counted.
  await page.getByRole("checkbox").first().check();
  await page.getByText(/^1 of \d+ pieces cut$/).waitFor();

  await page.locator("#certainty").scrollIntoViewIfNeeded();
  await page.getByRole("img", { name: /share of jobs/ }).waitFor(slow);
  await page.getByRole("row", { name: /As planned: 9 rolls/ }).waitFor();
  await page.getByRole("row", { name: /One less: 8 rolls/ }).waitFor();
  await page.locator(".cliffs li").first().waitFor(slow);
  await expectAccessible(page);
  await expectNoStrayScroll(page);
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

test("what is ticked on one device is ticked on the other, also what was ticked without a network", { timeout: 240_000 }, async () => {
  const [van, phone] = [await journey.travel({ viewport: sizes.wide }), await journey.travel({ hasTouch: true })];
  await settle(van.page);
  const job = await beginJob(van.page, "sample", "cut");
  await van.page.getByRole("checkbox").first().waitFor(slow);
  await expect.poll(async () => (await kept(van.page)).some((k) => k.id === job && k.server), slow).toBe(true);
  await settle(phone.page);
  await expect.poll(async () => (await kept(phone.page)).some((k) => k.id === job), slow).toBe(true);
  await phone.page.goto(`/#/job/${job}/cut`);
  await phone.page.getByRole("checkbox").first().waitFor(slow);
  const sum = (n: number) => new RegExp(`^${n} of \\d+ pieces cut$`);
  await van.page.getByRole("checkbox").nth(0).check();
  await phone.page.getByText(sum(1)).waitFor(slow);
  expect(await phone.page.getByRole("checkbox").nth(0).isChecked()).toBe(true);

  await journey.served.stop();
  await phone.page.getByRole("checkbox").nth(1).check();
  await phone.page.getByRole("checkbox").nth(0).uncheck();
  await phone.page.getByText(sum(1)).waitFor();
  await journey.served.start();
  for (const { page } of [phone, van]) await page.evaluate(() => dispatchEvent(new Event("online")));
  await expect.poll(() => van.page.getByRole("checkbox").nth(1).isChecked(), { timeout: 90_000 }).toBe(true);
  expect(await van.page.getByRole("checkbox").nth(0).isChecked()).toBe(false);
  await Promise.all([van.close(), phone.close()]);
});

// A border of 250 mm from rolls of 60 m: to scale its cuts are a few pixels wide.
const border = `firstdrop: 1
name: Border (invented)
units: mm
room:
  closed: true
  height: 2500
  walls: [{name: A, width: 3100}, {name: B, width: 2900}, {name: C, width: 3100}, {name: D, width: 2900}]
papers: [{name: Rope edge (invented), width: 530, roll: 60 m, match: free}]
hang: [{paper: Rope edge (invented), from: 900, to: 1050}]
`;

test.each<keyof typeof sizes>(["small", "wide"])("every cut has room for a finger, however narrow it is, %s", { timeout: 240_000 }, async (size) => {
  const t = await journey.travel({ viewport: sizes[size], hasTouch: size !== "wide" });
  const { page } = t;
  await settle(page);
  for (const example of [null, "narrow-strips", "window-returns"]) {
    await page.goto("/#/");
    if (example) await importJob(page, example, "cut");
    else {
      await page.locator("input[type=file]").setInputFiles({ name: "border.yaml", mimeType: "application/yaml", buffer: Buffer.from(border) });
      await page.waitForURL(/#\/job\//, slow);
      await page.goto(`/#/job/${new URL(page.url()).hash.split("/")[2]}/cut`);
    }
    await page.locator(".map button").first().waitFor(slow);
    const targets = await page.locator(".map button").evaluateAll((all) => all.map((b) => [b.getBoundingClientRect().width, b.getBoundingClientRect().height, b.textContent]));
    expect(targets.filter(([w, h]) => Number(w) < 43.5 || Number(h) < 43.5), String(example)).toEqual([]);
    const cuts = await page.locator(".strip .cut").count();
    expect(targets.length, String(example)).toBe(cuts);
    await expectNoStrayScroll(page);
  }
  await page.goto("/#/");
  await page.getByRole("link", { name: /Border/ }).first().click();
  await page.goto(`/#/job/${new URL(page.url()).hash.split("/")[2]}/cut`);
  const chip = page.locator(".narrow button").nth(3);
  await chip.waitFor(slow);
  await chip.click();
  expect(await chip.getAttribute("aria-pressed")).toBe("true");
  await expect.poll(() => page.locator('[data-spot="drop"][aria-pressed="true"]').count()).toBe(1);
  await expectAccessible(page);
  await chip.scrollIntoViewIfNeeded();
  await picture(page, `cut-narrow-${size}`);
  expect(t.complaints()).toEqual([]);
  await t.close();
});
