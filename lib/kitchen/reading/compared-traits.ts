import {decimal} from "../../core/format.ts";
import {scoopsClause} from "../size/scoop-words.ts";
import {firmness, firmnessReference} from "../../freezing/firmness.ts";
import {type SimilarityTrait, SUBSTITUTION_WEIGHTS} from "../../balance/substitute/similarity-traits.ts";
import {type Quantity, quantityIn} from "../../pantry/quantities.ts";
import type {RecipeDescription} from "./describe-recipe.ts";

/** A trait in which recipes are compared: its value, and the words for more of it. */
export interface ComparedTrait {
  readonly key: SimilarityTrait;
  /** As a noun, for sentences on traits that are alike. */
  readonly name: string;
  readonly more: string;
  readonly most: string;
  /** Its value; `undefined` where it is not known. */
  readonly value: (described: RecipeDescription) => number | undefined;
  /** Words for the value, to be written behind a colon. */
  readonly said: (described: RecipeDescription) => string;
  /** Score of a difference of one unit; a score of 1 may just be noticed. */
  readonly counts: number;
}

/** Most that two costs may differ by and still be alike, % of the lower (common practice, no source). */
const SAME_COST = 2;

/** The traits in which recipes are compared; the weights are those of `substitute`. */
export const COMPARED: readonly ComparedTrait[] = [
  {
    key: "firmness",
    name: "firmness",
    more: "firmer",
    most: "firmest",
    value: ({composition, scoop: {freezer, overrun}}) =>
      firmness(composition, freezer) - firmnessReference(overrun),
    said: ({scoop}) => (scoop.temperature === undefined ? "never hardens" : scoopsClause(scoop)),
    counts: SUBSTITUTION_WEIGHTS.firmness,
  },
  quantity("sweetness", "sweetness", ["sweeter", "sweetest"], (value) => `${value} (sugar = 100)`),
  quantity("fat", "fat", ["richer in fat", "richest in fat"], (value) => `${value} %`),
  quantity("totalSolids", "total solids", ["denser", "densest"], (value) => `${value} % solids`),
  quantity("protein", "protein", ["higher in protein", "highest in protein"], (value) => `${value} %`),
  quantity("lactose", "lactose", ["higher in lactose", "highest in lactose"], (value) => `${value} %`),
  quantity(
    "eggYolkSolids",
    "egg yolk",
    ["richer in yolk", "richest in yolk"],
    (value) => `${value} % yolk solids`,
  ),
  quantity("alcohol", "alcohol", ["stronger", "strongest"], (value) => `${value} % alcohol`),
  quantity(
    "polyols",
    "sugar alcohols",
    ["higher in sugar alcohols", "highest in sugar alcohols"],
    (value) => `${value} %`,
  ),
  quantity("salt", "salt", ["saltier", "saltiest"], (value) => `${value} % added salt`, 2),
  quantity("organicAcids", "fruit acids", ["sourer", "sourest"], (value) => `${value} % acids`),
  {
    key: "cost",
    name: "cost",
    more: "dearer",
    most: "dearest",
    value: perKilogram,
    said: (described) => `${decimal(perKilogram(described) ?? 0, 2)} a kilogram`,
    counts: SUBSTITUTION_WEIGHTS.cost,
  },
];

function quantity(
  key: Quantity & SimilarityTrait,
  name: string,
  [more, most]: readonly [string, string],
  said: (value: string) => string,
  digits = 1,
): ComparedTrait {
  const value = ({composition}: RecipeDescription) => quantityIn(composition, key);
  return {
    key,
    name,
    more,
    most,
    value,
    said: (described) => {
      const written = decimal(value(described), digits);
      return Number(written) === 0 ? "none" : said(written);
    },
    counts: SUBSTITUTION_WEIGHTS[key],
  };
}

function perKilogram({cost, batch}: RecipeDescription): number | undefined {
  return cost === undefined ? undefined : (1000 * cost) / batch;
}

/** Score of the difference of recipes in a trait: 1 may just be noticed; `undefined` where a value is not known. */
export function difference(trait: ComparedTrait, all: readonly RecipeDescription[]): number | undefined {
  const values = all.flatMap((one) => trait.value(one) ?? []);
  if (values.length < all.length) return undefined;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const counts = (high - low) * trait.counts;
  if (trait.key !== "cost") return counts;
  return high - low > (SAME_COST / 100) * low ? Math.max(1, counts) : 0;
}
