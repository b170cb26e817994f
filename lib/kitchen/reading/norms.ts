import {tenth} from "../../core/format.ts";
import {sum} from "../../core/numbers.ts";
import {initialFreezingPoint} from "../../freezing/ice.ts";
import {scoopTemperature} from "../../freezing/scoop.ts";
import type {FirmnessOptions} from "../../freezing/firmness.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../pantry/recipe.ts";
import type {KindName} from "./kind-names.ts";
import {NORM_TABLE} from "./norm-table.ts";
import type {NormProperty, NormRow} from "./norm-row.ts";

/** A norm of a recipe's kind, with the recipe's own value and place. */
export interface Norm extends NormRow {
  /** Value of the recipe, in the norm's unit; absent where it has none, such as a scoop temperature. */
  readonly value?: number;
  /** Compared to a tenth, as it is printed; of a temperature, `below` is colder. */
  readonly lies: "below" | "within" | "above" | "none";
}

/**
 * The norms of a kind of frozen dessert, from laws, codes and textbooks, failing those from trade pages, and else as common practice;
 * each with the place of a recipe in it; none on a scoop temperature that is not known.
 *
 * @param tub its overrun, %, and the kitchen's calibration
 */
export function normsOf(recipe: Recipe, kind: KindName, tub: FirmnessOptions): Norm[] {
  return NORM_TABLE.filter((row) => row.kind === kind).flatMap((row): Norm[] => {
    const value = valueOf(row.property, recipe, tub);
    if (value === "not known") return [];
    if (value === undefined) return [{...row, lies: "none"}];
    const {min = -Infinity, max = Infinity} = row;
    const lies = tenth(value) < tenth(min) ? "below" : tenth(value) > tenth(max) ? "above" : "within";
    return [{...row, value, lies}];
  });
}

function valueOf(
  property: NormProperty,
  recipe: Recipe,
  tub: FirmnessOptions,
): number | "not known" | undefined {
  const composition = recipeComposition(recipe);
  switch (property) {
    case "freezingPoint":
      return initialFreezingPoint(composition);
    case "scoopTemperature": {
      const {temperature, unsure} = scoopTemperature(composition, tub);
      return unsure ? "not known" : temperature;
    }
    case "fruit":
      return shareOf(recipe, ["fruit", "juice"]);
    case "nuts":
      return shareOf(recipe, ["nut"]);
    default:
      return quantityOf(composition, property);
  }
}

/** Share of the mix that is of some groups of the shelf, %. */
function shareOf(recipe: Recipe, groups: readonly string[]): number {
  const grams = recipe.lines.map((line) => (groups.includes(line.ingredient.group ?? "") ? line.grams : 0));
  return (100 * sum(grams)) / recipeMass(recipe);
}
