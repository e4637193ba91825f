import { here } from "../here.svelte";
import { parsePath } from "../document/json";
import type { Stick } from "../route";
import type { Problem } from "../planner/protocol";

/** The stick on which a place in the document is mended. */
export function stickOf(path: string): Stick {
  const first = String(parsePath(path)[0] ?? "");
  if (first === "papers") return "paper";
  if (first === "hang" || first === "rules" || first === "weights") return "plan";
  return first === "cutting" ? "cut" : "survey";
}

/**
 * Goes to the screen that mends a problem, and to the field that shows it: the one that
 * is marked as wrong and described by the problem's text, or else the first that is marked.
 */
export function mend(job: string, problem: Problem): void {
  here.go({ at: stickOf(problem.path), job });
  const until = Date.now() + 2000;
  const look = () => {
    const wrong = [...document.querySelectorAll<HTMLElement>('main [aria-invalid="true"]')];
    const field = wrong.find((f) => describedBy(f).includes(problem.text)) ?? wrong[0];
    if (field) field.focus();
    else if (Date.now() < until) setTimeout(look, 50);
  };
  setTimeout(look, 50);
}

function describedBy(field: HTMLElement): string {
  const ids = (field.getAttribute("aria-describedby") ?? "").split(" ");
  return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
