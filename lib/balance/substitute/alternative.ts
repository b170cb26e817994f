import {sum} from "../../core/numbers.ts";
import type {Allergen} from "../../pantry/ingredient.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import type {Target} from "../brief/brief.ts";
import {openBrief} from "../brief/checked.ts";
import {isFlavour} from "../../pantry/flavour-groups.ts";
import {type Mix, mixOf} from "../mix/mix-report.ts";
import {type IngredientTrait, isIngredientTrait, traitIn} from "./ingredient-traits.ts";
import {TRAIT_UNITS, traitSubject} from "./similarity-traits.ts";
import {stillTastes, tasteAlike} from "./same-flavour.ts";
import type {Goal} from "./nearest-recipe.ts";
import {subjectName, valueOf} from "../measure/of-subject.ts";
import type {Alternative, Broken, NoticedChange} from "./substitution-types.ts";
import type {Candidate, SubstitutionProblem} from "./substitution-problem.ts";

/** Amount from which an ingredient counts as used, g per 100 g of mix. */
const THERE = 0.01;

/** Rounding error allowed at a demand of a legal name. */
const ROOM = 1e-6;

/**
 * A remade recipe with all its changes, measured anew.
 *
 * @param made the amount of each ingredient that it may have, g
 * @param making ingredients that make up the mass and so are not named in `by`
 */
export function describeAlternative(
  problem: Pick<
    SubstitutionProblem,
    "before" | "batch" | "weights" | "freezer" | "overrun" | "learned" | "legalName"
  >,
  goals: readonly Goal[],
  kind: Alternative["kind"],
  made: readonly {readonly candidate: Candidate; readonly grams: number}[],
  making: readonly Candidate[] = [],
): Alternative {
  const {batch, weights, freezer} = problem;
  const least = (THERE * batch) / 100;
  const place = new Map(problem.before.lines.map(({ingredient}, k) => [ingredient, k]));
  const placeOf = ({candidate}: {candidate: Candidate}) => place.get(candidate.ingredient) ?? Infinity;
  const sorted = made
    .filter(({candidate, grams}) => candidate.before > 0 || grams >= least)
    .sort((a, b) => (placeOf(a) === placeOf(b) ? b.grams - a.grams : placeOf(a) - placeOf(b)));
  const amounts = sorted.map(({candidate: {ingredient, before}, grams}) => ({
    ingredient: ingredient.name,
    before,
    after: grams,
    change: grams - before,
  }));
  const recipe: Recipe = {
    ...problem.before,
    lines: sorted.flatMap(({candidate: {ingredient}, grams}) =>
      grams >= least ? [{ingredient, grams}] : [],
    ),
  };
  const [old, renewed] = [mixOfRecipe(problem.before, problem), mixOfRecipe(recipe, problem)];
  const changes = goals.flatMap(({what, weight}): NoticedChange[] => {
    const valueIn = (made: Recipe, mix: Mix) =>
      isIngredientTrait(what) ? meanOf(what, made) : valueOf(traitSubject(what, freezer), mix);
    const [before, after] = [valueIn(problem.before, old), valueIn(recipe, renewed)];
    if (before === undefined || after === undefined) return [];
    const change = after - before;
    return [{what, unit: TRAIT_UNITS[what], before, after, change, counts: weight * Math.abs(change)}];
  });
  const [had, has] = [allergensOf(problem.before), allergensOf(recipe)];
  const newAllergens = [...has].filter((allergen) => !had.has(allergen));
  const flavouring = (of: Recipe) => of.lines.filter(({ingredient}) => isFlavour(ingredient));
  const [tasted, tastes] = [flavouring(problem.before), flavouring(recipe)];
  const lost = tasted.filter((line) => !stillTastes(line, tastes));
  const gained = tastes.filter(
    ({ingredient: one}) =>
      !tasted.some(({ingredient: other}) => one.name === other.name || tasteAlike(one, other)),
  );
  const moved = (sum(amounts.map(({change}) => Math.abs(change))) * 100) / 2 / batch;
  const madeUp = new Set(making.map(({ingredient}) => ingredient.name));
  return {
    kind,
    by: amounts
      .filter(({ingredient, change}) => change >= least && !madeUp.has(ingredient))
      .sort((a, b) => b.change - a.change)
      .map(({ingredient}) => ingredient),
    recipe,
    amounts,
    changes,
    newAllergens,
    goneAllergens: [...had].filter((allergen) => !has.has(allergen)),
    flavours: {
      lost: lost.map(({ingredient}) => ingredient.name),
      gained: gained.map(({ingredient}) => ingredient.name),
    },
    score:
      sum(changes.map(({counts}) => counts)) +
      weights.moved * moved +
      weights.newIngredient * amounts.filter(({before}) => before === 0).length +
      weights.newAllergen * newAllergens.length +
      weights.lostFlavour * lost.length,
    ...(problem.legalName && {legalName: standingOf(problem.legalName, renewed)}),
  };
}

/** A trait that ingredients have, g per 100 g of a recipe. */
function meanOf(trait: IngredientTrait, {lines}: Recipe): number {
  const mass = sum(lines.map(({grams}) => grams));
  return sum(lines.map(({ingredient, grams}) => traitIn(ingredient, trait) * grams)) / mass;
}

function standingOf(
  {name, targets}: {readonly name: string; readonly targets: readonly Target[]},
  mix: Mix,
): NonNullable<Alternative["legalName"]> {
  const broken = targets.flatMap(({subject, min, max}): Broken[] => {
    const value = valueOf(subject, mix);
    const target = subjectName(subject);
    const found = value === undefined ? {} : {value};
    const bound = min !== undefined && min === max ? "equal" : undefined;
    if (min !== undefined && !(value !== undefined && value >= min - ROOM))
      return [{target, bound: bound ?? "min", limit: min, ...found}];
    if (max !== undefined && !(value !== undefined && value <= max + ROOM))
      return [{target, bound: bound ?? "max", limit: max, ...found}];
    return [];
  });
  return {name, kept: broken.length === 0, broken};
}

function allergensOf({lines}: Recipe): Set<Allergen> {
  return new Set(lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
}

/** A recipe as a mix of a brief without targets. */
export function mixOfRecipe(
  {name, lines}: Recipe,
  {freezer, overrun, learned}: Pick<SubstitutionProblem, "freezer" | "overrun" | "learned">,
): Mix {
  const batch = sum(lines.map(({grams}) => grams));
  const brief = openBrief(
    lines.map(({ingredient}) => ingredient),
    {name, batch, freezer, overrun, ...(learned && {learned})},
  );
  return mixOf(
    brief,
    lines.map(({grams}) => grams / batch),
  );
}
