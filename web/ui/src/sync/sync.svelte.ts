import type { Device } from "../device/device";
import { tickShelf } from "../device/ticks";
import { say } from "../words";
import { Exchange } from "./exchange";
import { pictures } from "../pictures.svelte";
import { PictureExchange } from "./pictures";
import { pictureServer, server, ServerTrouble, tickServer } from "./server";
import { TickExchange } from "./ticks";

// When there is an exchange with the server: soon after an edit, when the network is
// back, when one returns to the window, and now and then. Of several tabs one does it.

const soon = 1200; // milliseconds after an edit
const often = 20_000; // while one works
const seldom = 60_000; // while there is no server

class Sync {
  /** Whether the server answered last; null: nobody has asked yet. */
  server = $state<boolean | null>(null);
  /** Why the last exchange failed, if the server is there. */
  trouble = $state<"" | "token" | "refused">("");
  detail = $state("");

  #exchange: Exchange | null = null;
  #pictures = new PictureExchange(pictures, pictureServer);
  #ticks = new TickExchange(tickShelf, tickServer);
  #open: () => string | null = () => null;
  #device: Device | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running = false;
  #again = false;

  /**
   * Begins to exchange the jobs of a device with the server that the screen came from; open
   * tells which job somebody works on.
   */
  begin(device: Device, told: (id: string) => void, open: () => string | null): void {
    const words = {
      get pulled() {
        return say("edit.server");
      },
      get jumped() {
        return say("undo");
      },
    };
    this.#device = device;
    this.#open = open;
    tickShelf.listen((_, own) => own && this.wake());
    this.#exchange = new Exchange(device, server, words, told);
    addEventListener("online", () => this.wake(0));
    addEventListener("offline", () => (this.server = false));
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.wake(0));
    this.wake(0);
  }

  /** Asks for an exchange before long. */
  wake(after = soon): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#run(), after);
  }

  async #run(): Promise<void> {
    if (!this.#exchange) return;
    if (this.#running) {
      this.#again = true;
      return;
    }
    this.#running = true;
    try {
      await alone(async () => {
        await this.#exchange!.run();
        const jobs = await this.#device!.records();
        await this.#ticks.run(jobs, this.#open());
        await this.#pictures.run(jobs);
      });
      this.server = true;
      this.trouble = this.detail = "";
    } catch (error) {
      const kind = error instanceof ServerTrouble ? error.kind : "refused";
      this.server = kind !== "away";
      this.trouble = kind === "away" ? "" : kind;
      this.detail = error instanceof Error ? error.message : String(error);
    } finally {
      this.#running = false;
      this.wake(this.#again ? soon : this.server ? often : seldom);
      this.#again = false;
    }
  }
}

/** One tab at a time, where the browser can tell. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (!navigator.locks) return work();
  await navigator.locks.request("firstdrop.exchange", work);
}

export const sync = new Sync();
