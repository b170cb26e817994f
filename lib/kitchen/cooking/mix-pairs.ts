import type {ProcessReport} from "./follow-process.ts";
import type {HeatPair} from "./heat-pairs.ts";

/** Name of fruit that was cooked by itself, before the mix. */
export const COOKED_FRUIT = "the cooked fruit";

/** Published pairs that the mix itself goes through: those of fruit that is cooked before it make nothing else safe. */
export function mixPairs({steps}: Pick<ProcessReport, "steps">): HeatPair[] {
  return steps.flatMap(({step, pairs}) => (step.into === COOKED_FRUIT ? [] : pairs));
}
