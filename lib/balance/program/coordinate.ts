import {referenceHardPhase} from "../../freezing/scoop.ts";
import {solidFat} from "../../freezing/solid-fat.ts";
import type {Aim, Choice} from "../brief/brief.ts";
import {coefficientOf} from "./coefficient.ts";
import type {Subject} from "../brief/subject.ts";

/**
 * A property of a mix as a sum over its ingredients' shares, to which ice adds that is never less than none. Where
 * `there` is given, the sum is the property only of mixes in which that sum is at least 0.
 */
export interface Coordinate {
  readonly weights: readonly number[];
  /** Ice before it is cut off at 0, per ingredient. */
  readonly ice?: readonly number[];
  readonly there?: readonly number[];
}

/**
 * A subject as a coordinate. Heat shock is one of mixes that still have ice at the warm end of the swing.
 *
 * @param subject no temperature (see {@link thresholdAt})
 */
export function coordinateOf(subject: Subject, choices: readonly Choice[]): Coordinate {
  const along = (of: Subject) => choices.map(({ingredient}) => coefficientOf(of, ingredient));
  switch (subject.kind) {
    case "ice":
      return {weights: choices.map(() => 0), ice: along(subject)};
    case "hardPhase":
      return {
        weights: choices.map(({ingredient}) => solidFat(ingredient.composition, subject.at)),
        ice: along({kind: "ice", at: subject.at}),
      };
    case "heatShock":
      return {
        weights: along(subject),
        there: along({kind: "ice", at: Math.max(subject.from, subject.to)}),
      };
    // Each kind by its name, so that the compiler asks of a new one whether it is cut off.
    case "quantity":
    case "property":
    case "cost":
    case "freezingPoint":
    case "scoopTemperature":
      return {weights: along(subject)};
  }
}

/** What a program makes best: a sum over the ingredients, and a part of it that counts only where it is above none. */
export interface ObjectiveRow {
  readonly weights: readonly number[];
  readonly cutOff?: {readonly name: string; readonly weights: readonly number[]};
}

/**
 * An aim as a sum to optimise. A hard phase to be minimised is solid fat and the ice that is there, so that ice which is not
 * there cannot pay for fat.
 */
export function objectiveRow({subject, sense}: Aim, choices: readonly Choice[]): ObjectiveRow {
  if (sense !== "minimise" || subject.kind !== "hardPhase")
    return {weights: choices.map(({ingredient}) => coefficientOf(subject, ingredient))};
  const {weights, ice} = coordinateOf(subject, choices);
  return {weights, cutOff: {name: `ice at ${subject.at} °C`, weights: ice!}};
}

/**
 * A sum that is at most `level` in just the mixes whose freezing point or scoop temperature is at most `at`, °C: at that
 * temperature the ice is at most none, or the hard phase at most the reference.
 */
export function thresholdAt(
  kind: "freezingPoint" | "scoopTemperature",
  at: number,
  choices: readonly Choice[],
): {readonly coordinate: Coordinate; readonly level: number} {
  const subject: Subject = {kind: kind === "freezingPoint" ? "ice" : "hardPhase", at};
  return {
    coordinate: {weights: choices.map(({ingredient}) => coefficientOf(subject, ingredient))},
    level: kind === "freezingPoint" ? 0 : referenceHardPhase().mean,
  };
}

/** The value of a coordinate in a mix, from the share of the batch of each ingredient. */
export function valueOf({weights, ice}: Coordinate, shares: readonly number[]): number {
  return dot(weights, shares) + (ice ? Math.max(0, dot(ice, shares)) : 0);
}

function dot(weights: readonly number[], shares: readonly number[]): number {
  let total = 0;
  for (let j = 0; j < weights.length; j++) total += weights[j]! * shares[j]!;
  return total;
}
