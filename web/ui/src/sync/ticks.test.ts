import { beforeEach, expect, test, vi } from "vitest";
import type { Kept } from "../device/device";
import { TickShelf, type Tick } from "../device/ticks";
import { TickExchange } from "./ticks";

// Two devices and a server that keeps of each tick the later word, as package store says.

const server = {
  kept: new Map<string, Tick>(),
  away: false,
  async ticks(_: string, sent: Tick[]) {
    if (server.away) throw new Error("no network");
    for (const t of sent) {
      const there = server.kept.get(t.key);
      if (!there || t.at > there.at || (t.at === there.at && t.on)) server.kept.set(t.key, t);
    }
    return [...server.kept.values()];
  },
};

/** A device with a shelf in storage of its own. */
class Hand {
  #stored = new Map<string, string>();
  shelf = new TickShelf();
  async use<T>(work: () => T): Promise<Awaited<T>> {
    globalThis.localStorage = { getItem: (k: string) => this.#stored.get(k) ?? null, setItem: (k: string, v: string) => void this.#stored.set(k, v) } as Storage;
    return await work();
  }
  put(key: string, on: boolean) {
    return this.use(() => this.shelf.set("job", [key], on));
  }
  run(open: string | null = "job") {
    return this.use(() => new TickExchange(this.shelf, server).run([{ id: "job", server: { version: 1, revision: "r" } } as Kept], open));
  }
  on() {
    return this.use(() => this.shelf.all("job").flatMap((t) => (t.on ? [t.key] : [])).sort());
  }
}

let van: Hand, phone: Hand;
beforeEach(() => {
  vi.useFakeTimers({ now: 1000 });
  [van, phone] = [new Hand(), new Hand()];
  server.kept.clear();
  server.away = false;
});

test("ticks of both devices come together, also those made without a network", async () => {
  await van.put("cut|1", true);
  server.away = true;
  await expect(van.run()).rejects.toThrow("no network");
  await phone.put("cut|2", true);
  server.away = false;
  for (const hand of [van, phone, van]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([["cut|1", "cut|2"], ["cut|1", "cut|2"]]);
});

test("of one tick the later word counts, whoever is heard last", async () => {
  for (const hand of [van, phone]) await hand.put("cut|1", true);
  for (const hand of [van, phone]) await hand.run();
  vi.setSystemTime(2000);
  await van.put("cut|1", false);
  vi.setSystemTime(3000);
  await phone.put("cut|1", true);
  for (const hand of [phone, van, phone]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([["cut|1"], ["cut|1"]]);
  vi.setSystemTime(4000);
  await van.put("cut|1", false);
  for (const hand of [van, phone]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([[], []]);
});

test("a tick changed while it was being sent is sent again", async () => {
  await van.put("cut|1", true);
  const ticks = server.ticks;
  server.ticks = async (id, sent) => {
    vi.setSystemTime(2000);
    await van.put("cut|1", false);
    return ticks(id, sent);
  };
  await van.run();
  server.ticks = ticks;
  expect(await van.on()).toEqual([]);
  for (const hand of [van, phone]) await hand.run();
  expect(await phone.on()).toEqual([]);
});

test("a job that is not open is asked about only when there is something to send", async () => {
  const asked = vi.spyOn(server, "ticks");
  await van.run(null);
  expect(asked).not.toHaveBeenCalled();
  await van.put("hung|1", true);
  await van.run(null);
  await van.run(null);
  expect(asked).toHaveBeenCalledTimes(1);
});

test("ticks kept from before they travelled are taken over and sent", async () => {
  await van.use(() => localStorage.setItem("firstdrop.ticks.job", JSON.stringify(["cut|1"])));
  for (const hand of [van, phone]) await hand.run();
  expect(await phone.on()).toEqual(["cut|1"]);
});
