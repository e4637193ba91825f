import { beforeEach, expect, test, vi } from "vitest";
import type { Kept } from "../device/device";
import { above, TickShelf, type Tick } from "../device/ticks";
import { TickExchange } from "./ticks";

// Two devices and a server that keeps of each tick the word of the greater turn, as package store says.

const server = {
  kept: new Map<string, Tick>(),
  away: false,
  async ticks(_: string, sent: Tick[]) {
    if (server.away) throw new Error("no network");
    for (const t of sent) {
      const there = server.kept.get(t.key);
      if (!there || above(t, there)) server.kept.set(t.key, t);
    }
    return [...server.kept.values()];
  },
};

/** A device with a shelf in storage of its own, and a clock that may be wrong. */
class Hand {
  clock = 0; // by how many hours it is ahead
  #stored = new Map<string, string>();
  shelf = new TickShelf();
  async use<T>(work: () => T): Promise<Awaited<T>> {
    vi.setSystemTime(noon + this.clock * 3_600_000);
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

const noon = Date.UTC(2026, 0, 2, 12);

let van: Hand, phone: Hand;
beforeEach(() => {
  vi.useFakeTimers();
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

test.each([-5, 0, 5])("the later word counts, also where the phone's clock is %d hours ahead", async (hours) => {
  phone.clock = hours;
  await van.put("cut|1", true);
  for (const hand of [van, phone]) await hand.run();
  for (const on of [false, true, false]) {
    for (const [one, other] of [[van, phone], [phone, van]] as const) {
      await one.put("cut|1", on);
      for (const hand of [one, other]) await hand.run();
      expect([on, await van.on(), await phone.on()]).toEqual([on, ...(on ? [["cut|1"], ["cut|1"]] : [[], []])]);
    }
  }
});

test("a clock that was far ahead for once holds no tick for ever", async () => {
  phone.clock = 24 * 365 * 100;
  await phone.put("cut|1", true);
  phone.clock = 0;
  for (const hand of [phone, van]) await hand.run();
  await van.put("cut|1", false);
  for (const hand of [van, phone]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([[], []]);
});

test.each([[-5, "van"], [-5, "phone"], [5, "van"], [5, "phone"]] as const)("of two words that have not heard of each other both devices take the same: the phone %d hours ahead, the %s heard first", async (hours, first) => {
  phone.clock = hours;
  await van.put("cut|1", true);
  for (const hand of [van, phone]) await hand.run();
  await van.put("cut|1", false);
  await phone.put("cut|1", false);
  await phone.put("cut|1", true); // has thought better of it
  await van.put("hung|1", true);
  await phone.put("hung|1", true);
  await phone.put("hung|1", false); // was ticked by mistake
  const hands = first === "van" ? [van, phone] : [phone, van];
  for (const hand of [...hands, ...hands]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([["cut|1"], ["cut|1"]]);
});

test("ticks that the server has lost to an older backup are sent again", async () => {
  await van.put("cut|1", true);
  await van.run();
  const backup = new Map(server.kept);
  await van.put("cut|1", false);
  await van.run();
  server.kept = backup;
  for (const hand of [van, van, phone]) await hand.run();
  expect([await van.on(), await phone.on()]).toEqual([[], []]);
});

test("ticks that were kept with a time count on from it", async () => {
  await van.use(() => localStorage.setItem("firstdrop.ticks.job", JSON.stringify({ all: { "cut|1": [true, noon] }, unsent: [] })));
  server.kept.set("cut|1", { key: "cut|1", on: true, turn: noon });
  await phone.run();
  expect(await phone.on()).toEqual(["cut|1"]);
  await phone.put("cut|1", false);
  for (const hand of [phone, van]) await hand.run();
  expect([await van.on(), server.kept.get("cut|1")!.turn]).toEqual([[], noon + 1]);
});

test("a tick changed while it was being sent is sent again", async () => {
  await van.put("cut|1", true);
  const ticks = server.ticks;
  server.ticks = async (id, sent) => {
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
