import type {Limits} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Coordinate} from "./coordinate.ts";
import type {MeasuredMix, MixContext} from "./measure.ts";
import {measureOf, MEASURES, SPECIAL_SUBJECTS, type Subject} from "./measures.ts";
import type {MixRow} from "./mix-row.ts";
import type {Offer} from "./offer.ts";
import type {Unit} from "./units.ts";
import {isAtTemperatures} from "./written.ts";

/** The name of a subject in every answer: `fat`, `ice at -18 °C`. */
export function subjectName(subject: Subject): string {
  return measureOf(subject).name(subject);
}

/** The subject of a name in an answer; a name that belongs to no measure is that of a property of the cook's own. */
export function subjectNamed(name: string): Subject {
  for (const measure of Object.values(MEASURES)) {
    const subject = measure.named(name);
    if (subject) return subject;
  }
  return {kind: "property", property: name};
}

/** The unit of a subject. */
export function unitOf(subject: Subject): Unit {
  return measureOf(subject).unit(subject);
}

/** Whether a subject is a temperature: no weighted sum of the ingredients, though each of its limits is a linear row. */
export function isTemperature(subject: Subject): boolean {
  return measureOf(subject).temperature !== undefined;
}

/** Contribution of 100 g of an ingredient to a subject that is no temperature; a mix has the weighted mean. */
export function coefficientOf(subject: Subject, ingredient: Ingredient): number {
  return measureOf(subject).weight(subject, ingredient);
}

/** The rows that state a target. */
export function targetRows(
  {subject, ...limits}: Limits & {readonly subject: Subject},
  context: MixContext,
): MixRow[] {
  return measureOf(subject).rows(subject, limits, context);
}

/** Row that an upper limit on a temperature also needs: it says that the mix has such a temperature. */
export function existenceRow(
  {subject, ...limits}: Limits & {readonly subject: Subject},
  context: MixContext,
): MixRow | undefined {
  return measureOf(subject).existence?.(subject, limits, context);
}

/** A subject that is no temperature as the sum that an axis shows. */
export function coordinateOf(subject: Subject, context: MixContext): Coordinate {
  return measureOf(subject).coordinate(subject, context);
}

/** The sum that an aim makes smallest or largest. */
export function aimCoordinate(
  {subject, sense}: {readonly subject: Subject; readonly sense: "minimise" | "maximise"},
  context: MixContext,
): Coordinate {
  return measureOf(subject).aim(subject, sense, context);
}

/**
 * The value of any subject in a mix, in the subject's unit.
 *
 * @returns `undefined` where the mix has none: it does not freeze, or is never as hard as the reference
 */
export function valueOf(subject: Subject, mix: MeasuredMix): number | undefined {
  return measureOf(subject).value(subject, mix);
}

/** A subject as a brief writes it: its key, and the temperatures that its limits stand beside in a list. */
export function writtenAs(subject: Subject): {
  readonly key: string;
  readonly at?: Readonly<Record<string, number>>;
} {
  const {kind, ...data} = subject;
  if (isAtTemperatures(measureOf(subject).written)) return {key: kind, at: data as Record<string, number>};
  return {key: subjectName(subject)};
}

/** All controls that pages offer, those of the quantities first. */
export function offers(): Offer<Subject>[] {
  return [MEASURES.quantity, ...SPECIAL_SUBJECTS.map((kind) => MEASURES[kind])].flatMap((one) => one.offers);
}
