import type { Job, Paper } from "../planner/job";

// A job may hold more papers than it hangs: those that are compared. Which one hangs
// is said by its hang entries; a job with one paper needs none.

/** The name of the paper that is planned with. */
export function hungPaper(job: Job): string {
  return String(job.hang?.[0]?.paper ?? job.papers[0]?.name ?? "");
}

/** Plans with another paper wherever the one before was. What was decided for the old one's seams is searched again. */
export function hangPaper(job: Job, name: string): void {
  const before = hungPaper(job);
  if (!job.hang?.length) {
    job.hang = [{ paper: name }];
    return;
  }
  job.hang = job.hang.map((h) => {
    if (String(h.paper) !== before) return h;
    const { start: _, kill: __, design: ___, new_drop: ____, carry: _____, ...rest } = h;
    return { ...rest, paper: name };
  });
}

/** Adds a paper like the one given, under another name, so that only what differs must be typed. */
export function addPaper(job: Job, like: Paper, name: string): void {
  if (!job.hang?.length) job.hang = [{ paper: hungPaper(job) }];
  const { rolls: _, batch: __, price: ___, picture: ____, ...same } = like;
  job.papers = [...job.papers, { ...same, name }];
}

/** Takes away a paper that nothing hangs in. */
export function removePaper(job: Job, index: number): void {
  job.papers = job.papers.filter((_, i) => i !== index);
}

/** Whether some wall hangs in a paper. */
export function isHung(job: Job, name: string): boolean {
  return job.hang?.length ? job.hang.some((h) => String(h.paper) === name) : String(job.papers[0]?.name) === name;
}

/** Gives a paper another name, wherever the job speaks of it, unless another paper has that name. */
export function renamePaper(job: Job, index: number, name: string): void {
  const paper = job.papers[index];
  if (!paper) return;
  const old = String(paper.name);
  const shared = job.papers.some((p, i) => i !== index && (String(p.name) === old || String(p.name) === name));
  paper.name = name;
  if (!shared) for (const h of job.hang ?? []) if (String(h.paper) === old) h.paper = name;
}

/** The first name of a number that no paper has. */
export function freePaperName(job: Job, name: (n: number) => string): string {
  const taken = new Set(job.papers.map((p) => String(p.name)));
  let n = job.papers.length + 1;
  while (taken.has(name(n))) n++;
  return name(n);
}
