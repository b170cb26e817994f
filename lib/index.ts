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
export type {Check, LinearProgram, Outcome, Place, Row, Variable} from "./lp/program/program.ts";
export type {Deadline} from "./lp/program/deadline.ts";
export {solve, solveAsync, type SolveOptions} from "./lp/solve/solve.ts";
export {type Highs, loadHighs} from "./lp/engines/engine-highs.ts";
export {type Conflict as ProgramConflict, irreducibleConflict} from "./lp/explain/conflict.ts";
export type {Limit} from "./lp/program/limits.ts";
export {leastRelaxation, type Move, type Relaxation as ProgramRelaxation} from "./lp/explain/relaxation.ts";
export {type CostRange, sensitivity, type Sensitivity} from "./lp/explain/sensitivity.ts";
export type {LimitPrice as ProgramLimitPrice} from "./lp/explain/sensitivity.ts";

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
export {type IngredientPrice, type LimitPrice, type Prices, pricesOf} from "./balance/explain/prices.ts";
export {readBrief} from "./balance/read/read-brief.ts";
export {recipeOf} from "./balance/mix/recipe-of.ts";
export type {Solution} from "./balance/mix/solve-brief.ts";
export {substitute, substituteSteps} from "./balance/substitute/substitute.ts";
export type {
  Alternative,
  AmountChange,
  Broken,
  NoticedChange,
  SubstituteOptions,
  Substitution,
} from "./balance/substitute/substitution-types.ts";
export {type Noticed, NOTICED, type Weights, WEIGHTS} from "./balance/substitute/noticed.ts";
export {EQUAL_IN, equivalents, equivalentsTable} from "./balance/substitute/equivalents.ts";
export type {EqualIn, Equivalent, EquivalentRow} from "./balance/substitute/equivalents.ts";
export {type Split, splitInto} from "./balance/substitute/split.ts";
export {tradeOff, tradeOffSteps} from "./balance/trade-off/trade-off.ts";
export type {FrontPoint, TradeOff, TradeOffAxes} from "./balance/trade-off/trade-off-types.ts";
export type {AxisInput} from "./balance/read/axis.ts";
export {
  feasibleRegion,
  feasibleRegionSteps,
  type Region,
  type RegionAxes,
  type RegionPoint,
} from "./balance/trade-off/feasible-region.ts";
export {type CostMap, costMap, costMapSteps, type Grid, type MapCell} from "./balance/trade-off/cost-map.ts";
export {sweep, type SweepOptions, type SweepPoint, sweepSteps} from "./balance/trade-off/sweep.ts";
export type {Met, Turnover} from "./balance/mix/turnover.ts";
export type {Point} from "./balance/trade-off/hull.ts";
export {type ChunkOptions, inChunks, type Progress, type Steps, type Stoppable} from "./core/in-chunks.ts";
export type {OpenedPacks} from "./balance/program/packs.ts";
export {type CandidateOptions, candidatesOf} from "./balance/explain/candidates.ts";
export {type Missed, weighable, type WeighableMix} from "./balance/weigh/weighable.ts";
export {
  reliability,
  type Reliability,
  type SimulationOptions,
  type TargetReliability,
} from "./balance/weigh/reliability.ts";
export {withRelaxations} from "./balance/explain/with-relaxations.ts";
export type {Aim, Brief, Choice, DoseLimit, Spread, Target} from "./balance/brief/brief.ts";
export type {Subject} from "./balance/brief/subject.ts";
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
} from "./balance/mix/answer.ts";

export {brix, solubleSolids} from "./kitchen/sugar/brix.ts";
export {cookDown, type Cooked, type CookOptions, type CookTo, type Sieved} from "./kitchen/cooking/cook.ts";
export {invert} from "./kitchen/sugar/inversion.ts";
export {
  boilingPoint,
  brixOfRefractiveIndex,
  sucroseDensity,
  sucroseRefractiveIndex,
} from "./kitchen/sugar/sucrose.ts";
export {planRipple} from "./kitchen/ripple/ripple.ts";
export type {
  AtTemperature,
  RippleBrief,
  RippleIngredient,
  RippleMade,
  RippleMiss,
  RipplePlan,
} from "./kitchen/ripple/ripple-brief.ts";
export {type FrozenSide, rippleInBase, type RippleInBase} from "./kitchen/ripple/ripple-in-base.ts";
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
} from "./kitchen/product/product.ts";
export {
  equalRuns,
  gramsForTubs,
  type Machine,
  mixGrams,
  scale,
  type Scaled,
  type ScaleTo,
  type Tubs,
} from "./kitchen/size/scale.ts";
export {type ScaledProduct, scaleProduct} from "./kitchen/product/scale-product.ts";
export {mixDensity, mixDensityAt} from "./kitchen/size/density.ts";
export {
  finishedDensity,
  overrunFromWeights,
  type Particulates,
  targetWeight,
} from "./kitchen/size/overrun.ts";
export {gramsOf, type KitchenMeasure, measuresOf} from "./kitchen/size/measures.ts";
export {baseProcess, type Making, WAYS_OF_MAKING} from "./kitchen/cooking/base-process.ts";
export {followProcess, type ProcessReport} from "./kitchen/cooking/heat-step.ts";
export type {CoolStep, HeatStep, Item, PourStep, Process, ProcessStep} from "./kitchen/cooking/process.ts";
export type {StepReport} from "./kitchen/cooking/process-steps.ts";
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
} from "./kitchen/cooking/pasteurisation.ts";
export {
  coolingMinutes,
  type Day,
  type Stage,
  type TimedRun,
  timePlan,
  type TimePlan,
  usefulPower,
} from "./kitchen/day/time-plan.ts";
export {type Caution, cautionsFor, type CautionTopic} from "./kitchen/safety/cautions.ts";
export {
  type Cost,
  type CostLine,
  costOf,
  type Pack,
  priceForMargin,
  productCost,
  type ProductCost,
  type Selling,
} from "./kitchen/product/cost.ts";
export {ENERGY_FACTORS, type Nutrition, nutritionOf} from "./kitchen/product/nutrition.ts";
export {nutritionLabel, type NutritionLine} from "./kitchen/label/nutrition-label.ts";
export {allergenWords, CEREAL_UNKNOWN, ingredientList, quidPercent} from "./kitchen/label/label.ts";
export type {LabelName, LabelText} from "./kitchen/label/label.ts";
export {
  checkStandard,
  leastMsnf,
  type Standard,
  type StandardCheck,
  STANDARD_FORCE,
  STANDARDS,
  type Standing,
} from "./kitchen/label/standards.ts";
export {type StandingDetails, standingOf} from "./kitchen/label/product-standing.ts";
export {
  batchSheet,
  type BatchSheet,
  type LogField,
  scaleProcess,
  type SheetLine,
  type SheetMeasure,
  type SheetOptions,
  type SheetSection,
} from "./kitchen/day/batch-sheet.ts";
export {madeSheet, type MadeSheetOptions} from "./kitchen/day/made-sheet.ts";

export {batchSheetCsv} from "./io/document/batch-sheet-csv.ts";
export {batchSheetHtml} from "./io/document/batch-sheet-html.ts";
export {batchSheetMarkdown} from "./io/document/batch-sheet-markdown.ts";
export {textReport} from "./io/report/report.ts";
export {readPantryCsv} from "./io/csv/pantry-csv.ts";
export {readPricesCsv} from "./io/csv/prices-csv.ts";
export {pantryJson, readIngredient, readPantryJson} from "./io/json/ingredient-json.ts";
export {readRecipe, readRecipeJson, recipeJson, type RecipeInput} from "./io/json/recipe-json.ts";
export {readRecipeCsv, recipeCsv} from "./io/csv/recipe-csv.ts";
export {recipeHtml, recipeMarkdown} from "./io/document/recipe-out.ts";
export {
  answerCsv,
  type AnswerExtras,
  answerHtml,
  answerJson,
  answerMarkdown,
} from "./io/document/answer-out.ts";
export {type CurvePicture, freezingCurveSvg} from "./io/document/curve-svg.ts";
