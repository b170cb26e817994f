import {decimal, tenth} from "../../core/format.ts";
import {finish, type Steps} from "../../core/in-chunks.ts";
import {sum} from "../../core/numbers.ts";
import {scooping} from "../../freezing/scoop.ts";
import {deadlineOf} from "../../lp/program/deadline.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {type Recipe, recipeComposition} from "../../pantry/recipe.ts";
import {tubOf} from "../measure/tub-of.ts";
import type {AmountChange} from "../substitute/substitution-types.ts";
import {type ChangeGoal, changeGoals} from "./change-goal.ts";
import {type ChangeProblem, readChange} from "./change-problem.ts";
import type {BeforeAfter, Change, ChangeOptions, Changes, NoChange} from "./change-types.ts";
import {type Found, nearestChange} from "./nearest-change.ts";

/**
 * Changes that make a recipe softer, cheaper and less sweet, each the one that an eater notices least.
 *
 * - softer: until it scoops in the freezer; where it does already, 2 °C colder; firmer instead where it is too soft;
 * - cheaper: by 10 %, where every price is known;
 * - less sweet: by 10 % (about as little as can be told apart), and no harder than before.
 *
 * Changes count as in `substitute` (see `SUBSTITUTION_WEIGHTS`; the goal's own do not count), each line weighed anew 0.5 and each
 * newcomer 1 more. The mass of the batch stays, and so do flavours (fruit, nuts, cocoa, coffee, spirits …; not a body of coconut
 * milk), eggs, ingredients under 1 % of the batch, and those `locked`. Of any other ingredient at least a third stays, and at most
 * twice as much or a tenth of the batch more comes in; sweetness, fat, protein and total solids stay within a quarter, doses within
 * custom, and the tub's verdict gets no worse. At most two newcomers of the shelf `from` come in, each at most a tenth of the
 * batch, none with a new allergen. A goal that cannot be reached so is approached as far as possible; one that nothing gets nearer
 * without being noticed more than that is worth has no change, and stands in `nothingFor`. Amounts are weighed to 5 g,
 * 1 g below 500 g, 0.1 g below 10 g.
 *
 * @throws InputError for no recipe, one without mass, an unknown option or weight, a number out of range, and a locked name that the
 *   recipe does not have
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const recipe = {
 *   name: "milk ice",
 *   lines: [
 *     {ingredient: findIngredient(pantry, "whole milk"), grams: 700},
 *     {ingredient: findIngredient(pantry, "cream 36 %"), grams: 150},
 *     {ingredient: findIngredient(pantry, "sucrose"), grams: 150},
 *   ],
 * };
 * const {changes} = suggestChanges(recipe, {from: staplesIn(pantry), freezer: -14});
 * changes.map(({towards, words}) => `${towards}: ${words}`); // => ["softer: add 75 g dextrose monohydrate and 75 g glucose syrup 42 DE; take away 94 g whole milk and 56 g sucrose", "less sweet: add 49 g glucose syrup 42 DE; take away 33 g sucrose and 16 g whole milk"]
 * ```
 */
export function suggestChanges(recipe: Recipe, options: ChangeOptions = {}): Changes {
  return finish(suggestChangesSteps(recipe, options));
}

/**
 * {@link suggestChanges} in steps, one for each linear program, for `inChunks`.
 *
 * @throws InputError as {@link suggestChanges}
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * const steps = suggestChangesSteps({name: "milk", lines});
 * (await inChunks(steps)).nothingFor.map(({towards, wanted}) => [towards, wanted]); // => [["softer", "scoops at −18 °C"]]
 * ```
 */
export function* suggestChangesSteps(recipe: Recipe, options: ChangeOptions = {}): Steps<Changes> {
  const problem = readChange(recipe, options);
  const deadline = deadlineOf(options);
  const changes: Change[] = [];
  const nothingFor: NoChange[] = [];
  for (const goal of changeGoals(problem)) {
    const found = yield* nearestChange(problem, goal, deadline);
    if (!found) continue;
    if (found.alternative.amounts.some(isMoved)) changes.push(described(problem, goal, found));
    else nothingFor.push(noChange(goal));
  }
  return {
    before: problem.before,
    changes,
    nothingFor,
    unpriced: problem.before.lines.flatMap(({ingredient: {name, price}}) =>
      price === undefined ? [name] : [],
    ),
    ...(deadline && !(deadline.left() > 0) && {cutShort: true}),
  };
}

function described(problem: ChangeProblem, goal: ChangeGoal, {alternative, missed, score}: Found): Change {
  const {amounts, recipe, changes} = alternative;
  const both = <T>(of: (one: Recipe) => T): BeforeAfter<T> => ({
    before: of(problem.before),
    after: of(recipe),
  });
  const priced = [...problem.before.lines, ...recipe.lines].every(
    ({ingredient}) => ingredient.price !== undefined,
  );
  return {
    towards: goal.towards,
    wanted: goal.wanted,
    reached: missed === 0,
    words: inWords(amounts),
    amounts,
    newcomers: amounts
      .filter(({before, after}) => before === 0 && after > 0)
      .map(({ingredient}) => ingredient),
    scoop: both((one) => scooping(recipeComposition(one), problem.freezer, tubOf(problem))),
    sweetness: both((one) => quantityOf(recipeComposition(one), "sweetness")),
    ...(priced && {
      cost: both(({lines}) => sum(lines.map((line) => (line.grams / 1000) * line.ingredient.price!))),
    }),
    changes,
    score,
    recipe,
  };
}

function noChange({towards, wanted}: ChangeGoal): NoChange {
  return {
    towards,
    wanted,
    words: `nothing gets it to where it ${wanted} without being noticed more than that is worth`,
  };
}

/** Whether an amount differs by what can be weighed. */
function isMoved({change}: AmountChange): boolean {
  return Math.abs(change) >= 0.005;
}

/** Instruction, the largest amounts first: `add 30 g dextrose, take away 35 g sucrose`. */
function inWords(amounts: readonly AmountChange[]): string {
  const moved = amounts.filter(isMoved).sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
  const [more, less] = [moved.filter(({change}) => change > 0), moved.filter(({change}) => change < 0)];
  const listed = (some: readonly AmountChange[]) => {
    const each = some.map(({ingredient, change}) => `${plainGrams(Math.abs(change))} g ${ingredient}`);
    return each.length < 2 ? each.join("") : `${each.slice(0, -1).join(", ")} and ${each.at(-1)}`;
  };
  const said = [more.length && `add ${listed(more)}`, less.length && `take away ${listed(less)}`];
  return said.filter(Boolean).join("; ");
}

/** Grams in words, with a decimal only where there is one. */
function plainGrams(value: number): string {
  return decimal(value, Number.isInteger(tenth(value)) ? 0 : 1);
}
