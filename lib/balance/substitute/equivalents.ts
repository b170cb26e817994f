import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions} from "../../core/shape.ts";
import {heldWater} from "../../freezing/held-water.ts";
import {expectIngredient, expectIngredients} from "../../pantry/expect.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";

/** Properties that two ingredients can be made equal in. */
export const EQUAL_IN = ["mass", "totalSolids", "sweetness", "freezing", "fat"] as const;

/** One way to make two ingredients equal. */
export type EqualIn = (typeof EQUAL_IN)[number];

/** Amount of one ingredient that takes the place of 100 g of another. */
export interface Equivalent {
  readonly equalIn: EqualIn;
  /** Of the other ingredient, g. */
  readonly grams: number;
  /** Water to add (or, below 0, to take away) so that the mix keeps its water, g. */
  readonly water: number;
  /** Change of the whole mix then, g; of sweetness, g that taste like sucrose. */
  readonly change: {
    readonly mass: number;
    readonly totalSolids: number;
    readonly sweetness: number;
    readonly fat: number;
    /** Ice in the freezer, g, by the solutes' hold on the same water. Above 0 the mix is harder. */
    readonly ice: number;
  };
}

/** Least content, g per 100 g, of two ingredients that are made equal in it. */
const LEAST = 1;

/**
 * Amount of `y` that takes the place of 100 g of `x`: at equal mass, equal solids, equal sweetness, equal freezing effect
 * (the water that its solutes keep liquid in the freezer) and equal fat, with the water to add or take away so that the mix
 * keeps the water it had.
 *
 * @param options with `freezer`, where the freezing effect is compared, °C, from -40 to below 0; -18 by default
 * @returns one entry for each of these of which both ingredients have at least 1 g per 100 g
 * @throws InputError for a temperature out of range
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const found = equivalents(findIngredient(pantry, "sucrose"), findIngredient(pantry, "dextrose"));
 * found.map(({equalIn, grams}) => `${grams.toFixed(0)} g for the same ${equalIn}`); // => ["100 g for the same mass", "110 g for the same totalSolids", "149 g for the same sweetness", "78 g for the same freezing"]
 * ```
 */
export function equivalents(
  x: Ingredient,
  y: Ingredient,
  options: {readonly freezer?: number} = {},
): Equivalent[] {
  for (const ingredient of [x, y]) expectIngredient(ingredient);
  const freezer = freezerOf(options);
  return between(featuresOf(x.composition, freezer), featuresOf(y.composition, freezer));
}

/** The ways to make one thing equal to 100 g of another. */
function between(one: Features, other: Features): Equivalent[] {
  return EQUAL_IN.flatMap((equalIn): Equivalent[] => {
    if (one[equalIn] < LEAST || other[equalIn] < LEAST) return [];
    const share = one[equalIn] / other[equalIn];
    const change = (of: keyof typeof one) => share * other[of] - one[of];
    const water = -change("water");
    return [
      {
        equalIn,
        grams: 100 * share,
        water,
        change: {
          mass: change("mass") + water,
          totalSolids: change("totalSolids"),
          sweetness: change("sweetness"),
          fat: change("fat"),
          ice: -change("freezing"),
        },
      },
    ];
  });
}

/** Most ingredients of a table: some 140,000 rows in about a second. */
const MOST = 200;

/** One row of a like-for-like table. */
export interface EquivalentRow extends Equivalent {
  readonly instead: string;
  readonly take: string;
}

/**
 * The like-for-like table of some ingredients: {@link equivalents} for every one instead of every other. It grows with the square
 * of their number, and 200 take about a second, at once.
 *
 * @param ingredients 2 to 200, such as the sugars of a pantry
 * @throws InputError for fewer ingredients or more, and for a temperature out of range
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const sugars = ["sucrose", "dextrose"].map((name) => findIngredient(pantry, name));
 * const [first] = equivalentsTable(sugars);
 * first && `${first.grams} g ${first.take} for 100 g ${first.instead}: the same ${first.equalIn}`; // => "100 g dextrose monohydrate for 100 g sucrose: the same mass"
 * ```
 */
export function equivalentsTable(
  ingredients: readonly Ingredient[],
  options: {readonly freezer?: number} = {},
): EquivalentRow[] {
  expectIngredients(ingredients, "ingredients", "give a pantry's ingredients");
  if (ingredients.length < 2) {
    throw new InputError(
      "ingredients",
      "nothing to compare",
      ingredients.length,
      "give at least two ingredients",
    );
  }
  if (ingredients.length > MOST) {
    throw new InputError(
      "ingredients",
      `more than ${MOST}`,
      ingredients.length,
      `give at most ${MOST}, such as those of one group: each is compared with every other`,
      {code: "out of range"},
    );
  }
  const freezer = freezerOf(options);
  const known = ingredients.map(({name, composition}) => ({
    name,
    features: featuresOf(composition, freezer),
  }));
  return known.flatMap((x) =>
    known.flatMap((y) =>
      x === y
        ? []
        : between(x.features, y.features).map((found) => ({instead: x.name, take: y.name, ...found})),
    ),
  );
}

/** Temperature at which the freezing effect is compared, °C. */
function freezerOf(options: {readonly freezer?: number}): number {
  expectOptions(options, ["freezer"]);
  const {freezer = -18} = options;
  return finite(freezer, "freezer", {min: -40, max: -0.01}, "°C");
}

type Features = Readonly<Record<EqualIn | "water", number>>;

/** Content of 100 g in everything that can be made equal, and in water, g. */
function featuresOf(composition: Composition, freezer: number): Features {
  return {
    mass: 100,
    totalSolids: quantityOf(composition, "totalSolids"),
    sweetness: quantityOf(composition, "sweetness"),
    freezing: heldWater(composition, freezer),
    fat: quantityOf(composition, "fat"),
    water: composition.water ?? 0,
  };
}
