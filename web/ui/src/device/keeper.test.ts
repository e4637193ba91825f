import { beforeEach, expect, test, vi } from "vitest";

/** A worker that goes from state to state. */
class Worker extends EventTarget {
  constructor(public state: ServiceWorkerState) {
    super();
  }
  go(state: ServiceWorkerState): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  }
}

type Part = "installing" | "waiting" | "active";
let keeper: typeof import("./keeper");
beforeEach(async () => {
  vi.resetModules();
  keeper = await import("./keeper");
});
const registered = (parts: Partial<Record<Part, Worker>>) =>
  keeper.awaitKeeper({ installing: null, waiting: null, active: null, ...parts } as unknown as ServiceWorkerRegistration);
/** Whether the page still waits. */
const waits = () => Promise.race([keeper.keeperAnswers.then(() => false), new Promise((done) => setTimeout(() => done(true), 5))]);

test("on a first visit the page waits until the worker has taken over", async () => {
  const worker = new Worker("installing");
  registered({ installing: worker });
  for (const state of ["installed", "activating"] as const) {
    worker.go(state);
    expect(await waits()).toBe(true);
  }
  worker.go("activated");
  expect(await waits()).toBe(false);
});

test("it waits for none that cannot be installed, or is not there", async () => {
  const worker = new Worker("installing");
  registered({ installing: worker });
  expect(await waits()).toBe(true);
  worker.go("redundant");
  expect(await waits()).toBe(false);
});

test("it does not wait without one, nor for a newer one", async () => {
  keeper.awaitKeeper(null);
  expect(await waits()).toBe(false);
  vi.resetModules();
  keeper = await import("./keeper");
  registered({ active: new Worker("activated"), installing: new Worker("installing") });
  expect(await waits()).toBe(false);
});
