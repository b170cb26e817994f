import {measureOf} from "../../balance/measure/measures.ts";
import {subjectNamed, unitOf} from "../../balance/measure/of-subject.ts";

/** The unit of a share of an answer, from its name. */
export function shareUnit(name: string): string {
  return unitOf(subjectNamed(name)).full;
}

/** Decimals of a share of an answer where it is read: to 0.01, but for what is only estimated (a scoop temperature: to 0.1 °C). */
export function shareDigits(name: string): number {
  return measureOf(subjectNamed(name)).digits ?? 2;
}
