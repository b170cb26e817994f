import {fileURLToPath} from "node:url";
import {defineConfig} from "vitest/config";
import {ByProject} from "./support/by-project.ts";

/** Tests that look at the notebooks in a browser; they share one built site. */
const IN_BROWSER = ["tests/notebooks/*.test.ts"];

/** Tests that put spies in place of modules (`vi.mock`), and therefore load theirs anew. */
const WITH_SPIES = ["tests/lp/solve-parts.test.ts"];

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  test: {
    root: here(".."),
    reporters: ["default", here("./support/closing-line.ts")],
    // One for each core: a browser's own work leaves a core idle half of the time.
    maxWorkers: "100%",
    sequence: {sequencer: ByProject},
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        // These change nothing that others see, so the library is loaded once for each worker and not for each file.
        test: {
          name: "library",
          include: ["tests/**/*.test.ts"],
          exclude: [...IN_BROWSER, ...WITH_SPIES],
          isolate: false,
        },
      },
      {extends: true, test: {name: "spies", include: WITH_SPIES}},
      {
        extends: true,
        test: {
          name: "notebooks",
          include: IN_BROWSER,
          // One browser for each worker, and what it has loaded stays loaded.
          isolate: false,
          globalSetup: here("./support/shared-site.ts"),
          // What a page shows in the end: a busy machine takes its time.
          expect: {poll: {timeout: 20_000, interval: 100}},
        },
      },
    ],
  },
});
