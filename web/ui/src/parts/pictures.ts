import { pictures } from "../pictures.svelte";
import type { Job } from "../planner/job";
import ginkgo from "./designs/ginkgo.png";
import quince from "./designs/quince.png";
import tulips from "./designs/tulips.png";

/** The demo designs, each of one width and one repeat. */
export const designs: Readonly<Record<string, string>> = { ginkgo, quince, tulips };

/** Where the picture of a paper of the job is to be had; undefined: it has none here. */
export function pictureOf(job: Job, paper: string | undefined): string | undefined {
  const picture = job.papers?.find((p) => String(p.name) === paper)?.picture;
  return picture ? (designs[picture] ?? pictures.address(picture)) : undefined;
}
