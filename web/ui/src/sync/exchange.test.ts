import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, expect, test } from "vitest";
import { openDatabase } from "../device/database";
import { Device } from "../device/device";
import { same, type Json } from "../document/json";
import { newID } from "../document/tree";
import type { Job } from "../planner/job";
import { Work } from "../job/work.svelte";
import { Exchange, parts } from "./exchange";
import { ServerTrouble, type Sending, type Server, type Stored } from "./server";

// Two devices and a server that keeps the rules of package store: a push names its
// base, all or none are added, and revisions that are there already count once. A job that
// was deleted and is begun again goes on counting where it ended.

class Memory implements Server {
  kept = new Map<string, { from: number; versions: Sending[]; binned: boolean }>();
  away = false;
  loseAnswer = false;

  #answer<T>(value: T): T {
    if (this.away) throw new ServerTrouble("away", "no network");
    if (this.loseAnswer) {
      this.loseAnswer = false;
      throw new ServerTrouble("away", "the answer was lost");
    }
    return value;
  }
  #stored(id: string): Stored {
    const { from, versions, binned } = this.kept.get(id)!;
    const last = versions.at(-1)!;
    return { id, name: String(last.document.name ?? ""), version: from + versions.length, label: last.label, saved: last.made, document: last.document, ...(binned && { binned: last.made }) };
  }
  #all(binned: boolean) {
    return [...this.kept].filter(([, k]) => k.binned === binned).map(([id]) => this.#stored(id));
  }
  jobs = async () => this.#answer(this.#all(false));
  erased = new Map<string, number>(); // how far each had counted
  bin = async () => this.#answer({ jobs: this.#all(true), erased: [...this.erased.keys()] });
  job = async (id: string) => this.#answer(this.kept.has(id) ? this.#stored(id) : null);
  async push(id: string, base: number, revisions: Sending[]) {
    if (this.away) this.#answer(null);
    if (base > 0 && !this.kept.has(id)) throw new ServerTrouble("refused", "no such job");
    const job = this.kept.get(id) ?? { from: this.erased.get(id) ?? 0, versions: [], binned: false };
    this.erased.delete(id);
    const at = Math.max(0, base - job.from);
    const there = job.versions.slice(at);
    const again = there.length <= revisions.length && there.every((v, i) => v.key === revisions[i]!.key);
    if (at > job.versions.length || !again) return this.#answer({ current: structuredClone(this.#stored(id)) });
    job.versions.push(...structuredClone(revisions.slice(there.length)));
    job.binned = false;
    this.kept.set(id, job);
    return this.#answer({ version: job.from + job.versions.length });
  }
  names = new Map<string, string>();
  name = async (id: string, version: number, name: string) => void this.#answer(this.names.set(`${id} ${version}`, name));
  named = async () => this.#answer([]);
  version = async (id: string) => this.#answer(this.kept.has(id) ? this.#stored(id) : null);
  discard = async (id: string) => void this.#answer(this.kept.has(id) && (this.kept.get(id)!.binned = true));
  recover = async (id: string) => void this.#answer(this.kept.has(id) && (this.kept.get(id)!.binned = false));
  erase = async (id: string) => {
    const job = this.#answer(this.kept.get(id));
    if (job?.binned && this.kept.delete(id)) this.erased.set(id, job.from + job.versions.length);
  };
}

class Hand {
  device = new Device(openDatabase(new IDBFactory()));
  exchange: Exchange;
  constructor(server: Server) {
    this.exchange = new Exchange(this.device, server, { pulled: "from the server", jumped: "undo" }, () => {});
  }
  async begin(name: string): Promise<string> {
    const [id, root] = [newID(), newID()];
    const document: Job = { firstdrop: 1, name, room: { closed: true, walls: [{ name: "A", width: 1 }] }, papers: [] };
    await this.device.add({ id, name, made: 1, changed: 1, head: root, document, conflicts: [] }, [{ id: root, parent: null, at: 1, label: "Started", changes: [] }]);
    return id;
  }
  async open(id: string) {
    return new Work(this.device, (await this.device.job(id))!, await this.device.revisions(id));
  }
  async edit(id: string, label: string, change: (j: Job) => void) {
    const work = await this.open(id);
    work.edit(label, change);
    await saved(work);
  }
  async width(id: string) {
    return (await this.device.job(id))?.document.room.walls[0]!.width;
  }
}
const saved = async (work: Work) => {
  while (work.saving !== "saved") await new Promise((done) => setTimeout(done));
};
const width = (w: number) => (j: Job) => void (j.room.walls[0]!.width = w);

let server: Memory, van: Hand, phone: Hand, id: string;
beforeEach(async () => {
  server = new Memory();
  [van, phone] = [new Hand(server), new Hand(server)];
  id = await van.begin("Room");
});

test("a job reaches the server with its revisions, and the other device from there", async () => {
  await van.edit(id, "to 2", width(2));
  await van.edit(id, "to 3", width(3));
  await van.exchange.run();
  expect(server.kept.get(id)!.versions.map((v) => v.label)).toEqual(["Started", "to 2", "to 3"]);
  await phone.exchange.run();
  expect(await phone.width(id)).toBe(3);
});

test("edits go both ways, one after the other, without conflict", async () => {
  for (let w = 2; w < 8; w++) {
    const [here, there] = w % 2 ? [van, phone] : [phone, van];
    await there.exchange.run();
    await here.exchange.run();
    await here.edit(id, `to ${w}`, width(w));
    await here.exchange.run();
  }
  await phone.exchange.run();
  await van.exchange.run();
  expect([await van.width(id), await phone.width(id)]).toEqual([7, 7]);
  expect([...(await van.device.job(id))!.conflicts, ...(await phone.device.job(id))!.conflicts]).toEqual([]);
});

test("without a server everything waits, and goes in one piece when it is back", async () => {
  server.away = true;
  await van.edit(id, "to 2", width(2));
  await expect(van.exchange.run()).rejects.toThrow("no network");
  server.away = false;
  await van.exchange.run();
  expect(server.kept.get(id)!.versions).toHaveLength(2);
});

test("a push whose answer was lost counts once", async () => {
  await van.exchange.run();
  await van.edit(id, "to 2", width(2));
  const push = server.push.bind(server);
  server.push = async (...args) => ((server.loseAnswer = true), push(...args));
  await expect(van.exchange.run()).rejects.toThrow("lost");
  server.push = push;
  await van.exchange.run();
  expect(server.kept.get(id)!.versions).toHaveLength(2);
  expect((await van.device.job(id))!.conflicts).toEqual([]);
});

test("what was edited on both is kept on both, nothing is sent until somebody decides, and then all agree", async () => {
  await van.exchange.run();
  await phone.exchange.run();
  await van.edit(id, "van: 20", width(20));
  await phone.edit(id, "phone: 30", width(30));
  await van.exchange.run();
  await phone.exchange.run();
  const kept = (await phone.device.job(id))!;
  expect(await phone.width(id)).toBe(30);
  expect(kept.conflicts).toHaveLength(1);
  await phone.edit(id, "phone: 31", width(31));
  await phone.exchange.run();
  expect(server.kept.get(id)!.versions.at(-1)!.document.room.walls[0]!.width).toBe(20);
  const work = await phone.open(id);
  expect(work.documentAt(kept.conflicts[0]!).room.walls[0]!.width).toBe(20);
  await work.decide(kept.conflicts[0]!, false, "");
  await phone.exchange.run();
  await van.exchange.run();
  expect([await van.width(id), await phone.width(id)]).toEqual([31, 31]);
});

test("names of states reach the server with their versions, also those given while it was away", async () => {
  await van.edit(id, "to 2", width(2));
  const work = await van.open(id);
  const two = work.head;
  await work.name(two, "before lunch");
  work.edit("to 3", width(3));
  await saved(work);
  await van.exchange.run();
  expect([...server.names]).toEqual([[`${id} 2`, "before lunch"]]);
  server.away = true;
  await work.refresh();
  await work.name(two, "after lunch");
  await expect(van.exchange.run()).rejects.toThrow("no network");
  server.away = false;
  await van.exchange.run();
  await van.exchange.run();
  expect([...server.names]).toEqual([[`${id} 2`, "after lunch"]]);
  expect((await van.device.job(id))!.named).toEqual([]);
  expect((await van.device.revisions(id)).map((r) => [r.label, r.version, r.name])).toContainEqual(["to 3", 3, undefined]);
});

test("going back beyond what the server has is sent as a state of its own", async () => {
  await van.edit(id, "to 2", width(2));
  await van.exchange.run();
  const work = await van.open(id);
  work.undo();
  await saved(work);
  await van.exchange.run();
  expect(server.kept.get(id)!.versions.at(-1)!.document.room.walls[0]!.width).toBe(1);
  expect((await van.device.job(id))!.server!.revision).toBe(work.head);
});

test("the bin follows whoever changed it last, and deleted is deleted everywhere it was not edited", async () => {
  await van.exchange.run();
  await phone.exchange.run();
  await van.device.amend(id, (k) => ({ ...k, binned: 5 }));
  await van.exchange.run();
  await phone.exchange.run();
  expect((await phone.device.job(id))!.binned).toBeDefined();
  await phone.device.amend(id, ({ binned: _, ...k }) => k);
  await phone.exchange.run();
  await van.exchange.run();
  expect((await van.device.job(id))!.binned).toBeUndefined();
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  await van.exchange.run();
  expect(await van.device.jobs()).toEqual([]);
  expect(await van.device.revisions(id)).toEqual([]);
  expect(server.kept.has(id)).toBe(false);
});

test("what was deleted elsewhere lies in the bin here, until somebody puts it back", async () => {
  await van.begin("Another");
  await van.exchange.run();
  await phone.exchange.run();
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  for (const hand of [van, phone, van, phone]) await hand.exchange.run();
  expect((await phone.device.job(id))!.binned).toBeDefined();
  expect([server.kept.has(id), (await van.device.jobs()).length]).toEqual([false, 1]);
  await phone.device.amend(id, ({ binned: _, ...k }) => k);
  for (const hand of [phone, van]) await hand.exchange.run();
  expect([server.kept.has(id), await van.width(id)]).toEqual([true, 1]);
});

test("a server that has lost everything gets it again", async () => {
  await van.exchange.run();
  server.kept.clear();
  await van.exchange.run();
  expect([server.kept.has(id), (await van.device.job(id))!.binned]).toEqual([true, undefined]);
});

/** The jobs of a device outside the bin, by name. */
const names = async (h: Hand) => (await h.device.jobs()).filter((k) => k.binned === undefined).map((k) => k.name);

test("the last job, once deleted, does not come back from another device", async () => {
  for (const hand of [van, phone]) await hand.exchange.run();
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  for (const hand of [van, phone, van, phone]) await hand.exchange.run();
  expect([server.kept.size, await names(van), await names(phone)]).toEqual([0, [], []]);
  expect((await phone.device.job(id))!.binned).toBeDefined();
});

test("a job deleted while the server was away is deleted there, and one that the server has lost meanwhile stays deleted", async () => {
  for (const hand of [van, phone]) await hand.exchange.run();
  server.kept.clear(); // lost, with every note of what was deleted
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  await van.exchange.run();
  await phone.exchange.run(); // the phone, which has not heard, brings it back
  expect(server.kept.has(id)).toBe(true);
  for (const hand of [van, phone]) await hand.exchange.run();
  expect([server.kept.size, await names(van), await names(phone)]).toEqual([0, [], []]);
});

test("what a backup brings back lies in the bin, and is there again for everybody once somebody takes it out", async () => {
  await van.exchange.run();
  const backup = structuredClone(server.kept);
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  await van.exchange.run();
  [server.kept, server.erased] = [backup, new Map()];
  for (const hand of [van, phone, van]) await hand.exchange.run();
  expect([server.kept.get(id)!.binned, await names(van), await names(phone)]).toEqual([true, [], []]);
  await phone.device.amend(id, ({ binned: _, ...k }) => k);
  for (const hand of [phone, van]) await hand.exchange.run();
  expect([await names(van), await names(phone)]).toEqual([["Room"], ["Room"]]);
});

test("who worked on a job that was deleted elsewhere keeps it, and so does everybody", async () => {
  for (const hand of [van, phone]) await hand.exchange.run();
  await phone.edit(id, "to 7", width(7));
  await van.device.amend(id, (k) => ({ ...k, erased: 9 }));
  for (const hand of [van, phone, van, van]) await hand.exchange.run();
  expect(server.kept.get(id)!.binned).toBe(false);
  expect([await phone.width(id), await van.width(id)]).toEqual([7, 7]);
});

// Whatever two hands do, and whenever they reach the server: nothing that was saved on
// a device is ever lost from it, and in the end all agree.
test.each([1, 2, 3, 4, 5, 6])("random hands %i", async (start) => {
  let seed = start * 7919;
  const random = (n: number) => (seed = (seed * 48271) % 2147483647) % n;
  await van.exchange.run();
  await phone.exchange.run();
  const typed = new Map<Hand, Set<number>>([[van, new Set()], [phone, new Set()]]);
  for (let i = 0; i < 40; i++) {
    const hand = random(2) ? van : phone;
    server.away = random(5) === 0;
    server.loseAnswer = random(6) === 0;
    if (random(3) > 0) {
      const w = 100 + i;
      await hand.edit(id, `to ${w}`, width(w));
      typed.get(hand)!.add(w);
    } else await hand.exchange.run().catch(() => {});
    for (const [h, all] of typed) {
      const work = await h.open(id);
      const states = new Set((await h.device.revisions(id)).map((r) => work.documentAt(r.id).room.walls[0]!.width));
      for (const w of all) expect(states).toContain(w);
    }
  }
  server.away = server.loseAnswer = false;
  for (let i = 0; i < 4; i++) {
    for (const hand of [van, phone]) {
      await hand.exchange.run();
      const work = await hand.open(id);
      for (const c of work.kept.conflicts) await work.decide(c, i % 2 === 0, "decided");
      await saved(work);
      await hand.exchange.run();
    }
  }
  const [a, b] = [await van.device.job(id), await phone.device.job(id)];
  expect([a!.conflicts, b!.conflicts]).toEqual([[], []]);
  expect(same(a!.document as unknown as Json, b!.document as unknown as Json)).toBe(true);
  expect(server.kept.get(id)!.versions.at(-1)!.document).toEqual(a!.document);
});

test("large pushes go in parts", () => {
  const one = (n: number): Sending => ({ key: String(n), label: "", made: "", document: { firstdrop: 1, note: "x".repeat(n), room: { closed: true, walls: [] }, papers: [] } });
  expect(parts([one(10), one(10), one(10)], 2).map((p) => p.length)).toEqual([2, 1]);
  expect(parts([one(400), one(400), one(400)], 9, 1000).map((p) => p.length)).toEqual([2, 1]);
  expect(parts([])).toEqual([]);
});
