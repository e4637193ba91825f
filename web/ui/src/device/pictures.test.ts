import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { expect, test } from "vitest";
import { decodePicture, keepPicture, openPictures, PictureRefused, readPicture } from "./pictures";

test("a picture is kept under its name", async () => {
  const db = await openPictures(new IDBFactory());
  await keepPicture(db, "a.png", new Blob(["shown"], { type: "image/png" }));
  const found = await readPicture(db, "a.png");
  expect([await found?.text(), found?.type]).toEqual(["shown", "image/png"]);
  expect(await readPicture(db, "b.png")).toBeUndefined();
});

test("what is no raster picture, or too large, is refused before it is read", async () => {
  const refused = async (file: Blob) => decodePicture(file).catch((e) => (e instanceof PictureRefused ? e.why : e));
  expect(await refused(new Blob(["<svg/>"], { type: "image/svg+xml" }))).toBe("picture.broken");
  expect(await refused(new Blob([new Uint8Array(20e6 + 1)], { type: "image/png" }))).toBe("picture.big");
});
