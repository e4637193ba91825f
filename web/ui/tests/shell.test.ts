import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, tab, type Journey } from "./browser";
import { beginJob, kept, tabTo } from "./hand";

// Round the jobs: the list, menus, dialogs, settings, the bin, conflicts.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name, ...(typeof name === "string" && { exact: true }) });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim() || document.activeElement?.getAttribute("aria-label"));

test("the whole shell by keyboard alone", { timeout: 120_000 }, async () => {
  const t = await journey.travel({ viewport: sizes.wide });
  const { page } = t;
  const press = (...keys: string[]) => keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
  const go = async (name: string | RegExp) => {
    await tabTo(page, button(page, name).first());
    await press("Enter");
  };
  await page.goto("/");
  await go(/own room/);
  await page.waitForURL(/#\/job\//);

  // The first Tab on a new screen is near its beginning, and the work can be jumped to.
  await page.getByRole("textbox", { name: "Width", exact: true }).waitFor();
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await tabTo(page, page.getByRole("link", { name: "Skip to the work" }).or(page.locator("a.skip")), 400);
  await press("Enter");
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("main");

  // Renamed in a dialog that keeps the focus, closes with Escape, and gives it back.
  await page.reload();
  await go(/Rename/);
  await page.getByRole("dialog").waitFor();
  await tabTo(page, page.getByRole("textbox", { name: "Name of the job" }));
  await press("Control+A");
  await page.keyboard.type("By keys");
  for (let i = 0; i < 6; i++) {
    await press("Tab");
    expect(await page.evaluate(() => document.activeElement === document.body || !!document.activeElement?.closest("dialog"))).toBe(true);
  }
  await press("Escape");
  await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
  expect(await focused(page)).toContain("By keys");

  await go("Menu");
  await tabTo(page, page.getByRole("dialog").getByRole("link", { name: "History" }));
  await press("Enter");
  await page.getByRole("heading", { name: "History" }).waitFor();
  await page.goto("/#/");
  await go("More for By keys");
  await go("Make a copy");
  await button(page, /More for By keys \(copy\)/).waitFor();

  // Both go into the bin, and the bin is emptied.
  for (const name of ["More for By keys (copy)", "More for By keys"]) {
    await go(name);
    await go("Put into the bin");
    await button(page, name).waitFor({ state: "detached" });
  }
  await tabTo(page, page.getByRole("link", { name: "Bin", exact: true }));
  await press("Enter");
  await go("Empty the bin");
  await page.getByText("Delete 2 jobs").waitFor();
  await expectAccessible(page);
  await tabTo(page, page.getByRole("dialog").getByRole("button", { name: "Empty the bin" }));
  await press("Enter");
  await page.getByText("The bin is empty.").waitFor();

  // A language and a look are chosen with arrow keys.
  await page.goto("/#/settings");
  await tabTo(page, page.getByRole("radio", { name: "English (Britain)" }));
  await press("ArrowRight", "ArrowRight");
  await page.getByRole("heading", { name: "Einstellungen" }).waitFor();
  await tabTo(page, page.getByRole("radio", { name: "Wie das Gerät" }));
  await press("ArrowRight");
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset["theme"])).toBe("light");
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("on a narrow phone long names of jobs take more lines, and are not cut off", async () => {
  const t = await journey.travel({ viewport: sizes.small });
  const { page } = t;
  await beginJob(page, "own", "survey");
  // One word that is wider than the screen, and many that are.
  for (const [i, name] of ["Wohnzimmertreppenhausundesszimmerdurchgangsbereich", "Hall and stairs up to the attic"].entries()) {
    await page.locator("header .name").click();
    await page.getByRole("textbox", { name: "Name of the job" }).fill(name);
    await button(page, "Done").click();
    const head = page.locator("header .name");
    await expect.poll(() => head.textContent()).toContain(name);
    expect(await head.evaluate((e) => e.scrollWidth - e.clientWidth), name).toBeLessThanOrEqual(0);
    if (i === 1) expect(await head.evaluate((e) => e.scrollHeight - e.clientHeight), "two lines are room enough").toBeLessThanOrEqual(0);
    await expectNoStrayScroll(page);
    await page.goto("/#/");
    const listed = page.getByRole("listitem").getByText(name, { exact: true });
    await listed.waitFor();
    await expectNoStrayScroll(page);
    expect(await listed.evaluate((e) => e.scrollWidth - e.clientWidth), name).toBeLessThanOrEqual(0);
    await listed.click();
  }
  await picture(page, "names-small");
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("what is deleted for good is gone from the server, and lies in the bin of the other device", { timeout: 90_000 }, async (context) => {
  if (!journey.served.real) context.skip("the program has not been built with what it serves");
  const [van, phone] = [await journey.travel({ viewport: sizes.wide }), await journey.travel()];
  await beginJob(van.page, "sample", "plan"); // a server without any job would get all of them anew
  const job = await beginJob(van.page, "own", "survey");
  const there = async (path: string) => (await fetch(`${journey.served.origin}/api/${path}/${job}`)).status;
  // By its number: an attempt that failed leaves a job of the same name on the server.
  const card = (page: Page) => page.getByRole("listitem").filter({ has: page.locator(`a[href*="${job}"]`) });
  await expect.poll(() => there("jobs"), { timeout: 30_000 }).toBe(200);
  await phone.page.goto("/");
  await card(phone.page).waitFor();

  await van.page.goto("/#/");
  await card(van.page).getByRole("button", { name: "More for My room" }).click();
  await button(van.page, "Put into the bin").click();
  await van.page.goto("/#/bin");
  const binned = van.page.getByRole("listitem").filter({ hasText: "My room" });
  await binned.getByRole("button", { name: "Delete for good" }).click();
  await van.page.getByRole("dialog").getByRole("button", { name: "Delete for good" }).click();
  await binned.waitFor({ state: "detached" });
  await expect.poll(() => there("jobs")).toBe(404);

  await phone.page.evaluate(() => dispatchEvent(new Event("online")));
  await card(phone.page).waitFor({ state: "detached" });
  await phone.page.goto("/#/bin");
  await phone.page.getByRole("heading", { name: "My room" }).waitFor();
  expect(await there("jobs")).toBe(404);
  expect([...van.complaints(), ...phone.complaints()].filter((c) => !c.includes("404"))).toEqual([]);
  await van.close();
  await phone.close();
});

test("a state that is named here is found on the other device, and brought back there", { timeout: 90_000 }, async (context) => {
  if (!journey.served.real) context.skip("the program has not been built with what it serves");
  const [van, phone] = [await journey.travel({ viewport: sizes.wide }), await journey.travel()];
  const job = await beginJob(van.page, "own", "survey");
  const width = (page: Page) => page.getByRole("textbox", { name: "Width", exact: true });
  await width(van.page).fill("4100");
  await van.page.goto(`/#/job/${job}/history`);
  await button(van.page, "Give a name").first().click();
  await van.page.getByRole("dialog").getByRole("textbox").fill("as measured");
  await button(van.page, "Done").click();
  await van.page.goto(`/#/job/${job}/survey`);
  await width(van.page).fill("4200");
  await expect.poll(async () => JSON.stringify(await (await fetch(`${journey.served.origin}/api/jobs/${job}/history`)).json())).toContain("as measured");
  await van.page.locator("header .saved.server").waitFor();

  await phone.page.goto("/");
  await phone.page.locator(`a[href*="${job}"]`).click();
  await expect.poll(() => width(phone.page).inputValue()).toBe("4200");
  await phone.page.goto(`/#/job/${job}/history`);
  await phone.page.getByText("as measured").waitFor();
  await expectAccessible(phone.page);
  await phone.page.getByRole("listitem").filter({ hasText: "as measured" }).getByRole("button").click();
  await phone.page.goto(`/#/job/${job}/survey`);
  await expect.poll(() => width(phone.page).inputValue()).toBe("4100");
  expect([...van.complaints(), ...phone.complaints()]).toEqual([]);
  await van.close();
  await phone.close();
});

test.each([["small", "light"], ["wide", "dark"]] as const)("two versions, as they are shown and decided, %s %s", { timeout: 90_000 }, async (size, theme) => {
  const t = await journey.travel({ viewport: sizes[size], colorScheme: theme });
  const { page } = t;
  const job = await beginJob(page, "own", "survey");
  const second = await tab(t, page.url());
  await second.getByRole("textbox", { name: "Width", exact: true }).waitFor();
  // Neither hears of the other, be it from the tab beside it or from the server.
  for (const p of [page, second]) await p.evaluate(() => (BroadcastChannel.prototype.postMessage = () => {}));
  await page.context().setOffline(true);
  const width = (p: Page) => p.getByRole("textbox", { name: "Width", exact: true });
  await width(page).fill("4100");
  await expect.poll(async () => JSON.stringify(await kept(page))).toContain("4100");
  await width(second).fill("4200");
  await second.getByRole("link", { name: "See the difference" }).waitFor();
  await expectAccessible(second);
  await picture(second, `conflict-told-${size}-${theme}`);
  await second.locator("header .saved").click();
  await second.getByRole("dialog").waitFor();
  await expectAccessible(second);
  await second.keyboard.press("Escape");
  await second.goto(`/#/job/${job}/conflict`);
  await second.getByRole("cell", { name: "4200" }).waitFor();
  await expectAccessible(second);
  await picture(second, `conflict-shown-${size}-${theme}`);
  await second.getByRole("button", { name: "Keep both as two jobs" }).click();
  await second.waitForURL(/#\/job\/.*survey/); // where it goes on once both are kept
  await second.goto("/#/");
  await second.getByRole("link", { name: /My room/ }).nth(1).waitFor();
  expect(t.complaints().filter((c) => !c.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
  await t.close();
});
