/** Random changes of recipes against those that are suggested: none may reach the same and be noticed less. */
import {seededRandom} from "../../lib/core/random.ts";
import {suggestChanges} from "../../lib/substitute.ts";
import type {Recipe} from "../../lib/index.ts";
import {bestOfRandom, broken, COOKS, noticed, STAPLES} from "../support/changes.ts";

const count = Number(process.argv[2] ?? 20_000);
const DRAWS = 500;
let wrong = 0;
let tried = 0;
for (let seed = 1; tried < count; seed++) {
  const next = seededRandom(seed);
  const recipes: Recipe[] = Object.values(COOKS);
  const base = recipes[Math.floor(next() * recipes.length)]!;
  const recipe = {
    ...base,
    lines: base.lines.map((line) => ({...line, grams: Math.round(line.grams * (0.8 + 0.4 * next()))})),
  };
  const freezer = -10 - Math.round(10 * next());
  for (const change of suggestChanges(recipe, {from: STAPLES, freezer}).changes) {
    if (!change.reached) continue;
    const own = noticed(change, recipe, change.recipe, freezer);
    const {score} = bestOfRandom(change, recipe, change.recipe, freezer, DRAWS, seed);
    tried += DRAWS;
    const limit = broken(change, recipe, change.recipe, freezer);
    if (!limit && score > own - 0.05 * own - 0.25) continue;
    wrong++;
    console.log(`seed ${seed}, ${recipe.name} ${change.towards} at ${freezer} °C: ${change.words}`);
    console.log(
      limit ? `  ${limit} is broken` : `  ${own.toFixed(2)} is noticed, a random change ${score.toFixed(2)}`,
    );
  }
}
console.log(`${tried} random changes, ${wrong} suggestions wrong`);
if (wrong) process.exitCode = 1;
