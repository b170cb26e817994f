import {decimal} from "../../core/format.ts";
import type {Composition} from "../../pantry/parts.ts";

/**
 * Salt from which on a frozen dessert tastes salty, g per 100 g: a plain mix takes 0.1 to 0.2, one of salted caramel about 0.5.
 * Common practice, no source.
 */
const SALTY = 0.3;

/** What an eater tastes of a mix that nobody may have meant, each as a sentence with what to do about it. */
export function tasteCautions({salt = 0}: Composition): string[] {
  return salt > SALTY
    ? [
        `Tastes salty: ${decimal(salt, 2)} % salt, where a plain mix has 0.1 to 0.2 and salted caramel about 0.5. For less, limit what brings it.`,
      ]
    : [];
}
