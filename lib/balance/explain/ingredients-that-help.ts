import {DOSES, dosesIn} from "../../pantry/doses.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import {solve, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Brief} from "../brief/brief.ts";
import {measureOf} from "../measure/measures.ts";
import {formulate} from "../program/formulate.ts";

/** Most of an ingredient in a mix, as a share of it, so that nothing in it is overdosed, whatever the brief allows itself. */
function mostOf(ingredient: Ingredient): number {
  return Math.min(1, ...dosesIn(ingredient).map((grams, d) => DOSES[d]!.limit / grams));
}

/** Largest number of ingredients named. */
const MOST = 5;

/**
 * Ingredients of a larger shelf of which any one, added to the brief, makes it possible; the one that needs least of
 * itself first.
 *
 * Only ingredients that have every property the brief targets are tried, and prices do not count. None is named that would
 * have to be overdosed: half a kilogram of salt would soften a mix, too.
 */
export function ingredientsThatHelp(brief: Brief, pantry: Pantry, search: SolveOptions = {}): string[] {
  const there = new Set(brief.ingredients.map(({ingredient}) => ingredient.name));
  const found: {name: string; share: number}[] = [];
  for (const ingredient of pantry.ingredients) {
    if (search.deadline && !(search.deadline.left() > 0)) break;
    const lacks = brief.targets.some(({subject}) => measureOf(subject).isUnknownIn?.(subject, ingredient));
    if (lacks || there.has(ingredient.name)) continue;
    const max = Math.min(ingredient.stock ?? Infinity, mostOf(ingredient) * brief.batch);
    const wider = {...brief, ingredients: [...brief.ingredients, {ingredient, min: 0, max}]};
    const {program} = formulate(wider);
    const added = brief.ingredients.length;
    const needed = withCosts(program, (j) => (j === added ? 1 : 0));
    const outcome = solve(needed, search);
    if (outcome.status === "optimal") found.push({name: ingredient.name, share: outcome.values[added]!});
  }
  return found
    .sort((a, b) => a.share - b.share)
    .slice(0, MOST)
    .map(({name}) => name);
}
