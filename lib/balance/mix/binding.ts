import type {Composition} from "../../pantry/parts.ts";
import {DOSES} from "../../pantry/doses.ts";
import type {Binding, LimitSide} from "./answer.ts";
import type {Brief, Choice, DoseLimit, Target} from "../brief/brief.ts";
import type {Formulation} from "../program/formulate.ts";
import type {Optimal} from "./outcomes.ts";
import {ingredientPath, limitKey, targetPath} from "../brief/limit-path.ts";
import {measureOf} from "../measure/measures.ts";
import {subjectName, writtenAs} from "../measure/of-subject.ts";

/** Distance within which a value counts as on a limit, relative to its size. */
const ON_LIMIT = 1e-7;

/**
 * The limits that a mix meets exactly, with the price of each.
 *
 * A price is the derivative of the objective with respect to the limit, from the duals of the program. Where the limit is
 * a temperature T of a row g(x, T) <= level, the envelope theorem gives it as -dual x dg/dT at the mix.
 */
export function bindingOf(
  brief: Brief,
  formulation: Formulation,
  outcome: Optimal,
  composition: Composition,
): Binding[] {
  const {program, origins, shares} = formulation;
  const found: Binding[] = [];
  program.rows.forEach((row, i) => {
    const origin = origins[i]!;
    if (origin.kind === "batch" || origin.kind === "minimum" || origin.kind === "help") return;
    // A row that says that a mix freezes or hardens at all is no limit that a cook could move.
    if (origin.kind === "frozen") return;
    const activity = outcome.activities[i]!;
    const atLower = row.lower !== undefined && near(activity, row.lower);
    const atUpper = row.upper !== undefined && near(activity, row.upper);
    if (!atLower && !atUpper) return;
    const dual = outcome.duals?.[i];
    const price = dual === undefined ? {} : {price: dual};
    if (origin.kind === "rule") {
      const {kind: _kind, name, ...rule} = origin;
      const {on} = rule;
      // A rule on an ingredient that is not used is met exactly, but limits nothing.
      if (on.rule === "maxIngredients" || isUsed(brief, outcome, on.ingredient))
        found.push({of: "rule", target: name, ...rule});
    } else if (origin.kind === "dose") {
      if (activity !== 0) found.push({...doseLimit(origin.dose), ...price});
    } else {
      const {target} = origin;
      found.push({
        ...targetLimit(brief, target, atLower),
        ...(dual !== undefined && {price: dual * slopeOf(target, atLower, composition)}),
      });
    }
  });
  brief.ingredients.forEach(({ingredient, min, max, percents}, j) => {
    const grams = outcome.values[j]! * shares[j]! * brief.batch;
    const atMin = min > 0 && near(grams, min);
    if (!atMin && !near(grams, max)) return;
    const reduced = outcome.reducedCosts?.[j];
    found.push({
      ...ingredientLimit(j, ingredient.name),
      bound: min === max ? "equal" : atMin ? "min" : "max",
      limit: atMin ? min : max,
      ...percentOf(percents, atMin ? "min" : "max"),
      ...(!atMin && max === ingredient.stock && {inStock: true as const}),
      // Reduced costs are per unit share; a limit on an ingredient is in g per batch.
      ...(reduced !== undefined && {price: reduced / brief.batch}),
    });
  });
  return oneEach(found);
}

/** A target's limit as an answer names it. */
export function targetLimit(
  brief: Pick<Brief, "targets">,
  target: Target,
  atLower: boolean,
): LimitSide & {limit: number} {
  return {
    of: "target",
    path: targetPath(brief, target),
    target: subjectName(target.subject),
    on: {kind: "measure", key: writtenAs(target.subject).key, subject: target.subject},
    ...limitOf(target, atLower),
  };
}

/** A limit on the amount of an ingredient as an answer names it. */
export function ingredientLimit(
  index: number,
  ingredient: string,
): Pick<LimitSide, "of" | "path" | "target" | "on"> {
  return {
    of: "ingredient",
    path: ingredientPath(index),
    target: ingredient,
    on: {kind: "ingredient", ingredient, index},
  };
}

/** A limit on an amount in per cent of the batch, where the cook gave it so. */
export function percentOf(percents: Choice["percents"], side: "min" | "max"): {percent?: number} {
  const percent = percents?.[side];
  return percent === undefined ? {} : {percent};
}

/** A dose as an answer names it. */
export function doseLimit({index, limit, own, raised}: DoseLimit): LimitSide & {limit: number} {
  const {key, name} = DOSES[index]!;
  return {
    of: "dose",
    path: `doses.${key}`,
    target: name,
    on: {kind: "dose", dose: key},
    bound: "max",
    limit,
    ...((own || raised) && {own: true}),
  };
}

/**
 * Each limit once. A limit that stands in two rows (a hard phase, with and without ice) moves both when it moves: its
 * price is the sum of theirs, and the ranges of the rows by themselves say nothing of it.
 */
export function oneEach<T extends Binding>(limits: readonly T[]): T[] {
  const found = new Map<string, T>();
  for (const limit of limits) {
    const key = limitKey(limit);
    const other = found.get(key);
    if (!other) found.set(key, limit);
    else {
      const {from: _from, to: _to, ...kept} = other as T & {from?: number; to?: number};
      found.set(key, {
        ...kept,
        ...(other.price !== undefined && {price: other.price + (limit.price ?? 0)}),
      } as unknown as T);
    }
  }
  return [...found.values()];
}

function isUsed({ingredients}: Brief, {values}: Optimal, name: string): boolean {
  return values[ingredients.findIndex(({ingredient}) => ingredient.name === name)]! > 1e-9;
}

function near(value: number, limit: number): boolean {
  return Number.isFinite(limit) && Math.abs(value - limit) <= ON_LIMIT * Math.max(1, Math.abs(limit));
}

/** The limit of a target that the binding side of its row stands for. */
export function limitOf({min, max}: Target, atLower: boolean): Pick<Binding, "bound" | "limit"> {
  if (min !== undefined && min === max) return {bound: "equal", limit: min};
  return atLower ? {bound: "min", limit: min!} : {bound: "max", limit: max!};
}

/** Change of the row's limit per unit of the target's limit. */
export function slopeOf(target: Target, atLower: boolean, composition: Composition): number {
  const {subject, min, max} = target;
  return measureOf(subject).slope?.(subject, (atLower ? min : max)!, composition) ?? 1;
}
