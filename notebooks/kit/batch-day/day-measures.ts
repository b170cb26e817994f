import type {SheetMeasure} from "../../../lib/kitchen/day/batch-sheet.ts";
import {isCounted} from "../../../lib/kitchen/size/counted.ts";
import {measuresOf} from "../../../lib/kitchen/size/measures.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {RecipeLine} from "../../../lib/pantry/recipe.ts";

/** Kitchen measures by how many of each one still counts. */
const COUNTED: readonly (readonly [unit: string, least: number, most: number])[] = [
  ["teaspoon", 0.4, 6],
  ["tablespoon", 1.5, 8],
  ["ml", 30, Infinity],
  ["cup", 0.25, 20],
];

/** Kitchen measures of an ingredient, g each. */
export type Measures = ReadonlyMap<string, readonly SheetMeasure[]>;

/** The kitchen measures of every ingredient that is not counted. */
export async function measuresFor(shelf: readonly Ingredient[]): Promise<Measures> {
  const measures = new Map<string, readonly SheetMeasure[]>();
  for (const ingredient of shelf) {
    if (isCounted(ingredient)) continue;
    const found = await measuresOf(ingredient, 1000);
    measures.set(
      ingredient.name,
      found.map(({amount, unit}) => ({unit, grams: 1000 / amount})),
    );
  }
  return measures;
}

/** The handiest measure for so much of each: spoons for little, ml for what is poured, cups for the rest. */
export function handiest(lines: readonly RecipeLine[], measures: Measures): Record<string, SheetMeasure> {
  return Object.fromEntries(
    lines.flatMap(({ingredient: {name}, grams}) => {
      const handy = COUNTED.flatMap(([unit, least, most]) => {
        const one = measures.get(name)?.find((measure) => measure.unit === unit);
        return one && grams / one.grams >= least && grams / one.grams <= most ? [one] : [];
      });
      return handy[0] ? [[name, handy[0]]] : [];
    }),
  );
}
