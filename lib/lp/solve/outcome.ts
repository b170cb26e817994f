import type {Found} from "./find-basis.ts";
import type {WholeSearch} from "./branch-and-bound.ts";
import type {LinearProgram, Outcome, BasisStatus} from "../program/program.ts";
import {TOLERANCE} from "../proof/proof.ts";
import type {Scaled} from "../program/scale.ts";
import {BASIC, type Basis} from "../proof/vertex.ts";

/** Names of the codes of a basis. */
const PLACES: readonly BasisStatus[] = ["lower", "upper", "basic", "zero"];

/** A proof in the units and the sense of the program that it answers. */
export function continuousOutcome(
  program: LinearProgram,
  scaled: Scaled,
  {proof, basis, engine}: Found,
): Outcome {
  const {column, row, objective} = scaled;
  if (proof.status === "infeasible") {
    return {
      status: "infeasible",
      certificate: Array.from(proof.multipliers, (y, i) => y / row[i]!),
      engine,
    };
  }
  if (proof.status === "unbounded") return unbounded(scaled, proof.ray, engine);
  const {values, duals, figures} = proof;
  const price = program.sense === "maximise" ? -objective : objective;
  const original = Array.from(values, (value, j) => value * column[j]!);
  const places = Array.from(basis, (place) => PLACES[place]!);
  return {
    status: "optimal",
    objective: objectiveAt(program, original),
    values: original,
    activities: Array.from(figures.activities, (value, i) => value * row[i]!),
    // Adding 0 turns -0 into 0.
    duals: Array.from(duals, (dual, i) => (price * dual) / row[i]! + 0),
    reducedCosts: Array.from(figures.reducedCosts, (cost, j) => (price * cost) / column[j]! + 0),
    basis: {variables: places.slice(0, values.length), rows: places.slice(values.length)},
    degenerate: isDegenerate(scaled, basis, values, figures.activities),
    engine,
    check: {residual: figures.residual, fraction: 0, gap: figures.gap},
  };
}

/** The result of a search for whole values in the units of the program that it answers. */
export function wholeOutcome(
  program: LinearProgram,
  scaled: Scaled,
  search: WholeSearch,
  engine: string,
): Outcome {
  const {column, row} = scaled;
  if (search.status === "infeasible") return {status: "infeasible", engine};
  if (search.ray) return unbounded(scaled, search.ray, engine);
  if (!search.best)
    return {status: "undecided", reason: "the search for whole values ended at its limit without an answer"};
  const {values, activities, residual} = search.best;
  const original = Array.from(values, (value, j) => value * column[j]!);
  const objective = objectiveAt(program, original);
  if (search.status === "stopped") {
    return {
      status: "undecided",
      reason:
        "the search for whole values ended at its limit: a better answer than the best one found may exist",
      best: {objective, values: original},
    };
  }
  return {
    status: "optimal",
    objective,
    values: original,
    activities: Array.from(activities, (value, i) => value * row[i]!),
    degenerate: false,
    engine,
    check: {residual, fraction: largestFraction(program, original)},
  };
}

function unbounded({column}: Scaled, ray: Float64Array, engine: string): Outcome {
  const original = Array.from(ray, (step, j) => step * column[j]!);
  const longest = Math.max(...original.map(Math.abs));
  return {status: "unbounded", ray: original.map((step) => step / longest), engine};
}

function objectiveAt({variables}: LinearProgram, values: readonly number[]): number {
  return values.reduce((total, value, j) => total + value * variables[j]!.cost, 0);
}

function largestFraction({variables}: LinearProgram, values: readonly number[]): number {
  return values.reduce(
    (most, value, j) => (variables[j]!.integer ? Math.max(most, Math.abs(value - Math.round(value))) : most),
    0,
  );
}

function isDegenerate(
  {dense}: Scaled,
  basis: Basis,
  values: Float64Array,
  activities: Float64Array,
): boolean {
  const {columns: n, rows: m, lower, upper, rowLower, rowUpper} = dense;
  const meets = (value: number, limit: number) =>
    Math.abs(limit) < Infinity && Math.abs(value - limit) <= TOLERANCE * Math.max(1, Math.abs(limit));
  const onLimit = (value: number, low: number, high: number) => meets(value, low) || meets(value, high);
  for (let j = 0; j < n; j++)
    if (basis[j] === BASIC && onLimit(values[j]!, lower[j]!, upper[j]!)) return true;
  for (let i = 0; i < m; i++) {
    if (basis[n + i] === BASIC && onLimit(activities[i]!, rowLower[i]!, rowUpper[i]!)) return true;
  }
  return false;
}
