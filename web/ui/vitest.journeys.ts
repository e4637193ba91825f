import { defineConfig } from "vitest/config";

// Journeys through the built screen in a real browser: one after another, since
// they share two cores with the browser. A machine that is busy may be late for once;
// what fails three times in a row is a fault.
export default defineConfig({
  test: { include: ["tests/**/*.test.ts"], fileParallelism: false, retry: 2, testTimeout: 60_000, hookTimeout: 60_000, expect: { poll: { timeout: 15_000 } } },
});
