/**
 * Weight of the library in a browser, without the engines and drawing tools that are loaded only when asked for, or that the
 * page may share. Run it with `npx tsx tests/bench/size.ts`; it fails beyond a budget.
 */
import {fileURLToPath} from "node:url";
import {gzipSync} from "node:zlib";
import {build, type Rolldown} from "vite";

/** Loaded beside the library: the solver engines, units, drawing. */
const APART = ["javascript-lp-solver", "highs", "mathjs", "@observablehq/plot", "linkedom"];

/**
 * What a page may import, as code, and its budget, kB gzip: at most a tenth above what it was when set. A bundler leaves out the rest. The included
 * pantry is 30 of them: its ingredients, each with its composition, eleven nutrients and its other names. A label is held against itself
 * in 0.7: parts beyond their whole, energy that the figures contradict, each with the likely slip.
 */
const USES: Readonly<Record<string, readonly [code: string, budget: number]>> = {
  "balance a brief": [`export {balance} from "/lib/index.ts"`, 59],
  "balance with the included pantry": [`export {balance, includedPantry} from "/lib/index.ts"`, 92],
  "balance with a pantry and prices from CSV": [
    `export {balance, pantryOf, stockedPantry} from "/lib/index.ts"; export {readPantryCsv, readPricesCsv} from "/lib/files.ts"`,
    65,
  ],
  "freezing curve and scoop temperature": [
    `export {readComposition} from "/lib/index.ts"; export {freezingCurve, scoopTemperature} from "/lib/freezing.ts"`,
    8.9,
  ],
  "a recipe read, and three ways to change it": [
    `export {describeRecipe, suggestChanges} from "/lib/substitute.ts"`,
    53,
  ],
  "a composition from a label": [`export {fromLabel} from "/lib/index.ts"`, 7.2],
  ...Object.fromEntries(
    Object.entries({
      index: 109,
      explore: 62,
      substitute: 78,
      freezing: 15,
      kitchen: 51,
      label: 20,
      files: 73,
      lp: 14,
      highs: 13.5,
    }).map(([entry, budget]) => [
      `all of ${entry}.ts`,
      [`export * from "/lib/${entry}.ts"`, budget] as const,
    ]),
  ),
  "every entry at once": [
    "index explore substitute freezing kitchen label files lp highs"
      .split(" ")
      .map((entry) => `export * from "/lib/${entry}.ts";`)
      .join(""),
    202,
  ],
};

const root = fileURLToPath(new URL("../..", import.meta.url));
const kilobytes = (text: string) => gzipSync(text, {level: 9}).length / 1000;

/** The bundle of a piece of code. */
async function bundle(code: string): Promise<Rolldown.OutputChunk[]> {
  const result = (await build({
    root,
    configFile: false,
    logLevel: "error",
    plugins: [
      {
        name: "use",
        resolveId: (id) => (id === "use" ? "\0use" : id.startsWith("/lib/") ? `${root}${id.slice(1)}` : null),
        load: (id) => (id === "\0use" ? code : null),
      },
    ],
    build: {
      write: false,
      target: "es2022",
      modulePreload: false,
      rolldownOptions: {
        input: "use",
        preserveEntrySignatures: "strict",
        external: (id) => APART.some((name) => id === name || id.startsWith(`${name}/`)),
      },
    },
  })) as Rolldown.RolldownOutput;
  return result.output.filter((piece) => piece.type === "chunk");
}

/** What a module belongs to: a package, or a folder of the library. */
function owner(id: string): string {
  const path = id.replace(/\\/g, "/").replace(/^\0/, "");
  const pack = /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1];
  return pack ?? /\/lib\/([^/]+)/.exec(path)?.[1] ?? "bundler";
}

console.log(`kB gzip without ${APART.join(", ")}`);
let whole: Rolldown.OutputChunk[] = [];
for (const [use, [code, budget]] of Object.entries(USES)) {
  const chunks = await bundle(code);
  const total = chunks.reduce((sum, chunk) => sum + kilobytes(chunk.code), 0);
  const kept = total <= budget;
  console.log(`${total.toFixed(1).padStart(7)}  of ${budget}${kept ? "" : " EXCEEDED"}  ${use}`);
  if (!kept) process.exitCode = 1;
  whole = chunks;
}

const texts = new Map<string, string>();
for (const {modules} of whole)
  for (const [id, {code}] of Object.entries(modules))
    texts.set(owner(id), (texts.get(owner(id)) ?? "") + (code ?? ""));
console.log("everything by part, each compressed alone and not minified:");
for (const [name, size] of [...texts]
  .map(([name, code]) => [name, kilobytes(code)] as const)
  .sort((a, b) => b[1] - a[1]))
  console.log(`${size.toFixed(1).padStart(7)}  ${name}`);
