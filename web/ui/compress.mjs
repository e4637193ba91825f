// Writes a brotli twin beside each file that is named, for servers that send it. The
// printer is large and no part of the first visit: to compress it as well as the rest
// would take a minute and a half, and save a sixth of it.
import { readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants } from "node:zlib";

for (const name of process.argv.slice(2)) {
  const data = readFileSync(name);
  const quality = name.endsWith("printer.filtered") ? 5 : 11;
  const params = { [constants.BROTLI_PARAM_QUALITY]: quality, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_SIZE_HINT]: data.length };
  writeFileSync(`${name}.br`, brotliCompressSync(data, { params }));
}
