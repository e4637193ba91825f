// Runs a program as the screen's worker does, with the worker's own loader: requests
// come as lines of JSON; answers go out as lines of how many milliseconds of the
// processor they took, how many bytes of memory the program has, a tab, and their JSON.
//
//   node parity.mjs PROGRAM.wasm WASM_EXEC.js FOLDER-OF-THE-SCREEN
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createInterface } from "node:readline";

const [wasm, runtime, ui] = process.argv.slice(2);
const require = createRequire(`${ui}/package.json`);
const ts = require("typescript");
require(runtime);

const source = readFileSync(`${ui}/src/planner/program.ts`, "utf8");
const options = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 };
const { outputText } = ts.transpileModule(source, { compilerOptions: options });
const { start } = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);

const instantiate = WebAssembly.instantiate;
let memory;
WebAssembly.instantiate = async (...all) => {
  const instance = await instantiate(...all);
  memory = instance.exports.mem;
  return instance;
};
const processor = () => Object.values(process.cpuUsage()).reduce((a, b) => a + b) / 1000;

const answer = await start(await WebAssembly.compile(readFileSync(wasm)));
for await (const line of createInterface({ input: process.stdin })) {
  const begin = processor();
  const bytes = answer(new TextEncoder().encode(line));
  const took = processor() - begin;
  process.stdout.write(`${took} ${memory.buffer.byteLength}\t${Buffer.from(bytes)}\n`);
}
process.exit(0);
