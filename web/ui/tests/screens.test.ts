import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { begin, expectAccessible, expectNoSidewaysScroll, picture, sizes, type Journey, type Themes } from "./browser";

// Every screen at every size in every theme: without complaints of the browser, without
// findings of axe, and with a picture in build/screens to be looked at.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const themes: Themes[] = ["light", "dark", "sunlight"];
const places = ["survey", "paper", "plan", "cut", "history", "conflict", "print"];

describe.each(Object.entries(sizes))("%s", (name, viewport) => {
  test.each(themes)("%s", async (theme) => {
    const t = await journey.travel({ viewport, hasTouch: viewport.width < 900 });
    const { page } = t;
    await page.goto("/");
    await page.evaluate((theme) => localStorage.setItem("firstdrop.settings", JSON.stringify({ theme })), theme);
    await page.reload();
    const look = async (what: string) => {
      await expectNoSidewaysScroll(page);
      await expectAccessible(page);
      await picture(page, `${what}-${name}-${theme}`);
      expect(t.complaints()).toEqual([]);
    };
    await page.getByRole("button", { name: "Look round" }).waitFor();
    await look("jobs-first");
    await page.getByRole("button", { name: "Look round" }).click();
    await page.waitForURL(/job/);
    const job = new URL(page.url()).hash.split("/")[2];
    for (const place of places) {
      await page.goto(`/#/job/${job}/${place}`);
      await page.getByRole("main").waitFor();
      await page.waitForTimeout(150);
      await look(place);
    }
    for (const [place, address] of [["jobs", "/#/"], ["settings", "/#/settings"], ["bin", "/#/bin"], ["lost", "/#/nowhere"], ["missing", "/#/job/none/plan"]]) {
      await page.goto(address!);
      await page.getByRole("heading", { level: 1 }).or(page.getByRole("heading", { level: 2 })).first().waitFor();
      await look(place!);
    }
    await t.close();
  });
});
