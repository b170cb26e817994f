import {freezingCurve} from "../../freezing/curve.ts";
import {hardPhase, ice, initialFreezingPoint} from "../../freezing/ice.ts";
import {scooping, scoopTemperature} from "../../freezing/scoop.ts";
import {DOSES, dosesOver} from "../../pantry/doses.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {DERIVED, quantityIn} from "../../pantry/quantities.ts";
import {amountsOf} from "./amounts.ts";
import type {MixReport} from "./answer.ts";
import type {Brief} from "../brief/brief.ts";
import {coefficientOf} from "../program/coefficient.ts";
import type {Formulation} from "../program/formulate.ts";
import {openedPacks, outlayOf} from "../program/packs.ts";
import {type Subject, subjectName} from "../brief/subject.ts";

/** A mix as the balance floor sees it: a share of the batch for each ingredient of a brief. */
export interface Mix {
  readonly brief: Brief;
  /** One per ingredient, from 0 to 1, summing to 1. */
  readonly shares: readonly number[];
  /** g per 100 g. */
  readonly composition: Composition;
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

/**
 * The value of any subject in a mix, in the subject's unit.
 *
 * @returns `undefined` where the mix has none: it does not freeze, or is never as hard as the reference
 */
export function measure(subject: Subject, {brief, shares, composition}: Mix): number | undefined {
  switch (subject.kind) {
    case "quantity":
      return quantityIn(composition, subject.quantity);
    case "ice":
      return ice(composition, subject.at);
    case "hardPhase":
      return hardPhase(composition, subject.at);
    case "heatShock":
      return Math.abs(ice(composition, subject.from) - ice(composition, subject.to));
    case "freezingPoint":
      return initialFreezingPoint(composition);
    case "scoopTemperature":
      return scoopTemperature(composition).temperature;
    default: {
      let total = 0;
      for (const [j, {ingredient}] of brief.ingredients.entries())
        total += shares[j]! * coefficientOf(subject, ingredient);
      return total;
    }
  }
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
    ...(priced && {cost: (measure({kind: "cost"}, mix)! * brief.batch) / 1000}),
    ...(outlay !== undefined && {outlay}),
    ...(packs.length > 0 && {packs}),
    composition,
    shares: Object.fromEntries(
      [...subjects].flatMap(([name, subject]) => {
        const value = measure(subject, mix);
        return value === undefined ? [] : [[name, value]];
      }),
    ),
    freezing: {
      ...(freezingPoint !== undefined && {initialFreezingPoint: freezingPoint}),
      curve: freezingCurve(composition),
    },
    scoop: scooping(composition, brief.freezer),
  };
}
