import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

const out = "dist";

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
    closeBundle() {
      if (!existsSync(worker)) return;
      const kept = files(out)
        .filter((name) => name !== "service-worker.js" && !/(^|\/)\.|\.(map|br|gz)$/.test(name))
        .sort()
        .map((name) => [name, hash(readFileSync(join(out, name)))]);
      const text = readFileSync(worker, "utf8");
      if (!text.includes("__KEPT__")) throw new Error("the service worker does not ask what to keep");
      writeFileSync(worker, text.replace("__KEPT__", () => JSON.stringify(kept)));
    },
  };
}

const hash = (text: string | Buffer) => createHash("sha256").update(text).digest("hex").slice(0, 16);

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
