import type { Kept } from "../device/device";
import type { PictureServer } from "./server";

// Pictures follow their jobs: those that a job names and the server has not are sent,
// those that this device has not are fetched. A name says what is in a picture, so there
// is never anything to decide.

/** Where this device keeps pictures. */
export interface PictureShelf {
  read(name: string): Promise<Blob | undefined>;
  keep(name: string, picture: Blob): Promise<void>;
}

const given = /^[0-9a-f]{64}\.(png|jpg)$/;

/** The pictures of the user's that a job names. */
export function namedPictures(kept: Pick<Kept, "document">): string[] {
  const names = (kept.document.papers ?? []).map((p) => String(p.picture ?? ""));
  return [...new Set(names.filter((n) => given.test(n)))];
}

export class PictureExchange {
  #done = new Set<string>(); // job/name that both sides have

  constructor(
    private readonly shelf: PictureShelf,
    private readonly server: PictureServer,
  ) {}

  /** Brings both sides to the same, for all jobs that the server has. */
  async run(jobs: readonly Kept[]): Promise<void> {
    for (const kept of jobs) {
      if (kept.erased !== undefined || !kept.server) continue;
      const names = namedPictures(kept).filter((n) => !this.#done.has(`${kept.id}/${n}`));
      if (names.length > 0) await this.#job(kept.id, names);
    }
  }

  async #job(id: string, names: readonly string[]): Promise<void> {
    const there = new Set(await this.server.names(id));
    for (const name of names) {
      const here = await this.shelf.read(name);
      if (here && !there.has(name)) await this.server.add(id, here);
      const fetched = !here && there.has(name) ? await this.server.get(id, name) : null;
      if (fetched) await this.shelf.keep(name, fetched);
      if (here || fetched) this.#done.add(`${id}/${name}`);
    }
  }
}
