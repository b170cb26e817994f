import {folded} from "../core/nearest.ts";
import {ALLERGENS, type Ingredient} from "./ingredient.ts";
import {SAID_NUTRIENTS} from "./nutrient-keys.ts";
import {nutrientIn} from "./nutrients.ts";
import {type Made, madeOf, type Numbered} from "./number-rules.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";

/** An ingredient made from the number in its name, and how far each part may be off. */
export interface NumberedIngredient {
  readonly ingredient: Ingredient;
  /** ± g per 100 g of each part that may be off by more than rounding; ± points for the dextrose equivalent. */
  readonly uncertainty: Readonly<Partial<Record<Part | "dextroseEquivalent", number>>>;
}

/** Looks an ingredient up by its exact name or alias. */
type LookUp = (name: string) => Ingredient | undefined;

/**
 * An ingredient from the number in its name, as the packs and price lists of the trade have it: `cream 45 %` by its fat, `milk 1.5 %`,
 * `dark chocolate 64 %`, `milk chocolate 38 %` and `white chocolate 30 %` by their cocoa (or as `couverture`), `cocoa powder 16 %` by
 * its fat, `glucose syrup 48 DE` or `glucose syrup 48 DE 84 %` by dextrose equivalent and solids, `sugar syrup 60 %` or `60 Brix`,
 * `raspberry purée 10 % sugar`. Nothing where no rule reads it, or the rows that it would be made of are not there.
 *
 * @param lookUp finds a row of the shelf by its name
 */
export function ingredientFromNumber(name: string, lookUp: LookUp): NumberedIngredient | undefined {
  const numbered = read(name);
  if (!numbered) return undefined;
  const made = madeOf(numbered) ?? sweetenedFruit(numbered, lookUp);
  if (!made) return undefined;
  const rows = made.of.map(([row, grams]) => ({row: lookUp(row), share: grams / 100}));
  const lines = rows.flatMap(({row, share}) => (row ? [{ingredient: row, share}] : []));
  const composition = compositionOf(lines, made.de);
  if (lines.length < rows.length || !composition) return undefined;
  const first = lines.reduce((most, line) => (line.share > most.share ? line : most));
  const nutrients = SAID_NUTRIENTS.flatMap((key) => {
    const values = lines.map(({ingredient, share}) => share * (nutrientIn(ingredient, key) ?? NaN));
    const value = Number(values.reduce((sum, one) => sum + one, 0).toPrecision(3));
    return value >= 0 ? [[key, value] as const] : [];
  });
  const allergens = ALLERGENS.filter((allergen) =>
    lines.some(({ingredient, share}) => share > 0 && ingredient.allergens?.includes(allergen)),
  );
  const {group} = made.name.includes("chocolate") ? {group: "cocoa"} : first.ingredient;
  return {
    ingredient: {
      name: made.name,
      composition,
      ...(group !== undefined && {group}),
      ...(allergens.length > 0 && {allergens}),
      nutrients: Object.fromEntries(nutrients),
      grade: "estimated",
    },
    uncertainty: made.uncertainty,
  };
}

/** The words and numbers of a name; nothing for one without a number that has a unit. */
function read(name: string): Numbered | undefined {
  let text = ` ${folded(name.slice(0, 200)).replace(/(\p{L})(?=\p{N})|(\p{N})(?=\p{L})/gu, "$1$2 ")} `;
  const take = (pattern: RegExp) => {
    const found = pattern.exec(text);
    if (found) text = text.replace(found[0], " ");
    return found ? Number(found[1] ?? found[2]) : undefined;
  };
  const de = take(/ (\d{1,2}(?:\.\d)?) de(?= )| de (\d{1,2}(?:\.\d)?)(?= )/);
  const brix = take(/ (\d{1,2}(?:\.\d)?) (?:degrees )?brix(?= )| brix (\d{1,2}(?:\.\d)?)(?= )/);
  const percent = take(/ (\d{1,2}(?:\.\d{1,2})?)%(?= )/);
  if (de === undefined && brix === undefined && percent === undefined) return undefined;
  if (/\d/.test(text)) return undefined;
  const all = text.split(" ").filter((word) => word && !["fat", "with", "of", "solids"].includes(word));
  const chocolate = all.includes("chocolate") || all.includes("couverture");
  const words = chocolate
    ? ["chocolate", ...all.filter((word) => !["chocolate", "couverture", "cocoa"].includes(word))]
    : all;
  return {
    words: words.sort().join(" "),
    ...(percent !== undefined && {percent}),
    ...(de !== undefined && {de}),
    ...(brix !== undefined && {brix}),
  };
}

/** Purée with a share of sugar: the fruit and the sugar. */
function sweetenedFruit({words, percent}: Numbered, lookUp: LookUp): Made | undefined {
  const all = words.split(" ");
  if (percent === undefined || percent > 50 || !all.includes("puree") || !all.includes("sugar"))
    return undefined;
  const fruit = lookUp(all.filter((word) => word !== "puree" && word !== "sugar").join(" "));
  if (fruit?.group !== "fruit") return undefined;
  return {
    name: `${fruit.name} purée ${percent} % sugar`,
    of: [
      [fruit.name, 100 - percent],
      ["sucrose", percent],
    ],
    uncertainty: {sucrose: 1.5, dextrose: 1, fructose: 1, water: 3},
  };
}

/** The mean of compositions by their shares; nothing where a part would be less than none. */
function compositionOf(
  lines: readonly {readonly ingredient: Ingredient; readonly share: number}[],
  de: number | undefined,
): Composition | undefined {
  const parts: Partial<Record<Part, number>> = {};
  for (const part of PARTS) {
    const grams = lines.reduce(
      (sum, {ingredient, share}) => sum + share * (ingredient.composition[part] ?? 0),
      0,
    );
    const rounded = Number(grams.toFixed(4));
    if (rounded < -0.05) return undefined;
    if (rounded > 0) parts[part] = rounded;
  }
  return de === undefined ? parts : {...parts, dextroseEquivalent: de};
}
