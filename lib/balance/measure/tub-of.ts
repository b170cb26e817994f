import type {FirmnessOptions} from "../../freezing/firmness.ts";
import type {MixContext} from "./measure.ts";

/** What the firmness of a tub depends on beside its mix. */
export function tubOf({overrun, learned}: Pick<MixContext, "overrun" | "learned">): FirmnessOptions {
  return {overrun, ...(learned && {learned})};
}
