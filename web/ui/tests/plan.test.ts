import { afterAll, beforeAll, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { begin, expectAccessible, expectNoStrayScroll, picture, sizes, type Journey, type Themes, type Traveller } from "./browser";
import { beginJob, importJob, mouseDrag, settle, tabTo } from "./hand";

// The plan on the screen: the start is dragged and everything follows, what is tapped
// is told of, another plan is chosen, the room is looked at in three dimensions.

let journey: Journey;
beforeAll(async () => void (journey = await begin()));
afterAll(() => journey?.end());

/** The plan of the furnished sample. */
async function sample(options: Parameters<Journey["travel"]>[0], settings: Parameters<typeof settle>[1] = {}): Promise<Traveller> {
  const t = await journey.travel(options);
  await settle(t.page, settings);
  await beginJob(t.page, "sample", "plan");
  return t;
}

const start = (page: Page) => page.getByRole("slider", { name: /start line/i });
const at = (page: Page) => start(page).getAttribute("aria-valuetext");
/** What the paper looks like: the outlines of all parts, and where their drops stand. */
const paper = (page: Page) => page.locator("path.part").evaluateAll((all) => all.map((p) => [p.parentElement!.getAttribute("transform"), p.getAttribute("d")]).join());
/** Plans take their time where several look for them at once. */
const soon = { timeout: 20_000 };
const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ }).first().getAttribute("aria-label");

async function planned(page: Page) {
  await start(page).waitFor();
  await page.locator("path.part").first().waitFor({ state: "attached" });
}

async function changes<T>(read: () => Promise<T>, from: T): Promise<T> {
  await expect.poll(read, soon).not.toEqual(from);
  return read();
}

async function middleOf(page: Page, selector: string) {
  const box = (await page.locator(selector).first().boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test("a finger drags the start, and the paper follows while it is held", async () => {
  const t = await sample({ viewport: sizes.phone, hasTouch: true });
  const { page } = t;
  await planned(page);
  const [from, before] = [await at(page), await paper(page)];
  const finger = await t.context.newCDPSession(page);
  const { x, y } = await middleOf(page, ".line.start .grip");
  const touch = (type: string, dx = 0) => finger.send("Input.dispatchTouchEvent", { type: type as "touchMove", touchPoints: type === "touchEnd" ? [] : [{ x: x + dx, y: y + 2 }] });
  await touch("touchStart");
  for (let dx = 0; dx <= 60; dx += 4) await touch("touchMove", -dx);
  expect(await at(page)).not.toBe(from);
  await changes(() => paper(page), before);
  expect(await undo(page)).toBe("Undo"); // nothing is done before it is let go
  await touch("touchEnd");
  await expect.poll(() => undo(page), soon).toMatch(/Undo: Start moved to wall A, \d+ mm/);
  const moved = await paper(page);
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await changes(() => paper(page), moved);
  await expect.poll(() => at(page), soon).toBe(from);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("keys move the start by 1 and by 10 mm, and it is let go to the planner again", async () => {
  const t = await sample({ viewport: sizes.wide });
  const { page } = t;
  await planned(page);
  const found = (await at(page))!;
  const mm = async () => Number(/(\d+) mm/.exec((await at(page))!)![1]);
  const first = await mm();
  await start(page).focus();
  await page.keyboard.press("ArrowRight");
  expect(await mm()).toBe(first + 1);
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("PageDown");
  expect(await mm()).toBe(first - 19);
  await page.keyboard.press("Enter");
  await page.getByRole("region", { name: "Start line" }).getByRole("button", { name: "Let the planner choose the start" }).click();
  await expect.poll(() => at(page), soon).toBe(found);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("imperial steps are sixteenths, and the job keeps them exact", async () => {
  const t = await sample({ viewport: sizes.wide }, { units: "imperial", locale: "en-US" });
  const { page } = t;
  await planned(page);
  await start(page).focus();
  await page.keyboard.press("ArrowRight");
  expect(await at(page)).toMatch(/^A, (\d+' )?(\d+ )?(\d+|\d+\/(2|4|8|16))"$/);
  await expect.poll(() => undo(page), soon).toContain((await at(page))!.slice(3));
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a mouse drags for five seconds without the screen standing still", async () => {
  const t = await sample({ viewport: sizes.wide });
  const { page } = t;
  await planned(page);
  const before = await paper(page);
  const { x, y } = await middleOf(page, ".line.start .grip");
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => {
    const w = { frames: [] as number[], papers: 0 };
    Object.assign(window, { drag: w });
    let last = performance.now();
    const count = (now: number) => {
      w.frames.push(now - last);
      last = now;
      requestAnimationFrame(count);
    };
    requestAnimationFrame(count);
    const paper = (m: MutationRecord) => (m.target as Element).matches('path.part, [data-spot="drop"]');
    new MutationObserver((all) => (w.papers += all.some(paper) ? 1 : 0)).observe(document.body, { subtree: true, attributes: true, attributeFilter: ["d", "transform"], childList: true });
  });
  const until = Date.now() + 5000;
  for (let i = 0; Date.now() < until; i++) {
    await page.mouse.move(x + 150 * Math.sin(i / 25), y);
    await page.waitForTimeout(8);
  }
  const { frames, papers } = await page.evaluate(() => (window as unknown as { drag: { frames: number[]; papers: number } }).drag);
  await page.mouse.up();
  const slow = frames.filter((f) => f > 50);
  console.info(`start line dragged for 5 s: ${frames.length} frames, ${slow.length} over 50 ms, the longest ${Math.round(Math.max(...frames))} ms; the paper followed ${papers} times`);
  expect(papers).toBeGreaterThan(3);
  expect(await paper(page)).not.toBe(before);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("what is tapped is told of, with rule and source, and a start is asked for", async () => {
  const t = await sample({ viewport: sizes.wide });
  const { page } = t;
  await planned(page);
  await page.locator('[data-spot="finding"]').first().focus();
  await page.keyboard.press("Enter");
  const told = page.locator(".tapped");
  await told.getByText("Rule", { exact: true }).first().waitFor();
  await expectAccessible(page);
  await picture(page, "plan-finding-wide");
  await page.keyboard.press("Escape");
  expect(await page.evaluate(() => document.activeElement?.getAttribute("data-spot"))).toBe("finding"); // brought back

  await page.getByRole("button", { name: "Why not from here?" }).click();
  await told.locator(".verdict").waitFor({ timeout: 30_000 });
  const verdict = await told.locator(".verdict").innerText();
  await page.getByRole("slider", { name: /pencil line/i }).focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press("PageUp");
  await told.locator(".verdict").waitFor({ timeout: 30_000 });
  expect(verdict.length).toBeGreaterThan(10);
  await expectAccessible(page);
  await picture(page, "plan-why-wide");
  await told.getByRole("button", { name: "Do it this way" }).click();
  await expect.poll(() => undo(page), soon).toBe("Undo: Own proposal taken");
  await page.getByRole("button", { name: "Let the planner choose the start" }).first().waitFor();
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("keys go from drop to drop, and each is brought into sight", async () => {
  const t = await sample({ viewport: sizes.phone });
  const { page } = t;
  await planned(page);
  await tabTo(page, page.locator('[data-spot="drop"]').first());
  const seen = (await page.locator(".frame").first().boundingBox())!;
  const names = new Set<string | null>();
  for (let i = 0; i < 20; i++) {
    const at = page.locator(":focus");
    names.add(await at.getAttribute("aria-label"));
    const box = (await at.boundingBox())!;
    expect(box.x + box.width, `drop ${i + 1}`).toBeGreaterThan(seen.x);
    expect(box.x, `drop ${i + 1}`).toBeLessThan(seen.x + seen.width);
    await page.keyboard.press("ArrowRight");
  }
  expect(names.size).toBe(20);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a corner takes the kill seam, and rules of its own", async () => {
  const t = await sample({ viewport: sizes.wide });
  const { page } = t;
  await planned(page);
  const corner = page.locator('[data-spot="corner"]').first();
  await corner.focus();
  await page.keyboard.press("Enter");
  const told = page.locator(".tapped");
  await told.getByRole("button", { name: "Put the kill seam here" }).click();
  await expect.poll(() => undo(page), soon).toBe("Undo: Kill seam: Corner A|B");
  await told.getByRole("button", { name: "Let the planner choose its place" }).click();
  await told.getByText("New drop", { exact: true }).click();
  await expect.poll(() => undo(page), soon).toBe("Undo: New drop at corner A|B");
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a stretch without seams is typed, then moved by keys and by its ends", async () => {
  const t = await sample({ viewport: sizes.wide });
  const { page } = t;
  await planned(page);
  await page.locator('[data-spot="wall"]').first().focus();
  await page.keyboard.press("Enter");
  const told = page.locator(".tapped");
  const [from, to] = [told.getByRole("textbox", { name: "From" }), told.getByRole("textbox", { name: "To" })];
  await from.last().fill("2 m");
  await to.last().fill("2600");
  await told.getByRole("button", { name: "Keep seams off" }).click();
  const bar = page.getByRole("slider", { name: "Move the stretch without seams" });
  await bar.waitFor();
  await expectAccessible(page);
  await bar.focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await expect.poll(() => bar.getAttribute("aria-valuetext")).toBe("From 2011 mm to 2611 mm");
  expect([await from.first().inputValue(), await to.first().inputValue()]).toEqual(["2011", "2611"]);
  await mouseDrag(page, page.getByRole("slider", { name: "Right end of the stretch without seams" }), 30, 0);
  await expect.poll(async () => Number(await to.first().inputValue())).toBeGreaterThan(2611);
  expect(await from.first().inputValue()).toBe("2011");
  await picture(page, "plan-keep-off-wide");
  await page.keyboard.press("Control+Z");
  await expect.poll(() => to.first().inputValue()).toBe("2611");
  await told.getByRole("button", { name: "Allow seams here again" }).click();
  await expect.poll(() => bar.count()).toBe(0);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("many findings of a kind are folded under the first", async () => {
  const t = await journey.travel({ viewport: sizes.phone, hasTouch: true, isMobile: true });
  const { page } = t;
  await settle(page);
  await importJob(page, "half-drop", "plan");
  await planned(page);
  const list = page.locator("section[aria-labelledby=findings]");
  const all = Number(await list.locator(".count").first().textContent());
  expect(all).toBeGreaterThan(12);
  expect(await list.getByRole("button").filter({ visible: true }).count()).toBeLessThan(all / 2);
  await list.locator(".more summary").first().tap();
  expect(await list.getByRole("button").filter({ visible: true }).count()).toBeGreaterThan(all / 2);
  await expectNoStrayScroll(page);
  await expectAccessible(page);
  await list.locator(".more").first().scrollIntoViewIfNeeded();
  await picture(page, "plan-findings-folded-phone");
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("a finding, and what is wrong, lead to the very field", async () => {
  const t = await sample({ viewport: sizes.phone, hasTouch: true });
  const { page } = t;
  await planned(page);
  const at = () => page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset["at"]);
  await page.locator('[data-spot="finding"]').first().focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Go to this measurement" }).first().click();
  await expect.poll(at).toMatch(/^room\.walls\[\d\](\.(openings|fittings)\[\d\]\.left|\.corner\.lean\.left|\.width)$/);
  const job = new URL(page.url()).hash.split("/")[2];
  // A size of another wall is mistyped; the plan says so, and leads there.
  await page.locator('[data-at$=".width"]').first().waitFor();
  await page.getByRole("button", { name: "Wall to the right", exact: true }).click();
  const width = page.locator('[data-at^="room.walls"][data-at$=".width"]').first();
  const where = (await width.getAttribute("data-at"))!;
  await width.fill("three metres");
  await page.goto(`/#/job/${job}/plan`);
  await page.getByRole("button", { name: /Put right under Survey/ }).first().waitFor();
  await expectAccessible(page);
  await picture(page, "plan-stale-phone");
  await page.getByRole("button", { name: /Put right under Survey/ }).first().click();
  await expect.poll(at).toBe(where);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test("another plan is chosen, as one edit", async () => {
  const t = await sample({ viewport: sizes.phone, hasTouch: true });
  const { page } = t;
  await planned(page);
  const before = await paper(page);
  await page.getByRole("button", { name: "Compare plans" }).click();
  const cards = page.getByRole("list", { name: "Other good plans" }).getByRole("listitem").filter({ has: page.getByRole("heading", { level: 3 }) });
  await cards.nth(1).waitFor({ timeout: 60_000 });
  await cards.first().scrollIntoViewIfNeeded();
  await expectAccessible(page);
  await expectNoStrayScroll(page);
  await picture(page, "plan-alternatives-phone");
  await cards.nth(1).getByRole("button", { name: /Choose this plan/ }).click();
  await changes(() => paper(page), before);
  expect(await undo(page)).toMatch(/^Undo: Plan chosen/);
  await cards.nth(1).getByText("This is how it hangs now").waitFor();
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await expect.poll(() => paper(page), soon).toBe(before);
  expect(t.complaints()).toEqual([]);
  await t.close();
});

test.each<[keyof typeof sizes, Themes]>([
  ["small", "light"],
  ["tablet", "sunlight"],
  ["wide", "dark"],
])("the room in three dimensions, %s %s", async (size, theme) => {
  const t = await sample({ viewport: sizes[size], hasTouch: size !== "wide" }, { theme });
  const { page } = t;
  await planned(page);
  await page.getByRole("button", { name: "See the room" }).click();
  const view = page.getByRole("application");
  await view.waitFor();
  await page.waitForTimeout(1500);
  const seen = async () => (await view.screenshot()).toString("base64");
  const above = await seen();
  await picture(page, `solid-above-${size}-${theme}`);
  await expectAccessible(page);
  await expectNoStrayScroll(page);
  await page.getByRole("button", { name: "From the door" }).click();
  const door = await changes(seen, above);
  await picture(page, `solid-door-${size}-${theme}`);
  await view.focus();
  await page.keyboard.press("ArrowLeft");
  const left = await changes(seen, door);
  await page.keyboard.press("ArrowUp");
  await changes(seen, left);
  await page.getByText("The room in words").click();
  await page.getByText(/Drops \d+/).first().waitFor();
  await page.keyboard.press("Escape");
  await expect.poll(() => page.getByRole("application").count(), soon).toBe(0);
  expect(t.complaints().filter((c) => !c.includes("GPU stall due to ReadPixels"))).toEqual([]); // of taking pictures
  await t.close();
});
