import { desk } from "./desk.svelte";
import { awaitKeeper } from "./device/keeper";
import { toasts } from "./parts/toasts.svelte";
import { say } from "./words";

// Work without a network: the service worker keeps the screen on this device. A newer
// release waits until the user takes it, and is taken only when everything is saved.

class Offline {
  /** none: this address does not allow it; loading: not everything is here yet. */
  readiness = $state<"none" | "loading" | "ready">("none");
  #asked = false;

  async begin(): Promise<void> {
    if (!("serviceWorker" in navigator)) return awaitKeeper(null);
    const container = navigator.serviceWorker;
    const isFirst = container.controller === null;
    if (!isFirst) awaitKeeper(null);
    this.readiness = "loading";
    container.addEventListener("message", (event) => {
      if (event.data === "all is here") this.readiness = "ready";
    });
    container.addEventListener("controllerchange", () => void this.#taken(isFirst));
    try {
      const registration = await container.register("service-worker.js");
      awaitKeeper(registration);
      this.#watch(registration);
      await container.ready;
      // What is needed later is fetched when the first picture has long been drawn, and no hand is
      // at work: to unpack it would make a drag stand still.
      setTimeout(() => void quiet().then(() => registration.active?.postMessage("fetch the rest")), 2500);
      setInterval(() => void registration.update().catch(() => undefined), 3_600_000);
    } catch {
      awaitKeeper(null);
      this.readiness = "none";
    }
  }

  #watch(registration: ServiceWorkerRegistration): void {
    const tell = (worker: ServiceWorker | null) => {
      if (worker?.state === "installed" && navigator.serviceWorker.controller) this.#offer(worker);
    };
    tell(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker?.addEventListener("statechange", () => tell(worker));
    });
  }

  #offer(worker: ServiceWorker): void {
    const take = () => {
      this.#asked = true;
      worker.postMessage("take over");
    };
    toasts.say(say("update.ready"), { stays: true, action: { label: say("update.take"), run: take } });
  }

  /** Another release answers from now on. Whoever asked for it gets it; other tabs may finish. */
  async #taken(isFirst: boolean): Promise<void> {
    if (isFirst && !this.#asked) return;
    const reload = async () => {
      await desk.work?.settle();
      location.reload();
    };
    if (this.#asked) return reload();
    toasts.say(say("update.ready"), { stays: true, action: { label: say("update.take"), run: () => void reload() } });
  }
}

/** Comes when nobody has dragged or typed anything for a second and a half. */
function quiet(): Promise<void> {
  return new Promise((done) => {
    const busy = ["pointerdown", "pointermove", "keydown", "wheel"] as const;
    const wait = () => setTimeout(end, 1500);
    let timer = wait();
    function again(event: Event) {
      if (event instanceof PointerEvent && event.buttons === 0) return;
      clearTimeout(timer);
      timer = wait();
    }
    function end() {
      for (const type of busy) removeEventListener(type, again, true);
      done();
    }
    for (const type of busy) addEventListener(type, again, { capture: true, passive: true });
  });
}

export const offline = new Offline();
