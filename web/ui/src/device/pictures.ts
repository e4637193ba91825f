import { result } from "./database";

// Pictures of papers, kept on this device beside the jobs: by a name that is made from
// what is in them, so that one picture is kept once and a name never means another.
//
//   file ──► decoded ──► at most 1600 across, written anew ──► name = hash ──► database
//
// Written anew means that nothing of the file is kept but what it shows: no place where
// a photograph was taken, nothing that could run.

const most = 40e6; // squares of a picture that this device will decode
const biggest = 20e6; // bytes of a file
const across = 1600;

/** Why a file is no picture for us: a key of the catalogues. */
export type Refusal = "picture.big" | "picture.broken";

export class PictureRefused extends Error {
  constructor(readonly why: Refusal) {
    super(why);
  }
}

export async function openPictures(factory: IDBFactory = indexedDB): Promise<IDBDatabase> {
  const asked = factory.open("firstdrop-pictures", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("pictures");
  return result(asked);
}

export async function keepPicture(db: IDBDatabase, name: string, picture: Blob): Promise<void> {
  const bytes = await picture.arrayBuffer(); // a transaction would not wait for it
  const t = db.transaction("pictures", "readwrite", { durability: "strict" });
  const ended = new Promise<void>((done, failed) => {
    t.oncomplete = () => done();
    t.onabort = () => failed(t.error ?? new Error("the browser's database refused to save"));
  });
  t.objectStore("pictures").put({ type: picture.type, bytes }, name);
  await ended;
}

export async function readPicture(db: IDBDatabase, name: string): Promise<Blob | undefined> {
  const kept = await result<{ type: string; bytes: ArrayBuffer } | undefined>(db.transaction("pictures").objectStore("pictures").get(name));
  return kept && new Blob([kept.bytes], { type: kept.type });
}

/** Decodes a file of the user's, turned upright. */
export async function decodePicture(file: Blob): Promise<ImageBitmap> {
  if (file.size > biggest) throw new PictureRefused("picture.big");
  // SVG may carry programs and fetch things; what is not a raster is refused.
  if (!/^image\/(png|jpeg|gif|webp)$/.test(file.type)) throw new PictureRefused("picture.broken");
  const shown = await createImageBitmap(file).catch(() => {
    throw new PictureRefused("picture.broken");
  });
  if (shown.width * shown.height > most) throw new PictureRefused("picture.big");
  return shown;
}

/** A rectangle of a picture, in its own squares. */
export interface Cutout {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** What a rectangle of a picture shows, as a picture of its own with its name. */
export async function cutOut(shown: ImageBitmap, c: Cutout, photo: boolean): Promise<{ name: string; picture: Blob }> {
  const scale = Math.min(1, across / Math.max(c.width, c.height));
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(c.width * scale)), Math.max(1, Math.round(c.height * scale)));
  canvas.getContext("2d")!.drawImage(shown, c.x, c.y, c.width, c.height, 0, 0, canvas.width, canvas.height);
  const picture = await canvas.convertToBlob(photo ? { type: "image/jpeg", quality: 0.9 } : { type: "image/png" });
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await picture.arrayBuffer()));
  const hex = [...hash].map((b) => b.toString(16).padStart(2, "0")).join("");
  return { name: `${hex}.${photo ? "jpg" : "png"}`, picture };
}
