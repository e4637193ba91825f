import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type UserConfig } from "vite";

const out = "dist";

/** The files under a folder, by path from it. */
function files(dir: string, root = dir): string[] {
  return readdirSync(dir).flatMap((name) => {
    const at = join(dir, name);
    return statSync(at).isDirectory() ? files(at, root) : [relative(root, at)];
  });
}

/** What there is for the service worker to keep: each file with a hash of what is in it. */
const kept = () =>
  files(out)
    .filter((name) => name !== "service-worker.js" && !/(^|\/)\.|\.(map|br|gz)$/.test(name))
    .sort()
    .map((name) => [name, hash(readFileSync(join(out, name)))]);

const hash = (text: string | Buffer) => createHash("sha256").update(text).digest("hex").slice(0, 16);

const target = { outDir: out, target: "es2023" } as const;

const screen: UserConfig = {
  base: "./",
  plugins: [svelte()],
  build: {
    ...target,
    cssTarget: ["chrome123", "firefox121", "safari17.5"],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  worker: { format: "es" },
};

/**
 * The service worker is one file, which shares no parts with the screen, and is built
 * after it: it holds a list of what was built.
 */
const serviceWorker = (): UserConfig => ({
  define: { __KEPT__: JSON.stringify(kept()) },
  publicDir: false,
  build: {
    ...target,
    emptyOutDir: false,
    rolldownOptions: { input: "src/service-worker.ts", output: { entryFileNames: "[name].js" } },
  },
});

// vite build, and then vite build --mode service-worker
export default defineConfig(({ mode }) => (mode === "service-worker" ? serviceWorker() : screen));
