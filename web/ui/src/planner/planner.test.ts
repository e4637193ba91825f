import { expect, test } from "vitest";
import type { Hand, Place, Shop } from "./crew";
import { Planner, type Question } from "./planner";
import type { Kind } from "./protocol";

const place: Place = { program: "planner.filtered", runtime: "wasm_exec.js" };

/** A shop whose workers answer when they are told to. */
class Bench implements Shop {
  compiled = 0;
  hands: { asked: { kind: Kind; version: number; id: number }[]; ended: boolean; tell(done: number, of: number): void; answer(): void; fail(): void }[] = [];

  async compile() {
    this.compiled++;
    return {} as WebAssembly.Module;
  }

  hand(): Hand {
    const told: (typeof this.hands)[number] = { asked: [], ended: false, tell: () => undefined, answer: () => undefined, fail: () => undefined };
    this.hands.push(told);
    const hand: Hand = {
      onmessage: null,
      onerror: null,
      postMessage(message) {
        if (!(message instanceof Uint8Array)) {
          queueMicrotask(() => hand.onmessage?.({ data: { ready: true } } as MessageEvent));
          return;
        }
        const request = JSON.parse(new TextDecoder().decode(message)) as { kind: Kind; version: number; id: number };
        told.asked.push(request);
        told.tell = (done, of) => hand.onmessage?.({ data: { done, of, what: "jobs" } } as MessageEvent);
        told.answer = () =>
          hand.onmessage?.({ data: { answer: new TextEncoder().encode(JSON.stringify({ ...request, answered: true })) } } as MessageEvent);
        told.fail = () => hand.onmessage?.({ data: { failed: "out of memory" } } as MessageEvent);
      },
      terminate: () => (told.ended = true),
    };
    return hand;
  }
}

const question = (kind: Kind, version: number): Question => ({ kind, version, words: { locale: "de", units: "metric" } });
const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

test("of the questions of a drag the first and the last are asked", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const answers = [1, 2, 3, 4].map((version) => planner.ask(question("plan", version)));
  await settled();
  bench.hands[0]!.answer();
  await settled();
  bench.hands[0]!.answer();
  const versions = (await Promise.all(answers)).map((a) => a?.version ?? null);
  expect(versions).toEqual([1, null, null, 4]);
  expect(bench.hands[0]!.asked.map((r) => r.version)).toEqual([1, 4]);
});

test("deep work is ended by the next question of its kind, and begun anew without compiling again", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const first = planner.ask(question("alternatives", 1));
  await settled();
  const second = planner.ask(question("alternatives", 2));
  expect(await first).toBeNull();
  await settled();
  expect(bench.hands.map((h) => h.ended)).toEqual([true, false]);
  bench.hands[1]!.answer();
  expect((await second)?.version).toBe(2);
  expect(bench.compiled).toBe(1);
});

test("live questions do not wait for deep ones", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const deep = planner.ask(question("cliffs", 1));
  const live = planner.ask(question("plan", 1));
  await settled();
  bench.hands.find((h) => h.asked[0]?.kind === "plan")!.answer();
  expect((await live)?.kind).toBe("plan");
  planner.drop();
  expect(await deep).toBeNull();
});

test("a worker that fails says so, and the next question has a new one", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const first = planner.ask(question("plan", 1));
  await settled();
  bench.hands[0]!.fail();
  await expect(first).rejects.toThrow("out of memory");
  const second = planner.ask(question("plan", 2));
  await settled();
  bench.hands[1]!.answer();
  expect((await second)?.version).toBe(2);
});

test("a question that is superseded while its worker begins is let go", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const first = planner.ask(question("cliffs", 1));
  const second = planner.ask(question("cliffs", 2));
  expect(await first).toBeNull();
  await settled();
  bench.hands.at(-1)!.answer();
  expect((await second)?.version).toBe(2);
});

test("each question tells for itself how far it is, and when that is over", async () => {
  const bench = new Bench();
  const planner = new Planner(place, bench);
  const heard: string[] = [];
  planner.onprogress = (kind, far) => heard.push(`${kind} ${far ? `${far.done}/${far.of} ${far.what}` : "over"}`);
  const deep = planner.ask(question("certainty", 1));
  const live = planner.ask(question("plan", 1));
  await settled();
  const [of, other] = ["certainty", "plan"].map((k) => bench.hands.find((h) => h.asked[0]?.kind === k)!);
  of!.tell(1, 4);
  other!.tell(0, 2);
  of!.tell(3, 4);
  other!.answer();
  await live;
  planner.drop();
  await deep;
  await settled();
  expect(heard).toEqual(["certainty 1/4 jobs", "plan 0/2 jobs", "certainty 3/4 jobs", "plan over", "certainty over"]);
});
