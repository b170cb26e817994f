import type {Composition} from "../../pantry/parts.ts";
import {mixDensity} from "../size/density.ts";

/**
 * Alcohol above which there is a caution, % of the mix's volume. New York's law for ice cream with alcohol (section 1352-c, as read)
 * begins above 0.5 %; a teaspoon of vanilla extract in a litre comes to 0.2 %.
 */
const ALCOHOL = 0.5;

/** Most alcohol that the same law allows, % of the mix's volume. The European Union's 1.2 % is for drinks and does not apply to an ice. */
const NEW_YORK = 5;

/** Density of alcohol near 20 °C, g/ml (from memory), as {@link mixDensity} has it. */
const ALCOHOL_DENSITY = 0.789;

/** Caution on the alcohol of a mix, a sentence or two; `undefined` where there is next to none. */
export function alcoholCaution(composition: Composition): string | undefined {
  const {alcohol = 0} = composition;
  const byVolume = (alcohol * mixDensity(composition)) / ALCOHOL_DENSITY;
  if (byVolume <= ALCOHOL) return undefined;
  return `Holds ${alcohol.toFixed(1)} % alcohol by weight, ${byVolume.toFixed(1)} % of the volume: say so where it is sold, and keep it from children.${byVolume > NEW_YORK ? ` New York allows at most ${NEW_YORK} % of the volume.` : ""}`;
}
