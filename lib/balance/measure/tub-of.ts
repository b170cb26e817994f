import type {FirmnessOptions} from "../../freezing/firmness.ts";
import type {MixContext} from "./measure.ts";

/** Options of firmness that a context gives: the air and the kitchen's calibration. */
export function tubOf({overrun, learned}: Pick<MixContext, "overrun" | "learned">): FirmnessOptions {
  return {overrun, ...(learned && {learned})};
}
