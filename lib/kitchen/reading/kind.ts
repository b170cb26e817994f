import {sum} from "../../core/numbers.ts";
import {folded} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {type Quantity, quantityOf} from "../../pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../pantry/recipe.ts";
import type {KindName} from "./kind-names.ts";

/** The kind of frozen dessert that a recipe is. */
export interface Kind {
  readonly name: KindName;
  /** The reason, a sentence. */
  readonly because: string;
  /** Sentence on the kind, where it differs from a tub of ice cream. */
  readonly note?: string;
}

/** Temperature from which a mix is drawn soft instead of scooped, °C (common practice, no source). */
const DRAWN = -10;

/** Sour fruit: codes of practice ask less of it in a sorbet. */
const SOUR =
  /\b(lemon|lime|orange|grapefruit|mandarin|clementine|tangerine|citron|bergamot|yuzu|pomelo|passion|rhubarb|currants?|blackcurrants?|redcurrants?|sour cherry|cranberry)s?\b/;
const YOGHURT = /\b(yog?h?urt|skyr)s?\b/;

/** Groups whose ingredients bring fat or body that does not come from milk. */
const PLANT = new Set(["plant drink", "coconut", "fat", "nut"]);

/**
 * The kind of frozen dessert that a recipe is, by its ingredients and its composition. The lines between kinds are those of laws, codes
 * and books where there are any: 1.4 % yolk solids make a frozen custard (21 CFR 135.110), 1 to 2 % milk fat a sherbet (21 CFR 135.140),
 * more than 16 % fat is beyond the richest mixes of the University of Guelph's e-book, 11 % milk solids-not-fat below 8 % fat are those of
 * its light mixes. The others are common practice, no source.
 *
 * @param freezer °C: from -10 on it is drawn soft
 */
export function kindOf(recipe: Recipe, freezer: number): Kind {
  const composition = recipeComposition(recipe);
  const has = (quantity: Quantity) => quantityOf(composition, quantity);
  const mass = recipeMass(recipe);
  const share = (is: (ingredient: Ingredient) => boolean) =>
    (100 * sum(recipe.lines.map(({ingredient, grams}) => (is(ingredient) ? grams : 0)))) / mass;
  const inGroup = (...groups: string[]) => share(({group}) => groups.includes(group ?? ""));
  const fruit = inGroup("fruit", "juice");
  const cocoa = inGroup("cocoa");
  const milk = has("milkSolids");
  if (milk < 2) return withLittleMilk(milkWords(recipe, milk));
  const yoghurt = share(({name}) => YOGHURT.test(folded(name)));
  const [fat, msnf, yolk] = [has("fat"), has("msnf"), has("eggYolkSolids")];
  const solids = `${said(fat)} % fat and ${said(msnf)} % milk solids-not-fat`;
  if (yoghurt >= 20) return {name: "frozen yoghurt", because: `${said(yoghurt)} % of it is yoghurt.`};
  if (has("milkFat") < 3 && milk <= 8 && has("sugars") >= 18 && fruit >= 5)
    return {name: "sherbet", because: `It is fruit and sugar with ${said(milk)} % milk solids.`};
  if (has("coconutFat") + has("otherFat") > has("milkFat") && inGroup("nut") < 3)
    return {name: "vegetable-fat ice cream", because: "Most of its fat is no milk's."};
  if (freezer >= DRAWN)
    return {
      name: "soft serve",
      because: `It is served at ${said(freezer)} °C, where it is drawn and not scooped.`,
    };
  if (cocoa >= 3)
    return {name: "chocolate ice cream", because: `${said(cocoa)} % of it is cocoa or chocolate.`};
  if (inGroup("nut") >= 5)
    return {name: "nut ice cream", because: `${said(inGroup("nut"))} % of it are nuts.`};
  if (fruit >= 15) return {name: "fruit ice cream", because: `${said(fruit)} % of it is fruit.`};
  if (yolk >= 1.4) return {name: "egg custard ice cream", because: `It has ${said(yolk)} % yolk solids.`};
  if (fat > 16) return {name: "rich ice cream", because: `It has ${said(fat)} % fat.`};
  if (fat <= 8 && msnf >= 11) return {name: "light ice cream", because: `It has ${solids}.`};
  if (fat >= 8) return {name: "ice cream", because: `It has ${solids}.`};
  if (fat >= 4) return {name: "gelato", because: `It has ${solids}.`};
  return {name: "milk ice", because: `It has ${solids}.`};

  /** @param little the milk that it has, in words; absent where it has none */
  function withLittleMilk(little: string | undefined): Kind {
    const plant = share(({group = ""}) => PLANT.has(group));
    if (cocoa >= 3 && plant < 5)
      return {
        name: "chocolate sorbet",
        because: little ? `It is chocolate with ${little}.` : "It is chocolate without milk.",
      };
    if (plant >= 5 || has("fat") >= 3)
      return little
        ? {
            name: "ice cream with little milk",
            because: `It has fat or body, and ${little}.`,
          }
        : {name: "dairy-free ice cream", because: "It has fat or body, and none of it is milk's."};
    const sugars = has("sugars");
    const because = `It has ${little ?? "no milk"}, ${said(fruit)} % fruit and ${said(sugars)} % sugars.`;
    if (sugars >= 5 && sugars < (fruit >= 25 ? 18 : 20))
      return {
        name: "granita",
        because,
        note: "A granita is scraped with a fork while it freezes and eaten as crystals: hard in the freezer is as it should be.",
      };
    // A sorbet has no milk solids (Leitsätze für Speiseeis, as others quote them), a sherbet 2 to 5 % (21 CFR 135.140).
    if (milk >= COUNTED) return {name: "sherbet", because};
    if (fruit < 10) return {name: "water ice", because};
    const sour = share(isSourFruit);
    return {name: sour > fruit / 2 ? "sorbet of sour fruit" : "sorbet", because};
  }
}

/** Milk solids that do not print as none, %. */
const COUNTED = 0.05;

/** The little milk that a recipe has, in words: its solids or, without any, what declares it; `undefined` for none. */
function milkWords({lines}: Recipe, solids: number): string | undefined {
  if (solids >= COUNTED) return `little milk (${said(solids)} % milk solids)`;
  const declare = lines.filter(({ingredient, grams}) => grams > 0 && ingredient.allergens?.includes("milk"));
  if (!declare.length) return undefined;
  const names = [...new Set(declare.map(({ingredient}) => ingredient.name))];
  return names.length < 2
    ? `only the milk that ${names.join("")} declares`
    : `only the milk that ${names.slice(0, -1).join(", ")} and ${names.at(-1)} declare`;
}

/** True for a fruit or juice of which codes of practice ask less in a sorbet, by its name. */
export function isSourFruit({name, group}: Ingredient): boolean {
  return (group === "fruit" || group === "juice") && SOUR.test(folded(name));
}

function said(value: number): string {
  return String(Number(value.toFixed(1)));
}
