import {DOSES, dosesIn} from "../../pantry/doses.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import {solve, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Brief} from "../brief/brief.ts";
import {measureOf} from "../measure/measures.ts";
import {isStaple} from "./staples.ts";
import {formulate} from "../program/formulate.ts";

/** Most of an ingredient in a mix, as a share of it, so that nothing in it is overdosed, whatever the brief allows itself. */
function mostOf(ingredient: Ingredient): number {
  return Math.min(1, ...dosesIn(ingredient).map((grams, d) => DOSES[d]!.limit / grams));
}

/** Largest number of ingredients named. */
const MOST = 5;

/** Alcohol from which on an ingredient is a spirit or wine, which nobody puts in for the figures, g per 100 g. */
const SPIRIT = 1;

/** How near an ingredient is to a kitchen and its brief: what nearly every kitchen has, what is of a kind with what is there, the rest. */
function remoteness(ingredient: Ingredient, groups: ReadonlySet<string | undefined>): number {
  if (isStaple(ingredient)) return 0;
  return ingredient.group !== undefined && groups.has(ingredient.group) ? 1 : 2;
}

/**
 * Ingredients of a larger shelf of which any one, added to the brief, makes it possible: those first that nearly every kitchen has,
 * then those of a kind with what is there, and among these the one that needs least of itself.
 *
 * Only ingredients that have every property the brief targets are tried, and prices do not count. None is named that would
 * have to be overdosed: half a kilogram of salt would soften a mix, too. Nor is alcohol, unless there is some already.
 */
export function ingredientsThatHelp(brief: Brief, pantry: Pantry, search: SolveOptions = {}): string[] {
  const there = new Set(brief.ingredients.map(({ingredient}) => ingredient.name));
  const groups = new Set(brief.ingredients.map(({ingredient}) => ingredient.group));
  const isSpirit = ({composition}: Ingredient) => (composition.alcohol ?? 0) > SPIRIT;
  const withSpirits = brief.ingredients.some(({ingredient}) => isSpirit(ingredient));
  const found: {ingredient: Ingredient; share: number}[] = [];
  for (const ingredient of pantry.ingredients) {
    if (search.deadline && !(search.deadline.left() > 0)) break;
    const lacks = brief.targets.some(({subject}) => measureOf(subject).isUnknownIn?.(subject, ingredient));
    if (lacks || there.has(ingredient.name) || (isSpirit(ingredient) && !withSpirits)) continue;
    const max = Math.min(ingredient.stock ?? Infinity, mostOf(ingredient) * brief.batch);
    const wider = {...brief, ingredients: [...brief.ingredients, {ingredient, min: 0, max}]};
    const {program} = formulate(wider);
    const added = brief.ingredients.length;
    const needed = withCosts(program, (j) => (j === added ? 1 : 0));
    const outcome = solve(needed, search);
    if (outcome.status === "optimal") found.push({ingredient, share: outcome.values[added]!});
  }
  return found
    .sort((a, b) => remoteness(a.ingredient, groups) - remoteness(b.ingredient, groups) || a.share - b.share)
    .slice(0, MOST)
    .map(({ingredient}) => ingredient.name);
}
