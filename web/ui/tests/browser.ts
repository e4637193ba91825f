import { mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from "playwright-core";
import { expect } from "vitest";
import { serve, type Served } from "./serve";

// A browser for journeys. Whatever a page complains of, and every request that leaves
// the server's address, fails the test that made it.

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];

export const sizes = { phone: { width: 390, height: 844 }, small: { width: 360, height: 740 }, tablet: { width: 820, height: 1180 }, wide: { width: 1440, height: 900 } };
export type Themes = "light" | "dark" | "sunlight";

export interface Traveller {
  page: Page;
  context: BrowserContext;
  /** Complaints so far, taken away as they are read. */
  complaints(): string[];
  close(): Promise<void>;
}

export interface Journey {
  browser: Browser;
  served: Served;
  /** A browser of somebody else: with storage of its own. */
  travel(options?: BrowserContextOptions): Promise<Traveller>;
  end(): Promise<void>;
}

export async function begin(serving = serve()): Promise<Journey> {
  const served = await serving;
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: flags });
  return {
    browser,
    served,
    travel: (options) => travel(browser, served, options),
    async end() {
      await browser.close();
      await served.stop();
    },
  };
}

async function travel(browser: Browser, served: Served, options: BrowserContextOptions = {}): Promise<Traveller> {
  const context = await browser.newContext({ baseURL: served.origin, viewport: sizes.phone, locale: "en-GB", acceptDownloads: true, ...options });
  const heard: string[] = [];
  context.on("request", (r) => {
    if (!r.url().startsWith(served.origin) && !/^(data|blob):/.test(r.url())) heard.push(`a request leaves the server: ${r.url()}`);
  });
  const listen = (page: Page) => {
    page.on("console", (m) => {
      if (m.type() === "error" || m.type() === "warning") heard.push(`console: ${m.text()} (${m.location().url})`);
    });
    page.on("pageerror", (e) => heard.push(`error: ${e.message}\n${e.stack}`));
  };
  context.on("page", listen);
  context.setDefaultTimeout(10_000);
  const page = await context.newPage();
  return { page, context, complaints: () => heard.splice(0), close: () => context.close() };
}

/** Opens another tab of the same browser. */
export async function tab(t: Traveller, address: string): Promise<Page> {
  const page = await t.context.newPage();
  await page.goto(address);
  return page;
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Violation {
  id: string;
  help: string;
  nodes: { html: string; failureSummary?: string }[];
}

/** Fails for anything that axe finds at what the page shows, by the rules up to WCAG 2.2 AA. */
export async function expectAccessible(page: Page): Promise<void> {
  await page.evaluate(axeSource);
  const violations = await page.evaluate(async () => {
    const axe = (window as unknown as { axe: { run: (where: Document, options: object) => Promise<{ violations: Violation[] }> } }).axe;
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"];
    return (await axe.run(document, { runOnly: tags })).violations;
  });
  expect(violations.map((v) => `${v.id}: ${v.help}\n${v.nodes.map((n) => `  ${n.html.slice(0, 200)}\n  ${n.failureSummary ?? ""}`).join("\n")}`)).toEqual([]);
}

const folder = join(import.meta.dirname, "../../../build/screens");

/** A picture of the page, to be looked at: build/screens/NAME.png */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), animations: "allow", caret: "initial" });
}

/** No part of the page may stick out to the side, and on a phone none below. */
export async function expectNoStrayScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(over, "the page is wider than its window").toBe(0);
  const inside = await page.evaluate(() => [...document.querySelectorAll("dialog[open] .inside")].map((d) => d.scrollWidth - d.clientWidth));
  expect(Math.max(0, ...inside), "what a dialog shows is wider than the dialog").toBe(0);
  const stray = await page.evaluate(() => {
    const root = document.documentElement;
    const onPhone = innerWidth < 768 && document.querySelector(".job") !== null;
    return onPhone ? root.scrollHeight - root.clientHeight : 0;
  });
  expect(stray, "on a phone the work scrolls between head and rule, and not the page with both").toBe(0);
}
