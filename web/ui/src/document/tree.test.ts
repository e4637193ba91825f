import { expect, test } from "vitest";
import type { Job } from "../planner/job";
import { newID, Tree, type Revision } from "./tree";

const job = (name: string): Job => ({ firstdrop: 1, name, room: { closed: true, walls: [] }, papers: [] });
let clock = 0;
const revision = (id: string, parent: string | null, from: string, to: string, more: Partial<Revision> = {}): Revision => ({
  id, parent, at: ++clock, label: id, changes: parent === null ? [] : [{ path: ["name"], before: from, after: to }], ...more,
});

//      ┌ c ─ d
//  a ─ b
//      └ e
const tree = new Tree([
  revision("a", null, "", ""),
  revision("b", "a", "A", "B"),
  revision("c", "b", "B", "C"),
  revision("d", "c", "C", "D"),
  revision("e", "b", "B", "E"),
]);

test("every state can be reached from every other", () => {
  for (const [head, name] of [["a", "A"], ["b", "B"], ["d", "D"], ["e", "E"]] as const) {
    for (const [id, want] of [["a", "A"], ["c", "C"], ["d", "D"], ["e", "E"]] as const) {
      expect(tree.documentAt(id, head, job(name)).name).toBe(want);
    }
  }
});

test("undoing goes to the parent, redoing to what was made last here", () => {
  expect(tree.back("d")?.id).toBe("c");
  expect(tree.back("a")).toBeUndefined();
  expect(tree.forth("b")?.id).toBe("e");
  expect(tree.forth("d")).toBeUndefined();
  const heard = new Tree([...tree.all(), revision("f", "b", "B", "F", { from: "server" })]);
  expect(heard.forth("b")?.id).toBe("e");
});

test("keys typed into one field are undone together, and redone together", () => {
  const typed = new Tree([
    revision("a", null, "", ""),
    revision("b", "a", "", "4", { group: "w1 x" }),
    revision("c", "b", "4", "42", { group: "w1 x" }),
    revision("d", "c", "42", "420", { group: "w1 x" }),
    revision("e", "d", "420", "1", { group: "w2 y" }),
  ]);
  expect(typed.back("e")?.id).toBe("d");
  expect(typed.back("d")?.id).toBe("a");
  expect(typed.forth("a")?.id).toBe("d");
  expect(typed.forth("d")?.id).toBe("e");
});

test("what lies between two revisions, and that branches have nothing between them", () => {
  expect(tree.between("a", "d")?.map((r) => r.id)).toEqual(["b", "c", "d"]);
  expect(tree.between("c", "e")).toBeNull();
});

test("ids are UUIDs that begin with the time", () => {
  expect(newID(0x0123456789ab)).toMatch(/^01234567-89ab-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(newID()).not.toBe(newID());
});
