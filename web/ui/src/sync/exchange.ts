import { differences } from "../document/change";
import { same, type Json } from "../document/json";
import { newID, Tree, type Revision } from "../document/tree";
import type { Device, Kept, Sent } from "../device/device";
import type { Job } from "../planner/job";
import type { Sending, Server, Stored, Summary } from "./server";

// One exchange with the server, job by job. For each of them this device knows the
// server's last version and which revision of its own says the same:
//
//   server.version   here                      there        what is done
//   ─────────────    ───────────────────────   ─────────    ──────────────────────────
//   as known         head = server.revision                 nothing
//   as known         head is further                        push
//   newer            head = server.revision                 pull: the head moves on
//   newer            head is further                        conflict: both are kept
//   deleted          head = server.revision                 into the bin here
//   deleted          head is further                        begun anew: somebody works on it
//   unknown          any                                    begun anew: the server has lost it, or is another
//
// A job with a conflict is not sent until somebody has decided.
//
// Of a job that was deleted here a note stays, so that it does not come back from a server
// that had not heard of it, or from a backup of one. What a server has heard of and has
// again goes into its bin once; who takes it out from there has it on this device too.

/** Words for what the exchange does, in the language of this device. */
export interface ExchangeWords {
  pulled: string;
  jumped: string; // for a state that was reached by undoing
}

export class Exchange {
  constructor(
    private readonly device: Device,
    private readonly server: Server,
    private readonly words: ExchangeWords,
    private readonly told: (id: string) => void,
  ) {}

  /** Brings both sides to the same, as far as they agree. */
  async run(): Promise<void> {
    const there = new Map<string, Summary>();
    for (const s of await this.server.jobs()) there.set(s.id, s);
    const bin = await this.server.bin();
    for (const s of bin.jobs) there.set(s.id, { ...s, binned: s.binned ?? s.saved });
    const erased = new Set(bin.erased);
    const here = await this.device.records();
    for (const kept of here) await this.job(kept, there.get(kept.id), erased.has(kept.id));
    const known = new Set(here.map((k) => k.id));
    for (const s of there.values()) if (!known.has(s.id)) await this.adopt(s);
  }

  private async job(kept: Kept, there: Summary | undefined, isErased: boolean): Promise<void> {
    if (kept.erased !== undefined) return this.erase(kept, there, isErased);
    if (kept.conflicts.length > 0 || (kept.binned !== undefined && !kept.server)) return;
    if (kept.server && !there) return this.gone(kept, isErased);
    if (kept.head !== kept.server?.revision) await this.push(kept);
    else if (there) {
      if (there.version > kept.server.version) await this.pull(kept);
      await this.bin(kept, there);
    }
    await this.names(kept);
  }

  /** Tells the server the names of those revisions that it has got. */
  private async names({ id, named }: Kept): Promise<void> {
    if (!named?.length) return;
    const told = (await this.device.revisions(id)).filter((r) => named.includes(r.id) && r.version !== undefined);
    for (const r of told) await this.server.name(id, r.version!, oneLine(r.name ?? ""));
    const done = new Set(told.map((r) => r.id));
    if (done.size > 0) await this.amend(id, (k) => ({ ...k, named: (k.named ?? []).filter((n) => !done.has(n)) }));
  }

  private version(id: string, revision: string, version: number): Promise<void> {
    return this.device.revise(id, (r) => ({ ...r, version }), [revision]);
  }

  /** Tells the server that a job was deleted here, and keeps a note of it. */
  private async erase(kept: Kept, there: Summary | undefined, isErased: boolean): Promise<void> {
    const { note } = kept;
    if (!there) {
      if (!note) await this.device.bury(kept.id, { heard: isErased });
      return;
    }
    if (!note?.heard) {
      if (!there.binned) await this.server.discard(kept.id);
      await this.server.erase(kept.id);
      return this.device.bury(kept.id, { heard: true, version: there.version });
    }
    if (there.binned) return;
    if (note.again || there.version > (note.version ?? 0)) {
      await this.device.remove(kept.id);
      return this.adopt(there);
    }
    await this.server.discard(kept.id);
    await this.device.bury(kept.id, { ...note, again: true });
  }

  /** The bin: whichever side has changed its mind since the last exchange. */
  private async bin(kept: Kept, there: Summary): Promise<void> {
    const [mine, theirs, last] = [kept.binned !== undefined, there.binned !== undefined, kept.server?.binned ?? false];
    if (mine === last && theirs === last) return;
    if (mine !== last && mine !== theirs) await (mine ? this.server.discard(kept.id) : this.server.recover(kept.id));
    const binned = mine !== last ? mine : theirs;
    await this.amend(kept.id, ({ binned: was, ...k }) => ({
      ...k,
      ...(binned && { binned: was ?? Date.now() }),
      ...(k.server && { server: { ...k.server, binned } }),
    }));
  }

  /**
   * A job that was deleted elsewhere goes into the bin here, and is sent again only when
   * somebody puts it back, or has worked on it since. A server that knows nothing of it has
   * lost it, or is another one: there it begins anew.
   */
  private async gone(kept: Kept, isErased: boolean): Promise<void> {
    const { server: sent, ...unsent } = kept;
    if (!isErased || kept.head !== sent?.revision) return this.push(unsent);
    await this.amend(kept.id, ({ server: _, ...k }) => ({ ...k, binned: k.binned ?? Date.now() }));
  }

  private async push(kept: Kept): Promise<void> {
    const tree = new Tree(await this.device.revisions(kept.id));
    let base = kept.server?.version ?? 0;
    for (const part of parts(this.sendings(kept, tree))) {
      const pushed = await this.server.push(kept.id, base, part);
      if ("current" in pushed) return this.met(kept, tree, pushed.current);
      base = pushed.version - part.length; // a job that is begun anew goes on counting where it ended
      for (const [i, s] of part.entries()) await this.version(kept.id, s.key, base + i + 1);
      base = pushed.version;
    }
    await this.version(kept.id, kept.head, base);
    await this.sent(kept.id, { version: base, revision: kept.head, binned: false });
  }

  /** What the server has not got: every revision on the way from what it has, or the state alone where no way leads from there. */
  private sendings(kept: Kept, tree: Tree): Sending[] {
    const line = kept.server ? tree.between(kept.server.revision, kept.head) : tree.ancestry(kept.head).reverse();
    const revisions = line?.filter((r, i) => r.group === undefined || line[i + 1]?.group !== r.group);
    if (!revisions) return [sending({ id: newID(), at: Date.now(), label: this.words.jumped }, kept.document)];
    return revisions.map((r) => sending(r, tree.documentAt(r.id, kept.head, kept.document)));
  }

  /** The server has another version than expected: perhaps only the answer to an earlier push was lost. */
  private async met(kept: Kept, tree: Tree, current: Stored): Promise<void> {
    if (same(json(current.document), json(kept.document))) {
      await this.version(kept.id, kept.head, current.version);
      return this.sent(kept.id, { version: current.version, revision: kept.head, binned: false });
    }
    const common = kept.server?.revision ?? tree.ancestry(kept.head).at(-1)!.id;
    const theirs = this.heard(common, tree.documentAt(common, kept.head, kept.document), current);
    await this.amend(
      kept.id,
      (k) => ({ ...k, conflicts: [...k.conflicts, theirs.id], server: { version: current.version, revision: theirs.id, binned: false } }),
      [theirs],
    );
  }

  private async pull(kept: Kept): Promise<void> {
    const current = await this.server.job(kept.id);
    if (!current) return;
    const theirs = this.heard(kept.head, kept.document, current);
    const isSame = theirs.changes.length === 0;
    const step = isSame ? kept.head : theirs.id;
    await this.amend(
      kept.id,
      (k) => {
        if (k.head !== kept.head) return k; // edited meanwhile: the next exchange decides
        const server: Sent = { version: current.version, revision: step, ...(k.server?.binned && { binned: true }) };
        return { ...k, head: step, document: isSame ? k.document : current.document, name: String(current.document.name ?? ""), changed: Date.parse(current.saved), server };
      },
      isSame ? [] : [theirs],
    );
  }

  /** A job that was begun elsewhere. */
  private async adopt(there: Summary): Promise<void> {
    const current = await this.server.job(there.id);
    if (!current) return;
    const at = Date.parse(current.saved);
    const first: Revision = { id: newID(), parent: null, at, label: current.label || this.words.pulled, changes: [], from: "server", version: current.version };
    const server: Sent = { version: current.version, revision: first.id, ...(there.binned && { binned: true }) };
    await this.device.add(
      { id: there.id, name: current.name, made: at, changed: at, head: first.id, document: current.document, conflicts: [], server, ...(there.binned && { binned: Date.parse(there.binned) }) },
      [first],
    );
    this.told(there.id);
  }

  private heard(parent: string, before: Job, current: Stored): Revision {
    return {
      id: newID(),
      parent,
      at: Date.parse(current.saved) || Date.now(),
      label: current.label || this.words.pulled,
      changes: differences(json(before), json(current.document)),
      from: "server",
      version: current.version,
    };
  }

  private sent(id: string, server: Sent): Promise<void> {
    return this.amend(id, (k) => ({ ...k, server: { ...server, ...(k.server?.binned && { binned: false }) } }));
  }

  private async amend(id: string, change: (kept: Kept) => Kept, revisions: Revision[] = []): Promise<void> {
    await this.device.amend(id, change, revisions);
    this.told(id);
  }
}

function sending(r: Pick<Revision, "id" | "at" | "label">, document: Job): Sending {
  return { key: r.id, label: oneLine(r.label), made: new Date(r.at).toISOString(), document };
}

/** A label as the server takes it. */
function oneLine(label: string): string {
  const line = label.replace(/[\s\p{Cc}]+/gu, " ").trim();
  return [...line].length > 200 ? [...line].slice(0, 199).join("") + "…" : line;
}

/** In parts that a server takes at once. */
export function parts(all: Sending[], most = 500, bytes = 8 << 20): Sending[][] {
  const out: Sending[][] = [];
  let size = Infinity;
  for (const s of all) {
    const more = JSON.stringify(s.document).length;
    const last = out.at(-1);
    if (!last || last.length === most || size + more > bytes) {
      out.push([s]);
      size = more;
    } else {
      last.push(s);
      size += more;
    }
  }
  return out;
}

const json = (document: Job) => document as unknown as Json;
