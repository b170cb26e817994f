// The main entry, `mixwright`: a brief, a pantry, a balanced mix. What is public stands here and in the entries beside it, each name in one
// of them; nothing else is promised to stay.

export {InputError, type InputErrorCode, type InputErrorData, type InputErrorDetails} from "./core/errors.ts";
export type {Limits} from "./core/numbers.ts";
export {ALLERGENS, GRADES, type Allergen, type Grade, type Ingredient} from "./pantry/ingredient.ts";
export type {NutrientKey, Nutrients, SaidNutrient} from "./pantry/nutrient-keys.ts";
export {type Composition, type Part, PARTS} from "./pantry/parts.ts";
export {DERIVED, type Derived, QUANTITIES, type Quantity, quantityOf} from "./pantry/quantities.ts";
export {readComposition} from "./pantry/composition.ts";
export {mixComposition, type Portion} from "./pantry/mix.ts";
export {type Recipe, recipeComposition, type RecipeLine, recipeMass} from "./pantry/recipe.ts";
export {findIngredient, type Pantry, pantryOf} from "./pantry/pantry.ts";
export {includedPantry} from "./pantry/included.ts";
export {type Dose, type DoseOver, DOSES, dosesOver} from "./pantry/doses.ts";
export {type ShelfEntry, stockedPantry} from "./pantry/stocked.ts";
export {
  fromLabel,
  INGREDIENT_CLASSES,
  type IngredientClass,
  type LabelledIngredient,
} from "./pantry/from-label.ts";
export type {Label} from "./pantry/read-label.ts";
export {balance, balanceSteps, type BalanceOptions} from "./balance/balance.ts";
export type {AmountsInput} from "./balance/mix/amounts.ts";
export type {
  AimInput,
  AtInput,
  BriefInput,
  CompositionInput,
  IngredientInput,
  LabelInput,
  LimitsInput,
  SpreadInput,
  SwingInput,
  TargetsInput,
} from "./balance/brief/brief-input.ts";
export type {TimeOptions} from "./lp/program/deadline.ts";
export {type IngredientPrice, type LimitPrice, type Prices, pricesOf} from "./balance/explain/prices.ts";
export {readBrief} from "./balance/read/read-brief.ts";
export type {BriefSource} from "./balance/read/brief-of.ts";
export {recipeOf} from "./balance/mix/recipe-of.ts";
export type {RecipeSource} from "./balance/mix/recipe-of.ts";
export type {RuleReference} from "./balance/program/row-origin.ts";
export type {Solution} from "./balance/mix/solve-brief.ts";
export {type ChunkOptions, inChunks, type Progress, type Steps, type Stoppable} from "./core/in-chunks.ts";
export type {OpenedPacks} from "./balance/program/packs.ts";
export {type Missed, weighable, type WeighableMix, type WeighOptions} from "./balance/weigh/weighable.ts";
export {
  reliability,
  type Reliability,
  type SimulationOptions,
  type TargetReliability,
} from "./balance/weigh/reliability.ts";
export {withRelaxations} from "./balance/explain/with-relaxations.ts";
export type {Aim, Brief, Choice, DoseLimit, Spread, Target} from "./balance/brief/brief.ts";
export type {Subject} from "./balance/measure/measures.ts";
export type {
  Amount,
  Answer,
  Balanced,
  Binding,
  Conflict,
  ConflictingLimit,
  LimitReference,
  LimitSide,
  MixReport,
  Objective,
  Relaxation,
} from "./balance/mix/answer.ts";
export {textReport} from "./io/report/report.ts";
export {type FlavourKind, flavoursOf} from "./kitchen/begin/flavours.ts";
export {startingBrief, startingLimits, type StartingOptions} from "./kitchen/begin/starting-brief.ts";
export {STARTING_KEYS, type StartingKey} from "./kitchen/begin/starting-keys.ts";
export {STARTING_POINTS, type StartingPoint} from "./kitchen/begin/starting-points.ts";
export type {StartingRow, StartingSubject} from "./kitchen/begin/starting-row.ts";
