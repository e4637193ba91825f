import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

// What hands do to a page.

type Place = "survey" | "paper" | "plan" | "cut" | "history" | "conflict" | "print";

/** Begins a job as people do, one's own room or the furnished sample, goes to one of its screens, and tells the job's id. */
export async function beginJob(page: Page, way: "own" | "sample", place: Place): Promise<string> {
  await page.goto("/");
  await page.locator("button.way").nth(way === "own" ? 0 : 1).click();
  await page.waitForURL(/#\/job\//);
  const job = new URL(page.url()).hash.split("/")[2]!;
  await page.goto(`/#/job/${job}/${place}`);
  await page.getByRole("main").waitFor();
  return job;
}

const examples = join(import.meta.dirname, "../../../examples");

/** Imports one of the examples, goes to one of its screens, and tells the job's id. */
export async function importJob(page: Page, example: string, place: Place): Promise<string> {
  await page.goto("/#/");
  await page.locator("input[type=file]").setInputFiles(join(examples, `${example}.yaml`));
  await page.waitForURL(/#\/job\//, { timeout: 60_000 });
  const job = new URL(page.url()).hash.split("/")[2]!;
  await page.goto(`/#/job/${job}/${place}`);
  await page.getByRole("main").waitFor();
  return job;
}

/** The jobs' documents and standing, as the device keeps them. */
export function kept(page: Page) {
  return page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((done, failed) => {
      const r = indexedDB.open("firstdrop");
      r.onsuccess = () => done(r.result);
      r.onerror = () => failed(r.error);
    });
    const all = await new Promise<{ id: string; name: string; head: string; conflicts: string[]; document: { name: string; note?: string }; server?: { version: number; revision: string } }[]>((done) => {
      const r = db.transaction("jobs").objectStore("jobs").getAll();
      r.onsuccess = () => done(r.result as never);
    });
    db.close();
    return all;
  });
}

/** How the device speaks, measures and looks from the first screen on; what is not said is as in a British house. */
export async function settle(page: Page, settings: { locale?: string; units?: string; theme?: string } = {}): Promise<void> {
  await page.goto("/");
  await page.evaluate((s) => localStorage.setItem("firstdrop.settings", JSON.stringify(s)), { locale: "en-GB", units: "metric", theme: "light", ...settings });
  await page.reload();
}

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
