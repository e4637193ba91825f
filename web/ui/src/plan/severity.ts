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
