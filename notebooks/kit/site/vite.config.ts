import {fileURLToPath} from "node:url";
import {config, observable} from "@observablehq/notebook-kit/vite";
import {mergeConfig, type UserConfig} from "vite";
import {BY_PAGES} from "./chunks.ts";
import {codeBelow} from "./code-below.ts";
import {NOTEBOOKS} from "./notebooks.ts";
import {notices} from "./notices.ts";
import {offline} from "./offline.ts";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const template = fileURLToPath(new URL("./template.html", import.meta.url));

/** This file, for those who build from code. */
export const CONFIG = fileURLToPath(import.meta.url);

/** Folder of the built site, from the repository's root. */
export const SITE = "dist/notebooks-site";

const settings: UserConfig = {
  root,
  plugins: [offline(), observable({template}), codeBelow(), notices()],
  // Bundled ahead of the first visit, so that the first page does not reload itself.
  optimizeDeps: {
    entries: [],
    include: [
      "observable:runtime",
      "@observablehq/plot",
      "@observablehq/inputs",
      "d3-dsv",
      "htl",
      "fastest-levenshtein",
      "idb",
      "javascript-lp-solver",
      "mathjs",
      "zod/mini",
    ],
    rolldownOptions: {plugins: [offline()]},
  },
  build: {
    outDir: `${root}/${SITE}`,
    emptyOutDir: true,
    chunkSizeWarningLimit: 2000,
    // What a page weighs, `npm run bench` says; to compress a site once more only for that takes a second a page.
    reportCompressedSize: false,
    rolldownOptions: {
      input: NOTEBOOKS.map((path) => `${root}/${path}`),
      output: {codeSplitting: {groups: [BY_PAGES]}},
    },
  },
};

export default (): UserConfig => mergeConfig(config() as UserConfig, settings) as UserConfig;
