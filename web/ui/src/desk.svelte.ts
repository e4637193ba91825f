import { Device, type Kept } from "./device/device";
import { copy } from "./document/json";
import { newID, type Revision } from "./document/tree";
import type { Job } from "./planner/job";
import { sync } from "./sync/sync.svelte";
import { Tabs } from "./sync/tabs";
import { Work } from "./job/work.svelte";
import { say } from "./words";

/** All jobs of this device, and the one that is open. */
class Desk {
  readonly device = new Device();
  /** All jobs, those in the bin too, last changed first; null: not read yet. */
  jobs = $state.raw<Kept[] | null>(null);
  work = $state.raw<Work | null>(null);
  failure = $state("");

  #tabs = new Tabs((news) => void this.#hear(news.job));

  /** Reads the jobs, and begins to exchange them with the server. */
  async begin(): Promise<void> {
    await this.refresh();
    sync.begin(this.device, (job) => {
      this.#tabs.tell({ job });
      void this.#hear(job);
    }, () => this.work?.id ?? null);
  }

  async refresh(): Promise<void> {
    try {
      this.jobs = await this.device.jobs();
    } catch (error) {
      this.failure = error instanceof Error ? error.message : String(error);
    }
  }

  async #hear(job: string): Promise<void> {
    await this.refresh();
    if (this.work?.id === job) await this.work.refresh();
  }

  /** Says that a job has changed, to the other tabs, the list and, before long, the server. */
  told(job: string): void {
    this.#tabs.tell({ job });
    void this.refresh();
    sync.wake();
  }

  /** Opens a job in place of another; null: it is not on this device. */
  async open(id: string): Promise<Work | null> {
    if (this.work?.id === id) return this.work;
    const [kept, revisions] = await Promise.all([this.device.job(id), this.device.revisions(id)]);
    this.work = kept && kept.erased === undefined ? new Work(this.device, kept, revisions, () => this.told(id)) : null;
    return this.work;
  }

  /** Keeps a new job, and returns its id. */
  async add(document: Job, label: string): Promise<string> {
    const revision: Revision = { id: newID(), parent: null, at: Date.now(), label, changes: [] };
    const id = newID();
    const now = Date.now();
    await this.device.add(
      { id, name: String(document.name ?? ""), made: now, changed: now, head: revision.id, document, conflicts: [] },
      [revision],
    );
    this.told(id);
    return id;
  }

  async duplicate(kept: Kept): Promise<string> {
    const name = kept.name || say("jobs.unnamed");
    return this.add({ ...copy(kept.document), name: say("jobs.copyOf", { name }) }, say("edit.copied", { name }));
  }

  async bin(id: string): Promise<void> {
    await this.device.amend(id, (kept) => ({ ...kept, binned: Date.now() }));
    this.told(id);
  }

  async putBack(id: string): Promise<void> {
    await this.device.amend(id, ({ binned: _, ...kept }) => kept);
    this.told(id);
  }

  async remove(id: string): Promise<void> {
    if (this.work?.id === id) this.work = null;
    // The server is to know of it; a note stays when it does.
    const kept = await this.device.job(id);
    if (kept?.server) await this.device.amend(id, (k) => ({ ...k, erased: Date.now() }));
    else await this.device.remove(id);
    this.told(id);
  }
}

export const desk = new Desk();
