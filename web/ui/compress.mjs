// Writes a brotli twin beside each file that is named, for servers that send it.
import { readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants } from "node:zlib";

for (const name of process.argv.slice(2)) {
  const data = readFileSync(name);
  const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_SIZE_HINT]: data.length };
  writeFileSync(`${name}.br`, brotliCompressSync(data, { params }));
}
