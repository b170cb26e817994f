import {setDegrees} from "../../core/format.ts";
import {scooping, type Scooping} from "../../freezing/scoop.ts";
import {type ChangeOptions} from "../../balance/change/change-types.ts";
import {readChange} from "../../balance/change/change-problem.ts";
import {type Pulls, pullsOf} from "../../balance/change/pulls.ts";
import type {MixReport} from "../../balance/mix/answer.ts";
import {reportOf} from "../../balance/mix/mix-report.ts";
import {mixOfRecipe} from "../../balance/substitute/alternative.ts";
import {tubOf} from "../../balance/measure/tub-of.ts";
import {dosesOver, WRITTEN_DOSES} from "../../pantry/doses.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {baseComponent, makeProduct} from "../product/product.ts";
import {tasteCautions} from "../product/taste.ts";
import {cautionsFor} from "../safety/cautions.ts";
import {counterWait} from "../safety/counter-wait.ts";
import {
  type CounterWait,
  duration,
  NO_ICE,
  softWarning,
  TOO_LONG,
  whereItScoops,
} from "../size/scoop-words.ts";
import {type Kind, kindOf} from "./kind.ts";
import {type Norm, normsOf} from "./norms.ts";

/** Options of a description: the freezer and the tub. */
export type DescribeOptions = Pick<ChangeOptions, "freezer" | "overrun" | "learned">;

/** Description of a recipe. */
export interface RecipeDescription extends Pick<
  MixReport,
  "composition" | "shares" | "freezing" | "beyondDoses"
> {
  /** The recipe, one line for each ingredient. */
  readonly recipe: Recipe;
  /** g. */
  readonly batch: number;
  /** The first thing that a cook wants to know, in a sentence. */
  readonly sentence: string;
  readonly scoop: Scooping;
  /**
   * Time that a litre tub needs on a counter at 20 °C before it scoops, minutes; absent where it needs none, none helps, or it is longer
   * than a tub should stand.
   */
  readonly minutes?: number;
  /** Money for the batch; absent where a price is not known. */
  readonly cost?: number;
  /** Ingredients without a price. */
  readonly unpriced: readonly string[];
  readonly kind: Kind;
  /** Norms of its kind, with its own values. */
  readonly norms: readonly Norm[];
  /** Pulls of its ingredients. */
  readonly pulls: readonly Pulls[];
  /** Cautions, a sentence each; the last says whose code to follow. */
  readonly cautions: readonly string[];
}

/** The warmest freezer that cautions speak of, °C. */
const WARMEST = -5;

/**
 * Description of a recipe: its composition and shares, freezing and scooping, cost; its kind of frozen dessert and its place in the
 * published norms of that kind; the pulls of its ingredients; and cautions. `suggestChanges` says how to change it.
 *
 * @param options with `freezer`, °C, from -40 to below 0, -18 by default, and `overrun`, %, 0 to 200
 * @throws InputError for no recipe, one without mass, an unknown option, and a number out of range
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 620},
 *   {ingredient: findIngredient(pantry, "cream 36 %"), grams: 230},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 150},
 * ];
 * const {sentence, kind} = describeRecipe({name: "vanilla", lines});
 * [kind.name, sentence]; // => ["ice cream", "Hard at −18 °C: give it 51 minutes on the counter, or change it."]
 * ```
 */
export function describeRecipe(recipe: Recipe, options: DescribeOptions = {}): RecipeDescription {
  const problem = readChange(recipe, options);
  const {before, batch, freezer} = problem;
  const tub = tubOf(problem);
  const {amounts: _, cost, beyondDoses: _ofAMix, ...report} = reportOf(mixOfRecipe(before, problem));
  const {composition} = report;
  const over = dosesOver(before.lines, WRITTEN_DOSES);
  const scoop = scooping(composition, freezer, tub);
  const wait = counterWait(composition, scoop, tub.learned);
  const product = makeProduct(before.name, [baseComponent(before)]);
  const kind = kindOf(before, freezer);
  return {
    recipe: before,
    batch,
    sentence: firstSentence(kind, scoop, wait),
    ...report,
    ...(over.length > 0 && {beyondDoses: over}),
    scoop,
    ...(wait && !wait.tooLong && {minutes: wait.minutes}),
    ...(cost !== undefined && {cost}),
    unpriced: before.lines.flatMap(({ingredient: {name, price}}) => (price === undefined ? [name] : [])),
    kind,
    norms: normsOf(before, kind.name, tub),
    pulls: pullsOf(before, {freezer}),
    cautions: [
      ...tasteCautions(composition),
      ...cautionsFor(product, undefined, Math.min(WARMEST, freezer))
        .filter(({topic}) => topic !== "cooling")
        .map(({text}) => text),
    ],
  };
}

/** True where a temperature that is not to be trusted is two standard deviations from the freezer's: of ice in water it is known enough. */
function isFarOff({temperature, error, freezer}: Scooping): boolean {
  return temperature !== undefined && error !== undefined && Math.abs(temperature - freezer) > 2 * error;
}

/** Sentence on a tub straight from the freezer, with the next step. */
function firstSentence(kind: Kind, scoop: Scooping, wait: CounterWait | undefined): string {
  if (kind.name === "granita" && (scoop.verdict === "firm" || scoop.verdict === "hard"))
    return `Hard at ${setDegrees(scoop.freezer)}, as a granita is: scrape it with a fork while it freezes.`;
  if (scoop.unsure === "no ice") return NO_ICE;
  if (scoop.unsure && !isFarOff(scoop)) return whereItScoops(scoop);
  const at = `at ${setDegrees(scoop.freezer)}`;
  const what =
    wait && !wait.tooLong
      ? `give it ${duration(wait.minutes)} on the counter, or change it`
      : `${TOO_LONG()}; change it`;
  switch (scoop.verdict) {
    case "scoops":
      return `Scoops straight from the freezer ${at}.`;
    case "firm":
      return `Firm ${at}: ${what}.`;
    case "hard":
      return `Hard ${at}: ${what}.`;
    default:
      return softWarning(scoop)!;
  }
}
