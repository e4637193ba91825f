import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { unfilter, unfiltered } from "./unfilter";

// The cases are those of web/wasm/slim, which says where they come from.
interface Case {
  name: string;
  /** Bytes, in lines of hexadecimal digits and spaces. */
  program: string[];
  filtered: string[];
}
const cases = JSON.parse(readFileSync(new URL("../../../wasm/slim/testdata/filtered.json", import.meta.url), "utf8")) as Case[];
const bytes = (lines: string[]) => Uint8Array.from(Buffer.from(lines.join("").replaceAll(" ", ""), "hex"));
const hex = (b: Uint8Array) => Buffer.from(b).toString("hex");

test.each(cases)("$name", ({ program, filtered }) => {
  expect(hex(unfilter(bytes(filtered)))).toBe(hex(bytes(program)));
});

test.each(cases)("what is cut off or longer is refused: $name", ({ filtered }) => {
  const whole = bytes(filtered);
  for (let n = 0; n < whole.length; n++) expect(() => unfilter(whole.subarray(0, n)), `${n} bytes`).toThrow(/program/);
  expect(() => unfilter(Uint8Array.of(...whole, 0))).toThrow(/program/);
});

// What was altered on the way gives a message, or another program.
test.each(cases)("what is altered never goes astray: $name", ({ filtered }) => {
  const whole = bytes(filtered);
  for (let i = 0; i < whole.length; i++) {
    for (let bit = 0; bit < 8; bit++) {
      const altered = Uint8Array.from(whole);
      altered[i]! ^= 1 << bit;
      try {
        unfilter(altered);
      } catch (error) {
        expect(String(error), `bit ${bit} of byte ${i}`).toMatch(/^Error: (this is no program|a program|the program|section)/);
      }
    }
  }
});

test("a program as it is, and one of a length that nobody believes, are refused", () => {
  expect(() => unfilter(bytes(cases[0]!.program))).toThrow("this is no program in filtered form");
  expect(() => unfilter(bytes(["66696c7465726564207761736d20310a", "ffffffffff07"]))).toThrow("is too long");
});

test("an answer of the server is put back, one that was put back stays", async () => {
  const { program, filtered } = cases.at(-1)!;
  const sent = new Response(bytes(filtered), { headers: { "Content-Type": "application/octet-stream" } });
  const kept = await unfiltered(sent);
  expect(kept.headers.get("Content-Type")).toBe("application/wasm");
  expect(await unfiltered(kept)).toBe(kept);
  expect(hex(new Uint8Array(await kept.arrayBuffer()))).toBe(hex(bytes(program)));
});
