/** Times of whole answers, from the checked brief to the report: `npx tsx tests/bench/balance.ts`. */
import {readFileSync} from "node:fs";
import {answerTo} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {candidatesOf} from "../../lib/balance/explain/candidates.ts";
import {explainConflict} from "../../lib/balance/explain/conflict.ts";
import {pricesOf} from "../../lib/balance/explain/prices.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {reliability} from "../../lib/balance/weigh/reliability.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import {demoPantry} from "../support/pantry.ts";

const demo = JSON.parse(
  readFileSync(new URL("../../datasets/demo/pear-base.json", import.meta.url), "utf8"),
) as BriefInput;
const brief = readBrief(
  {...demo, near: {"whole milk": 3000, "cream 40 %": 600, sucrose: 700, pear: 700}},
  demoPantry,
);
const best = solveBrief(brief);
if (best.status !== "optimal") throw new Error(best.status);
const amounts = best.amounts.map(({grams}) => grams);
const impossible = readBrief({...demo, targets: {...demo.targets, totalSolids: {max: 25}}}, demoPantry);
const spread = {parts: new Map([["cream 40 %", {milkFat: 1}]]), weighing: 1};

/** Median of the times of a task, ms, after a warm-up. */
function median(task: () => unknown, runs: number): number {
  for (let i = 0; i < runs / 5; i++) task();
  const times = Array.from({length: runs}, () => {
    const start = performance.now();
    task();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

const tasks: [what: string, task: () => unknown, runs: number][] = [
  ["read and check the demo brief", () => readBrief(demo, demoPantry), 300],
  ["cheapest mix with its report", () => solveBrief(brief), 300],
  ["the other four candidates", () => candidatesOf(brief, best), 100],
  ["the whole answer, five candidates", () => answerTo(brief, demoPantry), 100],
  ["prices and ranges", () => pricesOf(brief), 200],
  ["weighable amounts", () => weighable(brief, amounts), 20],
  [
    "conflict, least change and what to add from the shelf",
    () => explainConflict(impossible, demoPantry),
    10,
  ],
  ["reliability over 1000 batches", () => reliability(brief, amounts, spread), 5],
];
for (const [what, task, runs] of tasks)
  console.log(`${what.padEnd(50)} ${median(task, runs).toFixed(2).padStart(9)} ms`);

const start = performance.now();
for (let i = 0; i < 1000; i++) {
  solveBrief({
    ...brief,
    targets: brief.targets.map((target) =>
      target.subject.kind === "quantity" && target.subject.quantity === "fat"
        ? {...target, min: 5 + (i / 1000) * 3}
        : target,
    ),
  });
}
console.log(
  `${"a sweep of one target over 1000 values".padEnd(50)} ${(performance.now() - start).toFixed(0).padStart(9)} ms`,
);
