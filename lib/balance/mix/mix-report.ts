import {freezingCurve} from "../../freezing/curve.ts";
import {initialFreezingPoint} from "../../freezing/ice.ts";
import {scooping} from "../../freezing/scoop.ts";
import {DOSES, dosesOver} from "../../pantry/doses.ts";
import {blend} from "../../pantry/mix.ts";
import {DERIVED} from "../../pantry/quantities.ts";
import {amountsOf} from "./amounts.ts";
import type {MixReport} from "./answer.ts";
import type {Brief} from "../brief/brief.ts";
import type {MeasuredMix} from "../measure/measure.ts";
import {subjectName, valueOf} from "../measure/of-subject.ts";
import type {Subject} from "../measure/measures.ts";
import {tubOf} from "../measure/tub-of.ts";
import type {Formulation} from "../program/formulate.ts";
import {openedPacks, outlayOf} from "../program/packs.ts";

/** A mix as the balance floor sees it: a share of the batch for each ingredient of a brief. */
export interface Mix extends MeasuredMix {
  readonly brief: Brief;
}

/** A mix of a brief's ingredients, from the share of the batch of each. */
export function mixOf(brief: Brief, shares: readonly number[]): Mix {
  const portions = brief.ingredients.map(({ingredient}, j) => ({
    composition: ingredient.composition,
    mass: shares[j]!,
  }));
  return {brief, shares, composition: blend(portions)};
}

/** The mix of a solved program. */
export function mixFrom(brief: Brief, {shares}: Formulation, values: readonly number[]): Mix {
  // A share can be below 0 only by the rounding that the program's check has passed.
  return mixOf(
    brief,
    shares.map((share, j) => Math.max(0, share * values[j]!)),
  );
}

/** Everything about a mix that a cook would ask. */
export function reportOf(mix: Mix): MixReport {
  const {brief, shares, composition} = mix;
  const priced = brief.ingredients.every(
    ({ingredient}, j) => shares[j] === 0 || ingredient.price !== undefined,
  );
  const subjects = new Map<string, Subject>(
    DERIVED.map((quantity) => [quantity, {kind: "quantity", quantity}]),
  );
  for (const {subject} of brief.targets) subjects.set(subjectName(subject), subject);
  const freezingPoint = initialFreezingPoint(composition);
  const amounts = amountsOf(brief, shares);
  const grams = amounts.map((amount) => amount.grams);
  const packs = openedPacks(brief, grams);
  const over = dosesOver(
    brief.ingredients.map(({ingredient}, j) => ({ingredient, grams: shares[j]!})),
    Object.fromEntries(
      (brief.doses ?? []).flatMap(({index, limit, own}) => (own ? [[DOSES[index]!.key, limit]] : [])),
    ),
  );
  const outlay = packs.length ? outlayOf(brief, grams) : undefined;
  return {
    amounts,
    ...(over.length > 0 && {beyondDoses: over}),
    ...(priced && {cost: (valueOf({kind: "cost"}, mix)! * brief.batch) / 1000}),
    ...(outlay !== undefined && {outlay}),
    ...(packs.length > 0 && {packs}),
    composition,
    shares: Object.fromEntries(
      [...subjects].flatMap(([name, subject]) => {
        const value = valueOf(subject, mix);
        return value === undefined ? [] : [[name, value]];
      }),
    ),
    freezing: {
      ...(freezingPoint !== undefined && {initialFreezingPoint: freezingPoint}),
      curve: freezingCurve(composition),
    },
    scoop: scooping(composition, brief.freezer, tubOf(brief)),
  };
}
