// Runs a program as the screen's worker does, with the worker's own loader: requests
// come as lines of JSON; answers go out as lines of how many milliseconds of the
// processor they took, how many bytes of memory the program has, a tab, and their JSON.
//
//   node parity.mjs PROGRAM.filtered WASM_EXEC.js FOLDER-OF-THE-SCREEN
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { createInterface } from "node:readline";
import { screenPart } from "./screen.mjs";

const [filtered, runtime, ui] = process.argv.slice(2);
createRequire(import.meta.url)(resolve(runtime));
const { start } = await screenPart(ui, "src/planner/program.ts");
const { unfilter } = await screenPart(ui, "src/planner/unfilter.ts");

const instantiate = WebAssembly.instantiate;
let memory;
WebAssembly.instantiate = async (...all) => {
  const instance = await instantiate(...all);
  memory = instance.exports.mem;
  return instance;
};
const processor = () => Object.values(process.cpuUsage()).reduce((a, b) => a + b) / 1000;

const answer = await start(await WebAssembly.compile(unfilter(readFileSync(filtered))));
for await (const line of createInterface({ input: process.stdin })) {
  const begin = processor();
  const bytes = answer(new TextEncoder().encode(line));
  const took = processor() - begin;
  process.stdout.write(`${took} ${memory.buffer.byteLength}\t${Buffer.from(bytes)}\n`);
}
process.exit(0);
