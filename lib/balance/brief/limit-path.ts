import type {Brief, Target} from "./brief.ts";
import {MEASURES} from "../measure/measures.ts";
import {subjectName} from "../measure/of-subject.ts";
import {isAtTemperatures} from "../measure/written.ts";

/**
 * Path of a target in its brief: `targets.fat`, `targets.ice[0]`. A target that was set beside the brief (the cost that a
 * candidate may reach) has no place in it, and the path says so.
 */
export function targetPath({targets}: Pick<Brief, "targets">, target: Target): string {
  const {subject} = target;
  if (!targets.includes(target)) return `beside the brief: ${subjectName(subject)}`;
  if (!isAtTemperatures(MEASURES[subject.kind].written)) return `targets.${subjectName(subject)}`;
  const alike = targets.filter((other) => other.subject.kind === subject.kind);
  return `targets.${subject.kind}[${alike.indexOf(target)}]`;
}

/** Path of the limits on an ingredient in the brief: `ingredients[2]`. */
export function ingredientPath(index: number): string {
  return `ingredients[${index}]`;
}

/** A key that tells one side of a limit from all others. */
export function limitKey({path, bound}: {readonly path: string; readonly bound: string}): string {
  return `${path} ${bound}`;
}
