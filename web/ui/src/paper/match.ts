import type { Paper } from "../planner/job";

/** The matches that a label's sign shows. */
export const signs = ["free", "straight", "half", "offset"] as const;
export type Sign = (typeof signs)[number];

/** Which sign stands for what the job says. What is none of the common words is an offset, or a mark. */
export function signOf(match: Paper["match"] | undefined): Sign {
  switch (String(match ?? "free").trim().toLowerCase().replace(/\s+/g, " ")) {
    case "free":
    case "":
      return "free";
    case "straight":
      return "straight";
    case "half drop":
    case "offset 1/2":
      return "half";
  }
  return "offset";
}

/** What the job says for a sign; an offset begins as a third of the repeat. */
export const wordOf: Record<Sign, string> = { free: "free", straight: "straight", half: "half drop", offset: "offset 1/3" };
