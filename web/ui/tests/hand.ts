import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

// What hands do to a page.

/** Goes on with Tab until something has the focus, as somebody without a mouse does. */
export async function tabTo(page: Page, to: Locator, most = 150): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press("Tab");
    if (await to.evaluate((el) => el === document.activeElement)) return;
  }
  const at = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200));
  expect.fail(`Tab does not come to ${to} within ${most} steps; it is at ${at}`);
}

/** Draws a finger over the page, from the middle of something by so many pixels. */
export async function fingerDrag(page: Page, from: Locator, dx: number, dy: number, steps = 12): Promise<void> {
  const box = (await from.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const cdp = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", at?: [number, number]) =>
    cdp.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
  await touch("touchStart", [x, y]);
  for (let i = 1; i <= steps; i++) await touch("touchMove", [x + (dx * i) / steps, y + (dy * i) / steps]);
  await touch("touchEnd");
  await cdp.detach();
}

/** Draws the mouse over the page with its button held. */
export async function mouseDrag(page: Page, from: Locator, dx: number, dy: number, steps = 12): Promise<void> {
  const box = (await from.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps });
  await page.mouse.up();
}
