// Fails unless the screen makes a program out of its filtered form, byte for byte.
//
//   node unfiltered.mjs PROGRAM.filtered PROGRAM.wasm FOLDER-OF-THE-SCREEN
import { readFileSync } from "node:fs";
import { screenPart } from "./screen.mjs";

const [filtered, program, ui] = process.argv.slice(2);
const { unfilter } = await screenPart(ui, "src/planner/unfilter.ts");
if (Buffer.compare(unfilter(readFileSync(filtered)), readFileSync(program)) !== 0) {
  console.error(`${filtered} does not give ${program} again`);
  process.exit(1);
}
