import {finite, sum} from "../core/numbers.ts";
import {expectRecord, oneOf} from "../core/shape.ts";
import {folded} from "../core/nearest.ts";
import {DOSE_TABLE} from "./dose-table.ts";
import type {DoseRow} from "./dose-row.ts";
import type {Ingredient} from "./ingredient.ts";
import {quantityOf} from "./quantities.ts";
import {expectLines, type RecipeLine} from "./recipe.ts";

/** A customary upper limit on what is taken by the pinch or the spoon. */
export interface Dose {
  /** Key by which a brief names it: `{"doses": {"salt": 1}}`. */
  readonly key: string;
  /** In plain words: `salt`, `all stabilisers together`. */
  readonly name: string;
  /** Most of it, g per 100 g of mix. */
  readonly limit: number;
  /** The law or book that gives the limit, or "common practice, no source". */
  readonly source: string;
}

/** Every customary dose, from `datasets/doses.csv`. */
export const DOSES: readonly Dose[] = DOSE_TABLE.map(
  ({key, name, limit, source = "common practice, no source"}) => ({key, name, limit, source}),
);

const DOSE_KEYS: readonly string[] = DOSES.map(({key}) => key);

/** A dose that a mix goes beyond. */
export interface DoseOver {
  /** Key of the dose. */
  readonly dose: string;
  readonly name: string;
  /** Amount in the mix, g per 100 g. */
  readonly has: number;
  /** Customary limit, or the cook's own, g per 100 g. */
  readonly limit: number;
  readonly source: string;
}

/** Excess over a limit, relative to its size, that still counts as on it: what rounding leaves. */
const ON_LIMIT = 1e-6;

/** All words and names of the table in one pattern: a quick test before names are compared in full. */
const NAMED = new RegExp(
  DOSE_TABLE.flatMap(({words, names}) => [...list(words), ...list(names)]).join("|"),
  "i",
);

/** Grams that 100 g of an ingredient bring to each of {@link DOSES}, in their order. */
export function dosesIn(ingredient: Ingredient): readonly number[] {
  const known = SEEN.get(ingredient);
  if (known) return known;
  const brought = measured(ingredient);
  SEEN.set(ingredient, brought);
  return brought;
}

/** Doses of ingredients already looked at: they do not change, and the same brief becomes a program many times. */
const SEEN = new WeakMap<Ingredient, readonly number[]>();

function measured(ingredient: Ingredient): number[] {
  const {name, aliases = [], group} = ingredient;
  const known = [name, ...aliases];
  const spelled = NAMED.test(known.join("; ")) ? known.map(folded) : [];
  return DOSE_TABLE.map((row) => {
    const brought = broughtBy(row, ingredient);
    return brought > 0 && isAmong(row, group, spelled) ? brought : 0;
  });
}

function isAmong(
  {groups, words, names}: DoseRow,
  group: string | undefined,
  spelled: readonly string[],
): boolean {
  if (groups && group !== undefined) return list(groups).includes(group);
  if (words) return list(words).some((word) => spelled.some((known) => ` ${known} `.includes(` ${word} `)));
  return !names || list(names).some((one) => spelled.includes(one));
}

function broughtBy({counts, atLeast = 0, of}: DoseRow, {composition}: Ingredient): number {
  if (of && (composition[of] ?? 0) < atLeast) return 0;
  if (counts === "mass") return 100;
  const brought = quantityOf(composition, counts);
  return brought >= atLeast ? brought : 0;
}

function list(words: string | undefined): string[] {
  return words?.split("; ") ?? [];
}

/**
 * Limits for a recipe as its cook wrote it, where they are not those of a mix that is worked out: salt that nobody asked for stops
 * where nobody tastes it, but salted caramel takes about 0.5 (common practice, no source), and who writes it down asks for it.
 */
export const WRITTEN_DOSES: Readonly<Record<string, number>> = {salt: 0.5};

/**
 * The doses that a recipe goes beyond, in the order of the table.
 *
 * @param lines the ingredients with their masses, g (only their proportions count); none weighs nothing in all
 * @param own limits of the cook's own by the key of their dose, g per 100 g of mix, in place of the customary ones
 * @throws InputError for what are no recipe lines, an unknown dose, and a limit that is no number from 0
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 990},
 *   {ingredient: findIngredient(pantry, "salt"), grams: 10},
 * ];
 * dosesOver(lines)[0]; // => {dose: "salt", name: "salt", has: 1, limit: 0.2, source: "common practice, no source"}
 * ```
 */
export function dosesOver(
  lines: readonly RecipeLine[],
  own: Readonly<Record<string, number>> = {},
): DoseOver[] {
  expectLines(lines);
  expectRecord(own, "doses", "give g per 100 g by the key of a dose, e.g. {salt: 1}");
  for (const key of Object.keys(own))
    finite(own[oneOf(key, DOSE_KEYS, "doses", "dose")], `doses.${key}`, {min: 0}, "g per 100 g");
  const total = sum(lines.map(({grams}) => grams));
  if (!(total > 0)) return [];
  const has = DOSES.map(() => 0);
  for (const {ingredient, grams} of lines) {
    if (grams <= 0) continue;
    for (const [d, brought] of dosesIn(ingredient).entries()) has[d]! += (brought * grams) / total;
  }
  return DOSES.flatMap(({key, name, limit: customary, source}, d): DoseOver[] => {
    const limit = Object.hasOwn(own, key) ? own[key]! : customary;
    return has[d]! > limit * (1 + ON_LIMIT) + 1e-12 ? [{dose: key, name, has: has[d]!, limit, source}] : [];
  });
}

/** True where the minimum of a target (by the name of its quantity) asks for what a dose counts. */
export function isAskedBy(dose: number, target: string): boolean {
  const {askedBy, counts, of = counts} = DOSE_TABLE[dose]!;
  return askedBy ? list(askedBy).includes(target) : of === target;
}
