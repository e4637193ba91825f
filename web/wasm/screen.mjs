// Parts of the screen, for programs under node.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

/** Imports a part that imports nothing else, such as src/planner/program.ts, from the folder of the screen. */
export function screenPart(ui, name) {
  const ts = createRequire(resolve(ui, "package.json"))("typescript");
  const options = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 };
  const { outputText } = ts.transpileModule(readFileSync(resolve(ui, name), "utf8"), { compilerOptions: options });
  return import(`data:text/javascript,${encodeURIComponent(outputText)}`);
}
