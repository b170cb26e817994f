import {measureOf} from "../../balance/measure/measures.ts";
import {subjectNamed, unitOf} from "../../balance/measure/of-subject.ts";

/** Unit of a value in the `shares` of an answer, from its name. */
export function shareUnit(name: string): string {
  return unitOf(subjectNamed(name)).full;
}

/** Decimals to print of a value in the `shares` of an answer: 2, or fewer for an estimate (a scoop temperature: 1). */
export function shareDigits(name: string): number {
  return measureOf(subjectNamed(name)).digits ?? 2;
}
