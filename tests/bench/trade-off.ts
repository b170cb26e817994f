/** Times of trade-offs and substitutions on the demo shop's shelf: `npx tsx tests/bench/trade-off.ts`. */
import {costMap} from "../../lib/balance/trade-off/cost-map.ts";
import {equivalentsTable} from "../../lib/balance/substitute/equivalents.ts";
import {feasibleRegion} from "../../lib/balance/trade-off/feasible-region.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {substitute} from "../../lib/balance/substitute/substitute.ts";
import {sweep} from "../../lib/balance/trade-off/sweep.ts";
import {tradeOff} from "../../lib/balance/trade-off/trade-off.ts";
import {seededRandom} from "../../lib/core/random.ts";
import {demoPantry} from "../support/pantry.ts";
import {input, pear} from "../support/trade-off.ts";

const shelf = demoPantry.ingredients.filter(({stock}) => stock !== undefined);
const next = seededRandom(5);
const STAPLES = ["dairy", "sugar", "egg", "fat", "fibre", "basic", "stabiliser", "emulsifier"];
/** The same targets for every staple of the shelf, each with an invented CO2 figure, g per 100 g. */
const wide = readBrief(
  {
    ingredients: shelf
      .filter(({group = ""}) => STAPLES.includes(group))
      .map(({name}) => ({name, properties: {co2: Math.round(1000 * next())}})),
    targets: {
      ...input.targets,
      salt: {max: 0.2},
      polyols: {max: 1},
      stabiliser: {min: 0.2, max: 0.4},
      milkProtein: {min: 2.5},
    },
  },
  demoPantry,
);
const recipe = {
  name: "invented vanilla",
  lines: Object.entries({
    "whole milk": 560,
    "cream 36 %": 200,
    "skimmed milk powder": 40,
    sucrose: 130,
    "dextrose monohydrate": 30,
    "egg yolk": 36,
    "locust bean gum": 2,
  }).map(([name, grams]) => ({
    ingredient: demoPantry.ingredients.find((found) => found.name === name)!,
    grams,
  })),
};
const sugars = shelf.filter(({group}) => group === "sugar");
const hard = {hardPhase: {at: -18}};
const values = Array.from({length: 100}, (_, k) => 5 + k / 25);

/** Median and 95th percentile of the times of a task, ms, after a warm-up. */
function times(task: () => unknown, runs: number): [number, number] {
  for (let i = 0; i < Math.max(2, runs / 5); i++) task();
  const found = Array.from({length: runs}, () => {
    const start = performance.now();
    task();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return [found[Math.floor(runs / 2)]!, found[Math.floor(runs * 0.95)]!];
}

const tasks: [what: string, task: () => unknown, runs: number][] = [
  ["front, cost against hard phase", () => tradeOff(pear, {x: "cost", y: hard}), 50],
  ["front of 25 corners, cost against CO2", () => tradeOff(wide, {x: "cost", y: "co2"}), 30],
  ["front, cost against scoop temperature", () => tradeOff(pear, {x: "cost", y: "scoopTemperature"}), 20],
  ["region, fat and hard phase", () => feasibleRegion(pear, {x: "fat", y: hard}), 50],
  ["region, fat and scoop temperature", () => feasibleRegion(pear, {x: "fat", y: "scoopTemperature"}), 20],
  ["map 50 x 50, fat and hard phase", () => costMap(pear, {x: "fat", y: hard}, {columns: 50, rows: 50}), 5],
  ["map 50 x 50 of the wide brief", () => costMap(wide, {x: "fat", y: hard}, {columns: 50, rows: 50}), 3],
  [
    "map 50 x 50, fat and scoop temperature",
    () => costMap(pear, {x: "fat", y: "scoopTemperature"}, {columns: 50, rows: 50}),
    3,
  ],
  ["sweep of one limit, 100 values", () => sweep(input, "targets.fat.min", values, {pantry: demoPantry}), 5],
  [
    `substitute for cream among ${shelf.length}`,
    () => substitute(recipe, {without: "cream 36 %", from: shelf}),
    5,
  ],
  [`like-for-like table of ${sugars.length} sugars`, () => equivalentsTable(sugars), 50],
];
for (const [brief, axes] of [
  [pear, {x: "cost", y: hard}],
  [wide, {x: "cost", y: "co2"}],
] as const) {
  const front = tradeOff(brief, axes);
  const corners = front.status === "front" ? front.points.length : 0;
  console.log(`${brief.ingredients.length} ingredients: front of ${corners} corners`);
}
for (const [what, task, runs] of tasks) {
  const [median, late] = times(task, runs);
  console.log(
    `${what.padEnd(52)} ${median.toFixed(1).padStart(8)} ms, 95th percentile ${late.toFixed(1)} ms`,
  );
}
