import { at, pathText, put, type Json, type Path } from "../document/json";
import type { Job } from "../planner/job";
import type { Work } from "./work.svelte";

/** What a job says at a place. */
export function said<T = Json>(job: Job, path: Path): T | undefined {
  return at(job as unknown as Json, path) as T | undefined;
}

/** Puts a value at a place of the job, as an edit. Keys typed in a row into one place are one edit. */
export function enter(work: Work, label: string, path: Path, value: unknown): void {
  const become = (job: Job) => void Object.assign(job, put(job as unknown as Json, path, value as Json | undefined));
  const forget = (job: Job) => void (path.length === 1 && delete (job as unknown as Record<string, Json>)[String(path[0])]);
  work.edit(label, value === undefined && path.length === 1 ? forget : become, pathText(path));
}
