import { isObject, type Json } from "../document/json";
import type { Hang, Job } from "../planner/job";
import type { Choice } from "../planner/protocol";

// What a job fixes of a plan stands in its list of hangings: a band says in which entry.
// A job that says nothing has none: its only paper goes on all walls, and all is searched.

/** What the job says of a band by its entry (−1: the first); undefined: nothing. */
export function hangOf(job: Job, entry: number): Hang | undefined {
  return job.hang?.[Math.max(entry, 0)];
}

/** The entry, put into the job where it has none. To be used on a copy. */
export function ownHang(job: Job, entry: number): Hang {
  job.hang ??= [{ paper: job.papers[0]?.name ?? "" }];
  return job.hang[Math.max(entry, 0)]!;
}

/** Fixes something of an entry, or leaves it to the search again (undefined). */
export function fix<K extends keyof Hang>(job: Job, entry: number, key: K, value: Hang[K] | undefined): void {
  if (value === undefined && !job.hang) return;
  const hang = ownHang(job, entry);
  if (value === undefined || (Array.isArray(value) && value.length === 0)) delete hang[key];
  else hang[key] = value;
}

/** Takes over what a plan was chosen by. */
export function choose(job: Job, choices: readonly Choice[]): void {
  for (const c of choices) {
    const hang = ownHang(job, c.hang) as unknown as Record<string, Json>;
    for (const [key, value] of Object.entries(c.set as Record<string, Json | null>)) {
      if (value === null) delete hang[key];
      else hang[key] = value;
    }
  }
}

/** What a job may leave to the search. */
const searched = ["start", "kill", "design", "new_drop", "carry", "set_to"] as const;

/** What of an entry the job fixes, of all that can be searched. */
export function fixed(job: Job, entry: number): (keyof Hang)[] {
  const hang = hangOf(job, entry);
  if (!hang || !isObject(hang as unknown as Json)) return [];
  return searched.filter((k) => hang[k] !== undefined);
}

/** Leaves everything of some hangings to the search. */
export function free(...hangs: Hang[]): void {
  for (const hang of hangs) for (const key of searched) delete hang[key];
}

/** Hangs an entry in equal panels, which follow from their walls: what was fixed goes. */
export function hangPanels(job: Job, entry: number): void {
  const hang = ownHang(job, entry);
  free(hang);
  delete hang.hung;
  hang.panels = "equal";
}

/** Hangs an entry in full widths again. */
export function hangWidths(job: Job, entry: number): void {
  const hang = ownHang(job, entry);
  delete hang.panels;
  delete hang.trim;
}

export type Corner = "free" | "new_drop" | "carry";

/** What the job says of an inside corner. */
export function cornerRule(job: Job, entry: number, corner: string): Corner {
  const hang = hangOf(job, entry);
  if (hang?.new_drop?.includes(corner)) return "new_drop";
  return hang?.carry?.includes(corner) ? "carry" : "free";
}

export function setCornerRule(job: Job, entry: number, corner: string, rule: Corner): void {
  for (const key of ["new_drop", "carry"] as const) {
    const others = (hangOf(job, entry)?.[key] ?? []).filter((c) => c !== corner);
    fix(job, entry, key, key === rule ? [...others, corner] : others);
  }
}
