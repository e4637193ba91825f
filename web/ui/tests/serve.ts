import { spawn, type ChildProcess } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";

// What the browser of a journey talks to: the real program where it can serve, or the
// built files alone. Both can be stopped and started again at the same address.

export interface Served {
  origin: string;
  /** Whether there is an API behind the files. */
  real: boolean;
  stop(): Promise<void>;
  start(): Promise<void>;
}

const program = join(import.meta.dirname, "../../../bin/firstdrop");
/** What was built last. */
export const dist = join(import.meta.dirname, "../dist");

export async function serve(): Promise<Served> {
  // FIRSTDROP_FILES=1 tries what was built last without building the program again.
  return !process.env["FIRSTDROP_FILES"] && (await canServe()) ? serveProgram() : serveFiles();
}

async function canServe(): Promise<boolean> {
  if (!existsSync(program)) return false;
  const help = spawn(program, ["help", "serve"], { stdio: "ignore" });
  return (await ended(help)) === 0;
}

function ended(p: ChildProcess): Promise<number | null> {
  return new Promise((done) => p.on("exit", done));
}

/** The program with a data folder of its own, on a port that it has chosen once. */
async function serveProgram(): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), "firstdrop-journey-"));
  let running: ChildProcess | null = null;
  let port = 0;
  const served: Served = {
    origin: "",
    real: true,
    async start() {
      if (running) return;
      running = spawn(program, ["serve", "--data", folder, "--address", `127.0.0.1:${port}`], { stdio: ["ignore", "pipe", "pipe"] });
      served.origin = await announced(running);
      port = Number(new URL(served.origin).port);
    },
    async stop() {
      const p = running;
      running = null;
      if (!p || p.exitCode !== null) return;
      p.kill("SIGTERM");
      await ended(p);
    },
  };
  await served.start();
  process.on("exit", () => {
    running?.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  });
  return served;
}

/** The address that the program prints when it listens. */
function announced(p: ChildProcess): Promise<string> {
  return new Promise((done, failed) => {
    let text = "";
    const read = (chunk: Buffer) => {
      text += chunk;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(text);
      if (found) done(found[0]);
    };
    p.stdout!.on("data", read);
    p.stderr!.on("data", read);
    p.on("exit", (code) => failed(new Error(`serve ended with ${code}: ${text}`)));
  });
}

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};

/** As strict as the program: nothing inline, nothing from elsewhere. */
export const policy =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; " +
  "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** The files of a folder alone, and an API that forgets everything: good enough to look at screens. */
export async function serveFiles(folder = dist): Promise<Served> {
  let server: Server | null = null;
  let version = 0;
  let port = 0;
  const served: Served = {
    origin: "",
    real: false,
    async start() {
      if (server) return;
      server = createServer(async (request, response) => {
        const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname));
        if (path.startsWith("/api/")) {
          const answer = request.method === "POST" ? { version: ++version } : { jobs: [] };
          response.writeHead(200, { "Content-Type": "application/json" }).end(JSON.stringify(answer));
          return;
        }
        const file = join(folder, path === "/" ? "index.html" : path);
        if (!file.startsWith(folder) || !existsSync(file) || !statSync(file).isFile()) {
          response.writeHead(404, { "Content-Security-Policy": policy }).end("not here");
          return;
        }
        response.writeHead(200, { "Content-Type": types[extname(file)] ?? "application/octet-stream", "Content-Security-Policy": policy });
        response.end(await readFile(file));
      });
      const s = server;
      await new Promise<void>((done) => s.listen(port, "127.0.0.1", done));
      port = (s.address() as { port: number }).port;
      served.origin = `http://127.0.0.1:${port}`;
    },
    async stop() {
      const s = server;
      server = null;
      s?.closeAllConnections();
      await new Promise((done) => (s ? s.close(done) : done(null)));
    },
  };
  await served.start();
  return served;
}
