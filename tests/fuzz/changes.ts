/** Random changes of recipes against those that are suggested: none may reach the same and be noticed less. */
import {seededRandom} from "../../lib/core/random.ts";
import {suggestChanges} from "../../lib/substitute.ts";
import type {Recipe} from "../../lib/index.ts";
import {demoPantry} from "../support/pantry.ts";
import {bestOfRandom, broken, COOKS, noticed, STAPLES} from "../support/changes.ts";

const count = Number(process.argv[2] ?? 20_000);
const DRAWS = 500;
let wrong = 0;
let tried = 0;
for (let seed = 1; tried < count; seed++) {
  const next = seededRandom(seed);
  const recipes: Recipe[] = Object.values(COOKS);
  const {ingredients} = demoPantry;
  const drawn: Recipe = {
    name: "drawn",
    lines: Array.from({length: 1 + Math.floor(7 * next())}, () => ({
      ingredient: ingredients[Math.floor(ingredients.length * next())]!,
      grams: 1 + 1000 * next() ** 2,
    })),
  };
  // One in three is of anything on the shelf: what a change of that must keep is looked at, not how little is noticed.
  const base = seed % 3 === 0 ? drawn : recipes[Math.floor(next() * recipes.length)]!;
  const made = {
    ...base,
    lines: base.lines.map((line) => ({...line, grams: Math.ceil(line.grams * (0.8 + 0.4 * next()))})),
  };
  const freezer = -10 - Math.round(10 * next());
  const {before: recipe, changes} = suggestChanges(made, {from: STAPLES, freezer});
  for (const change of changes) {
    if (!change.reached) continue;
    const own = noticed(change, recipe, change.recipe, freezer);
    const {score} = bestOfRandom(change, recipe, change.recipe, freezer, DRAWS, seed);
    tried += DRAWS;
    const limit = broken(change, recipe, change.recipe, freezer);
    if (!limit && (base === drawn || score > own - 0.05 * own - 0.25)) continue;
    wrong++;
    console.log(`seed ${seed}, ${recipe.name} ${change.towards} at ${freezer} °C: ${change.words}`);
    console.log(
      limit ? `  ${limit} is broken` : `  ${own.toFixed(2)} is noticed, a random change ${score.toFixed(2)}`,
    );
  }
}
console.log(`${tried} random changes, ${wrong} suggestions wrong`);
if (wrong) process.exitCode = 1;
