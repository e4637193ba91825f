import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, type Journey } from "./browser";
import { beginJob } from "./hand";
import { dist, serveFiles } from "./serve";

// A newer release comes while somebody works: the open page goes on with its own, says
// that there is another, and changes over when it is told to, with everything saved.

let journey: Journey;
const folder = mkdtempSync(join(tmpdir(), "firstdrop-release-"));
beforeAll(async () => {
  cpSync(dist, folder, { recursive: true });
  journey = await begin(serveFiles(folder));
});
afterAll(async () => {
  await journey?.end();
  rmSync(folder, { recursive: true, force: true });
});

/** Puts another release in place of the one that is served: its page says so. */
function release(name: string): void {
  const at = (file: string) => join(folder, file);
  const hash = (text: string) => createHash("sha256").update(text).digest("hex").slice(0, 16);
  const page = readFileSync(at("index.html"), "utf8");
  const next = page.replace(/<html lang="en"[^>]*>/, `<html lang="en" data-release="${name}">`);
  const worker = readFileSync(at("service-worker.js"), "utf8");
  expect(worker).toContain(hash(page));
  writeFileSync(at("index.html"), next);
  writeFileSync(at("service-worker.js"), worker.replaceAll(hash(page), hash(next)));
}

test("the page that is open works on, offers the new release, and takes it", { timeout: 90_000 }, async () => {
  const t = await journey.travel({ viewport: { width: 1440, height: 900 } });
  const { page } = t;
  await beginJob(page, "own", "survey");
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  const shown = () => page.evaluate(() => document.documentElement.dataset["release"] ?? "first");

  release("second");
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update());
  const offer = page.getByText("A newer version is ready.");
  await offer.waitFor({ timeout: 20_000 });

  // The old one goes on, reloads as itself while nobody takes the new one, and still offers it.
  await page.getByRole("textbox", { name: "Width", exact: true }).fill("4321");
  await page.getByRole("button", { name: /^Wall .*4321/ }).first().waitFor();
  await page.reload();
  expect(await shown()).toBe("first");
  await page.getByRole("button", { name: /^Wall .*4321/ }).first().waitFor();
  await offer.waitFor({ timeout: 20_000 });

  await page.getByRole("textbox", { name: "Width", exact: true }).fill("4444");
  await page.getByRole("button", { name: "Load it now" }).click();
  await expect.poll(shown).toBe("second");
  await page.getByRole("button", { name: /^Wall .*4444/ }).first().waitFor();
  expect(await offer.count()).toBe(0);
  // And without the server too.
  await journey.served.stop();
  await page.reload();
  expect(await shown()).toBe("second");
  await page.getByRole("button", { name: /^Wall .*4444/ }).first().waitFor();
  await journey.served.start();
  expect(t.complaints().filter((c) => !/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED/.test(c))).toEqual([]);
  await t.close();
});
