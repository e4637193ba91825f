import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey } from "./browser";
import { beginJob, mouseDrag, settle } from "./hand";

// A label is copied, a picture laid into its frame, and papers are compared.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const field = (page: Page, label: string) => page.getByRole("textbox", { name: label, exact: true });

async function open(page: Page): Promise<string> {
  const job = await beginJob(page, "own", "paper");
  await page.getByRole("group", { name: /the walls unrolled/ }).waitFor();
  return job;
}

test("a label is copied, number by number", async () => {
  const t = await journey.travel({ viewport: sizes.phone, hasTouch: true, isMobile: true });
  const { page } = t;
  await open(page);
  await page.getByRole("button", { name: /^Number 2/ }).tap();
  expect(await field(page, "Width").evaluate((el) => el === document.activeElement)).toBe(true);
  await field(page, "Width").fill("53 cm");
  await page.getByText("half drop", { exact: true }).tap();
  await expect.poll(() => field(page, "Repeat").getAttribute("aria-invalid").catch(() => null)).toBeDefined();
  await field(page, "Repeat").fill("64 cm");
  await expect.poll(() => page.locator("path.part").count()).toBeGreaterThan(20);
  await page.getByText("other offset", { exact: true }).tap();
  await field(page, "Offset, or the mark").fill("64/32 cm");
  await field(page, "Price of one pack").fill("31.50");
  await expect.poll(() => field(page, "Price of one pack").getAttribute("aria-invalid")).toBe("true");
  await field(page, "Price of one pack").fill("31.50 EUR");
  await expect.poll(() => field(page, "Price of one pack").getAttribute("aria-invalid")).toBe(null);
  await expectNoStrayScroll(page);
  await expectAccessible(page);
  await picture(page, "paper-label-phone");
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("what strips on the floor show goes before the label", async () => {
  const t = await journey.travel({ viewport: sizes.phone, hasTouch: true, isMobile: true });
  const { page } = t;
  await open(page);
  await page.getByText("straight", { exact: true }).tap();
  await field(page, "Repeat").fill("640 mm");
  await page.getByText("Measured on the floor").tap();
  await field(page, "From motif to motif in one strip").fill("128 mm");
  await field(page, "Strip 2: lower by").fill("0");
  await expect.poll(() => page.getByRole("status").filter({ hasText: "is not as its label says" }).count()).toBe(1);
  await page.getByRole("button", { name: "What would the label have bought?" }).tap();
  await expect.poll(() => page.getByText(/^Rolls by the label: \d+\. By the paper: \d+\.$/).count()).toBe(1);
  await field(page, "Strip 3: lower by").fill("40 mm");
  await expect.poll(() => field(page, "Strip 3: lower by").getAttribute("aria-invalid")).toBe("true");
  await field(page, "Strip 3: lower by").fill("1 mm");
  await expect.poll(() => field(page, "Strip 3: lower by").getAttribute("aria-invalid")).toBe(null);
  await field(page, "Strip 2: lower by").fill("");
  expect(await field(page, "Strip 3: lower by").inputValue()).toBe("1 mm"); // nothing typed is lost
  await field(page, "Strip 2: lower by").fill("0");
  await field(page, "From motif to motif in one strip").fill("64 cm");
  await page.getByText("The paper is as its label says.").waitFor();
  await field(page, "Strip 2: lower by").fill("32 cm");
  await expect.poll(() => page.getByRole("status").filter({ hasText: "320 mm lower" }).count()).toBe(1);
  await expectNoStrayScroll(page);
  await expectAccessible(page);
  await page.getByRole("img", { name: /^Four strips/ }).scrollIntoViewIfNeeded();
  await picture(page, "paper-measured-phone");
  await page.getByRole("status").filter({ hasText: "320 mm lower" }).scrollIntoViewIfNeeded();
  await picture(page, "paper-measured-found-phone");
  // A label that says too little to plan by is no label of 0 rolls.
  await field(page, "Repeat").fill("");
  await page.getByRole("button", { name: "What would the label have bought?" }).tap();
  await page.getByRole("status").getByText(/needs a repeat/).waitFor();
  expect(await page.getByText(/^Rolls by the label/).count()).toBe(0);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a picture is laid into its frame and hangs on the walls, here, on paper and on another device", { timeout: 180_000 }, async () => {
  const t = await journey.travel({ viewport: sizes.wide });
  const { page } = t;
  const job = await open(page);
  const file = { name: "design.png", mimeType: "image/png", buffer: readFileSync(join(import.meta.dirname, "../public/icon-512.png")) };
  await page.locator("input[type=file]").setInputFiles({ ...file, buffer: file.buffer.subarray(0, 300) });
  await expect.poll(() => page.getByRole("alert").filter({ hasText: "cannot be read as a picture" }).count()).toBe(1);
  await page.locator("input[type=file]").setInputFiles({ name: "x.svg", mimeType: "image/svg+xml", buffer: Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>") });
  await expect.poll(() => page.getByRole("alert").filter({ hasText: "cannot be read as a picture" }).count()).toBe(1);
  await page.locator("input[type=file]").setInputFiles(file);
  await page.getByRole("slider", { name: /^Size of the frame/ }).waitFor();
  await mouseDrag(page, page.getByRole("slider", { name: /^Size of the frame/ }), -60, -60);
  await page.getByRole("slider", { name: /^Frame/ }).focus();
  await page.keyboard.press("Shift+ArrowRight");
  await expectAccessible(page);
  await picture(page, "paper-frame-wide");
  await page.getByRole("button", { name: "Take what is in the frame" }).click();
  await expect.poll(() => page.getByRole("img", { name: /^Picture of/ }).count()).toBeGreaterThan(0);
  await picture(page, "paper-picture-wide");

  expect(t.complaints()).toEqual([]);

  if (journey.served.real) {
    await expect.poll(async () => (await (await fetch(`${journey.served.origin}/api/jobs/${job}/pictures`)).json()).pictures?.length ?? 0, { timeout: 15_000 }).toBe(1);
    const other = await journey.travel({ viewport: sizes.phone });
    await other.page.goto(`/#/job/${job}/paper`);
    await other.page.goto("/");
    await expect.poll(() => other.page.getByText("My room").count(), { timeout: 15_000 }).toBeGreaterThan(0);
    await other.page.goto(`/#/job/${job}/paper`);
    await expect.poll(() => other.page.getByRole("img", { name: /^Picture of/ }).count(), { timeout: 20_000 }).toBeGreaterThan(0);
    await other.close();
  }

  // The sheets show it too: a PDF with the picture in it is larger than one without.
  const sheets = async () => {
    await page.goto(`/#/job/${job}/print`);
    const [file] = await Promise.all([page.waitForEvent("download", { timeout: 60_000 }), page.getByRole("button", { name: /PDF/ }).click()]);
    return statSync((await file.path())!).size;
  };
  const shown = await sheets();
  await page.keyboard.press("Control+Z");
  expect(shown).toBeGreaterThan((await sheets()) + 5000);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a picture of the user's own hangs in the room in three dimensions, and goes with its last trace", { timeout: 180_000 }, async () => {
  const t = await journey.travel({ viewport: sizes.wide });
  const { page } = t;
  await settle(page);
  const job = await open(page);
  // All magenta, which nothing else in the room is.
  const magenta = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(64, 64);
    const paint = canvas.getContext("2d")!;
    paint.fillStyle = "#ff00ff";
    paint.fillRect(0, 0, 64, 64);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer())];
  });
  await page.locator("input[type=file]").setInputFiles({ name: "plain.png", mimeType: "image/png", buffer: Buffer.from(magenta) });
  await page.getByRole("button", { name: "Take what is in the frame" }).click();
  await expect.poll(() => page.getByRole("img", { name: /^Picture of/ }).count()).toBeGreaterThan(0);

  /** What part of the view is of the picture's colour, in daylight or in the shade. */
  const share = async () => {
    const shown = (await page.getByRole("application").screenshot()).toString("base64");
    return page.evaluate(async (png) => {
      const image = await createImageBitmap(new Blob([Uint8Array.from(atob(png), (c) => c.charCodeAt(0))]));
      const paint = new OffscreenCanvas(image.width, image.height).getContext("2d")!;
      paint.drawImage(image, 0, 0);
      const { data } = paint.getImageData(0, 0, image.width, image.height);
      let found = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i]! > 80 && data[i + 2]! > 80 && data[i + 1]! < data[i]! / 3) found++;
      return found / (data.length / 4);
    }, shown);
  };
  const look = async () => {
    await page.goto(`/#/job/${job}/plan`);
    await page.locator("path.part").first().waitFor({ state: "attached", timeout: 30_000 });
    await page.getByRole("button", { name: "See the room" }).click();
    await page.getByRole("application").waitFor();
  };
  await look();
  await expect.poll(share, { timeout: 30_000 }).toBeGreaterThan(0.1);
  await picture(page, "solid-own-wide");
  await page.reload(); // it is kept on the device
  await look();
  await expect.poll(share, { timeout: 30_000 }).toBeGreaterThan(0.1);
  await page.keyboard.press("Escape");
  await expect.poll(() => page.getByRole("application").count()).toBe(0);
  await page.keyboard.press("Control+Z");
  await look();
  await page.waitForTimeout(1500);
  expect(await share()).toBe(0);
  expect(t.complaints().filter((c) => !c.includes("GPU stall due to ReadPixels"))).toEqual([]); // of taking pictures
  await t.close();
});

test("two papers are compared for the room, and one is chosen", async () => {
  const t = await journey.travel({ viewport: sizes.wide });
  const { page } = t;
  await open(page);
  await page.getByRole("button", { name: "Add a paper to compare" }).click();
  await field(page, "Width").fill("70 cm");
  await page.getByRole("button", { name: "Compare the papers" }).click();
  const cards = page.getByRole("listitem").filter({ has: page.getByRole("heading", { level: 3 }) });
  await expect.poll(() => cards.count(), { timeout: 30_000 }).toBe(2);
  await expectAccessible(page);
  await picture(page, "paper-compare-wide");
  await cards.nth(1).getByRole("button", { name: "Plan with this paper" }).click();
  await expect.poll(() => page.getByText("Something has changed since").count()).toBe(1);
  await expect.poll(() => cards.nth(1).getByText("This paper is planned.").count()).toBe(1);
  expect(t.complaints()).toEqual([]);
  await t.close();
});
