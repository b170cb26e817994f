import type {Balanced} from "./answer.ts";
import type {Aim, Brief, Target} from "./brief.ts";
import {solveBrief} from "./solve-brief.ts";

/** How much dearer than the cheapest mix a candidate may be, as a factor on its cost. */
export const COST_MARGIN = 1.15;

/** Two mixes are one candidate when no more than this must change hands between them, g per 100 g. */
export const SAME_MIX = 0.5;

/**
 * Other good answers to the same brief, each best at something else and at most 15 % dearer than the cheapest:
 * the softest in the brief's freezer and the least sweet. A candidate that is nearly one of the mixes already found is
 * left out, so that every one on the list is worth a look.
 *
 * @param brief a checked brief
 * @param best its answer, which the candidates must differ from
 */
export function candidatesOf(brief: Brief, best: Balanced): Balanced[] {
  const within = costLimit(brief, best);
  const aims: [name: string, aim: Aim][] = [
    [`softest at ${brief.freezer} °C`, {sense: "minimise", subject: {kind: "hardPhase", at: brief.freezer}}],
    ["least sweet", {sense: "minimise", subject: {kind: "quantity", quantity: "sweetness"}}],
  ];
  const found: Balanced[] = [];
  for (const [name, aim] of aims) {
    const mix = solveBrief(brief, name, aim, within);
    if (mix.status === "optimal" && [best, ...found].every((other) => distance(mix, other) > SAME_MIX))
      found.push(mix);
  }
  return found;
}

/** Half of what must be taken out and put in to make one mix of the other, g per 100 g. */
export function distance(a: Balanced, b: Balanced): number {
  return a.amounts.reduce((total, {percent}, j) => total + Math.abs(percent - b.amounts[j]!.percent), 0) / 2;
}

/** The cost limit of the candidates: none where the brief is not about cost. */
function costLimit(brief: Brief, best: Balanced): Target[] {
  if (brief.aim?.subject.kind !== "cost" || brief.aim.sense !== "minimise" || best.cost === undefined)
    return [];
  return [{subject: {kind: "cost"}, max: ((best.cost * 1000) / best.batch) * COST_MARGIN}];
}
