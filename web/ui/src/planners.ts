import { Planner } from "./planner/planner";
import { Printer } from "./planner/printer";
import { progress } from "./job/progress.svelte";

const at = (name: string) => new URL(name, document.baseURI).href;
const runtime = at("wasm_exec.js");

/** The planner of this screen. */
export const planner = new Planner({ program: at("planner.filtered"), runtime });
planner.onprogress = (kind, far) => progress.tell(kind, far);

/** Reads and writes files, and prints. Its program is fetched when it is first asked. */
export const printer = new Printer({ program: at("printer.filtered"), runtime });
printer.onpart = (part) => (progress.printed = part);
