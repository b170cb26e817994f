import {balance} from "../../../lib/balance/balance.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {recipeOf} from "../../../lib/balance/mix/recipe-of.ts";
import {weighable} from "../../../lib/balance/weigh/weighable.ts";
import {startingBrief} from "../../../lib/kitchen/begin/starting-brief.ts";
import type {StartingPoint} from "../../../lib/kitchen/begin/starting-points.ts";
import {describeRecipe, type RecipeDescription} from "../../../lib/kitchen/reading/describe-recipe.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type Attempt, attempt, Mistake} from "../words/mistakes.ts";

/** The cook's choices on the page. */
export interface BeginWish {
  readonly point: StartingPoint;
  readonly flavour: string | undefined;
  /** g */
  readonly grams: number;
  /** °C */
  readonly freezer: number;
}

/** Content of the page: a recipe that a scale can weigh, and its description. */
export interface BeginScene {
  readonly point: StartingPoint;
  readonly brief: BriefInput;
  readonly description: RecipeDescription;
  /** Whole eggs and yolks, by name. */
  readonly counts: Readonly<Record<string, number>>;
}

/** The balanced recipe of a starting point; in words why there is none. */
export function beginScene({point, flavour, grams, freezer}: BeginWish, pantry: Pantry): Attempt<BeginScene> {
  return attempt(() => {
    const brief = startingBrief(point.key, pantry, {grams, freezer, ...(flavour !== undefined && {flavour})});
    const answer = balance(brief, {pantry, candidates: false});
    if (answer.status !== "optimal")
      throw new Mistake(
        `${brief.name}: no mix of what your pantry has keeps its limits. Press “Change its targets” to see which are in the way.`,
      );
    const {amounts, counts} = weighable(answer, answer.amounts);
    return {point, brief, description: describeRecipe(recipeOf(answer, amounts), {freezer}), counts};
  });
}
