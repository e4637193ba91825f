import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey, type Themes } from "./browser";
import { beginJob, settle } from "./hand";

// Every screen, every dialog and every state of them at every size in every theme:
// without complaints of the browser, without findings of axe, and with a picture in
// build/screens to be looked at. FIRSTDROP_SCREENS=all (make screens) does so in every
// language; otherwise German and French are looked at on a phone in daylight.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const themes: Themes[] = ["light", "dark", "sunlight"];
const isAll = process.env["FIRSTDROP_SCREENS"] === "all";

type Look = (what: string) => Promise<void>;

/** A screen, and what is done on it: it is looked at as it comes up, and after each step. */
interface Screen {
  place: string;
  ready?: string;
  steps?: [what: string, step: (page: Page) => Promise<void>][];
}

async function close(page: Page) {
  await page.keyboard.press("Escape");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
}
const tap = (page: Page, selector: string, nth = 0) => page.locator(selector).nth(nth).click();
const spot = async (page: Page, kind: string) => {
  await page.locator(`[data-spot="${kind}"]`).first().focus();
  await page.keyboard.press("Enter");
  await page.locator(".tapped").waitFor();
};
const part = (page: Page, n: number) => page.locator(".choose .strip label").nth(n).click();

const ofJob: Screen[] = [
  {
    place: "survey",
    ready: ".band path",
    steps: [
      ["survey-opening", (page) => tap(page, ".wall section li > button")],
      ["survey-kinds", async (page) => tap(page, ".wall section > div > button")],
      ["survey-room", async (page) => (await close(page), await part(page, 1))],
      ["survey-floor", (page) => tap(page, ".desk section button:has(svg)")],
      ["survey-check", async (page) => (await close(page), await part(page, 2))],
    ],
  },
  { place: "paper", ready: ".desk input", steps: [["paper-two", (page) => tap(page, ".which > button")]] },
  {
    place: "plan",
    ready: "path.part",
    steps: [
      ["plan-finding", (page) => spot(page, "finding")],
      ["plan-drop", (page) => spot(page, "drop")],
      ["plan-corner", (page) => spot(page, "corner")],
      ["plan-wall", (page) => spot(page, "wall")],
      ["plan-kill", (page) => spot(page, "kill")],
    ],
  },
  { place: "cut", ready: ".strip .cut", steps: [["cut-tapped", (page) => tap(page, ".strip .cut", 2)], ["cut-opened", (page) => tap(page, "section[aria-labelledby^=opened] button")]] },
  { place: "print", ready: ".row button" },
  { place: "history", ready: "ol li", steps: [["history-changes", (page) => tap(page, "ol .label")], ["history-naming", (page) => tap(page, "ol .do button")]] },
  { place: "conflict" },
];

async function travelled(page: Page, look: Look, complaints: () => string[]) {
  await page.locator("button.way").first().waitFor();
  await look("jobs-first");
  const job = await beginJob(page, "sample", "plan");
  for (const { place, ready, steps } of ofJob) {
    await page.goto(`/#/job/${job}/${place}`);
    await page.getByRole("main").waitFor();
    if (ready) await page.locator(ready).first().waitFor({ timeout: 30_000, state: "attached" });
    await page.waitForTimeout(150);
    await look(place);
    for (const [what, step] of steps ?? []) {
      await step(page);
      await page.waitForTimeout(100);
      await look(what);
    }
    await close(page);
    expect(complaints(), place).toEqual([]);
  }
  await dialogs(page, job, look);
}

/** What opens from the head of a job and from the list of jobs, and the bin. */
async function dialogs(page: Page, job: string, look: Look) {
  await page.goto(`/#/job/${job}/survey`);
  for (const [what, button] of [["saved", "header .saved"], ["rename", "header .name"], ["menu", "header > button:last-child"]] as const) {
    await tap(page, button);
    await page.locator("dialog[open]").waitFor();
    await look(what);
    await close(page);
  }
  await page.goto("/#/");
  await page.locator("main li > button").waitFor();
  await look("jobs");
  await tap(page, "main li > button");
  await look("jobs-more");
  await tap(page, "dialog[open] .do button", 1);
  await look("jobs-binned");
  await page.goto("/#/bin");
  await page.locator("main li").waitFor();
  await look("bin");
  await tap(page, "main li button", 1);
  await look("bin-sure");
  await close(page);
  for (const [place, address] of [["settings", "/#/settings"], ["lost", "/#/nowhere"], ["missing", "/#/job/none/plan"]] as const) {
    await page.goto(address);
    await page.getByRole("heading").first().waitFor();
    await look(place);
  }
}

/** Takes from the server what others have left there, so that the first visit is one. */
async function emptied(origin: string) {
  for (const list of ["jobs", "bin"]) {
    const { jobs } = (await (await fetch(`${origin}/api/${list}`)).json()) as { jobs: { id: string }[] };
    for (const { id } of jobs) for (const at of ["jobs", "bin"]) await fetch(`${origin}/api/${at}/${id}`, { method: "DELETE", headers: { Origin: origin } });
  }
}

const looks = Object.keys(sizes).flatMap((size) =>
  themes.flatMap((theme) => (["en-GB", "de", "fr"] as const).map((locale) => ({ size: size as keyof typeof sizes, theme, locale }))),
);

const wanted = looks.filter((l) => isAll || l.locale === "en-GB" || (l.size === "small" && l.theme === "light"));

describe.each(wanted.map((l) => [`${l.size} ${l.theme} ${l.locale}`, l] as const))("%s", (_, { size, theme, locale }) => {
  test("all screens and dialogs", { timeout: 240_000 }, async () => {
    await emptied(journey.served.origin);
    const viewport = sizes[size];
    const t = await journey.travel({ viewport, hasTouch: viewport.width < 900 });
    const { page } = t;
    await settle(page, { theme, locale });
    const look: Look = async (what) => {
      await picture(page, `${what}-${size}-${theme}-${locale}`);
      await expectNoStrayScroll(page);
      await expectAccessible(page);
      expect(t.complaints(), what).toEqual([]);
    };
    await travelled(page, look, t.complaints);
    await t.close();
  });
});
