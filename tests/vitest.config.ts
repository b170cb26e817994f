import {fileURLToPath} from "node:url";
import {defineConfig} from "vitest/config";

/** Tests that look at the notebooks in a browser; they share one built site. */
const IN_BROWSER = ["tests/notebooks/*.test.ts"];

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  test: {
    root: here(".."),
    reporters: ["default", here("./support/closing-line.ts")],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {extends: true, test: {name: "library", include: ["tests/**/*.test.ts"], exclude: IN_BROWSER}},
      {
        extends: true,
        test: {name: "notebooks", include: IN_BROWSER, globalSetup: here("./support/shared-site.ts")},
      },
    ],
  },
});
