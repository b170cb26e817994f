/**
 * Reads one of several files of 5 million characters and tells how it went, the time and the memory of the whole process:
 * `node --import tsx tests/support/read-large.ts KIND`, where a missing KIND lists them all.
 */
import {existsSync, readFileSync} from "node:fs";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {InputError} from "../../lib/core/errors.ts";
import {readPantryJson} from "../../lib/io/json/ingredient-json.ts";
import {parseJson} from "../../lib/io/json/json.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {readRecipeCsv} from "../../lib/io/csv/recipe-csv.ts";
import {readRecipeJson} from "../../lib/io/json/recipe-json.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";

const SIZE = 5_000_000;
const fill = (unit: string, start = "", end = "") =>
  start + unit.repeat(Math.floor((SIZE - start.length - end.length) / unit.length)) + end;
const rows = (line: (i: number) => string, count: number) =>
  Array.from({length: count}, (_, i) => line(i)).join("\n");
const water = pantryOf([{name: "water", composition: {water: 100}}]);
const pantry = (text: string) => pantryOf(readPantryCsv(text)).ingredients.length;
const brief = (text: string) => balance(parseJson(text, "brief") as BriefInput).status;
const note = "x".repeat(970);

const FILES: Readonly<Record<string, () => unknown>> = {
  "a pantry of 4 999 rows": () => pantry(`name,water_g,note\n${rows((i) => `water ${i},100,${note}`, 4999)}`),
  "a pantry of 4 999 rows with 20 aliases each": () =>
    pantry(
      `name,water_g,aliases\n${rows((i) => `w${i},100,${rows((j) => `alias ${i} ${j};`, 20).replaceAll("\n", " ")}`, 4999)}`,
    ),
  "a CSV of millions of rows": () => pantry(fill("a\n", "name\n")),
  "a CSV of millions of columns": () => pantry(fill("a,", "name,")),
  "a CSV of millions of empty cells": () => pantry(fill(",", "name,water_g\na,")),
  "a CSV of one cell": () => pantry(fill("a", "name\n")),
  "a CSV of quotes": () => pantry(fill('"', "name\n")),
  "a CSV with an open quote": () => pantry(fill("a,b\n", 'name,water_g\n"')),
  "a CSV of quoted rows": () => pantry(fill('"a",\n', "name,water_g\n")),
  "prices of unknown names": () =>
    readPricesCsv(`name,price_per_kg,note\n${rows((i) => `n${i},1,${note}`, 4999)}`).length,
  "a recipe of 4 999 rows": async () =>
    (await readRecipeCsv(`name,g,note\n${rows(() => `water,1,${note}`, 4999)}`, water)).lines.length,
  "a JSON list of millions of objects": () => readPantryJson(fill("{},", "[", "{}]")).length,
  "a JSON list nested millions deep": () => readPantryJson(fill("[")).length,
  "a closed JSON list nested deep": () => readPantryJson("[".repeat(SIZE / 2) + "]".repeat(SIZE / 2)).length,
  "a brief of millions of ingredients": () => brief(fill("{},", '{"ingredients":[', "{}]}")),
  "a brief of millions of names": () => brief(fill('"a",', '{"ingredients":[', '"a"]}')),
  "a brief of many targets": () =>
    brief(
      `{"ingredients": ["a"], "targets": {${rows((i) => `"t${i}": {"min": 1},`, 200_000)} "fat": {"min": 1}}}`,
    ),
  "a brief with a name of millions of letters": () => brief(fill("a", '{"ingredients":["', '"]}')),
  "a recipe of millions of lines": async () =>
    (await readRecipeJson(fill("{},", '{"name":"r","ingredients":[', "{}]}"), water)).lines.length,
  "more than is read": () => pantry(fill("a\n", "name\n") + "a\n".repeat(10)),
};

/**
 * Most memory that this process has had in use, kB: on Linux its own high-water mark, since `maxRSS` begins there with what the process
 * that started it held (getrusage(2); proc(5), VmHWM).
 */
function most(): number {
  const status = existsSync("/proc/self/status") ? readFileSync("/proc/self/status", "utf8") : "";
  return Number(/^VmHWM:\s*(\d+) kB/m.exec(status)?.[1] ?? process.resourceUsage().maxRSS);
}

const kind = process.argv[2];
if (kind === undefined) console.log(JSON.stringify(Object.keys(FILES)));
else {
  const started = performance.now();
  let outcome: string;
  try {
    outcome = `read ${String(await FILES[kind]!())}`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    outcome = `refused ${error.message}`;
  }
  const ms = Math.round(performance.now() - started);
  const megabytes = Math.round(most() / 1024);
  console.log(JSON.stringify({outcome, ms, megabytes}));
}
