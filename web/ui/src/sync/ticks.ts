import type { Kept } from "../device/device";
import type { Tick, TickShelf } from "../device/ticks";
import type { TickServer } from "./server";

/** Ticks follow their jobs. Nothing is ever to be decided: of each, the word of the greater turn counts. */
export class TickExchange {
  constructor(
    private readonly shelf: Pick<TickShelf, "unsent" | "answered">,
    private readonly server: TickServer,
  ) {}

  /** Sends what the server has not got, and fetches what it has of the job that is open. */
  async run(jobs: readonly Kept[], open: string | null): Promise<void> {
    for (const { id, server, erased } of jobs) {
      if (!server || erased !== undefined) continue;
      const sent: Tick[] = this.shelf.unsent(id).slice(0, 1000);
      if (sent.length === 0 && id !== open) continue;
      const answer = await this.server.ticks(id, sent);
      if (answer) this.shelf.answered(id, sent, answer);
    }
  }
}
