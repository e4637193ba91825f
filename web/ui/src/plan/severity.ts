import type { Finding } from "../planner/protocol";
import { say } from "../words";

/** From the gravest on. */
export const severities = ["serious", "caution", "note"] as const;

/** How grave, in words. */
export function severity(of: string): string {
  const known = severities.find((s) => s === of) ?? "note";
  return say(`plan.severity.${known}`);
}

/** The gravest first; those of one kind as the planner numbers them. */
export function byGravity(findings: readonly Finding[]): Finding[] {
  const rank = (f: Finding) => severities.findIndex((s) => s === f.severity);
  return [...findings].sort((a, b) => rank(a) - rank(b) || (a.number || 999) - (b.number || 999));
}

/** A finding, and those like it that stand folded under it. */
export interface Folded {
  first: Finding;
  more: Finding[];
}

const fewAlike = 3;

/** Findings in their order; where there are many of a code, those after the first are folded under it. */
export function folded(findings: readonly Finding[]): Folded[] {
  const of = (code: string) => findings.filter((f) => f.code === code);
  return findings.flatMap((f) => {
    const all = of(f.code);
    if (all.length <= fewAlike) return [{ first: f, more: [] }];
    return f === all[0] ? [{ first: f, more: all.slice(1) }] : [];
  });
}
