import type { Device } from "../device/device";
import { say } from "../words";
import { Exchange } from "./exchange";
import { pictures } from "../pictures.svelte";
import { PictureExchange } from "./pictures";
import { pictureServer, server, ServerTrouble } from "./server";

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
  #device: Device | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running = false;
  #again = false;

  /** Begins to exchange the jobs of a device with the server that the screen came from. */
  begin(device: Device, told: (id: string) => void): void {
    const words = {
      get pulled() {
        return say("edit.server");
      },
      get jumped() {
        return say("undo");
      },
    };
    this.#device = device;
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
        await this.#pictures.run(await this.#device!.records());
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
