import type {Caution} from "../../../lib/kitchen/safety/caution.ts";
import {isCounted} from "../../../lib/kitchen/size/counted.ts";
import {baseComponent, makeProduct, type Product} from "../../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Kitchen} from "../keep/kitchen.ts";
import {attempt} from "../words/mistakes.ts";
import {promised, type Promised} from "../words/promise.ts";
import {type Asked, readRecipeText, type TypedRecipe} from "../words/recipe-text.ts";
import {tubProduct} from "../page/tub-product.ts";
import type {UnitBoxes} from "../controls/unit-boxes.ts";

/** Texts that the cook has typed for a day. */
interface DayText {
  readonly base: string;
  readonly pot: string;
  /** g of the cooked ripple. */
  readonly cooked: number;
  /** % of the fruit. */
  readonly sieve: number;
  /** % of the sucrose. */
  readonly split: number;
  /** % of the tub. */
  readonly share: number;
  readonly name: string;
  readonly promise: string;
  readonly units: UnitBoxes;
}

/** That, read as far as it can be. */
export interface TypedDay extends Pick<TypedRecipe, "packs" | "own" | "asked" | "called"> {
  readonly product: Product;
  readonly promise: Promised;
  /** Mistakes to correct before there is a whole product. */
  readonly trouble: readonly string[];
  /** Cautions about lines that are left out. */
  readonly unknown: readonly Caution[];
  /** Whether nothing of the base can be read: there is nothing to scale or heat. */
  readonly unread: boolean;
  /** Whether a line is left out, or the ripple: then there is no sheet to work by. */
  readonly waiting: boolean;
}

/** Stands in while no line of the base can be read, so that the rest of the page stands. */
const NOTHING: Ingredient = {name: "base not read yet", composition: {water: 100}};

/** Reads base and ripple line by line, and asks about what it cannot read; shows a box for each thing that is counted. */
export async function readDay(typed: DayText, kitchen: Kitchen): Promise<TypedDay> {
  const {units, cooked, sieve, split, share} = typed;
  const weighed = (ingredient: Ingredient) => {
    const one = ingredient.unit === undefined ? undefined : units.value.get(ingredient.name);
    return one === undefined ? ingredient : {...ingredient, unit: one};
  };
  const base = await readRecipeText(typed.base, kitchen.stocked, kitchen, weighed);
  const pot = await readRecipeText(typed.pot, kitchen.stocked, kitchen, weighed);
  const ingredients = [...base.lines, ...pot.lines].map(({ingredient}) => ingredient);
  units.show([...base.counted, ...pot.counted, ...ingredients.filter(isCounted)]);
  const name = typed.name.trim() || "Ice cream";
  const lines = base.lines.length ? base.lines : [{ingredient: NOTHING, grams: 1000}];
  const parts = {name, base: lines, cookedGrams: cooked, sievedPercent: sieve, splitPercent: split, share};
  const whole = attempt(() => tubProduct({...parts, pot: pot.lines}));
  const product = "value" in whole ? whole.value : makeProduct(name, [baseComponent({name: "Base", lines})]);
  const asked = [...base.asked, ...pot.asked];
  const leftOut = asked.filter((one) => one.leftOut);
  const empty = base.lines.length === 0 && base.asked.length === 0;
  const trouble = [
    ...("mistake" in whole ? [whole.mistake] : []),
    ...(empty ? ["The base is empty: write one ingredient a line, as in “500 g whole milk”."] : []),
  ];
  return {
    product,
    promise: promised(typed.promise, product),
    packs: {...base.packs, ...pot.packs},
    own: new Set([...base.own, ...pot.own]),
    asked,
    called: {...base.called, ...pot.called},
    trouble,
    unread: base.lines.length === 0,
    unknown: unknownCautions(leftOut, "mistake" in whole ? pot : undefined),
    waiting: leftOut.length > 0 || trouble.length > 0,
  };
}

/** Allergens of what is left out, as far as they are known. */
function unknownCautions(leftOut: readonly Asked[], pot: TypedRecipe | undefined): Caution[] {
  const known = [
    ...leftOut.flatMap(({ingredient}) => (ingredient ? [ingredient] : [])),
    ...(pot?.lines ?? []).map(({ingredient}) => ingredient),
  ];
  const allergens = [...new Set(known.flatMap((ingredient) => ingredient.allergens ?? []))];
  if (!known.length && !leftOut.length) return [];
  const strange = leftOut.some(({ingredient}) => !ingredient);
  const text = [
    allergens.length ? `What is left out above contains ${allergens.join(", ")}.` : "",
    strange ? "Of lines that are not understood no allergen is known: read the packs." : "",
  ];
  return text.some(Boolean) ? [{topic: "allergens", text: text.filter(Boolean).join(" ")}] : [];
}
