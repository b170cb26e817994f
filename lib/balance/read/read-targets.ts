import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import type {LimitsInput, TargetsInput, WrittenTargets} from "../brief/brief-schema.ts";
import type {Choice, Target} from "../brief/brief.ts";
import {isSpecial, measureOf, type Subject} from "../measure/measures.ts";
import {unitOf} from "../measure/of-subject.ts";
import {specialSubject, subjectOf} from "./read-subject.ts";

/**
 * The targets of a brief, checked.
 *
 * @throws InputError for an unknown quantity, a limit out of range, or limits that contradict each other
 */
export function readTargets(
  raw: TargetsInput | WrittenTargets,
  choices: readonly Choice[],
  place: string,
): Target[] {
  const targets: Target[] = [];
  for (const [name, value] of Object.entries(raw as WrittenTargets)) {
    if (value === undefined) continue;
    const at = `${place}: targets.${name}`;
    if (isSpecial(name) && Array.isArray(value)) {
      for (const [i, entry] of (value as readonly LimitsInput[]).entries())
        targets.push(readLimits(specialSubject(name, entry), entry, `${at}[${i}]`));
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
  const [lowest, highest] = measureOf(subject).range(subject);
  const {full} = unitOf(subject);
  const unit = full === "sucrose = 100" ? "" : full;
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
