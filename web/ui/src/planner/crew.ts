import { keeperAnswers } from "../device/keeper";
import { unfiltered } from "./unfilter";
import type { Begin, Far, Said } from "./worker";

/** Where a program is fetched from. */
export interface Place {
  /** The address of the program: in filtered form, unless the service worker has put it back. */
  program: string;
  /** The address of wasm_exec.js. */
  runtime: string;
}

/** As much of a Worker as is used. */
export interface Hand {
  onmessage: ((event: MessageEvent<Said>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: Begin | Uint8Array, transfer?: Transferable[]): void;
  terminate(): void;
}

/** What there is besides the page: fetching, compiling, and workers. Tests bring their own. */
export interface Shop {
  compile(place: Place): Promise<WebAssembly.Module>;
  hand(): Hand;
}

const shop: Shop = {
  async compile({ program }) {
    await keeperAnswers;
    const response = await fetch(program, { credentials: "same-origin" });
    if (!response.ok) throw new Error(`${program}: ${response.status}`);
    return WebAssembly.compileStreaming(unfiltered(response));
  },
  hand: () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" }) as unknown as Hand,
};

/**
 * One worker that answers one request after the other. It is begun when the first
 * request comes, from a module that is compiled once for all workers of a place, and
 * begun anew after it was ended or has failed.
 */
export class Mate {
  #place: Place;
  #shop: Shop;
  #hand: Promise<Hand> | null = null;
  #end: (() => void) | null = null;
  /** Is told how much of the work is done, where that is known. */
  onpart: ((far: Far) => void) | null = null;
  static #modules = new WeakMap<Shop, Map<string, Promise<WebAssembly.Module>>>();

  constructor(place: Place, own: Shop = shop) {
    this.#place = place;
    this.#shop = own;
  }

  /** Fetches and starts the program, if it is not there yet. */
  async begin(): Promise<void> {
    await (this.#hand ??= this.#begun());
  }

  /** Answers a request. It must not be called again before it has answered. */
  async ask(request: object): Promise<unknown> {
    const begun = (this.#hand ??= this.#begun());
    const hand = await begun;
    if (this.#hand !== begun) throw new Ended(); // while it began
    const bytes = new TextEncoder().encode(JSON.stringify(request));
    return new Promise((resolve, reject) => {
      const fail = (why: string) => {
        reject(new Error(why));
        this.end();
      };
      this.#end = () => reject(new Ended());
      hand.onerror = (event) => fail(event.message || "the planner has stopped");
      hand.onmessage = ({ data }) => {
        if ("failed" in data) return fail(data.failed);
        if ("done" in data) this.onpart?.(data);
        if (!("answer" in data)) return;
        this.#end = null;
        try {
          resolve(JSON.parse(new TextDecoder().decode(data.answer)));
        } catch (error) {
          reject(error instanceof Error ? error : new Error(String(error)));
        }
      };
      hand.postMessage(bytes, [bytes.buffer as ArrayBuffer]);
    });
  }

  /** Ends whatever is being answered: that rejects with {@link Ended}. */
  end(): void {
    const hand = this.#hand;
    this.#hand = null;
    void hand?.then(
      (h) => h.terminate(),
      () => undefined,
    );
    this.#end?.();
    this.#end = null;
  }

  async #begun(): Promise<Hand> {
    try {
      const module = await this.#module();
      const hand = this.#shop.hand();
      await new Promise<void>((resolve, reject) => {
        hand.onerror = (event) => reject(new Error(event.message || "the worker does not start"));
        hand.onmessage = ({ data }) => ("failed" in data ? reject(new Error(data.failed)) : resolve());
        hand.postMessage({ module, runtime: this.#place.runtime });
      });
      return hand;
    } catch (error) {
      this.#hand = null; // the next request tries again
      throw error;
    }
  }

  #module(): Promise<WebAssembly.Module> {
    let known = Mate.#modules.get(this.#shop);
    if (!known) Mate.#modules.set(this.#shop, (known = new Map()));
    let module = known.get(this.#place.program);
    if (!module) {
      module = this.#shop.compile(this.#place);
      known.set(this.#place.program, module);
      module.catch(() => known.delete(this.#place.program));
    }
    return module;
  }
}

/** A request was ended because a newer one has taken its place. */
export class Ended extends Error {
  constructor() {
    super("a newer request has taken its place");
  }
}
