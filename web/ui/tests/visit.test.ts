import { afterAll, beforeAll, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { begin, type Journey } from "./browser";
import { beginJob } from "./hand";

// First visits: the planner is most of what is fetched, and comes in filtered form.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

const planned = (page: Page) => page.locator("path.part").first().waitFor({ state: "attached", timeout: 30_000 });

test("whoever begins before the planner is there has it fetched once, and plans", async () => {
  const t = await journey.travel();
  const fetched: string[] = [];
  await t.page.context().route("**/*.filtered", async (route) => {
    fetched.push(new URL(route.request().url()).pathname);
    await new Promise((done) => setTimeout(done, 4000)); // a slow network
    await route.continue();
  });
  await beginJob(t.page, "sample", "plan");
  await planned(t.page);
  expect(fetched.filter((path) => path === "/planner.filtered")).toHaveLength(1);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("without a service worker the page puts the planner back itself, and plans", async () => {
  const t = await journey.travel({ serviceWorkers: "block" });
  await beginJob(t.page, "sample", "plan");
  await planned(t.page);
  expect(t.complaints().filter((c) => !c.includes("Service Worker registration blocked by Playwright"))).toEqual([]);
  await t.close();
});

test("where the service worker cannot be installed, the page plans all the same", async () => {
  const t = await journey.travel();
  await t.page.context().route("**/manifest.webmanifest", (route) => (route.request().serviceWorker() ? route.abort() : route.continue()));
  await beginJob(t.page, "sample", "plan");
  await planned(t.page);
  expect(await t.page.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
  await t.close();
});
