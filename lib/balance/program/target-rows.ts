import {COLDEST} from "../../freezing/held-water.ts";
import {referenceHardPhase} from "../../freezing/scoop.ts";
import {solidFat} from "../../freezing/solid-fat.ts";
import type {MixRow} from "../measure/mix-row.ts";
import type {Choice, Target} from "../brief/brief.ts";
import {coefficientOf} from "./coefficient.ts";
import {REACH_ROOM} from "./no-worse.ts";
import {type Subject, subjectName} from "../brief/subject.ts";

/**
 * The linear rows, over shares of the batch, that state a target:
 * - a freezing point of at most t: at t the solutes hold all the water, so ice before it is cut off at zero is at most 0;
 * - a scoop temperature of at most t: at t the hard phase is at most the reference;
 * - ice or hard phase of at least m: as written (ice that must be there needs no cutting off);
 * - a hard phase of at most m: with the ice, and without it where fat alone could exceed it (ice is never less than none).
 */
export function targetRows(target: Target, choices: readonly Choice[]): MixRow[] {
  const {subject, min, max} = target;
  const name = subjectName(subject);
  const along = (at: Subject) => choices.map(({ingredient}) => coefficientOf(at, ingredient));
  switch (subject.kind) {
    case "freezingPoint":
      return thresholds(name, min, max, (at) => along({kind: "ice", at}), 0);
    case "scoopTemperature":
      return thresholds(name, min, max, (at) => along({kind: "hardPhase", at}), referenceHardPhase().mean);
    case "ice":
      return [row(name, along(subject), min === 0 ? undefined : min, max)];
    case "hardPhase": {
      const fat = choices.map(({ingredient}) => solidFat(ingredient.composition, subject.at));
      const rows = [row(name, along(subject), min, max)];
      return max !== undefined && fat.some((grams) => grams > max)
        ? [...rows, row(name, fat, undefined, max)]
        : rows;
    }
    default:
      return [row(name, along(subject), min, max)];
  }
}

/**
 * What a mix must have for an upper limit on its freezing point or scoop temperature to be met at all: ice, or the reference
 * hard phase, at the coldest temperature of the model. A lower limit says so by itself.
 */
export function frozenRow({subject, min, max}: Target, choices: readonly Choice[]): MixRow | undefined {
  const {kind} = subject;
  if ((kind !== "freezingPoint" && kind !== "scoopTemperature") || max === undefined || min !== undefined)
    return undefined;
  const [at, least]: [Subject, number] =
    kind === "freezingPoint"
      ? [{kind: "ice", at: COLDEST}, SOME_ICE]
      : [{kind: "hardPhase", at: COLDEST}, referenceHardPhase().mean + REACH_ROOM];
  return row(
    subjectName(subject),
    choices.map(({ingredient}) => coefficientOf(at, ingredient)),
    least,
    undefined,
  );
}

/** Ice that counts as frozen, g per 100 g: a mix without any water has none to be held. */
const SOME_ICE = 1e-3;

/** Rows for a limit on the temperature at which a falling curve passes a level. */
function thresholds(
  name: string,
  min: number | undefined,
  max: number | undefined,
  at: (temperature: number) => number[],
  level: number,
): MixRow[] {
  if (min !== undefined && min === max) return [row(name, at(min), level, level)];
  return [
    ...(max === undefined ? [] : [row(name, at(max), undefined, level)]),
    ...(min === undefined ? [] : [row(name, at(min), level, undefined)]),
  ];
}

function row(name: string, weights: number[], lower: number | undefined, upper: number | undefined): MixRow {
  return {name, weights, ...(lower !== undefined && {lower}), ...(upper !== undefined && {upper})};
}
