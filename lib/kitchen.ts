// `mixwright/kitchen`: products, ripples, scaling, cooking, cost and the batch sheet of the day.

export {inUnit, type Measure, readMeasure} from "./core/units.ts";
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
export {followProcess, type ProcessReport} from "./kitchen/cooking/follow-process.ts";
export type {CoolStep, HeatStep, Item, PourStep, Process, ProcessStep} from "./kitchen/cooking/process.ts";
export type {StepReport} from "./kitchen/cooking/process-steps.ts";
export {
  checkHold,
  checkLog,
  COOLING,
  DAIRY_PAIRS,
  equivalentMinutes,
  HEAT_PAIRS,
  type HeatPair,
  LISTERIA_IN_MIX,
  needsReheating,
  type PairCheck,
  type Reading,
  REFREEZING_LIMIT,
} from "./kitchen/cooking/pasteurisation.ts";
export {
  coolingMinutes,
  type CoolingOptions,
  type Day,
  type Stage,
  type TimedRun,
  timePlan,
  type TimePlan,
  usefulPower,
} from "./kitchen/day/time-plan.ts";
export type {CounterWait} from "./kitchen/size/scoop-words.ts";
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
export type {LogField} from "./kitchen/day/log-fields.ts";
export {
  batchSheet,
  type BatchSheet,
  scaleProcess,
  type SheetLine,
  type SheetMeasure,
  type SheetOptions,
  type SheetSection,
} from "./kitchen/day/batch-sheet.ts";
export {madeSheet, type MadeSheetOptions} from "./kitchen/day/made-sheet.ts";
