import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { begin, tab, type Journey, type Traveller } from "./browser";
import { beginJob, kept } from "./hand";
import type { Page } from "playwright-core";

// What is saved where: without a network, in two tabs, after a crash. Journeys use the
// history's own words to see what a job says.

let journey: Journey;
let t: Traveller;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());
beforeEach(async () => void (t = await journey.travel()));
afterEach(async () => {
  await t.close();
  await journey.served.start();
});

/** Begins a room of one's own, and tells its address. */
async function ownRoom(page: Page): Promise<string> {
  await beginJob(page, "own", "survey");
  return page.url();
}

/** A complaint about the server that the test itself has stopped is none. */
const own = (all: string[]) => all.filter((c) => !/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED|ERR_SOCKET|ERR_EMPTY_RESPONSE|404 \(Not Found\)/.test(c));

/** Puts a job into the state that the worker controls the page and everything is on the device. */
async function ready(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        navigator.serviceWorker.addEventListener("message", (e) => e.data === "all is here" && done());
        navigator.serviceWorker.controller!.postMessage("fetch the rest");
      }),
  );
}

async function rename(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: "Rename" }).click();
  await page.getByRole("textbox", { name: "Name of the job" }).fill(name);
  await page.getByRole("button", { name: "Done" }).click();
  await expect.poll(async () => (await kept(page)).some((k) => k.name === name)).toBe(true);
}

test("after one visit everything opens with the server gone, edits are kept, and time to interactive is short", async () => {
  const { page } = t;
  const address = await ownRoom(page);
  await ready(page);
  await journey.served.stop();
  const began = Date.now();
  await page.goto("about:blank");
  await page.goto(address);
  await page.getByRole("button", { name: "Rename" }).waitFor();
  console.log(`reload without a server: ${Date.now() - began} ms until the job can be edited`);
  await rename(page, "Hall");
  await page.reload();
  await expect.poll(() => page.getByRole("banner").getByRole("heading").textContent()).toContain("Hall");
  await page.goto(journey.served.origin + "/#/");
  await page.getByRole("link", { name: /Hall/ }).waitFor();
  expect(own(t.complaints())).toEqual([]);
});

test("undo goes to the beginning, redo back to the end, also over a reload and from the keyboard", async () => {
  const { page } = t;
  await ownRoom(page);
  for (const name of ["one", "two", "three"]) await rename(page, name);
  await page.reload();
  const title = page.getByRole("banner").getByRole("heading");
  await expect.poll(() => title.textContent()).toContain("three");
  for (const want of ["two", "one", "My room"]) {
    await page.keyboard.press("Control+z");
    await expect.poll(() => title.textContent()).toContain(want);
  }
  await expect.poll(() => page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
  for (const want of ["one", "two", "three"]) {
    await page.getByRole("button", { name: /^Redo/ }).click();
    await expect.poll(() => title.textContent()).toContain(want);
  }
  expect(own(t.complaints())).toEqual([]);
});

test("the second tab follows the first", async () => {
  const { page } = t;
  const address = await ownRoom(page);
  const second = await tab(t, address);
  await second.getByRole("button", { name: "Rename" }).waitFor();
  await rename(page, "seen");
  await expect.poll(() => second.getByRole("banner").getByRole("heading").textContent()).toContain("seen");
  expect(own(t.complaints())).toEqual([]);
});

test("two tabs that both edited keep both, say so, and one decides", async () => {
  const { page } = t;
  const address = await ownRoom(page);
  const second = await tab(t, address);
  await second.getByRole("button", { name: "Rename" }).waitFor();
  // The second tab hears nothing for a while, as a tab in the background may.
  await second.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await page.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await rename(page, "first");
  await rename(second, "second");
  await second.getByRole("link", { name: "See the difference" }).click();
  await second.getByRole("cell", { name: "first" }).waitFor();
  await second.getByRole("cell", { name: "second" }).waitFor();
  await second.getByRole("button", { name: "Go on with the other one" }).click();
  await expect.poll(() => second.getByRole("banner").getByRole("heading").textContent()).toContain("first");
  const [job] = await kept(second);
  expect(job!.conflicts).toEqual([]);
  // What was left stands in the history.
  await second.goto(address.replace("survey", "history"));
  await second.getByText("Kept the other version").waitFor();
  expect(await second.getByRole("button", { name: "Name of the job" }).count()).toBeGreaterThanOrEqual(2);
  expect(own(t.complaints())).toEqual([]);
});
