import { parsePath, pathText, type Path } from "../document/json";
import { here } from "../here.svelte";
import type { Problem } from "../planner/protocol";
import type { Stick } from "../route";

/** The stick on which a place in the document is mended. */
export function stickOf(path: string): Stick {
  const first = String(parsePath(path)[0] ?? "");
  if (first === "papers") return "paper";
  if (first === "hang" || first === "rules" || first === "weights") return "plan";
  return first === "cutting" ? "cut" : "survey";
}

/** The place in the document that somebody wants to mend, until the screen of its stick has brought it up. */
class Sought {
  #path = $state.raw<Path | null>(null);

  want(path: Path): void {
    this.#path = path;
  }

  /** The place that is wanted, once; null: none, or another stick's. */
  take(stick: Stick): Path | null {
    const path = this.#path;
    if (!path || stickOf(pathText(path)) !== stick) return null;
    this.#path = null;
    return path;
  }
}

export const sought = new Sought();

const patience = 2000; // milliseconds until a screen has brought a field up
const hope = 700; // until the very field is no longer to be expected

/** Goes to the screen that mends a problem, and to the field of that place. */
export function mend(job: string, problem: Problem): void {
  const path = parsePath(problem.path);
  sought.want(path);
  here.go({ at: stickOf(problem.path), job });
  const began = Date.now();
  const look = () => {
    const late = Date.now() - began;
    const field = fieldOf(pathText(path)) ?? (late > hope ? nearest(path) ?? wrong(problem.text) : undefined);
    if (field) {
      field.scrollIntoView({ block: "center" });
      field.focus({ preventScroll: true });
    } else if (late < patience) setTimeout(look, 50);
  };
  setTimeout(look, 50);
}

const fields = () => [...document.querySelectorAll<HTMLElement>("main [data-at]")];

/** The field of a place, or the first size of what is within it, or the first field. */
function fieldOf(path: string): HTMLElement | undefined {
  const all = fields();
  const inside = all.filter((f) => within(f.dataset["at"]!, path));
  return all.find((f) => f.dataset["at"] === path) ?? inside.find((f) => !f.dataset["at"]!.endsWith(".name")) ?? inside[0];
}

function within(path: string, of: string): boolean {
  return path.startsWith(`${of}.`) || path.startsWith(`${of}[`);
}

/** The field of the smallest thing that holds a place: what has no field of its own is mended beside it. */
function nearest(path: Path): HTMLElement | undefined {
  for (let n = path.length - 1; n > 0; n--) {
    const field = fieldOf(pathText(path.slice(0, n)));
    if (field) return field;
  }
  return undefined;
}

/** The field that is marked as wrong and described by a text, or else the first that is marked. */
function wrong(text: string): HTMLElement | undefined {
  const all = [...document.querySelectorAll<HTMLElement>('main [aria-invalid="true"]')];
  return all.find((f) => describedBy(f).includes(text)) ?? all[0];
}

function describedBy(field: HTMLElement): string {
  const ids = (field.getAttribute("aria-describedby") ?? "").split(" ");
  return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
