// `mixwright/freezing`: ice, freezing curve, scoop temperature and heat of a composition.

export {type CurvePoint, type CurveRange, freezingCurve} from "./freezing/curve.ts";
export {frozenShare, hardPhase, heatShock, ice, initialFreezingPoint} from "./freezing/ice.ts";
export {heldBy, heldWater, type Solute, SOLUTES} from "./freezing/held-water.ts";
export {iceWaterActivity} from "./freezing/water-activity.ts";
export {solidFat} from "./freezing/solid-fat.ts";
export {
  scooping,
  type Scooping,
  scoopTemperature,
  type ScoopTemperature,
  type Verdict,
  verdictAt,
  type VerdictBand,
  verdictBands,
} from "./freezing/scoop.ts";
export {firmness, type FirmnessOptions, firmnessReference, hardness} from "./freezing/firmness.ts";
export {calibrate, type FirmnessReport} from "./freezing/calibrate.ts";
export type {Learned} from "./freezing/learned.ts";
export {type FrozenState, frozenState} from "./freezing/state.ts";
export {enthalpy, heatToRemove} from "./freezing/enthalpy.ts";
export {
  hardeningTime,
  type HardeningOptions,
  type StandingOptions,
  temperatureAfter,
  temperingTime,
  type TemperingOptions,
  type Tub,
  type TubConditions,
  type TubTime,
} from "./freezing/tub.ts";
export {type Softener} from "./freezing/softened-by.ts";
export {type Sandiness, sandiness, type Saturation, saturations} from "./freezing/solubility.ts";
export {glassTransition} from "./freezing/glass-transition.ts";
export {
  type EquivalenceMix,
  equivalenceMix,
  sucroseEquivalenceCurve,
} from "./freezing/sucrose-equivalence.ts";
export {type Extrapolation, extrapolations, iceError, methodDifference} from "./freezing/validity.ts";
