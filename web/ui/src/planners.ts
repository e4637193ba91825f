import { Planner as Crew } from "./planner/planner";
import { Printer } from "./planner/printer";
import type { Planner } from "./work/planner";

const at = (name: string) => new URL(name, document.baseURI).href;
const place = (program: string) => ({ wasm: at(`${program}.wasm`), runtime: at("wasm_exec.js") });

const fixture: Planner = { ask: async () => (await import("../tests/fixture/answer.json")).default as never };

let crew: Planner | null = null;
let press: Printer | null = null;

/** The planner of this screen. It is fetched with the first question. */
export const planner: Planner = {
  ask(question) {
    if (import.meta.env["VITE_FIXTURE"]) return fixture.ask(question);
    return (crew ??= new Crew(place("planner"))).ask(question);
  },
};

/** What reads job files and prints. It is fetched when it is first asked. */
export const printer: Pick<Printer, "ask"> = {
  ask: (request) => (press ??= new Printer(place("printer"))).ask(request),
};
