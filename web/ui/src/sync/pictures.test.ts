import { expect, test } from "vitest";
import type { Kept } from "../device/device";
import { namedPictures, PictureExchange } from "./pictures";

const name = (c: string) => `${c.repeat(64)}.png`;
const job = (id: string, ...pictures: string[]): Kept => ({
  id,
  name: id,
  made: 0,
  changed: 0,
  head: "r",
  conflicts: [],
  server: { version: 1, revision: "r" },
  document: { firstdrop: 1, room: { closed: true, walls: [] }, papers: pictures.map((picture, i) => ({ name: String(i), width: 1, roll: 1, match: "free", picture })) },
});

class Memory {
  kept = new Map<string, Blob>();
  asked: string[] = [];
  read = async (n: string) => this.kept.get(n);
  keep = async (n: string, b: Blob) => void this.kept.set(n, b);
  names = async (id: string) => (this.asked.push(id), [...this.kept.keys()]);
  get = async (_: string, n: string) => this.kept.get(n) ?? null;
  add = async (_: string, b: Blob) => void this.kept.set(await b.text(), b);
}

test("only the user's own pictures are exchanged", () => {
  expect(namedPictures(job("a", "tulips", name("a"), "../x.png", name("a")))).toEqual([name("a")]);
});

test("each side gets what the other has, once", async () => {
  const [shelf, server] = [new Memory(), new Memory()];
  shelf.kept.set(name("a"), new Blob([name("a")]));
  server.kept.set(name("b"), new Blob(["b"]));
  const exchange = new PictureExchange(shelf, server);
  const jobs = [job("one", name("a"), name("b"), name("c"))];
  await exchange.run(jobs);
  expect([...server.kept.keys()].sort()).toEqual([name("a"), name("b")]);
  expect([...shelf.kept.keys()].sort()).toEqual([name("a"), name("b")]);
  await exchange.run(jobs);
  expect(server.asked.length).toBe(2); // for what neither has yet
});

test("a job that the server has not got yet keeps its pictures to itself", async () => {
  const [shelf, server] = [new Memory(), new Memory()];
  shelf.kept.set(name("a"), new Blob([name("a")]));
  const { server: _, ...unsent } = job("one", name("a"));
  await new PictureExchange(shelf, server).run([unsent]);
  expect(server.asked).toEqual([]);
});
