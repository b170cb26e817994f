import {ownFirst} from "../../../lib/io/csv/own-first.ts";
import type {Pack} from "../../../lib/kitchen/product/cost.ts";
import {includedPantry} from "../../../lib/pantry/included.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {ingredientsNamed, nameKey, type Pantry, pantryOf} from "../../../lib/pantry/pantry.ts";
import {type ShelfEntry, stockedPantry} from "../../../lib/pantry/stocked.ts";
import {type DrawerName, keeping} from "./database.ts";
import {type Own, readOwn} from "./own-ingredients.ts";
import {perKilogram, readShelf, type ShelfLine} from "./shelf.ts";

/** Ingredients to cook with: the included ones and the cook's own. */
export interface Kitchen {
  /** All of it without a price. */
  readonly foods: Pantry;
  /** All that can be bought, at the cook's prices, else at those of the page; what the cook has is no limit. */
  readonly pantry: Pantry;
  /** The same with how much of it the cook has. */
  readonly stocked: Pantry;
  /** Ingredients that the cook has, and water. */
  readonly owned: readonly Ingredient[];
  /** Names whose price the cook has set. */
  readonly priced: ReadonlySet<string>;
  /** The packs that those prices are for, by name. */
  readonly packs: Readonly<Record<string, Pack>>;
}

/** Parts that make a kitchen. */
interface KitchenParts {
  readonly lines: readonly ShelfLine[];
  readonly own: readonly Own[];
  /** Prices and stock of the page's own, where the cook says none. */
  readonly prices?: readonly ShelfEntry[];
}

/** A kitchen of these parts. A line whose ingredient is not known is left out. */
export function kitchenOf({lines, own, prices = []}: KitchenParts): Kitchen {
  // Of two whose names differ in nothing that counts, the last one kept holds.
  const once = new Map(own.map(({ingredient}) => [nameKey(ingredient.name), ingredient]));
  const all = own.length
    ? pantryOf(ownFirst([...once.values()], includedPantry().ingredients))
    : includedPantry();
  const demonstrated = prices.length ? stockedPantry(all, prices) : all;
  const known = new Map<string, ShelfLine>();
  for (const line of lines) {
    const [found, another] = ingredientsNamed(demonstrated, line.name);
    if (found && !another) known.set(found.name, line);
  }
  const water = demonstrated.ingredients.filter(({name}) => name === "water");
  if (!known.size)
    return {
      foods: all,
      pantry: demonstrated,
      stocked: demonstrated,
      owned: water,
      priced: new Set(),
      packs: {},
    };
  const entries = [...known].map(([name, {price}]): ShelfEntry => ({
    name,
    ...(price && {price: perKilogram(price)}),
    place: "my shelf",
  }));
  const bought = stockedPantry(demonstrated, entries).ingredients.map((one) => {
    if (!known.has(one.name)) return one;
    const {stock: _, ...rest} = one;
    return rest;
  });
  const stocked = bought.map((one): Ingredient => {
    const {out, have} = known.get(one.name) ?? {};
    return out ? {...one, stock: 0} : have ? {...one, stock: have.grams} : one;
  });
  const there = stocked.filter(({name}) => known.has(name) && !known.get(name)!.out);
  const packs = [...known].flatMap(([name, {price, have, out}]) => {
    const stock = out ? 0 : have?.grams;
    return price
      ? [[name, {price: price.money, grams: price.grams, ...(stock !== undefined && {stock})}] as const]
      : [];
  });
  return {
    foods: all,
    pantry: pantryOf(bought),
    stocked: pantryOf(stocked),
    owned: known.has("water") ? there : [...water, ...there],
    priced: new Set(packs.map(([name]) => name)),
    packs: Object.fromEntries(packs),
  };
}

/** The cook's kitchen as the browser keeps it. */
export async function readKitchen(prices?: readonly ShelfEntry[]): Promise<Kitchen> {
  const [lines, own] = await Promise.all([readShelf(), readOwn()]);
  return kitchenOf({lines, own, ...(prices && {prices})});
}

/** Drawers that a kitchen is made of. */
const OF_KITCHEN: readonly DrawerName[] = ["shelf", "ingredients"];

/** The same for a page that shows it: when another tab changes the shelf, the page starts again from its address. */
export async function openKitchen(prices?: readonly ShelfEntry[]): Promise<Kitchen> {
  (await keeping()).follow(({drawer, elsewhere}) => {
    if (elsewhere && OF_KITCHEN.includes(drawer)) startAgain();
  });
  // A page that comes back as it was left has heard nothing meanwhile.
  addEventListener("pageshow", ({persisted}) => persisted && startAgain());
  return readKitchen(prices);
}

let timer: ReturnType<typeof setTimeout> | undefined;

/** Once the other tab has written all of it, and the address has all of this page. */
function startAgain(): void {
  clearTimeout(timer);
  timer = setTimeout(() => location.reload(), 400);
}
