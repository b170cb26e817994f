// `mixwright/explore`: what another point would cost. Trade-offs, sweeps, cost maps, other candidates.

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
export type {BindingLimit, Turnover} from "./balance/mix/changes-between.ts";
export type {Point} from "./balance/trade-off/hull.ts";
export {type CandidateOptions, candidatesOf} from "./balance/explain/candidates.ts";
