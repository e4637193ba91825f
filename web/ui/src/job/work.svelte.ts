import { differences, type Change } from "../document/change";
import { copy, type Json } from "../document/json";
import { newID, Tree, type Revision } from "../document/tree";
import type { Device, Kept } from "../device/device";
import type { Job } from "../planner/job";

// The job that is open. What is on the screen changes at once; the device is told in
// the order of the edits, each as soon as the one before is on the disk.
//
//   edit ──► job, head ──► save ──► tell the other tabs, the server
//
// A session is an edit under way, such as a drag: the screen follows, and the whole of
// it becomes one revision when it ends, or leaves no trace when it is given up. Each
// step of a session starts from the job as it was at its beginning.

export type Saving = "saved" | "saving" | "failed";

export interface Session {
  /** Shows another state: the change is made on a copy of the job at the session's beginning. */
  update(change: (job: Job) => void): void;
  /** Ends with one revision; the label may say better than at the beginning what was done. */
  commit(label?: string): void;
  cancel(): void;
}

export class Work {
  readonly id: string;
  job: Job = $state.raw({ firstdrop: 1, room: { closed: true, walls: [] }, papers: [] });
  /** Counts everything that the screen has shown, for the planner. */
  version = $state(1);
  head = $state("");
  kept: Kept = $state.raw(null!);
  saving = $state<Saving>("saved");
  failure = $state(""); // why the device refuses to save
  /** Revisions, put there anew whenever there are more. */
  tree: Tree = $state.raw(new Tree());

  #device: Device;
  #told: () => void;
  #document!: Job; // at the head; the job on the screen may be ahead of it in a session
  #unsaved: Revision[] = [];
  #base: string; // the head that the device has
  #queue: Promise<void> = Promise.resolve();
  #sealed = ""; // the head at which a group has ended
  #session: Session | null = null;
  #retry: ReturnType<typeof setTimeout> | undefined;

  constructor(device: Device, kept: Kept, revisions: Revision[], told: () => void = () => {}) {
    this.id = kept.id;
    this.#device = device;
    this.#told = told;
    this.#base = kept.head;
    this.#take(kept, revisions);
  }

  #take(kept: Kept, revisions: Iterable<Revision>): void {
    this.kept = kept;
    this.tree = new Tree(revisions);
    this.#settle(kept.document, kept.head);
  }

  #show(job: Job): void {
    this.job = job;
    this.version++;
  }

  #settle(job: Job, head: string): void {
    this.#document = job;
    this.head = head;
    this.#show(job);
  }

  /**
   * Makes an edit: the change works on a copy. Edits of one group in a row, such as
   * keys typed into one field, are undone together. An edit that changes nothing is none.
   */
  edit(label: string, change: (job: Job) => void, group?: string): void {
    this.#session?.commit();
    const draft = copy(this.job);
    change(draft);
    this.#add(label, draft, group);
  }

  #add(label: string, after: Job, group?: string): void {
    const changes = differences(this.#document as unknown as Json, after as unknown as Json);
    if (changes.length === 0) return this.#show(this.#document);
    this.#settle(after, this.#grow(label, changes, group));
    this.#save();
  }

  #grow(label: string, changes: Change[], group?: string): string {
    const last = this.tree.get(this.head)!;
    const revision: Revision = {
      id: newID(),
      parent: this.head,
      at: Math.max(Date.now(), last.at + 1),
      label,
      changes,
      ...(group && { group: this.#grouped(group) }),
    };
    this.#unsaved.push(revision);
    this.tree.put(revision);
    return revision.id;
  }

  /** Ends a group of edits: the field has been left. */
  seal(): void {
    this.#sealed = this.head;
  }

  /** A group ends with any other edit, with a pause, and where it is sealed. */
  #grouped(field: string): string {
    const last = this.tree.get(this.head);
    const going = last?.group?.startsWith(field + " ") && Date.now() - last.at < 4000 && this.#sealed !== this.head;
    return going ? last!.group! : `${field} ${newID()}`;
  }

  /** Begins a session, in place of any other. */
  begin(label: string): Session {
    this.#session?.commit();
    const before = this.#document;
    const end = (show: () => void) => {
      if (this.#session !== session) return;
      this.#session = null;
      show();
    };
    const session: Session = {
      update: (change) => {
        if (this.#session !== session) return;
        const draft = copy(before);
        change(draft);
        this.#show(draft);
      },
      commit: (done = label) => end(() => this.#add(done, this.job)),
      cancel: () => end(() => this.#show(before)),
    };
    this.#session = session;
    return session;
  }

  get undoable(): Revision | undefined {
    return this.tree.back(this.head) && this.tree.get(this.head);
  }

  get redoable(): Revision | undefined {
    return this.tree.forth(this.head);
  }

  undo(): Revision | undefined {
    this.#session?.cancel();
    const undone = this.undoable;
    const to = this.tree.back(this.head);
    if (to) this.#go(to.id);
    return undone;
  }

  redo(): Revision | undefined {
    this.#session?.cancel();
    const to = this.redoable;
    if (to) this.#go(to.id);
    return to;
  }

  #go(id: string): void {
    this.#settle(this.documentAt(id), id);
    this.#save();
  }

  documentAt(id: string): Job {
    return this.tree.documentAt(id, this.head, this.#document);
  }

  /** Goes back to what a revision showed, as an edit of its own. */
  restore(id: string, label: string): void {
    this.become(this.documentAt(id), label);
  }

  /** Makes a document of elsewhere what the job shows, as an edit of its own. */
  become(document: Job, label: string): void {
    this.#session?.cancel();
    this.#add(label, copy(document));
  }

  /** Gives a revision a name, or takes it away. The server is told of it before long. */
  async name(id: string, name: string): Promise<void> {
    const revision = this.tree.get(id);
    if (!revision) return;
    await this.#device.revise(this.id, (r) => ({ ...r, name }), [id]);
    this.tree.put({ ...revision, name });
    await this.#amend((kept) => ({ ...kept, named: [...new Set([...(kept.named ?? []), id])] }));
  }

  /** Decides a conflict: goes on with one side; the other stays in the history. */
  async decide(other: string, keepOther: boolean, label: string): Promise<void> {
    if (keepOther) this.restore(other, label);
    await this.#queue;
    await this.#amend((kept) => ({ ...kept, conflicts: kept.conflicts.filter((c) => c !== other) }));
  }

  async #amend(change: (kept: Kept) => Kept, revisions: Revision[] = []): Promise<void> {
    const kept = await this.#device.amend(this.id, change, revisions);
    if (!kept) return;
    for (const r of revisions) this.tree.put(r);
    this.tree = this.tree.copy();
    this.kept = kept;
    this.#told();
  }

  /** Whether anything here has not reached the disk, or is still under way. */
  get busy(): boolean {
    return this.saving !== "saved" || this.#session !== null;
  }

  /** Ends what is under way, and waits until all of it is on the disk. */
  async settle(): Promise<void> {
    this.#session?.commit();
    await this.#queue;
  }

  /** Reads again what another tab or the server has left, unless an edit is under way. */
  async refresh(): Promise<void> {
    await this.#queue;
    const [kept, revisions] = await Promise.all([this.#device.job(this.id), this.#device.revisions(this.id)]);
    if (!kept || this.busy) return;
    if (kept.head === this.head) {
      this.kept = kept;
      this.tree = new Tree(revisions);
      return;
    }
    this.#base = kept.head;
    this.#take(kept, revisions);
  }

  #save(): void {
    this.saving = "saving";
    this.#queue = this.#queue.then(() => this.#saveNow());
  }

  async #saveNow(): Promise<void> {
    if (this.#base === this.head && this.#unsaved.length === 0) {
      this.saving = "saved";
      return;
    }
    const revisions = this.#unsaved;
    const step = { base: this.#base, head: this.head, document: this.#document };
    this.#unsaved = [];
    try {
      const kept = await this.#device.save(this.id, step, revisions);
      if (!kept) throw new Error("the job was deleted");
      await this.#saved(kept, step.head);
    } catch (error) {
      this.#unsaved = [...revisions, ...this.#unsaved];
      this.saving = "failed";
      this.failure = error instanceof Error ? error.message : String(error);
      this.#retry ??= setTimeout(() => {
        this.#retry = undefined;
        if (this.saving === "failed") this.#save();
      }, 5000);
    }
  }

  async #saved(kept: Kept, head: string): Promise<void> {
    this.#base = head;
    this.kept = kept;
    this.failure = "";
    if (kept.conflicts.some((c) => !this.tree.has(c))) {
      for (const r of await this.#device.revisions(this.id)) this.tree.put(r);
    }
    this.tree = this.tree.copy();
    if (this.head === head) this.saving = "saved";
    this.#told();
  }
}
