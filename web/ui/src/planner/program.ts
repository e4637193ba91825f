/** A Go program compiled to WebAssembly, behind one function from bytes to bytes. */
export type Program = (request: Uint8Array) => Uint8Array;

/** What Go's wasm_exec.js adds to the global object. */
interface GoRuntime {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

/**
 * Starts a compiled program. Go's wasm_exec.js must have been run before. The program
 * sets `answer` on the global object and goes on waiting.
 */
export async function start(module: WebAssembly.Module): Promise<Program> {
  const global = globalThis as unknown as { Go: new () => GoRuntime; answer?: Program };
  const go = new global.Go();
  const instance = await WebAssembly.instantiate(module, go.importObject);
  let ended: unknown = null;
  void go.run(instance).then(
    () => (ended = new Error("the program has ended")),
    (why: unknown) => (ended = why),
  );
  const answer = global.answer;
  if (!answer) throw ended ?? new Error("the program sets no answer");
  return (request) => {
    if (ended) throw ended;
    return answer(request);
  };
}
