import {expectOptions, expectRecord, expectShape, expectText, expectTexts} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {type Deadline, deadlineOf} from "../../lp/program/deadline.ts";
import {expectIngredients} from "../../pantry/expect.ts";
import {expectPantry, type Pantry} from "../../pantry/pantry.ts";
import type {Target} from "../brief/brief.ts";
import {recipeComposition} from "../../pantry/recipe.ts";
import {recipeIn, type RecipeSource} from "../mix/recipe-of.ts";
import {type Ask, asker} from "./asker.ts";
import {distinct} from "./distinct.ts";
import {finish, type Progress, type Steps} from "../../core/in-chunks.ts";
import {noWorseThan} from "../program/no-worse.ts";
import {SIMILARITY_TRAITS} from "./similarity-traits.ts";
import {goalsOf} from "./nearest-recipe.ts";
import {type Candidate, readSubstitution, type SubstitutionProblem} from "./substitution-problem.ts";
import type {Alternative, SubstituteOptions, Substitution} from "./substitution-types.ts";

/** Number of ingredients, those that do best alone, among which pairs are tried. */
const PAIRED = 30;

/** Largest number of pairs in the answer. */
const MOST_PAIRS = 10;

/** Least gain in score of a pair over either of the two alone for it to be in the answer. */
const GAIN = 0.05;

/**
 * Ways to make a recipe of which an ingredient is out, or several, or only so much of one left, so that the eater notices least.
 *
 * Every way is the best of its kind: the program over the amounts that may move makes the weighted sum of all changes
 * smallest (see `SUBSTITUTION_WEIGHTS`), with the mass of the batch held. Terms that do not fit into a linear program (the number of
 * newcomers and allergens, the freezing point beyond first order) are measured and count in the score. Tried are each ingredient of
 * the shelf alone (shown where that is better than leaving it out), with water and the recipe's wettest ingredient to make up the
 * mass; then pairs of those that do best alone; then everything at once (without newcomers that do not improve the score), also
 * without any new allergen. New allergens are named and count; flavours stay and are not brought in, except others of the group of
 * an ingredient that is out. No way has a worse verdict in the freezer than the recipe (see `noWorseThan`), unless every way does.
 *
 * Past a `deadline` the answer holds the ways found so far and says that it is `cutShort`.
 *
 * @param source the recipe, or a balanced mix, whose brief then gives `freezer` and `learned` where the options do not
 * @throws InputError for a name that the recipe does not have, a copy of an answer, a number out of range, or an unknown weight
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 800},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 200},
 * ];
 * const from = pantryOf([findIngredient(pantry, "dextrose")]);
 * const {alternatives} = substitute({name: "milk ice", lines}, {without: "sucrose", from});
 * alternatives.map(({kind, by}) => `${kind}: ${by.join(", ")}`); // => ["one for one: dextrose monohydrate", "left out: "]
 * ```
 */
export function substitute(source: RecipeSource, options: SubstituteOptions): Substitution {
  return finish(substituteSteps(source, options));
}

const OPTIONS = [
  "without",
  "left",
  "from",
  "keep",
  "weights",
  "freezer",
  "learned",
  "batch",
  "legalName",
  "deadline",
  "now",
] satisfies (keyof SubstituteOptions)[];

/** Refuses options that have no effect or are of another type; their numbers are checked where they are read. */
function expectSubstitution(options: SubstituteOptions): void {
  expectOptions(options, OPTIONS);
  if (Array.isArray(options.without) && options.without.length === 0)
    throw new InputError("without", "names nothing", undefined, "name the ingredient that is out");
  if (typeof options.without === "object")
    expectTexts(options.without, "without", "give the names of what is out");
  else expectText(options.without, "without", "name the ingredient that is out");
  expectRecord(options.weights ?? {}, "weights", "give numbers by name, see SUBSTITUTION_WEIGHTS");
  if (options.keep !== undefined)
    expectTexts(options.keep, "keep", "give the names of ingredients that stay");
  if (Array.isArray(options.from))
    expectIngredients(options.from, "from", "give a pantry or its ingredients");
  else expectPantry(options.from as Pantry);
  if (options.legalName !== undefined)
    expectShape(options.legalName, {name: "text", targets: "object"}, "legalName", "give {name, targets}");
}

/**
 * {@link substitute} in steps, one for each linear program, for `inChunks`.
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 800},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 200},
 * ];
 * const from = pantryOf([findIngredient(pantry, "dextrose")]);
 * const steps = substituteSteps({name: "milk ice", lines}, {without: "sucrose", from});
 * (await inChunks(steps)).without; // => "sucrose"
 * ```
 */
export function* substituteSteps(source: RecipeSource, options: SubstituteOptions): Steps<Substitution> {
  const {recipe, ...kitchen} = recipeIn(source);
  expectSubstitution(options);
  const deadline = deadlineOf(options);
  const problem = readSubstitution(recipe, {...kitchen, ...options});
  const shape = noWorseThan(recipeComposition(problem.before), problem);
  const holding = yield* waysWithin(problem, shape, deadline);
  const found = holding.alternatives.length > 0 ? holding : yield* waysWithin(problem, [], deadline);
  return deadline && !(deadline.left() > 0) ? {...found, cutShort: true} : found;
}

/** The ways to remake a recipe within further limits. */
function* waysWithin(
  problem: SubstitutionProblem,
  shape: readonly Target[],
  deadline?: Deadline,
): Steps<Substitution> {
  const {missing, kept, own, others} = problem;
  const priced = [...missing, ...kept, ...own, ...others].every(
    ({ingredient}) => ingredient.price !== undefined,
  );
  const goals = goalsOf(problem, priced);
  const making = makingUp(problem);
  const instead = [...own, ...others].filter((candidate) => !making.includes(candidate));
  const paired = Math.min(PAIRED, instead.length);
  const atLeast = 1 + instead.length + (paired * (paired - 1)) / 2;
  let solved = 0;
  const progress = (): Progress => ({solved: ++solved, of: Math.max(solved, atLeast)});
  const ask = asker(problem, goals, shape, deadline);

  const leftOut = ask("left out", [], making);
  yield progress();
  const singles: {alternative: Alternative; candidate: Candidate}[] = [];
  for (const candidate of instead) {
    const alternative = ask("one for one", [candidate], making);
    yield progress();
    const helps = alternative && (!leftOut || ranked(alternative, leftOut) < 0);
    if (helps && alternative.by.length === 1) singles.push({alternative, candidate});
  }
  singles.sort((a, b) => ranked(a.alternative, b.alternative));
  const doubles: Alternative[] = [];
  const best = singles.slice(0, PAIRED);
  for (const [i, one] of best.entries()) {
    for (const two of best.slice(i + 1)) {
      const alternative = ask("two for one", [one.candidate, two.candidate], making);
      yield progress();
      if (
        alternative?.by.length === 2 &&
        ranked({...alternative, score: alternative.score + GAIN}, one.alternative) < 0
      )
        doubles.push(alternative);
    }
  }
  doubles.sort(ranked);
  const known = new Set(problem.before.lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
  const harmless = others.filter(({ingredient}) =>
    (ingredient.allergens ?? []).every((allergen) => known.has(allergen)),
  );
  const all: (Alternative | undefined)[] = [
    leftOut,
    ...singles.map(({alternative}) => alternative),
    ...doubles.slice(0, MOST_PAIRS),
  ];
  for (const shelf of harmless.length < others.length ? [harmless, others] : [others]) {
    all.push(yield* rebalanced(ask, own, shelf, progress));
  }
  const out = missing.map(({ingredient}) => ingredient.name);
  const compared = new Set(goals.map(({what}) => what));
  return {
    before: problem.before,
    without: inWords(out),
    out,
    alternatives: distinct(
      all.filter((found) => found !== undefined),
      problem.batch,
    ).sort(ranked),
    notCompared: SIMILARITY_TRAITS.filter((what) => problem.weights[what] > 0 && !compared.has(what)),
  };
}

/**
 * A re-balance with few newcomers: from the best one with all of the shelf, the newcomer that is best left out goes, again and
 * again as long as the score gets no worse.
 */
function* rebalanced(
  ask: Ask,
  own: readonly Candidate[],
  shelf: readonly Candidate[],
  progress: () => Progress,
): Steps<Alternative | undefined> {
  let best = ask("re-balanced", [...own, ...shelf], []);
  yield progress();
  for (let newcomers = shelf; best;) {
    const there = new Set(best.recipe.lines.map(({ingredient}) => ingredient));
    newcomers = newcomers.filter(({ingredient}) => there.has(ingredient));
    let fewer: Alternative | undefined;
    for (const left of newcomers) {
      const rest = newcomers.filter((other) => other !== left);
      const found = ask("re-balanced", [...own, ...rest], []);
      yield progress();
      if (found && (!fewer || ranked(found, fewer) < 0)) fewer = found;
    }
    if (!fewer || ranked(fewer, best) > 0) break;
    best = fewer;
  }
  return best;
}

/** Ingredients that make up the mass: water, from the recipe or the shelf, and the recipe's wettest ingredient. */
function makingUp({own, others}: SubstitutionProblem): Candidate[] {
  const wet = (candidate: Candidate) => candidate.ingredient.composition.water ?? 0;
  const water = [...own, ...others].find((candidate) => wet(candidate) > 99.9);
  const [wettest] = own
    .filter((candidate) => candidate !== water)
    .sort((a, b) => b.before * wet(b) - a.before * wet(a));
  return [water, wettest].filter((candidate) => candidate !== undefined);
}

/** Names in a row: `a`, `a and b`, `a, b and c`. */
function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function ranked(a: Alternative, b: Alternative): number {
  const breaks = ({legalName}: Alternative) => (legalName && !legalName.kept ? 1 : 0);
  return breaks(a) - breaks(b) || a.score - b.score;
}
