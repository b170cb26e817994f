import type {Composition} from "../../pantry/parts.ts";
import {unauthorisedCautions} from "../../pantry/unauthorised.ts";
import {alcoholCaution} from "./alcohol.ts";
import {tasteCautions} from "./taste.ts";

/** Cautions that the composition of a mix calls for by itself: taste and texture, alcohol, parts that may not be sold everywhere. */
export function mixCautions(composition: Composition): string[] {
  const alcohol = alcoholCaution(composition);
  return [
    ...tasteCautions(composition),
    ...(alcohol === undefined ? [] : [alcohol]),
    ...unauthorisedCautions(composition),
  ];
}
