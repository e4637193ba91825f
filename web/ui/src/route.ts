// Where one is, as the part of the address behind #, so that every server and none
// can serve it: #/job/4f1c/plan

/** The four sticks of the folding rule: the work in the order in which it is done. */
export const sticks = ["survey", "paper", "plan", "cut"] as const;
export type Stick = (typeof sticks)[number];

export type Route =
  | { at: "jobs" | "bin" | "settings" | "lost" }
  | { at: Stick | "history" | "conflict" | "print"; job: string };

const inJob = new Set<string>([...sticks, "history", "conflict", "print"]);
const outside = new Set<string>(["jobs", "bin", "settings"]);

export function parseRoute(hash: string): Route {
  const [first = "", job = "", screen = "survey", ...more] = hash.replace(/^#?\/?/, "").split("/");
  if (first === "") return { at: "jobs" };
  if (outside.has(first) && job === "") return { at: first } as Route;
  if (first === "job" && /^[\w-]{1,64}$/.test(job) && inJob.has(screen) && more.length === 0) return { at: screen, job } as Route;
  return { at: "lost" };
}

/** The address of a place, to stand behind href. */
export function href(route: Route): string {
  if ("job" in route) return `#/job/${route.job}/${route.at}`;
  return `#/${route.at === "jobs" || route.at === "lost" ? "" : route.at}`;
}
