import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions, expectTexts, oneOf} from "../../core/shape.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {goesBy} from "../../pantry/pantry.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import {expectLines} from "../../pantry/recipe.ts";
import {cookingMinutes} from "./cooked-first.ts";
import {isSourMilk} from "./dairy.ts";
import {COOKED_FRUIT} from "./mix-pairs.ts";
import {holdsEgg, needsHeat} from "./needs-heat.ts";
import type {Process, ProcessStep} from "./process.ts";

/** Ways of making a base, in a cook's words. */
export const WAYS_OF_MAKING = {
  custard: "a cooked custard",
  scald: "scalded milk poured over yolks",
  pot: "heated and held in one pot",
  cold: "stirred together cold",
} as const;

/** Making of a base. Temperatures and times are common practice, no source; what they meet is checked against published pairs. */
export interface Making {
  readonly way: keyof typeof WAYS_OF_MAKING;
  /** Temperature of the milk before it is poured, °C; 90 by default. */
  readonly scald?: number;
  /** Temperature to which the mix is heated, °C; 82 by default, which meets the UK's and the US federal pairs with 30 s; Ohio and Michigan ask for 82.2. */
  readonly to?: number;
  /** Time that it is held there, s; 30 by default. */
  readonly hold?: number;
  /**
   * Whether fruit, juice and flavourings are heated too, or go in after cooling, which is the default. Fruit that is cooked already is
   * always heated, and fruit that nobody eats raw is cooked first; anything with alcohol, and yoghurt and other sour milk, always
   * goes in after cooling.
   */
  readonly fruit?: "heated" | "late";
  /** Ingredients that are heated whatever they are, by name. */
  readonly heated?: readonly string[];
  /** Ingredients that go in after cooling whatever they are, by name. */
  readonly late?: readonly string[];
  /** Temperature to which it is cooled, °C; 4 by default. */
  readonly cool?: number;
  /** Time that cooling takes, minutes, where that is known. */
  readonly minutes?: number;
}

/** Groups of the shelf that go into the milk pan. */
const PAN = new Set(["dairy", "plant drink", "coconut", "fat", "basic"]);
/** Groups that keep their flavour when they go in after cooling: common practice, no source. */
const LATE = new Set(["fruit", "juice", "flavour", "alcohol"]);
/** Fruit that comes into the kitchen cooked, or is cooked whatever it goes into. */
const COOKED = /\b(cooked|stewed|poached|roasted|baked|canned|jam|pumpkin)\b/i;

/** Temperature of fruit that is cooked first, °C: just below the boil. */
const COOKS = 95;

/** Water from which an ingredient is taken as a liquid, g per 100 g: double cream has 47. */
const LIQUID = 45;

/** Refuses an unknown way of making, and temperatures and times that are no numbers. */
function expectMaking(making: Making): void {
  expectOptions(
    making,
    ["way", "scald", "to", "hold", "fruit", "heated", "late", "cool", "minutes"],
    "making",
  );
  oneOf(making.way, Object.keys(WAYS_OF_MAKING) as Making["way"][], "making.way", "way");
  if (making.fruit !== undefined) oneOf(making.fruit, ["heated", "late"], "making.fruit", "word");
  for (const key of ["heated", "late"] as const)
    if (making[key] !== undefined) expectTexts(making[key], `making.${key}`, "give the names of ingredients");
  for (const key of ["scald", "to", "cool"] as const)
    if (making[key] !== undefined) finite(making[key], `making.${key}`, {min: -5, max: 200}, "°C");
  for (const key of ["hold", "minutes"] as const)
    if (making[key] !== undefined)
      finite(making[key], `making.${key}`, {min: 0}, key === "hold" ? "s" : "min");
}

/**
 * The steps of a way of making a base, over its own ingredients, for `followProcess`. Anything with alcohol, raw fruit, juice, flavourings,
 * yoghurt and other sour milk go in after cooling, unless `making` says otherwise; where nothing is heated, everything goes in together.
 * Fruit that nobody eats raw is cooked first: by itself, lest it curdle milk or egg, else with the rest.
 *
 * @throws InputError for an unknown way, temperatures and times out of range, a name in `heated` or `late` that no ingredient goes by, or that stands in both
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = ["whole milk", "sucrose"].map((name) => ({
 *   ingredient: findIngredient(pantry, name),
 *   grams: 200,
 * }));
 * baseProcess(lines, {way: "pot", to: 82}).steps; // => [{heat: ["whole milk", "sucrose"], to: 82, holdSeconds: 30, into: "mix"}, {cool: ["mix"], to: 4, into: "mix"}]
 * ```
 */
export function baseProcess(lines: readonly RecipeLine[], making: Making): Process {
  expectLines(lines);
  expectMaking(making);
  const {scald = 90, to = 82, hold = 30, cool = 4, minutes} = making;
  const {way, raw, early, late} = sorted(lines, making);
  const pan = early.filter(({ingredient: {group = ""}}) => PAN.has(group) || LATE.has(group));
  const bowl = early.filter((line) => !pan.includes(line));
  const [hot, cold, fruit, added] = [pan, bowl, raw, late].map((some) =>
    some.map(({ingredient}) => ingredient.name),
  );
  const heatedName = pan.some(({ingredient: {group}}) => group === "dairy") ? "hot milk" : "hot liquid";
  const poured: ProcessStep[] =
    pan.length && bowl.length
      ? [{pour: [way === "cold" ? hot! : [heatedName]].flat(), onto: cold!, into: "mix"}]
      : [];
  const everything = poured.length ? ["mix"] : [...hot!, ...cold!];
  const potted: ProcessStep[] = [{heat: [...hot!, ...cold!], to, holdSeconds: hold, into: "mix"}];
  // Without egg there is nothing to pour hot milk over: scalded, it would be hotter than it is to be held.
  const soft = Math.max(0, ...raw.map(({ingredient}) => 60 * cookingMinutes(ingredient)!));
  const apart = raw.length > 0 && early.some(({ingredient}) => curdles(ingredient));
  if (apart) added!.push(COOKED_FRUIT);
  const heated: Record<Making["way"], ProcessStep[]> = {
    custard:
      poured.length && bowl.some(({ingredient}) => holdsEgg(ingredient))
        ? [
            {heat: hot!, to: scald, into: heatedName},
            ...poured,
            {heat: ["mix"], to, holdSeconds: hold, into: "mix"},
          ]
        : potted,
    scald: poured.length
      ? [{heat: hot!, to: scald, into: heatedName}, ...poured]
      : [{heat: everything, to: scald, into: "mix"}],
    pot: potted,
    cold: poured,
  };
  const made: ProcessStep[] =
    raw.length && !apart
      ? [
          {
            heat: [...fruit!, ...hot!, ...cold!],
            to: Math.max(to, COOKS),
            holdSeconds: Math.max(hold, soft),
            into: "mix",
          },
        ]
      : heated[way];
  return {
    steps: [
      ...(apart
        ? [
            {heat: fruit!, to: COOKS, holdSeconds: soft, into: COOKED_FRUIT},
            {cool: [COOKED_FRUIT], to: cool},
          ]
        : []),
      ...made,
      {
        cool: made.length ? ["mix"] : everything,
        to: cool,
        into: "mix",
        ...(minutes !== undefined && {minutes}),
      },
      ...(added!.length
        ? [
            {pour: added!, onto: ["mix"], into: "whole mix"},
            {cool: ["whole mix"], to: cool},
          ]
        : []),
    ],
  };
}

function curdles({group = "", allergens = []}: Ingredient): boolean {
  return (
    ["dairy", "egg", "plant drink", "coconut"].includes(group) ||
    allergens.includes("milk") ||
    allergens.includes("eggs")
  );
}

/** The lines by when they go in, and the way that is then left: without a liquid to heat, sour milk and the rest are stirred together cold. */
function sorted(
  lines: readonly RecipeLine[],
  making: Making,
): {
  readonly way: Making["way"];
  /** Fruit to be cooked first. */
  readonly raw: readonly RecipeLine[];
  readonly early: readonly RecipeLine[];
  readonly late: readonly RecipeLine[];
} {
  const {way, heated = [], late: named = []} = making;
  const isLate = lateness(lines, making);
  const isNamed = ({ingredient}: RecipeLine) =>
    [...heated, ...named].some((name) => goesBy(ingredient, name));
  const raw = lines.filter((line) => cookingMinutes(line.ingredient) !== undefined && !isNamed(line));
  const rest = lines.filter((line) => !raw.includes(line));
  if (way === "cold") return {way, raw, early: rest, late: []};
  const sour = rest.filter((line) => isSourMilk(line.ingredient) && !isNamed(line));
  const apart = rest.filter((line) => isLate(line.ingredient));
  const stays = rest.filter((line) => !apart.includes(line));
  const nothingToHeat = sour.length > 0 || (apart.length > 0 && stays.length > 0);
  if (nothingToHeat && !raw.length && !stays.some(isLiquid)) {
    if (!stays.some(({ingredient}) => needsHeat(ingredient)))
      return {way: "cold", raw, early: rest, late: []};
    // There is nothing else to heat it in; spirits go in cold all the same, and fruit where there is sour milk.
    const late = apart.filter(
      (line) => !sour.includes(line) && (sour.length > 0 || (line.ingredient.composition.alcohol ?? 0) > 0),
    );
    return {way, raw, early: rest.filter((line) => !late.includes(line)), late};
  }
  // With nothing to heat there is nothing to wait for.
  const late = apart.length < lines.length ? apart : [];
  return {way, raw, early: rest.filter((line) => !late.includes(line)), late};
}

function isLiquid({ingredient: {composition, group}}: RecipeLine): boolean {
  return group !== "egg" && (composition.water ?? 0) > LIQUID;
}

/** Tells which ingredients go in after cooling. */
function lateness(
  lines: readonly RecipeLine[],
  {fruit = "late", heated = [], late = []}: Making,
): (ingredient: Ingredient) => boolean {
  for (const [key, names] of Object.entries({heated, late})) {
    for (const name of names) {
      if (lines.some(({ingredient}) => goesBy(ingredient, name))) continue;
      throw new InputError(key, "not in the recipe", name, "name an ingredient of the recipe");
    }
  }
  return (ingredient) => {
    const [hot, cold] = [heated, late].map((names) => names.some((name) => goesBy(ingredient, name)));
    if (hot && cold) {
      throw new InputError("heated", "late as well", ingredient.name, "name it in one of the two");
    }
    if (hot || cold) return Boolean(cold);
    const {group = "", composition, name} = ingredient;
    if (group === "alcohol" || composition.alcohol || isSourMilk(ingredient)) return true;
    return fruit === "late" && LATE.has(group) && !(group === "fruit" && COOKED.test(name));
  };
}
