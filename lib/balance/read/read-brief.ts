import type * as z from "zod/mini";
import {InputError} from "../../core/errors.ts";
import {sum} from "../../core/numbers.ts";
import {parse} from "../../core/schema.ts";
import {USUAL_OVERRUN} from "../../freezing/firmness.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import {expectPantry} from "../../pantry/pantry.ts";
import {refuseLooseEquivalent} from "../../pantry/own-ingredient.ts";
import {NUTRIENT_KEYS} from "../../pantry/nutrient-keys.ts";
import {QUANTITIES} from "../../pantry/quantities.ts";
import {BRIEF_KEYS, briefSchema, type SpreadInput} from "../brief/brief-schema.ts";
import type {Brief, Choice, Spread} from "../brief/brief.ts";
import {asChecked, isChecked} from "../brief/checked.ts";
import {readDoses} from "../program/dose-limits.ts";
import {withPaths} from "../brief/mistake-path.ts";
import {indexOfName, readChoices} from "./read-choices.ts";
import {SPECIAL_SUBJECTS} from "../measure/measures.ts";
import {readAim, requireKnown} from "./read-subject.ts";
import {readTargets} from "./read-targets.ts";

/**
 * A checked brief from the JSON shape a cook writes.
 *
 * @param input a {@link BriefInput}, or anything that claims to be one
 * @param pantry where ingredients given by name are looked up
 * @param place name of the input in errors, e.g. the file's name
 * @throws InputError naming place, value and next step, for anything not understood, unknown, out of range,
 *   contradictory in itself, duplicated, or missing (a price when cost is minimised)
 *
 * @example
 * ```ts
 * const written = {batch: 2000, ingredients: ["whole milk", "sugar"], targets: {sugars: {equal: 12}}};
 * readBrief(written, includedPantry()).ingredients.map(({ingredient}) => ingredient.name); // => ["whole milk", "sucrose"]
 * ```
 */
export function readBrief(input: unknown, pantry: Pantry, place = "brief"): Brief {
  expectPantry(pantry);
  refuseChecked(input, place);
  refuseLoose(input, place);
  const raw = parse(briefSchema, input, place, [
    ...BRIEF_KEYS,
    ...SPECIAL_SUBJECTS,
    ...QUANTITIES,
    ...NUTRIENT_KEYS,
  ]);
  return withPaths(input, place, () => resolved(raw, pantry, place));
}

/** A brief of the right shape with every name looked up and every limit checked against the others. */
function resolved(raw: z.output<typeof briefSchema>, pantry: Pantry, place: string): Brief {
  const batch = raw.batch ?? 1000;
  const ingredients = readChoices(raw.ingredients, pantry, batch, place);
  expectPrices(ingredients, place);
  if (raw.margin && !raw.spread) {
    throw new InputError(
      `${place}: margin`,
      "asked for without a spread",
      true,
      'say how far the kitchen may be off, e.g. "spread": {"weighing": 1}',
    );
  }
  const targets = readTargets(raw.targets ?? {}, ingredients, place);
  const aim = readAim(raw, ingredients, place);
  for (const {subject} of aim ? [...targets, aim] : targets) {
    requireKnown(subject, ingredients, place);
  }
  return asChecked({
    name: raw.name ?? "mix",
    batch,
    freezer: raw.freezer ?? -18,
    overrun: raw.overrun ?? USUAL_OVERRUN,
    ...(raw.learned && {learned: raw.learned}),
    ingredients,
    targets,
    doses: readDoses(raw.doses, ingredients, targets, batch, `${place}: doses`),
    ...(raw.maxIngredients !== undefined && {maxIngredients: raw.maxIngredients}),
    ...(raw.wholePacks && {wholePacks: true}),
    ...(raw.spread && {spread: readSpread(raw.spread, ingredients, `${place}: spread`)}),
    ...(raw.margin && {margin: true}),
    ...(raw.near && {near: readNear(raw.near, ingredients, `${place}: near`)}),
    ...(aim && {aim}),
  });
}

/** Refuses a dextrose equivalent beside a composition instead of in it. */
function refuseLoose(input: unknown, place: string): void {
  const ingredients = (input as {readonly ingredients?: unknown} | null | undefined)?.ingredients;
  if (!Array.isArray(ingredients)) return;
  for (const [i, entry] of (ingredients as readonly unknown[]).entries())
    refuseLooseEquivalent(entry, `${place}.ingredients[${i}]`);
}

/** Refuses a brief that was checked before: it is not in the form that a cook writes. */
function refuseChecked(input: unknown, place: string): void {
  if (!isChecked(input)) return;
  throw new InputError(
    place,
    "already checked",
    undefined,
    "pass it to tradeOff, feasibleRegion and their like, or give the brief as it was written",
  );
}

/**
 * A spread with its ingredients' full names.
 *
 * @throws InputError for an ingredient that the brief does not have
 */
export function readSpread(
  {parts = {}, weighing = 0}: SpreadInput,
  choices: readonly Choice[],
  place: string,
): Spread {
  const ingredients = choices.map(({ingredient}) => ingredient);
  const named = Object.entries(parts).map(([name, widths]) => {
    const own = Object.entries(widths).filter((entry): entry is [string, number] => entry[1] !== undefined);
    return [
      ingredients[indexOfName(name, ingredients, `${place}.parts`)]!.name,
      Object.fromEntries(own),
    ] as const;
  });
  return {parts: new Map(named), weighing};
}

/** A recipe in g by ingredient as shares of its own mass, in the order of the brief's ingredients. */
function readNear(
  recipe: Readonly<Record<string, number>>,
  choices: readonly Choice[],
  place: string,
): number[] {
  const ingredients = choices.map(({ingredient}) => ingredient);
  const grams = ingredients.map(() => 0);
  for (const [name, mass] of Object.entries(recipe)) grams[indexOfName(name, ingredients, place)]! += mass;
  const total = sum(grams);
  if (total === 0)
    throw new InputError(
      place,
      "an empty recipe",
      undefined,
      "give the mass of its ingredients in g, or leave it out",
    );
  return grams.map((mass) => mass / total);
}

/** Range of prices other than 0 that can be calculated with, money per kg. */
const [LEAST_PRICE, MOST_PRICE] = [1e-9, 1e9];

function expectPrices(choices: readonly Choice[], place: string): void {
  for (const {ingredient} of choices) {
    const {name, price} = ingredient;
    if (price === undefined || price === 0 || (price >= LEAST_PRICE && price <= MOST_PRICE)) continue;
    throw new InputError(
      `${place}: ingredients[${name}].price`,
      "not a price that can be reckoned with",
      price,
      `give money per kg from ${LEAST_PRICE} to ${MOST_PRICE}, or 0 if it is free`,
    );
  }
}
