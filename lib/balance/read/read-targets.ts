import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import type {AtInput, LimitsInput, SwingInput, TargetsInput} from "../brief/brief-schema.ts";
import type {Choice, Target} from "../brief/brief.ts";
import {subjectOf} from "./read-subject.ts";
import type {Subject} from "../brief/subject.ts";

/**
 * The targets of a brief, checked.
 *
 * @throws InputError for an unknown quantity, a limit out of range, or limits that contradict each other
 */
export function readTargets(raw: TargetsInput, choices: readonly Choice[], place: string): Target[] {
  const targets: Target[] = [];
  for (const [name, value] of Object.entries(raw)) {
    if (value === undefined) continue;
    const at = `${place}: targets.${name}`;
    if (name === "ice" || name === "hardPhase") {
      for (const [i, entry] of (value as AtInput[]).entries()) {
        targets.push(readLimits({kind: name, at: entry.at}, entry, `${at}[${i}]`));
      }
    } else if (name === "heatShock") {
      for (const [i, entry] of (value as SwingInput[]).entries()) {
        targets.push(readLimits({kind: name, from: entry.from, to: entry.to}, entry, `${at}[${i}]`));
      }
    } else targets.push(readLimits(subjectOf(name, choices, at), value as LimitsInput, at));
  }
  return targets;
}

function readLimits(subject: Subject, limits: LimitsInput, place: string): Target {
  const {equal} = limits;
  if (equal !== undefined && (limits.min !== undefined || limits.max !== undefined)) {
    throw new InputError(place, "equal given beside min or max", equal, "give either equal, or min and max");
  }
  const {min = equal, max = equal} = limits;
  const [lowest, highest, unit] = rangeOf(subject);
  for (const [key, value] of Object.entries({min, max})) {
    if (value !== undefined)
      finite(value, `${place}.${equal === undefined ? key : "equal"}`, {min: lowest, max: highest}, unit);
  }
  if (min === undefined && max === undefined)
    throw new InputError(place, "no limit", undefined, "give min, max or equal");
  if (min !== undefined && max !== undefined && min > max) {
    throw new InputError(`${place}.min`, "above max", min, `give a min of at most ${max}`);
  }
  return {subject, ...(min !== undefined && {min}), ...(max !== undefined && {max})};
}

/** Lowest and highest limit that makes sense, with its unit. */
export function rangeOf(subject: Subject): [number, number, string] {
  switch (subject.kind) {
    case "freezingPoint":
    case "scoopTemperature":
      return [-40, -0.01, "°C"];
    case "cost":
      return [0, Infinity, "money per kg"];
    case "property":
      return [-Infinity, Infinity, "per 100 g"];
    case "quantity":
      return subject.quantity === "sweetness" ? [0, 200, ""] : [0, 100, "g per 100 g"];
    default:
      return [0, 100, "g per 100 g"];
  }
}
