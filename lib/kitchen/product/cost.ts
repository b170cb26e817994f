import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectOptions, expectRecord, expectShape} from "../../core/shape.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import {expectLines} from "../../pantry/recipe.ts";
import {type Product, productDensity, productLines} from "./product.ts";

/** Price and pack of an ingredient. Money is in one currency throughout, whichever it is. */
export interface Pack {
  /** Contents of one pack, g. */
  readonly grams: number;
  /** Money per pack. */
  readonly price: number;
  /** Already on the shelf, g; nothing by default. */
  readonly stock?: number;
}

/** Cost of one ingredient. */
export interface CostLine {
  readonly ingredient: string;
  readonly grams: number;
  /** Money for the grams used. */
  readonly cost: number;
  /** Packs to buy and open beyond the stock; absent when its packs are not known. */
  readonly packs?: number;
  /** Money to lay out for those packs. */
  readonly outlay?: number;
  /** Remainder on the shelf afterwards, g. */
  readonly leftover?: number;
}

/** Cost of a batch. */
export interface Cost {
  /** Money for what is used. */
  readonly total: number;
  /** Money to lay out: for whole packs where packs are known, otherwise for the grams used. */
  readonly outlay: number;
  /** Each ingredient once, in the order of first use. */
  readonly lines: readonly CostLine[];
}

/** Cost of a product in the sizes in which it is sold. */
export interface ProductCost extends Cost {
  readonly perKilogram: number;
  /** Money per litre of the frozen product. */
  readonly perLitre: number;
  /** Money per tub, packaging left out. */
  readonly perTub: number;
  readonly perPortion: number;
}

/** Sizes in which a product is sold, and the air in it. */
export interface Selling {
  /** Mass of the batch, g of finished product. */
  readonly grams: number;
  /** % of the churned mix's volume. */
  readonly overrun: number;
  /** Volume of one tub, ml. */
  readonly tubMillilitres: number;
  /** One portion, ml of the frozen product. */
  readonly portionMillilitres: number;
}

/**
 * Cost of a list of ingredients: for the grams used, for the whole packs that must be bought, and the rest that is left of these.
 * Lines of one ingredient, by its name, draw on one stock and the same packs.
 *
 * @param lines ingredients and grams
 * @param packs by name of the ingredient; its price per kg then follows from the pack
 * @throws InputError for an ingredient without price or pack (a missing price is never taken as 0), and for numbers
 *   outside their range
 *
 * @example
 * ```ts
 * const sugar = {...findIngredient(includedPantry(), "sucrose"), price: 1.1};
 * costOf([{ingredient: sugar, grams: 300}], {sucrose: {grams: 1000, price: 1.1}}); // => {total: 0.33, outlay: 1.1}
 * ```
 */
export function costOf(lines: readonly RecipeLine[], packs: Readonly<Record<string, Pack>> = {}): Cost {
  expectLines(lines);
  expectRecord(packs, "packs", "give {grams, price} of a pack by the ingredient's name");
  const names = new Set(lines.map(({ingredient}) => ingredient.name));
  const priced = Array.from(names, (name) => {
    const own = lines.filter(({ingredient}) => ingredient.name === name);
    return costLine(name, own, Object.hasOwn(packs, name) ? packs[name] : undefined);
  });
  return {
    total: sum(priced.map((line) => line.cost)),
    outlay: sum(priced.map((line) => line.outlay ?? line.cost)),
    lines: priced,
  };
}

/** Known part of a cost where prices are missing. */
export interface KnownCost {
  /** Cost of the ingredients with a price. */
  readonly cost: Cost;
  /** Names of the others, each once. */
  readonly unpriced: readonly string[];
}

/**
 * Cost of those ingredients that have a price or a pack, a lower bound of the whole cost, and the names of the others.
 *
 * @throws InputError for numbers outside their range
 */
export function knownCost(
  lines: readonly RecipeLine[],
  packs: Readonly<Record<string, Pack>> = {},
): KnownCost {
  expectLines(lines);
  const isPriced = ({ingredient: {name, price}}: RecipeLine) =>
    price !== undefined || Object.hasOwn(packs, name);
  const unpriced = lines.filter((line) => !isPriced(line)).map(({ingredient}) => ingredient.name);
  return {cost: costOf(lines.filter(isPriced), packs), unpriced: [...new Set(unpriced)]};
}

/**
 * Cost of a product per kg, per litre at its overrun, per tub and per portion. Water and losses that cooking drives off are paid for too.
 *
 * @throws InputError as {@link costOf}, and for a batch, tub or portion that is not above 0, or an impossible overrun
 *
 * @example
 * ```ts
 * const milk = {...findIngredient(includedPantry(), "whole milk"), price: 1.05};
 * const product = makeProduct("milk ice", [
 *   baseComponent({name: "milk ice", lines: [{ingredient: milk, grams: 1000}]}),
 * ]);
 * productCost(product, {grams: 1000, overrun: 30, tubMillilitres: 500, portionMillilitres: 60}).perTub; // => 0.42
 * ```
 */
export function productCost(
  product: Product,
  selling: Selling,
  packs: Readonly<Record<string, Pack>> = {},
): ProductCost {
  expectOptions(selling, ["grams", "overrun", "tubMillilitres", "portionMillilitres"], "selling");
  const grams = finite(selling.grams, "grams", {min: 1}, "g");
  const cost = costOf(productLines(product, grams), packs);
  const perMillilitre = (cost.total / grams) * productDensity(product, selling.overrun);
  return {
    ...cost,
    perKilogram: (1000 * cost.total) / grams,
    perLitre: 1000 * perMillilitre,
    perTub: perMillilitre * finite(selling.tubMillilitres, "tubMillilitres", {min: 1}, "ml"),
    perPortion: perMillilitre * finite(selling.portionMillilitres, "portionMillilitres", {min: 1}, "ml"),
  };
}

/**
 * Selling price for a wanted margin: cost / (1 - margin), and sales tax on top.
 *
 * Margin is the share of the price before tax that is not cost (a margin of 60 % leaves 2 of a price of 5 for the cost).
 *
 * @param cost money for what is sold
 * @param margin % of the price before tax, 0 to 99
 * @param tax sales tax in % of the price before tax, 0 (default) to 100
 * @throws InputError for numbers outside these ranges
 *
 * @example
 * ```ts
 * priceForMargin(1.2, 60, 20); // => 3.6
 * ```
 */
export function priceForMargin(cost: number, margin: number, tax = 0): number {
  finite(cost, "cost", {min: 0});
  finite(margin, "margin", {min: 0, max: 99}, "%");
  return (cost / (1 - margin / 100)) * (1 + finite(tax, "tax", {min: 0, max: 100}, "%") / 100);
}

/** Cost of all lines of one ingredient. */
function costLine(name: string, lines: readonly RecipeLine[], pack: Pack | undefined): CostLine {
  const grams = sum(lines.map((line) => line.grams));
  if (pack === undefined) return {ingredient: name, grams, cost: sum(lines.map(byWeight))};
  expectShape(pack, {grams: "number", price: "number"}, "pack", "give {grams, price} of one pack");
  const size = finite(pack.grams, `${name}: pack`, {min: 0.1}, "g");
  const price = finite(pack.price, `${name}: pack price`, {min: 0});
  const stock = finite(pack.stock ?? 0, `${name}: stock`, {min: 0}, "g");
  const opened = Math.max(0, Math.ceil((grams - stock) / size - 1e-9));
  return {
    ingredient: name,
    grams,
    cost: (grams * price) / size,
    packs: opened,
    outlay: opened * price,
    leftover: stock + opened * size - grams,
  };
}

/** Money for the grams of a line by its ingredient's price per kg. */
function byWeight({ingredient: {name, price}, grams}: RecipeLine): number {
  if (price === undefined)
    throw new InputError(name, "no price", undefined, "give its price per kg, or a pack with its price");
  return (grams * finite(price, `${name}: price`, {min: 0}, "per kg")) / 1000;
}
