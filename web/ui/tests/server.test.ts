import { afterAll, beforeAll, expect, test } from "vitest";
import { begin, type Journey } from "./browser";
import { beginJob } from "./hand";

// Two devices and the real program: what one saves, the other sees; what both changed
// while the server was gone is kept on both.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

test("a job goes from one device over the server to the other; both edit without a server; both are kept", async (context) => {
  if (!journey.served.real) context.skip("the program has not been built with what it serves");
  const [van, phone] = [await journey.travel({ viewport: { width: 1440, height: 900 } }), await journey.travel()];
  const saved = (words: string) => ({ name: words, exact: true });
  const rename = async (page: typeof van.page, name: string) => {
    await page.getByRole("button", { name: "Rename" }).click();
    await page.getByRole("textbox", { name: "Name of the job" }).fill(name);
    await page.getByRole("button", { name: "Done" }).click();
  };
  const title = (page: typeof van.page) => page.getByRole("banner").getByRole("heading").textContent();

  await beginJob(van.page, "sample", "plan");
  await rename(van.page, "From the van");
  await van.page.getByRole("button", saved("Saved on the server")).waitFor();

  await phone.page.goto("/");
  await phone.page.getByRole("link", { name: /From the van/ }).click();
  await rename(phone.page, "From the phone");
  await phone.page.getByRole("button", saved("Saved on the server")).waitFor();
  await van.page.goto("/#/");
  await van.page.reload();
  await van.page.getByRole("link", { name: /From the phone/ }).click();

  expect(van.complaints()).toEqual([]);
  expect(phone.complaints()).toEqual([]);
  await journey.served.stop();
  await rename(van.page, "Van alone");
  await van.page.getByRole("button", saved("No server")).waitFor();
  await rename(phone.page, "Phone alone");
  await phone.page.getByRole("button", saved("No server")).waitFor();

  await journey.served.start();
  await van.page.evaluate(() => dispatchEvent(new Event("online")));
  await van.page.getByRole("button", saved("Saved on the server")).waitFor();
  await phone.page.evaluate(() => dispatchEvent(new Event("online")));
  await phone.page.getByRole("link", { name: "See the difference" }).click();
  await phone.page.getByRole("cell", { name: "Van alone" }).waitFor();
  expect(await title(phone.page)).toContain("Phone alone");
  await phone.page.getByRole("button", { name: "Keep both as two jobs" }).click();
  await phone.page.getByRole("button", saved("Saved on the server")).waitFor();

  await van.page.evaluate(() => dispatchEvent(new Event("online")));
  await expect.poll(() => title(van.page)).toContain("Phone alone");
  await van.page.goto("/#/");
  await van.page.getByRole("link", { name: /Van alone \(copy\)/ }).waitFor();
  await van.close();
  await phone.close();
});
