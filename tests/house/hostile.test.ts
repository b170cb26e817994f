import {execFile} from "node:child_process";
import {rmSync} from "node:fs";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {promisify} from "node:util";
import {build} from "esbuild";
import * as fc from "fast-check";
import {afterAll, beforeAll, describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {HOSTILE_KINDS, survive, warmUp} from "../support/hostile.ts";
import {NOTEBOOK_KINDS} from "../support/hostile-notebook.ts";

/** A share of `tests/fuzz/input.ts` and `tests/fuzz/notebook-input.ts`: so many inputs of each kind. */
const EACH = 40;

const run = promisify(execFile);

describe("hostile input is answered, or refused with its place, and changes nothing", () => {
  beforeAll(warmUp);

  test.each([...HOSTILE_KINDS, ...NOTEBOOK_KINDS].map((kind) => [kind.name, kind] as const))(
    "%s",
    async (_, kind) => {
      const tally = {read: 0, refused: 0};
      await fc.assert(
        fc.asyncProperty(kind.input, async (text) => {
          tally[await survive(kind, text)]++;
        }),
        {numRuns: EACH, seed: 1},
      );
      // Input that is all read or all refused would test one half of the reader only.
      expect(tally.read).toBeGreaterThan(5);
      expect(tally.refused).toBeGreaterThan(5);
    },
  );
});

test("an endless name makes no endless message", () => {
  const error = new InputError("x".repeat(1e6), "unknown key", undefined, "leave it out");
  expect(error.message.length).toBeLessThan(400);
  expect(error.message).toMatch(/^x+…: unknown key; leave it out$/);
});

describe("a file of 5 million characters", () => {
  // Bundled once: ten processes start several times as fast as from the source.
  const cache = fileURLToPath(new URL("../../node_modules/.cache", import.meta.url));
  const bundle = join(cache, `read-large-${process.pid}.mjs`);

  beforeAll(() =>
    build({
      entryPoints: [fileURLToPath(new URL("../support/read-large.ts", import.meta.url))],
      outfile: bundle,
      bundle: true,
      packages: "external",
      platform: "node",
      format: "esm",
    }),
  );

  afterAll(() => rmSync(bundle, {force: true}));

  const readLarge = async (kind: string) => {
    const {stdout} = await run(process.execPath, [bundle, kind], {timeout: 20_000});
    return JSON.parse(stdout) as unknown;
  };

  test.each([
    ["a pantry of 4 999 rows with 20 aliases each", /^read 4999$/],
    ["a recipe of 4 999 rows", /^read 4999$/],
    ["a CSV of millions of rows", /^refused pantry, row 5001: more than 5000 rows/],
    ["a CSV of millions of columns", /^refused pantry, row 1, column 301: more than 300 columns/],
    ["a CSV of millions of empty cells", /^refused pantry, row 2, column 3: 4999987 cells under 2 columns/],
    ["a CSV with an open quote", /^refused pantry, row 2, name: malformed quotes/],
    ["a closed JSON list nested deep", /^refused pantry, line 1, column 33: nested more than 32 levels/],
    ["a brief of millions of ingredients", /^refused brief, line 1, column \d+: more than 400000 values/],
    ["a brief of many targets", /^refused brief\.targets\.t\d+: beyond the first 200000 values/],
    ["more than is read", /^refused pantry: longer than 5000000 characters/],
  ])("%s stays under 300 MB and is answered or clearly refused", async (kind, says) => {
    const {outcome, megabytes} = (await readLarge(kind)) as {outcome: string; megabytes: number};
    expect(outcome).toMatch(says);
    expect(megabytes).toBeLessThan(300);
  });
});
