import {fileURLToPath} from "node:url";
import {defineConfig} from "vitest/config";

/** The tests of the mutated floors alone: no browser, no command, no packaging. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: [
      "tests/{balance,binding,brief,conflict,freezing,lp,practical,pantry,roots,substitut,trade-off}*.test.ts",
    ],
    testTimeout: 60_000,
  },
});
