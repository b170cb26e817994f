import {InputError} from "../../../lib/core/errors.ts";
import type {Caution} from "../../../lib/kitchen/safety/caution.ts";
import {cautionsFor} from "../../../lib/kitchen/safety/cautions.ts";
import type {Product} from "../../../lib/kitchen/product/product.ts";
import {planRipple} from "../../../lib/kitchen/ripple/ripple.ts";
import type {RippleMade, RippleMiss, RipplePlan} from "../../../lib/kitchen/ripple/ripple-brief.ts";
import {rippleInBase, type RippleInBase} from "../../../lib/kitchen/ripple/ripple-in-base.ts";
import {findIngredient, type Pantry} from "../../../lib/pantry/pantry.ts";
import {recipeComposition} from "../../../lib/pantry/recipe.ts";
import {type Attempt, attempt, Mistake, mistakeOf} from "../words/mistakes.ts";
import {type Money, moneyOf} from "../words/money.ts";
import {onwardAddress} from "../page/onward.ts";
import {promised, type Promised} from "../words/promise.ts";
import type {TypedRecipe} from "../words/recipe-text.ts";
import {gramsOf, rippleBrief, type RippleWish} from "../views/ripple-pot.ts";
import {ALWAYS} from "../views/selling.ts";
import {isFruit, tubProduct} from "../page/tub-product.ts";

/** Data of a ripple that can be made, for the words. */
export interface RippleScene extends RippleMade {
  readonly behaviour: RippleInBase;
  /** °C. */
  readonly freezer: number;
  /** Targets that even the nearest ripple misses. */
  readonly misses: readonly RippleMiss[];
}

/** Question of the page, and the tub that the ripple goes into. */
export interface TubWish {
  readonly wish: RippleWish;
  readonly base: TypedRecipe;
  /** As typed. */
  readonly baseText: string;
  readonly named: string;
  /** g per 100 g of the tub. */
  readonly share: number;
  /** % */
  readonly overrun: number;
  /** ml */
  readonly tub: number;
  /** ml */
  readonly portion: number;
  /** Names whose price the cook has set on the shelf. */
  readonly shelved: ReadonlySet<string>;
}

/** A ripple planned and put into its tub: each part by itself, so that a gap costs only what depends on it. */
export interface PlannedTub {
  readonly plan: RipplePlan;
  readonly made: RippleMade;
  /** Behaviour in the base; a mistake where the base cannot be read. */
  readonly ripple: Attempt<RippleScene>;
  readonly product: Attempt<Product>;
  readonly money: Attempt<Money>;
  readonly promise: Promised;
  /** Names in the pot without a price, planned as if they cost what the others do on average. */
  readonly unpriced: readonly string[];
  /** Ingredients whose price is the cook's own. */
  readonly own: ReadonlySet<string>;
  readonly cautions: readonly Caution[];
  /** Address of the batch day that makes this. */
  readonly onward: string;
}

/** Plans the ripple, and puts it into the tub as far as the base can be read. */
export function planTub(asked: TubWish, pantry: Pantry): PlannedTub {
  const {wish, base, share} = asked;
  const {priced, unpriced} = withPrices(wish, pantry);
  const plan = planOnPage(priced, pantry);
  const made = plan.status === "optimal" ? plan : plan.status === "infeasible" ? plan.nearest : undefined;
  if (!made) {
    throw new Mistake(
      "The pot: the amounts do not fit together. Loosen an “at least”, an “at most” or the weight to boil down to.",
    );
  }
  const shelved = (name: string) => findIngredient(pantry, name, name).name;
  const typed = wish.ingredients.filter(({price}) => price !== undefined).map(({name}) => shelved(name));
  const own = new Set([...base.own, ...typed, ...asked.shelved]);
  const pot = made.recipe.lines.map(({ingredient, grams}) => {
    const {price: _, ...free} = ingredient;
    return {ingredient: unpriced.includes(ingredient.name) ? free : ingredient, grams};
  });
  const fruits = pot.filter(({ingredient}) => isFruit(ingredient)).map(({ingredient}) => ingredient.name);
  const parts = {
    name: [...asked.named.split(",").map((name) => name.trim()), "ice cream"].filter(Boolean).join(" "),
    base: base.lines,
    pot,
    cookedGrams: made.cooked.grams,
    sievedPercent: wish.sievedPercent,
    splitPercent: wish.splitPercent,
    share,
  };
  const product = attempt(() => {
    if (!base.lines.length)
      throw new Mistake("No line of the base can be read: write one ingredient a line.");
    return tubProduct(parts);
  });
  const whole = "value" in product ? product.value : undefined;
  const ripple = attempt((): RippleScene => {
    if ("mistake" in product) throw new Mistake(product.mistake);
    const {freezer} = wish;
    const composition = recipeComposition({name: "Base", lines: base.lines});
    const behaviour = rippleInBase(composition, made.cooked.composition, freezer, {overrun: asked.overrun});
    return {...made, behaviour, freezer, misses: plan.status === "infeasible" ? plan.misses : []};
  });
  const money = attempt(() => {
    if (!whole) throw new Mistake("");
    return moneyOf({product: whole, grams: 1000}, {...asked, packs: base.packs, own});
  });
  return {
    plan,
    made,
    ripple,
    product,
    money,
    promise: whole ? promised(asked.named, whole) : {named: [], missing: []},
    unpriced,
    own,
    cautions: whole ? cautionsFor(whole, undefined, wish.freezer) : ALWAYS,
    onward: onwardAddress(
      parts,
      {base: asked.baseText, named: asked.named.trim() || fruits.join(", "), own: new Set(typed)},
      {freezer: wish.freezer, overrun: asked.overrun, tub: asked.tub, portion: asked.portion},
    ),
  };
}

/** The wish with a stand-in price for what has none: the mean of the others', so that no gap tips the choice. */
function withPrices(wish: RippleWish, pantry: Pantry): {priced: RippleWish; unpriced: readonly string[]} {
  const entries = wish.ingredients.map((one) => {
    const shelved = findIngredient(pantry, one.name, one.name);
    return {one, name: shelved.name, price: one.price ?? shelved.price};
  });
  const known = entries.flatMap(({price}) => price ?? []);
  const mean = known.length ? known.reduce((sum, price) => sum + price, 0) / known.length : 1;
  return {
    priced: {
      ...wish,
      ingredients: entries.map(({one, price}) => (price === undefined ? {...one, price: mean} : one)),
    },
    unpriced: entries.filter(({price}) => price === undefined).map(({name}) => name),
  };
}

/** Plans the ripple; what is missing is asked for in the page's own words. */
function planOnPage(wish: RippleWish, pantry: Pantry): RipplePlan {
  const entries = wish.ingredients.map((one) => ({
    ...one,
    shelved: findIngredient(pantry, one.name, one.name),
  }));
  const fruits = entries.filter(({shelved}) => isFruit(shelved));
  if (!fruits.length) throw new Mistake("Choose a fruit: tick one under “What goes into the pot?”.");
  const sized = wish.cook === "mass" || entries.some(({min}) => (gramsOf(min) ?? 0) > 0);
  if (!sized) {
    throw new Mistake(
      `How much ripple? Give ${fruits[0]!.shelved.name} an “at least”, or boil it down to a weight.`,
    );
  }
  const limitless = wish.cook !== "mass" && entries.every(({max}) => max === undefined);
  try {
    return planRipple(rippleBrief("Ripple", wish, pantry));
  } catch (error) {
    if (error instanceof InputError && limitless && /limits how much/.test(error.problem)) {
      throw new Mistake(
        `How much ripple? Give ${fruits[0]!.shelved.name} an “at most”, or boil it down to a weight.`,
      );
    }
    throw error instanceof InputError ? new Mistake(inPotWords(mistakeOf(error))) : error;
  }
}

/** The library's places of a ripple in the page's words: `Ripple: plum: min` is “plum: at least”. */
function inPotWords(mistake: string): string {
  return mistake
    .replace(/^Ripple: /, "")
    .replace(/: min(?=:)/, ", at least")
    .replace(/: max(?=:)/, ", at most")
    .replace(/: sievedPercent(?=:)/, ", left in the sieve, %")
    .replace(/^reductionPercent\.(min|max)/, "Boiled off, of what is in the pot, %")
    .replace(/^(brix|hardPhase|firmness|fruit|sweetness)\.(min|max)/, (_, key: string, bound: string) => {
      return `${NAMES[key]}, ${bound === "min" ? "at least" : "at most"}`;
    })
    .replaceAll("`min`", "“at least”")
    .replaceAll("`max`", "“at most”")
    .replaceAll("`cookedGrams`", "the weight to boil down to");
}

const NAMES: Readonly<Record<string, string>> = {
  brix: "Strength when cooked, °Brix",
  hardPhase: "Hard phase of the ripple, %",
  firmness: "Firmness of the ripple, points",
  fruit: "Fruit in 100 g of ripple, g",
  sweetness: "Sweetness",
};
