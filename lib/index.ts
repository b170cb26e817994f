// The public names of the library, floor by floor. Nothing else is promised to stay.

export {InputError, type InputErrorCode, type InputErrorData, type InputErrorDetails} from "./core/errors.ts";
export type {Limits} from "./core/numbers.ts";
export {inUnit, type Measure, readMeasure} from "./core/units.ts";

export {ALLERGENS, GRADES, type Allergen, type Grade, type Ingredient} from "./pantry/ingredient.ts";
export {type Composition, type Part, PARTS} from "./pantry/parts.ts";
export {DERIVED, type Derived, QUANTITIES, type Quantity, quantityOf} from "./pantry/quantities.ts";
export {readComposition} from "./pantry/composition.ts";
export {mixComposition, type Portion} from "./pantry/mix.ts";
export {type Recipe, recipeComposition, type RecipeLine, recipeMass} from "./pantry/recipe.ts";
export {findIngredient, type Pantry, pantryOf} from "./pantry/pantry.ts";
export {type Dose, type DoseOver, DOSES, dosesOver} from "./pantry/doses.ts";
export {type ShelfEntry, stockedPantry} from "./pantry/stocked.ts";
export {
  fromLabel,
  INGREDIENT_CLASSES,
  type IngredientClass,
  type LabelledIngredient,
} from "./pantry/from-label.ts";
export type {Label} from "./pantry/read-label.ts";

export {type CurvePoint, type CurveRange, freezingCurve} from "./freezing/curve.ts";
export {frozenShare, hardPhase, heatShock, ice, initialFreezingPoint} from "./freezing/ice.ts";
export {heldBy, heldWater, type Solute, SOLUTES} from "./freezing/held-water.ts";
export {iceWaterActivity} from "./freezing/water-activity.ts";
export {solidFat} from "./freezing/solid-fat.ts";
export {referenceHardPhase, type ReferenceHardPhase} from "./freezing/scoop.ts";
export {scooping, type Scooping, scoopTemperature, type ScoopTemperature} from "./freezing/scoop.ts";
export {type Verdict, verdictAt, type VerdictBand, verdictBands} from "./freezing/scoop.ts";
export {enthalpy, heatToRemove} from "./freezing/enthalpy.ts";
export {hardeningTime, temperingTime, type Tub, type TubConditions, type TubTime} from "./freezing/tub.ts";
export {type Sandiness, sandiness, type Saturation, saturations} from "./freezing/solubility.ts";
export {glassTransition} from "./freezing/glass-transition.ts";
export {
  type EquivalenceMix,
  equivalenceMix,
  sucroseEquivalenceCurve,
} from "./freezing/sucrose-equivalence.ts";
export {type Extrapolation, extrapolations, iceError, methodDifference} from "./freezing/validity.ts";

export type {Check, LinearProgram, Outcome, Place, Row, Variable} from "./lp/program.ts";
export type {Deadline} from "./lp/deadline.ts";
export {solve, solveAsync, type SolveOptions} from "./lp/solve.ts";
export {type Highs, loadHighs} from "./lp/engine-highs.ts";
export {type Conflict as ProgramConflict, irreducibleConflict} from "./lp/conflict.ts";
export type {Limit} from "./lp/limits.ts";
export {leastRelaxation, type Move, type Relaxation as ProgramRelaxation} from "./lp/relaxation.ts";
export {type CostRange, sensitivity, type Sensitivity} from "./lp/sensitivity.ts";
export type {LimitPrice as ProgramLimitPrice} from "./lp/sensitivity.ts";

export {balance, balanceSteps, type BalanceOptions} from "./balance/balance.ts";
export type {AmountsInput} from "./balance/amounts.ts";
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
} from "./balance/brief-input.ts";
export {type IngredientPrice, type LimitPrice, type Prices, pricesOf} from "./balance/prices.ts";
export {readBrief} from "./balance/read-brief.ts";
export {recipeOf} from "./balance/recipe-of.ts";
export type {Solution} from "./balance/solve-brief.ts";
export {substitute, substituteSteps} from "./balance/substitute.ts";
export type {
  Alternative,
  AmountChange,
  Broken,
  NoticedChange,
  SubstituteOptions,
  Substitution,
} from "./balance/substitution-types.ts";
export {type Noticed, NOTICED, type Weights, WEIGHTS} from "./balance/noticed.ts";
export {EQUAL_IN, equivalents, equivalentsTable} from "./balance/equivalents.ts";
export type {EqualIn, Equivalent, EquivalentRow} from "./balance/equivalents.ts";
export {type Split, splitInto} from "./balance/split.ts";
export {tradeOff, tradeOffSteps} from "./balance/trade-off.ts";
export type {FrontPoint, TradeOff, TradeOffAxes} from "./balance/trade-off-types.ts";
export type {AxisInput} from "./balance/axis.ts";
export {
  feasibleRegion,
  feasibleRegionSteps,
  type Region,
  type RegionAxes,
  type RegionPoint,
} from "./balance/feasible-region.ts";
export {type CostMap, costMap, costMapSteps, type Grid, type MapCell} from "./balance/cost-map.ts";
export {sweep, type SweepOptions, type SweepPoint, sweepSteps} from "./balance/sweep.ts";
export type {Met, Turnover} from "./balance/turnover.ts";
export type {Point} from "./balance/hull.ts";
export {type ChunkOptions, inChunks, type Progress, type Steps, type Stoppable} from "./balance/in-chunks.ts";
export type {OpenedPacks} from "./balance/packs.ts";
export {type CandidateOptions, candidatesOf} from "./balance/candidates.ts";
export {type Missed, weighable, type WeighableMix} from "./balance/weighable.ts";
export {
  reliability,
  type Reliability,
  type SimulationOptions,
  type TargetReliability,
} from "./balance/reliability.ts";
export {withRelaxations} from "./balance/with-relaxations.ts";
export type {Aim, Brief, Choice, DoseLimit, Spread, Target} from "./balance/brief.ts";
export type {Subject} from "./balance/subject.ts";
export type {
  Amount,
  Answer,
  Balanced,
  Binding,
  Conflict,
  ConflictingLimit,
  LimitSide,
  MixReport,
  Objective,
  Relaxation,
} from "./balance/answer.ts";

export {brix, solubleSolids} from "./kitchen/brix.ts";
export {cookDown, type Cooked, type CookOptions, type CookTo, type Sieved} from "./kitchen/cook.ts";
export {invert} from "./kitchen/inversion.ts";
export {
  boilingPoint,
  brixOfRefractiveIndex,
  sucroseDensity,
  sucroseRefractiveIndex,
} from "./kitchen/sucrose.ts";
export {planRipple} from "./kitchen/ripple.ts";
export type {
  AtTemperature,
  RippleBrief,
  RippleIngredient,
  RippleMade,
  RippleMiss,
  RipplePlan,
} from "./kitchen/ripple-brief.ts";
export {type FrozenSide, rippleInBase, type RippleInBase} from "./kitchen/ripple-in-base.ts";
export {
  baseComponent,
  type Component,
  makeProduct,
  type Product,
  productAllergens,
  productComposition,
  productDensity,
  productLines,
  rippleComponent,
} from "./kitchen/product.ts";
export {
  equalRuns,
  gramsForTubs,
  type Machine,
  mixGrams,
  scale,
  type Scaled,
  type ScaleTo,
  type Tubs,
} from "./kitchen/scale.ts";
export {type ScaledProduct, scaleProduct} from "./kitchen/scale-product.ts";
export {mixDensity, mixDensityAt} from "./kitchen/density.ts";
export {finishedDensity, overrunFromWeights, type Particulates, targetWeight} from "./kitchen/overrun.ts";
export {gramsOf, type KitchenMeasure, measuresOf} from "./kitchen/measures.ts";
export {baseProcess, type Making, WAYS_OF_MAKING} from "./kitchen/base-process.ts";
export {followProcess, type ProcessReport} from "./kitchen/heat-step.ts";
export type {CoolStep, HeatStep, Item, PourStep, Process, ProcessStep} from "./kitchen/process.ts";
export type {StepReport} from "./kitchen/process-steps.ts";
export {
  checkHold,
  checkLog,
  COOLING,
  equivalentMinutes,
  HEAT_PAIRS,
  type HeatPair,
  needsReheating,
  type PairCheck,
  type Reading,
  REFREEZING_LIMIT,
} from "./kitchen/pasteurisation.ts";
export {
  coolingMinutes,
  type Day,
  type Stage,
  type TimedRun,
  timePlan,
  type TimePlan,
  usefulPower,
} from "./kitchen/time-plan.ts";
export {type Caution, cautionsFor, type CautionTopic} from "./kitchen/cautions.ts";
export {
  type Cost,
  type CostLine,
  costOf,
  type Pack,
  priceForMargin,
  productCost,
  type ProductCost,
  type Selling,
} from "./kitchen/cost.ts";
export {ENERGY_FACTORS, type Nutrition, nutritionOf} from "./kitchen/nutrition.ts";
export {nutritionLabel, type NutritionLine} from "./kitchen/nutrition-label.ts";
export {allergenWords, CEREAL_UNKNOWN, ingredientList, quidPercent} from "./kitchen/label.ts";
export type {LabelName, LabelText} from "./kitchen/label.ts";
export {
  checkStandard,
  leastMsnf,
  type Standard,
  type StandardCheck,
  STANDARD_FORCE,
  STANDARDS,
  type Standing,
} from "./kitchen/standards.ts";
export {type StandingDetails, standingOf} from "./kitchen/product-standing.ts";
export {
  batchSheet,
  type BatchSheet,
  type LogField,
  scaleProcess,
  type SheetLine,
  type SheetMeasure,
  type SheetOptions,
  type SheetSection,
} from "./kitchen/batch-sheet.ts";
export {madeSheet, type MadeSheetOptions} from "./kitchen/made-sheet.ts";

export {batchSheetCsv} from "./io/batch-sheet-csv.ts";
export {batchSheetHtml} from "./io/batch-sheet-html.ts";
export {batchSheetMarkdown} from "./io/batch-sheet-markdown.ts";
export {textReport} from "./io/report.ts";
export {readPantryCsv} from "./io/pantry-csv.ts";
export {readPricesCsv} from "./io/prices-csv.ts";
export {pantryJson, readIngredient, readPantryJson} from "./io/ingredient-json.ts";
export {readRecipe, readRecipeJson, recipeJson, type RecipeInput} from "./io/recipe-json.ts";
export {readRecipeCsv, recipeCsv} from "./io/recipe-csv.ts";
export {recipeHtml, recipeMarkdown} from "./io/recipe-out.ts";
export {answerCsv, type AnswerExtras, answerHtml, answerJson, answerMarkdown} from "./io/answer-out.ts";
export {type CurvePicture, freezingCurveSvg} from "./io/curve-svg.ts";
