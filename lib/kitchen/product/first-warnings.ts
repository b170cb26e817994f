import type {Scooping} from "../../freezing/scoop.ts";
import type {Composition} from "../../pantry/parts.ts";
import {hardWarning, NO_ICE, softWarning} from "../size/scoop-words.ts";
import {noDessert} from "./no-dessert.ts";

/** What a cook must know of a mix before anything else: that it is no dessert, that it does not fit its freezer; a sentence each. */
export function firstWarnings({
  composition,
  scoop,
}: {
  readonly composition: Composition;
  readonly scoop: Scooping;
}): string[] {
  // Without ice that is all there is to say; a mix with much fat or few liquids is told why.
  const paste = scoop.unsure === "no ice" ? NO_ICE : undefined;
  return [softWarning(scoop), noDessert(composition) ?? paste, hardWarning(scoop)].filter(
    (warning) => warning !== undefined,
  );
}
