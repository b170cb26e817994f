import {folded} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/**
 * Fruit that nobody eats raw, with the minutes near the boil until it is soft (common practice, no source): it is hard, starchy or too
 * sour; raw elderberries and rowanberries are unwholesome besides (from memory).
 */
const COOKING: readonly (readonly [name: RegExp, minutes: number])[] = [
  [/\b(rhubarbs?|aronia|sloes?|cooking apples?)\b/, 10],
  [/\b(gooseberr|cranberr|elderberr|chokeberr|rowanberr|rowan berr)(y|ies)\b/, 10],
  [/\b(crab ?apples?|plantains?)\b/, 20],
  [/\bsweet potato(es)?\b/, 30],
  [/\b(quinces?|cooking pears?)\b/, 40],
];

/** What comes into the kitchen cooked, dried or made sweet, and the gooseberries that are eaten raw. */
const READY =
  /\b(cooked|stewed|poached|roasted|baked|boiled|steamed|canned|tinned|jam|jelly|compote|paste|sauce|curd|syrup|cordial|candied|dried|sweetened|powder|juice|dessert|cape)\b/;

/** Groups of the shelf in which such fruit stands; one's own may have none. */
const GROUPS = new Set(["fruit", "vegetable"]);

/** Minutes near the boil that a fruit takes which nobody eats raw, unless its name says that it is cooked; `undefined` for any other. */
export function cookingMinutes({name, group = "fruit"}: Ingredient): number | undefined {
  const plain = folded(name);
  if (!GROUPS.has(group) || READY.test(plain)) return undefined;
  return COOKING.find(([names]) => names.test(plain))?.[1];
}
