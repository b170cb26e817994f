import type {FirmnessOptions} from "../../freezing/firmness.ts";
import type {MixContext} from "./measure.ts";

/** Options of a tub's firmness, which depends on them beside its mix. */
export function tubOf({overrun, learned}: Pick<MixContext, "overrun" | "learned">): FirmnessOptions {
  return {overrun, ...(learned && {learned})};
}
