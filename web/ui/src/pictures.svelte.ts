import { SvelteMap } from "svelte/reactivity";
import { keepPicture, openPictures, readPicture } from "./device/pictures";

/** The pictures of papers that this device has, each under an address that drawings can use. */
class Pictures {
  #database: Promise<IDBDatabase> | undefined;
  #addresses = new SvelteMap<string, string>();
  #asked = new Set<string>();

  get #db(): Promise<IDBDatabase> {
    return (this.#database ??= openPictures());
  }

  /** The address of a picture; undefined while it is read, and when this device has none of that name. */
  address(name: string): string | undefined {
    const known = this.#addresses.get(name);
    if (known === undefined && !this.#asked.has(name)) {
      this.#asked.add(name);
      void this.read(name).then((found) => found && this.#addresses.set(name, URL.createObjectURL(found)));
    }
    return known;
  }

  async read(name: string): Promise<Blob | undefined> {
    return readPicture(await this.#db, name);
  }

  async keep(name: string, picture: Blob): Promise<void> {
    await keepPicture(await this.#db, name, picture);
    this.#addresses.set(name, URL.createObjectURL(picture));
  }
}

export const pictures = new Pictures();
