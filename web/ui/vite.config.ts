import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants } from "node:zlib";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

const out = "dist";
const compressed = promisify(brotliCompress);

/** The files under a folder, by path from it. */
function files(dir: string, root = dir): string[] {
  return readdirSync(dir).flatMap((name) => {
    const at = join(dir, name);
    return statSync(at).isDirectory() ? files(at, root) : [relative(root, at)];
  });
}

/**
 * Tells the service worker what there is to keep, each file with a hash of what is
 * in it, and which release of the screen this is: the hash of all of them.
 */
function precache(): Plugin {
  const worker = join(out, "service-worker.js");
  return {
    name: "precache",
    apply: "build",
    async closeBundle() {
      if (!existsSync(worker)) return;
      const kept = files(out)
        .filter((name) => name !== "service-worker.js" && !/(^|\/)\.|\.(map|br|gz)$/.test(name))
        .sort()
        .map((name) => [name, hash(readFileSync(join(out, name)))]);
      const text = readFileSync(worker, "utf8");
      if (!text.includes("__KEPT__")) throw new Error("the service worker does not ask what to keep");
      writeFileSync(worker, text.replace("__KEPT__", () => JSON.stringify(kept)));
      await Promise.all(files(out).map(precompress));
    },
  };
}

const hash = (text: string | Buffer) => createHash("sha256").update(text).digest("hex").slice(0, 16);

/**
 * Puts a smaller copy beside a file, for browsers that read Brotli. Large programs take
 * half a minute, and are kept from build to build by what is in them.
 */
async function precompress(name: string): Promise<void> {
  if (!/\.(html|js|css|svg|wasm|webmanifest)$/.test(name)) return;
  const data = readFileSync(join(out, name));
  const quality = data.length > 12 << 20 ? 9 : data.length > 1 << 20 ? 10 : 11;
  const known = join("node_modules/.cache/brotli", `${hash(data)}-${quality}`);
  if (!existsSync(known)) {
    const small = await compressed(data, { params: { [constants.BROTLI_PARAM_QUALITY]: quality, [constants.BROTLI_PARAM_SIZE_HINT]: data.length } });
    mkdirSync(dirname(known), { recursive: true });
    writeFileSync(known, small);
  }
  copyFileSync(known, join(out, `${name}.br`));
}

export default defineConfig({
  base: "./",
  plugins: [svelte(), precache()],
  build: {
    outDir: out,
    target: "es2023",
    cssTarget: ["chrome123", "firefox121", "safari17.5"],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: "index.html", "service-worker": "src/service-worker.ts" },
      output: {
        entryFileNames: (chunk) => (chunk.name === "service-worker" ? "[name].js" : "assets/[name]-[hash].js"),
      },
    },
  },
  worker: { format: "es" },
});
