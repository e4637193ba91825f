import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, expect, test, vi } from "vitest";
import { openDatabase } from "../device/database";
import { Device, type Kept } from "../device/device";
import type { Job } from "../planner/job";
import { Work } from "./work.svelte";

// The open job is driven as a user drives it; the device is a database in memory.

let device: Device;
const job: Job = { firstdrop: 1, name: "Room", room: { closed: true, walls: [{ name: "A", width: 4000 }] }, papers: [] };

beforeEach(async () => {
  device = new Device(openDatabase(new IDBFactory()));
  const kept: Kept = { id: "j", name: "Room", made: 1, changed: 1, head: "r0", document: job, conflicts: [] };
  await device.add(kept, [{ id: "r0", parent: null, at: 1, label: "Started", changes: [] }]);
});

async function open(told?: () => void): Promise<Work> {
  return new Work(device, (await device.job("j"))!, await device.revisions("j"), told);
}
const width = (w: number | string) => (j: Job) => void (j.room.walls[0]!.width = w);
const settled = (w: Work) => vi.waitFor(() => expect(w.saving).toBe("saved"));

test("an edit shows at once and survives a crash as soon as it is saved", async () => {
  const work = await open();
  work.edit("Width", width(4100));
  expect(work.job.room.walls[0]!.width).toBe(4100);
  await settled(work);
  expect((await open()).job.room.walls[0]!.width).toBe(4100); // as after a reload
  expect(job.room.walls[0]!.width).toBe(4000); // edits work on a copy
});

test("undo goes back to the beginning, redo to the end, also after a reload", async () => {
  const work = await open();
  for (const w of [1, 2, 3]) work.edit(`to ${w}`, width(w));
  work.undo();
  await settled(work);
  const again = await open();
  expect(again.job.room.walls[0]!.width).toBe(2);
  expect(again.undo()?.label).toBe("to 2");
  again.undo();
  expect(again.job).toEqual(job);
  expect(again.undo()).toBeUndefined();
  again.redo();
  again.redo();
  expect(again.redo()?.label).toBe("to 3");
  expect(again.job.room.walls[0]!.width).toBe(3);
});

test("an edit that changes nothing is none", async () => {
  const work = await open();
  work.edit("Width", width(4000));
  expect(work.undoable).toBeUndefined();
});

test("keys typed into one field are one step back; another field begins another", async () => {
  const work = await open();
  for (const w of ["4", "42", "420"]) work.edit("Width", width(w), "walls[0].width");
  work.edit("Name", (j) => void (j.name = "Hall"), "name");
  work.undo();
  expect([work.job.name, work.job.room.walls[0]!.width]).toEqual(["Room", "420"]);
  work.undo();
  expect(work.job).toEqual(job);
  work.edit("Name", (j) => void (j.name = "a"), "name");
  work.seal(); // the field is left and entered again
  work.edit("Name", (j) => void (j.name = "b"), "name");
  work.undo();
  expect(work.job.name).toBe("a");
});

test("a drag is one revision; given up, it leaves no trace", async () => {
  const work = await open();
  const drag = work.begin("Drag");
  for (let x = 1; x < 50; x++) drag.update((j) => void (j.room.walls[0]!.width = Number(j.room.walls[0]!.width) + x));
  expect(work.job.room.walls[0]!.width).toBe(4049); // each step from the beginning, not from the last
  drag.commit();
  await settled(work);
  expect(await device.revisions("j")).toHaveLength(2);
  const other = work.begin("Drag");
  other.update(width(1));
  other.cancel();
  other.update(width(2)); // a hand that comes too late
  expect(work.job.room.walls[0]!.width).toBe(4049);
  expect(work.undoable?.label).toBe("Drag");
});

test("going back in the history is an edit, and keeps what was done since", async () => {
  const work = await open();
  work.edit("to 1", width(1));
  const marked = work.head;
  work.edit("to 2", width(2));
  work.restore(marked, "Went back");
  expect(work.job.room.walls[0]!.width).toBe(1);
  work.undo();
  expect(work.job.room.walls[0]!.width).toBe(2);
});

test("another tab that has not edited takes over what this one did", async () => {
  const [here, there] = [await open(), await open()];
  here.edit("Width", width(1));
  await settled(here);
  await there.refresh();
  expect(there.job.room.walls[0]!.width).toBe(1);
  there.edit("Width", width(2));
  await settled(there);
  expect(there.kept.conflicts).toEqual([]);
});

test("two tabs that both edited keep both, and one decides", async () => {
  const [here, there] = [await open(), await open()];
  here.edit("mine", width(1));
  there.edit("theirs", width(2));
  await settled(here);
  await settled(there);
  await here.refresh();
  const kept = (await device.job("j"))!;
  expect(kept.conflicts).toHaveLength(1);
  const last = kept.document.room.walls[0]!.width === 2 ? there : here;
  const other = kept.conflicts[0]!;
  expect(new Set([last.job.room.walls[0]!.width, last.documentAt(other).room.walls[0]!.width])).toEqual(new Set([1, 2]));
  const lost = last.documentAt(other).room.walls[0]!.width;
  await last.decide(other, true, "Kept theirs");
  await settled(last);
  expect((await device.job("j"))!.conflicts).toEqual([]);
  expect((await device.job("j"))!.document.room.walls[0]!.width).toBe(lost);
});

test("a refusing device is told, and what was typed is still there and saved later", async () => {
  const work = await open();
  const save = vi.spyOn(device, "save").mockRejectedValueOnce(new Error("disk full"));
  work.edit("Width", width(1));
  await vi.waitFor(() => expect(work.saving).toBe("failed"));
  expect(work.failure).toBe("disk full");
  save.mockRestore();
  work.edit("Width", width(2));
  await settled(work);
  expect((await device.revisions("j")).map((r) => r.label)).toContain("Width");
  expect(await device.revisions("j")).toHaveLength(3);
});
