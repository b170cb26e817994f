import {fileURLToPath} from "node:url";
import {defineConfig} from "vitest/config";

/**
 * The tests of the mutated floors alone: no browser, no command, no packaging. The slowest comparisons are left out: thousands
 * of mutants would each wait for them, and quicker tests look at the same code. Of random cases a tenth is taken.
 */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: ["tests/{core,pantry,freezing,lp,balance}/**/*.test.ts"],
    // These look at whole briefs or at types alone.
    exclude: ["tests/balance/one-verdict.test.ts", "tests/balance/brief/types.test.ts"],
    testNamePattern:
      /^(?!.*(hands large|blend of few ingredients agrees|250 random briefs|200 random directions|1000 random mixes|a slab|a long cylinder|no amounts on a fine grid|ends within its time|at its temperature by HiGHS|whole shelf scores no worse))/,
    env: {SAMPLE: "0.1"},
    // Counting which test runs which line makes the first run slow.
    testTimeout: 400_000,
  },
});
