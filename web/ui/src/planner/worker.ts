// Runs one program, the planner or the printer, beside the page. The first message
// brings the compiled module and where Go's runtime is fetched from; every other one is
// a request as bytes, and is answered with bytes.
import type { Counted } from "./protocol";
import { start, type Program } from "./program";

/** What begins a worker. */
export interface Begin {
  module: WebAssembly.Module;
  /** The address of wasm_exec.js. */
  runtime: string;
}

/**
 * How much of a part of the work is done; where the program says so, what the part is, and how
 * much of the whole is done, from 0 to 1.
 */
export interface Far {
  done: number;
  of: number;
  what?: Counted | undefined;
  whole?: number | undefined;
}

/** What a worker says: that it is ready, how much of its work is done, an answer, or that it has failed for good. */
export type Said = { ready: true } | Far | { answer: Uint8Array } | { failed: string };

const worker = self as unknown as {
  onmessage: ((event: MessageEvent<Begin | Uint8Array>) => void) | null;
  postMessage(message: Said, transfer?: Transferable[]): void;
};

let program: Program | null = null;

// The program tells its progress to a function of this name.
Object.assign(self, { progress: (done: number, of: number, what?: Counted, whole?: number) => worker.postMessage({ done, of, what, whole }) });

worker.onmessage = async ({ data }) => {
  try {
    if (data instanceof Uint8Array) {
      const answer = program!(data);
      worker.postMessage({ answer }, [answer.buffer as ArrayBuffer]);
      return;
    }
    await import(/* @vite-ignore */ data.runtime);
    program = await start(data.module);
    worker.postMessage({ ready: true });
  } catch (error) {
    worker.postMessage({ failed: error instanceof Error ? error.message : String(error) });
  }
};
