import type { Job } from "../planner/job";
import { made, type Made } from "../planner/printer";
import type { Fault, Picture, PrintRequest } from "../planner/printing";
import { pictures } from "../pictures.svelte";
import { printer } from "../planners";
import { settings } from "../settings.svelte";
import { say } from "../words";

// Files that people bring and take away. All of them are read and made on this device.

const most = 4 << 20; // bytes of a job file that are read at all

/** What came of a file: a job, and what is wrong with it; or why there is none. */
export interface Brought {
  job?: Job;
  problems: Fault[];
  failure?: string;
}

/** Reads a job file in YAML or JSON. */
export async function bring(file: File): Promise<Brought> {
  if (file.size > most) return { problems: [], failure: say("files.large", { name: file.name }) };
  const answer = await printer.ask({ kind: "read", name: file.name, text: await file.text(), words: settings.words });
  return {
    problems: answer.problems ?? [],
    ...(answer.job && { job: answer.job }),
    ...(answer.failure && { failure: answer.failure }),
  };
}

/** What came of a wish to have a file. */
export interface Ready {
  file?: Made;
  problems: Fault[];
  failure?: string;
}

/** Has a file made of a job: its sheets, its lists, one wall, or the job itself in YAML. It is called by what it shows where there are several. */
export async function make(request: Omit<PrintRequest, "id" | "words">, of = ""): Promise<Ready> {
  const drawn = request.kind === "sheets" || request.kind === "wall";
  const shown = drawn && request.job ? { pictures: await ownPictures(request.job) } : {};
  const answer = await printer.ask({ ...request, ...shown, words: settings.words });
  const file = made(answer);
  return {
    problems: answer.problems ?? [],
    ...(file && { file: { ...file, name: named(request.job, file.name, of) } }),
    ...(answer.failure && { failure: answer.failure }),
  };
}

/** The pictures of a job's papers that are kept on this device. */
async function ownPictures(job: Job): Promise<Picture[]> {
  const names = new Set(job.papers.flatMap((p) => (p.picture ? [p.picture] : [])));
  const found = await Promise.all([...names].map(async (name) => ({ name, blob: await pictures.read(name) })));
  return Promise.all(found.flatMap(({ name, blob }) => (blob ? [base64(blob).then((data) => ({ name, data }))] : [])));
}

function base64(blob: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result).replace(/^[^,]*,/, ""));
    reader.onerror = () => failed(reader.error ?? new Error("the picture cannot be read"));
    reader.readAsDataURL(blob);
  });
}

/** The job as a file in JSON, as it stands. */
export function asJSON(job: Job): Made {
  return { name: named(job, "job.json"), blob: new Blob([JSON.stringify(job, null, 2) + "\n"], { type: "application/json" }) };
}

/** A name of a file for a job: "back-bedroom-sheets.pdf", "back-bedroom-wall-a.svg". */
export function named(job: Job | undefined, name: string, of = ""): string {
  const [stem, ending] = name.split(".");
  const words = [String(job?.name ?? ""), stem === "job" ? "" : stem!, of].map(plain).filter(Boolean);
  return `${words.join("-") || stem}.${ending}`;
}

/** What every file system takes. */
function plain(words: string): string {
  return words
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
}

/** Hands a file to the user. */
export function save({ name, blob }: Made): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
