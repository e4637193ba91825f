import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey } from "./browser";
import { beginJob, fingerDrag, mouseDrag, settle, tabTo } from "./hand";

// A room is surveyed by touch, by keyboard alone, and with a mouse.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const field = (page: Page, label: string) => page.getByRole("textbox", { name: label, exact: true });
const value = (page: Page, label: string) => field(page, label).inputValue();
const wall = (page: Page) => page.getByRole("group", { name: /the walls unrolled/ });

async function open(page: Page, way: "own" | "sample"): Promise<void> {
  await beginJob(page, way, "survey");
  await wall(page).waitFor();
}

/** Taps on the floor drawing at parts of its width and height, from the lower left. */
async function tapFloor(page: Page, points: readonly [number, number][]): Promise<void> {
  const floor = page.getByRole("application");
  await floor.scrollIntoViewIfNeeded();
  const box = (await floor.boundingBox())!;
  for (const [x, y] of points) await page.touchscreen.tap(box.x + box.width * x, box.y + box.height * (1 - y));
}

describe("by touch on a phone", () => {
  test("a room is drawn, measured over, given a door, and the door moved", async () => {
    const t = await journey.travel({ viewport: sizes.phone, hasTouch: true, isMobile: true });
    const { page } = t;
    await open(page, "own");
    await page.getByText("Room", { exact: true }).tap();
    await page.getByRole("button", { name: "Draw the floor anew" }).tap();
    await expectAccessible(page);
    await tapFloor(page, [[0.1, 0.1], [0.1, 0.8], [0.5, 0.8], [0.5, 0.5], [0.9, 0.5], [0.9, 0.1]]);
    await picture(page, "survey-drawn-phone");
    await page.getByRole("button", { name: "Close the room" }).tap();
    await expect.poll(() => page.getByRole("button", { name: /Look at wall|you are looking at it/ }).count()).toBe(6);

    await page.getByText("Walls", { exact: true }).first().tap();
    await field(page, "Width").fill("412 cm");
    await expect.poll(() => wall(page).getByRole("button", { name: /^Wall .*4120/ }).count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Add an opening" }).tap();
    await expectAccessible(page);
    await page.getByRole("button", { name: "door", exact: true }).tap();
    const before = Number(await value(page, "From the wall's left end"));
    const grip = page.getByRole("slider", { name: "Move door" });
    await grip.scrollIntoViewIfNeeded();
    await fingerDrag(page, grip, 40, 0);
    await expect.poll(async () => Number(await value(page, "From the wall's left end"))).toBeGreaterThan(before + 100);
    await page.getByRole("button", { name: /^Undo: door moved/ }).tap();
    await expect.poll(async () => Number(await value(page, "From the wall's left end"))).toBe(before);
    await expectNoStrayScroll(page);
    await expectAccessible(page);
    await picture(page, "survey-door-phone");
    expect(t.complaints()).toEqual([]);
    await t.close();
  });
});

describe("by keyboard alone", () => {
  test("a wall is measured, a window placed to the millimetre, and all undone to the beginning", async () => {
    const t = await journey.travel({ viewport: sizes.wide });
    const { page } = t;
    await open(page, "own");
    await tabTo(page, field(page, "Width"));
    await page.keyboard.press("Control+A");
    await page.keyboard.type("4,30 m");
    await expect.poll(() => wall(page).getByRole("button", { name: /4300/ }).count()).toBeGreaterThan(0);
    const add = page.getByRole("button", { name: "Add an opening" });
    await tabTo(page, add);
    await page.keyboard.press("Enter");
    const window = page.getByRole("dialog").getByRole("button", { name: "window", exact: true });
    await tabTo(page, window);
    await page.keyboard.press("Enter");
    const left = field(page, "From the wall's left end");
    const was = Number(await left.inputValue());
    await page.keyboard.press("Shift+Tab");
    await tabTo(page, page.getByRole("slider", { name: "Move window" }), 400);
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Shift+ArrowRight");
    await expect.poll(async () => Number(await left.inputValue())).toBe(was + 11);
    await tabTo(page, page.getByRole("slider", { name: "Upper edge of window" }));
    const high = Number(await value(page, "Height"));
    await page.keyboard.press("ArrowDown");
    await expect.poll(async () => Number(await value(page, "Height"))).toBe(high - 1);
    for (let i = 0; i < 12 && (await page.getByRole("button", { name: /^Undo: / }).isEnabled().catch(() => false)); i++) await page.keyboard.press("Control+Z");
    await expect.poll(() => page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
    expect(await page.getByRole("slider").count()).toBe(0);
    expect(t.complaints()).toEqual([]);
    await t.close();
  });
});

describe("with a mouse", () => {
  test("an opening is sized at its edges, and what is typed wrong is told at its field and kept", async () => {
    const t = await journey.travel({ viewport: sizes.wide });
    const { page } = t;
    await open(page, "sample");
    await wall(page).getByRole("button", { name: /left window/ }).click();
    const width = page.getByRole("textbox", { name: "Width", exact: true }).last();
    expect(await width.inputValue()).toBe("1200");
    await mouseDrag(page, page.getByRole("slider", { name: "Right edge of left window" }), 30, 0);
    await expect.poll(async () => Number(await width.inputValue())).toBeGreaterThan(1200);

    const lower = field(page, "Lower edge");
    await lower.fill("nine");
    await expect.poll(() => lower.getAttribute("aria-invalid")).toBe("true");
    await expect.poll(() => page.getByRole("heading", { name: "To put right" }).count()).toBe(1);
    await expectAccessible(page);
    await picture(page, "survey-wrong-wide");
    expect(await lower.inputValue()).toBe("nine");
    await lower.fill("910");
    await expect.poll(() => page.getByRole("heading", { name: "To put right" }).count()).toBe(0);
    expect(t.complaints()).toEqual([]);
    await t.close();
  });

  test("a drag of a window leaves no frame over 50 ms, and Escape gives it up", async () => {
    const t = await journey.travel({ viewport: sizes.wide });
    const { page } = t;
    await open(page, "sample");
    await page.getByText("Show the paper").click();
    await wall(page).getByRole("button", { name: /left window/ }).click();
    const grip = page.getByRole("slider", { name: "Move left window" });
    const box = (await grip.boundingBox())!;
    const left = field(page, "From the wall's left end");
    const was = await left.inputValue();
    await page.evaluate(() => {
      const w = window as unknown as { frames: number[] };
      w.frames = [];
      let last = performance.now();
      const tick = (now: number) => {
        w.frames.push(now - last);
        last = now;
        if (w.frames.length < 2000) requestAnimationFrame(tick);
      };
      requestAnimationFrame(tick);
    });
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    const until = Date.now() + 5000;
    for (let i = 0; Date.now() < until; i++) {
      await page.mouse.move(box.x + box.width / 2 + 60 * Math.sin(i / 20), box.y + box.height / 2);
      await page.waitForTimeout(16);
    }
    const frames = await page.evaluate(() => (window as unknown as { frames: number[] }).frames.slice(2));
    const slow = frames.filter((f) => f > 50);
    console.log(`window dragged for 5 s: ${frames.length} frames, ${slow.length} over 50 ms, longest ${Math.round(Math.max(...frames))} ms`);
    await page.keyboard.press("Escape");
    await page.mouse.up();
    expect(await left.inputValue()).toBe(was);
    expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
    expect(t.complaints()).toEqual([]);
    await t.close();
  });
});

test("in German, and in feet and inches", async () => {
  const t = await journey.travel({ viewport: sizes.phone, locale: "de-DE" });
  const { page } = t;
  await settle(page, { locale: "de", units: "imperial" });
  await beginJob(page, "own", "survey");
  await page.getByRole("textbox", { name: "Breite", exact: true }).fill(`13' 4 1/2"`);
  await expect.poll(() => page.getByRole("button", { name: /^Wand .*13/ }).count()).toBeGreaterThan(0);
  await expectNoStrayScroll(page);
  await expectAccessible(page);
  await picture(page, "survey-german-phone");
  expect(t.complaints()).toEqual([]);
  await t.close();
});
