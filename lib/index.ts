// The public names of the library, floor by floor. Nothing else is promised to stay.

export {InputError} from "./core/errors.ts";

export {ALLERGENS, GRADES, type Allergen, type Grade, type Ingredient} from "./pantry/ingredient.ts";
export {type Composition, type Part, PARTS} from "./pantry/parts.ts";
export {DERIVED, type Derived, QUANTITIES, type Quantity, quantityOf} from "./pantry/quantities.ts";
export {readComposition} from "./pantry/composition.ts";
export {mixComposition, type Portion} from "./pantry/mix.ts";
export {type Recipe, recipeComposition, type RecipeLine, recipeMass} from "./pantry/recipe.ts";
export {findIngredient, type Pantry, pantryOf} from "./pantry/pantry.ts";
export {type ShelfEntry, stockedPantry} from "./pantry/stocked.ts";
export {
  fromLabel,
  INGREDIENT_CLASSES,
  type IngredientClass,
  type LabelledIngredient,
} from "./pantry/from-label.ts";
export type {Label} from "./pantry/read-label.ts";

export {type CurvePoint, type CurveRange, freezingCurve} from "./freezing/curve.ts";
export {frozenShare, ice, initialFreezingPoint} from "./freezing/ice.ts";
export {solidFat} from "./freezing/solid-fat.ts";
export {scoopTemperature, type ScoopTemperature, type Verdict, verdictAt} from "./freezing/scoop.ts";

export type {LinearProgram, Outcome, Row, Variable} from "./lp/program.ts";
export {solve} from "./lp/solve.ts";

export {balance, type BalanceOptions} from "./balance/balance.ts";
export type {
  AtInput,
  BriefInput,
  IngredientInput,
  LimitsInput,
  SwingInput,
  TargetsInput,
} from "./balance/brief-schema.ts";
export {type IngredientPrice, type LimitPrice, type Prices, pricesOf} from "./balance/prices.ts";
export {readBrief} from "./balance/read-brief.ts";
export type {Aim, Brief, Choice, Target} from "./balance/brief.ts";
export type {Subject} from "./balance/subject.ts";
export type {
  Amount,
  Answer,
  Balanced,
  Binding,
  Conflict,
  ConflictingLimit,
  MixReport,
  Relaxation,
} from "./balance/answer.ts";

export {readPantryCsv} from "./io/pantry-csv.ts";
export {readPricesCsv} from "./io/prices-csv.ts";
export {pantryJson, readIngredient, readPantryJson} from "./io/ingredient-json.ts";
export {readRecipe, readRecipeJson, recipeJson, type RecipeInput} from "./io/recipe-json.ts";
export {readRecipeCsv, recipeCsv} from "./io/recipe-csv.ts";
export {recipeHtml, recipeMarkdown} from "./io/recipe-out.ts";
export {answerCsv, answerHtml, answerJson, answerMarkdown} from "./io/answer-out.ts";
export {type CurvePicture, freezingCurveSvg} from "./io/curve-svg.ts";
