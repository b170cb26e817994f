import {expectList, expectOptions, expectRecord, expectText} from "../../core/shape.ts";
import {expectIngredient} from "../../pantry/expect.ts";
import {InputError} from "../../core/errors.ts";
import {finite, type Limits} from "../../core/numbers.ts";
import {solve} from "../../lp/solve/solve.ts";
import {ProgramBuilder} from "../../lp/program/builder.ts";
import type {LinearProgram, Row, Variable} from "../../lp/program/program.ts";
import {cookDown} from "../cooking/cook.ts";
import type {RippleBrief, RippleIngredient, RippleMade, RipplePlan} from "./ripple-brief.ts";
import {fixedRows, type TargetRow, targetRows} from "./ripple-rows.ts";

/** Mass below which an ingredient is left out of the pot, g. */
const SPECK = 1e-6;

/**
 * Plans a cooked fruit ripple: the fruit, sugar, syrup and water to boil off that give the °Brix and the softness wanted, from
 * the ingredients on hand, at least cost per kg of ripple.
 *
 * All targets are linear in the ingredients of 100 g, so it is one linear program; the answer is calculated once more by
 * {@link cookDown}. When the targets cannot be met together, a second program finds the ripple that misses them by the least sum of
 * grams per 100 g.
 *
 * @param brief g, °Brix, °C; see {@link RippleBrief}
 * @throws InputError for no ingredient, one without price or with alcohol, an unknown key, limits out of range or order, and a
 *   brief that does not fix or limit the amount to make
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const plums = {...findIngredient(pantry, "plum"), price: 2};
 * const sugar = {...findIngredient(pantry, "sucrose"), price: 1.1};
 * const plan = planRipple({
 *   name: "plum ripple",
 *   ingredients: [{ingredient: plums, fruit: true}, {ingredient: sugar}],
 *   brix: 60,
 *   cookedGrams: 1000,
 *   fruit: {min: 80},
 * });
 * plan.status === "optimal" &&
 *   plan.recipe.lines.map(({ingredient, grams}) => `${grams.toFixed(0)} g ${ingredient.name}`); // => ["800 g plum", "499 g sucrose"]
 * ```
 */
export function planRipple(brief: RippleBrief): RipplePlan {
  expectRipple(brief);
  const variables = readVariables(brief);
  readTargets(brief);
  const targets = targetRows(brief);
  const fixed = fixedRows(brief);
  const outcome = solve({variables, rows: [...fixed, ...targets.flatMap((target) => target.rows)]});
  if (outcome.status === "optimal") return {status: "optimal", ...made(brief, outcome.values)};
  if (outcome.status === "undecided") return outcome;
  if (outcome.status === "unbounded") {
    throw new InputError(brief.name, "the cost has no least value", undefined, "give no price below 0");
  }
  const nearest = solve(elastic(variables, fixed, targets));
  if (nearest.status === "undecided") return nearest;
  if (nearest.status !== "optimal") return {status: "infeasible", misses: []};
  const amounts = nearest.values.slice(0, variables.length);
  return {status: "infeasible", nearest: made(brief, amounts), misses: missesOf(targets, amounts)};
}

/** Keys of a brief of a ripple. */
const KEYS = [
  "name",
  "ingredients",
  "brix",
  "cookedGrams",
  "hardPhase",
  "ice",
  "firmness",
  "fruit",
  "sweetness",
  "reductionPercent",
  "inversion",
] satisfies (keyof RippleBrief)[];

/** Keys of an ingredient of it. */
const OF_INGREDIENT = [
  "ingredient",
  "min",
  "max",
  "fruit",
  "sievedPercent",
  "sieved",
] satisfies (keyof RippleIngredient)[];

/** Refuses anything but a brief of a ripple; its numbers are checked where they are used. */
function expectRipple(brief: RippleBrief): void {
  expectOptions(brief, KEYS, "ripple");
  expectText(brief.name, "ripple.name", "give the ripple's name");
  expectList(brief.ingredients, {ingredient: "object"}, "ingredients", "give {ingredient, min, max} of each");
  if (brief.ingredients.length === 0)
    throw new InputError("ingredients", "none named", undefined, "give at least one ingredient");
  for (const [i, entry] of brief.ingredients.entries()) {
    expectOptions(entry, OF_INGREDIENT, `ingredients[${i}]`);
    expectIngredient(entry.ingredient);
  }
  for (const key of AT) expectLimits(brief[key], key, ["at", "min", "max"]);
  for (const key of ["fruit", "sweetness", "reductionPercent"] as const)
    expectLimits(brief[key], key, ["min", "max"]);
  if (typeof brief.brix === "number") return;
  expectRecord(brief.brix, "ripple.brix", "give °Brix, or {min, max}");
  expectLimits(brief.brix, "brix", ["min", "max"]);
}

/** Targets at a temperature. */
const AT = ["hardPhase", "ice", "firmness"] as const;

function expectLimits(limits: Limits | undefined, key: string, known: readonly string[]): void {
  if (limits === undefined) return;
  expectRecord(limits, `ripple.${key}`, "give limits, e.g. {min: 5, max: 10}");
  expectOptions(limits, known, `ripple.${key}`);
}

function readVariables(brief: RippleBrief): Variable[] {
  const variables = brief.ingredients.map(({ingredient, min, max, sievedPercent}) => {
    const place = `${brief.name}: ${ingredient.name}`;
    if (ingredient.price === undefined) {
      throw new InputError(
        place,
        "no price",
        undefined,
        "give its price per kg, 0 for fruit that costs nothing",
      );
    }
    if (ingredient.composition.alcohol) {
      throw new InputError(place, "holds alcohol, which boils off", undefined, "stir it in after cooking");
    }
    const least = finite(min ?? 0, `${place}: min`, {min: 0}, "g");
    if (max !== undefined) finite(max, `${place}: max`, {min: least}, "g");
    finite(sievedPercent ?? 0, `${place}: sievedPercent`, {min: 0, max: 99}, "%");
    return {name: ingredient.name, cost: finite(ingredient.price, `${place}: price`, {min: 0}) / 1000};
  });
  if (brief.cookedGrams !== undefined) finite(brief.cookedGrams, "cookedGrams", {min: 1}, "g");
  else if (brief.ingredients.every(({min = 0}) => min === 0)) {
    throw new InputError(
      brief.name,
      "nothing says how much to make",
      undefined,
      "give `cookedGrams`, or the `min` of the fruit that is to be used up",
    );
  }
  const batch =
    brief.cookedGrams === undefined ? {} : {lower: 100 / brief.cookedGrams, upper: 100 / brief.cookedGrams};
  return [...variables, {name: "water boiled off", cost: 0}, {name: "batch", cost: 0, ...batch}];
}

function readTargets(brief: RippleBrief): void {
  if (typeof brief.brix === "number") finite(brief.brix, "brix", {min: 1, max: 99}, "°Brix");
  else readLimits(brief.brix, "brix", {min: 1, max: 99});
  for (const key of AT) {
    const target = brief[key];
    if (!target) continue;
    finite(target.at, `${key}.at`, {min: -40, max: -0.1}, "°C");
    readLimits(target, key, {min: key === "firmness" ? -100 : 0, max: 100});
  }
  if (brief.fruit) readLimits(brief.fruit, "fruit", {min: 0, max: 1000});
  if (brief.sweetness) readLimits(brief.sweetness, "sweetness", {min: 0, max: 200});
  if (brief.reductionPercent) readLimits(brief.reductionPercent, "reductionPercent", {min: 0, max: 99});
}

function readLimits({min, max}: Limits, place: string, range: Required<Limits>): void {
  if (min !== undefined) finite(min, `${place}.min`, range);
  if (max !== undefined) finite(max, `${place}.max`, {min: min ?? range.min, max: range.max});
}

/** The same program with each target row allowed to give way; it minimises the sum of the distances. */
function elastic(
  variables: readonly Variable[],
  fixed: readonly Row[],
  targets: readonly TargetRow[],
): LinearProgram {
  const rows = targets.flatMap((target) => target.rows);
  const cheap = variables.map((variable) => ({...variable, cost: variable.cost * 1e-6}));
  const builder = new ProgramBuilder({variables: cheap, rows: [...fixed, ...rows]});
  for (const [i, {name, lower}] of rows.entries()) {
    const row = builder.rowAt(fixed.length + i);
    builder.elastic(row, lower === undefined ? "upper" : "lower", {name: `miss of ${name}`, cost: 1});
  }
  return builder.build().program;
}

function made(brief: RippleBrief, per100: readonly number[]): RippleMade {
  const batch = per100[brief.ingredients.length + 1]!;
  if (batch < 1e-6) {
    throw new InputError(
      brief.name,
      "nothing limits how much to make",
      undefined,
      "give `cookedGrams`, or the `max` of what is on hand",
    );
  }
  const entries = brief.ingredients.map((entry, i) => ({...entry, grams: per100[i]! / batch}));
  const used = entries.filter((entry) => entry.grams > SPECK);
  const recipe = {name: brief.name, lines: used.map(({ingredient, grams}) => ({ingredient, grams}))};
  const sieved = used.flatMap(({ingredient, sievedPercent, sieved}) =>
    sievedPercent
      ? [{ingredient: ingredient.name, percent: sievedPercent, ...(sieved && {composition: sieved})}]
      : [],
  );
  const boiled = per100[brief.ingredients.length]! / batch;
  const inPot = used.reduce(
    (total, {grams, sievedPercent}) => total + grams * (1 - (sievedPercent ?? 0) / 100),
    0,
  );
  return {
    recipe,
    cooked: cookDown(recipe, {cookedGrams: inPot - boiled}, {sieved, inversion: brief.inversion ?? 0}),
    cost: used.reduce((total, {ingredient, grams}) => total + (grams * ingredient.price!) / 1000, 0),
  };
}

function missesOf(targets: readonly TargetRow[], amounts: readonly number[]) {
  return targets.flatMap(({target, unit, limits, valueOf}) => {
    const found = valueOf(amounts);
    const missed = found < (limits.min ?? -Infinity) - 1e-6 || found > (limits.max ?? Infinity) + 1e-6;
    return missed ? [{target, found, ...limits, unit}] : [];
  });
}
