import {finite} from "../../core/numbers.ts";
import {expectOptions, expectRecord, expectTexts} from "../../core/shape.ts";
import {firmnessReference, USUAL_OVERRUN} from "../../freezing/firmness.ts";
import type {Learned} from "../../freezing/learned.ts";
import {dosesIn} from "../../pantry/doses.ts";
import {expectIngredients} from "../../pantry/expect.ts";
import {isFlavour} from "../../pantry/flavour-groups.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {expectPantry, goesBy, nameKey, type Pantry} from "../../pantry/pantry.ts";
import {quantityIn} from "../../pantry/quantities.ts";
import {expectRecipe, nameIn, type Recipe, recipeComposition} from "../../pantry/recipe.ts";
import type {Weights} from "../substitute/similarity-traits.ts";
import {type Candidate, readWeights, scaledLines} from "../substitute/substitution-problem.ts";
import type {ChangeOptions} from "./change-types.ts";

/** A checked question of how a recipe can be changed. */
export interface ChangeProblem {
  readonly before: Recipe;
  readonly batch: number;
  readonly freezer: number;
  readonly overrun: number;
  readonly learned?: Learned;
  readonly weights: Weights;
  /** Ingredients that stay as they are: flavours, eggs, those taken by the pinch, and those that the cook locks. */
  readonly kept: readonly Candidate[];
  /** The recipe's other ingredients, which may move. */
  readonly own: readonly Candidate[];
  /** Ingredients that may come in. */
  readonly others: readonly Candidate[];
}

/** Share of the batch below which an ingredient is a pinch that is not changed. */
const PINCH = 0.01;

/** Share of the batch above which coconut is the body of the recipe, as milk is elsewhere, and may move. */
const BODY = 0.5;

/** Range of an own ingredient, so that the recipe stays the same one: at least a third of it, at most twice as much or this share of the batch more. */
const [LEFT, TIMES, MORE] = [1 / 3, 2, 0.1];

/**
 * The most that a newcomer may have, as a share of the batch, and of a sugar as a share of all sugars that the recipe has: as much
 * dextrose or syrup as a usual mix takes (common practice, no source).
 */
const [NEWCOMER, OF_SUGARS] = [0.12, 0.5];

const OPTIONS = [
  "freezer",
  "overrun",
  "learned",
  "from",
  "locked",
  "weights",
  "deadline",
  "now",
] satisfies (keyof ChangeOptions)[];

/**
 * A question of change, checked: one line for each ingredient, each name resolved.
 *
 * @throws InputError for no recipe, an unknown option, a number out of range, an unknown weight, and a locked name that the recipe
 *   does not have
 */
export function readChange(recipe: Recipe, options: ChangeOptions): ChangeProblem {
  expectRecipe(recipe);
  expectOptions(options, OPTIONS);
  const {from = [], locked = []} = options;
  if (Array.isArray(from)) expectIngredients(from, "from", "give a pantry or its ingredients");
  else expectPantry(from as Pantry);
  expectTexts(locked, "locked", "give the names of ingredients that stay");
  expectRecord(options.weights ?? {}, "weights", "give numbers by name, see SUBSTITUTION_WEIGHTS");
  const freezer = finite(options.freezer ?? -18, "freezer", {min: -40, max: -0.01}, "°C");
  const overrun = finite(
    options.overrun ?? recipe.overrun ?? USUAL_OVERRUN,
    "overrun",
    {min: 0, max: 200},
    "%",
  );
  firmnessReference(overrun, options.learned);
  const {lines, batch} = scaledLines(recipe, undefined);
  const stays = new Set(locked.map((name, i) => nameIn(recipe, name, `locked[${i}]`)));
  const isKept = ({ingredient, before}: Candidate) =>
    stays.has(ingredient.name) ||
    (isFlavour(ingredient) && !(ingredient.group === "coconut" && before > BODY * batch)) ||
    ingredient.group === "egg" ||
    before < PINCH * batch;
  const shelf = "ingredients" in from ? from.ingredients : from;
  const sugars = (batch / 100) * quantityIn(recipeComposition(recipe), "sugars");
  const most = ({stock = Infinity, group}: Ingredient) =>
    Math.min(stock, NEWCOMER * batch, group === "sugar" ? OF_SUGARS * sugars : Infinity);
  const stocked = new Map(shelf.map((ingredient) => [nameKey(ingredient.name), ingredient.stock]));
  return {
    before: {
      ...recipe,
      lines: lines.map(({ingredient, before}) => ({ingredient, grams: before})),
      ...(options.overrun !== undefined && {overrun}),
    },
    batch,
    freezer,
    overrun,
    ...(options.learned && {learned: options.learned}),
    weights: readWeights(options.weights ?? {}),
    kept: lines.filter(isKept),
    own: lines
      .filter((line) => !isKept(line))
      .map((line): Candidate => {
        const {before, ingredient} = line;
        // The cook is taken to have as much as the recipe asks for.
        const stock = Math.max(before, stocked.get(nameKey(ingredient.name)) ?? Infinity);
        return {
          ...line,
          min: LEFT * before,
          max: Math.min(stock, Math.max(TIMES * before, before + MORE * batch)),
        };
      }),
    others: shelf
      .filter((ingredient) => mayComeIn(ingredient, lines))
      .map((ingredient) => ({
        ingredient,
        before: 0,
        max: most(ingredient),
      })),
  };
}

/** Groups of the shelf that fit any recipe. */
const ANYWHERE = new Set(["sugar", "basic"]);

/** Dextrose equivalent below which a syrup is a powder for body, taken by the spoon. */
const POWDER = 20;

/**
 * True for an ingredient of a group that the recipe has, a sugar that tastes of nothing but sweet, or water; false for flavours,
 * eggs, what is taken by the pinch, and anything with an allergen that the recipe does not have.
 */
function mayComeIn(ingredient: Ingredient, lines: readonly Candidate[]): boolean {
  const {name, group, stock, allergens = []} = ingredient;
  const known = new Set(lines.flatMap((line) => line.ingredient.allergens ?? []));
  const groups = new Set(lines.map((line) => line.ingredient.group));
  return (
    !lines.some((line) => goesBy(line.ingredient, name)) &&
    !isFlavour(ingredient) &&
    group !== "egg" &&
    (stock === undefined || stock > 0) &&
    (group === undefined || ANYWHERE.has(group) || groups.has(group)) &&
    allergens.every((allergen) => known.has(allergen)) &&
    (group === "sugar" ? isPlainSugar(ingredient) : dosesIn(ingredient).every((grams) => grams === 0))
  );
}

/** True for nothing but sugars and water: no honey, no treacle, no sugar alcohol. */
function isPlainSugar({composition}: Ingredient): boolean {
  const {water = 0, dextroseEquivalent = 100} = composition;
  return water + quantityIn(composition, "sugars") > 99.8 && dextroseEquivalent >= POWDER;
}
