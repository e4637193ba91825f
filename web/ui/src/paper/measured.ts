import type { Length, Paper } from "../planner/job";

/** What has been measured so far. */
export interface Taken {
  repeat?: Length | undefined;
  lower: (Length | undefined)[];
}

/** The strips up to the last that was looked at; one that was not, or was cleared, is empty. */
export function stripsOf(lower: Taken["lower"]): Length[] {
  const strips = lower.map((l) => l ?? "");
  while (strips.at(-1) === "") strips.pop();
  return strips;
}

/**
 * What the job says of it: nothing until there is a repeat and the second strip. Where the job
 * says something already, what is cleared stays there as empty, to be found fault with, until
 * all is.
 */
export function measuredOf(taken: Taken, known: boolean): Paper["measured"] {
  const repeat = taken.repeat ?? "";
  const lower = stripsOf(taken.lower);
  const enough = known ? repeat !== "" || lower.length > 0 : repeat !== "" && (lower[0] ?? "") !== "";
  return enough ? { repeat, lower: lower.length > 0 ? lower : [""] } : undefined;
}
