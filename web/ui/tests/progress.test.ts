import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey } from "./browser";
import { importJob, settle } from "./hand";

// Work that takes over a second says how far it is, as a bar for the whole of it, and in words
// for the part that is under way.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

/** Notes every state of the bars from now on, in the page itself, so that none is missed. */
async function watchBars(page: Page): Promise<() => Promise<{ text: string; part: number }[]>> {
  await page.evaluate(() => {
    const seen: { text: string; part: number }[] = [];
    Object.assign(window, { seen });
    new MutationObserver(() => {
      for (const far of document.querySelectorAll(".far")) {
        seen.push({ text: far.textContent!.trim(), part: far.querySelector("progress")!.position });
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
  });
  return () => page.evaluate(() => (window as unknown as { seen: { text: string; part: number }[] }).seen);
}

test.each([
  ["phone", "en-GB", /^\d[\d,]* of \d[\d,]* starts tried$/, /^\d+ of \d+ other layouts planned$/],
  ["wide", "de", /^\d[\d.]* von \d[\d.]* Anfängen versucht$/, /^\d+ von \d+ anderen Einteilungen geplant$/],
] as const)("a whole search and other plans, %s %s", { timeout: 240_000 }, async (size, locale, starts, layouts) => {
  const t = await journey.travel({ viewport: sizes[size], hasTouch: size === "phone" });
  const { page } = t;
  await page.clock.install();
  await settle(page, { locale });
  await importJob(page, "attic", "plan");
  await page.locator("path.part").first().waitFor({ state: "attached", timeout: 60_000 });
  const bars = await watchBars(page);
  await page.locator("section[aria-labelledby=alternatives] button").first().click();
  await page.clock.fastForward(1000); // what a bar waits for: this machine may be done before
  await page.locator(".far").first().waitFor({ timeout: 60_000 });
  await page.locator(".far").first().scrollIntoViewIfNeeded();
  await picture(page, `progress-${size}-${locale}`);
  await expectAccessible(page);
  await expectNoStrayScroll(page);
  await page.locator("section[aria-labelledby=alternatives] li").first().waitFor({ timeout: 120_000 });
  const seen = await bars();
  for (const kind of [starts, layouts]) {
    const parts = seen.filter((s) => kind.test(s.text)).map((s) => s.part);
    expect(new Set(parts).size, `${kind}: ${JSON.stringify(seen.slice(0, 5))}`).toBeGreaterThan(1);
  }
  // One bar for the whole of it, that only goes forward and comes most of the way.
  const parts = seen.map((s) => s.part);
  expect(parts).toEqual(parts.toSorted((a, b) => a - b));
  expect(parts.at(-1)).toBeGreaterThan(0.6);
  expect(parts.at(-1)).toBeLessThan(1);
  expect(await page.locator(".far").count()).toBe(0);
  expect(t.complaints()).toEqual([]);
  await t.close();
});
