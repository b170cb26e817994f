import type {LinearProgram, Outcome} from "../../lib/lp/program/program.ts";

/**
 * What is wrong with an outcome, in words; nothing if it is proved by its own figures.
 *
 * Optimum: limits kept, stationarity, signs of prices, complementary slackness, objective (the Karush-Kuhn-Tucker conditions, as
 * in the solver tests of CVXPY). Conflict: Farkas' lemma. Endless improvement: the ray. All computed here afresh, without the
 * library's own checks, relative to the sizes of the terms.
 */
export function faultsOf(program: LinearProgram, outcome: Outcome, tolerance = 1e-7): string[] {
  if (outcome.status === "optimal") return faultsOfOptimum(program, outcome, tolerance);
  if (outcome.status === "infeasible")
    return outcome.certificate ? faultsOfConflict(program, outcome.certificate) : [];
  if (outcome.status === "unbounded") return faultsOfRay(program, outcome.ray);
  return [];
}

type Optimum = Extract<Outcome, {status: "optimal"}>;

function faultsOfOptimum(program: LinearProgram, outcome: Optimum, tolerance: number): string[] {
  const {variables, rows, sense} = program;
  const {values, activities, duals, reducedCosts} = outcome;
  const faults: string[] = [];
  const check = (what: string, fault: number, size: number) => {
    if (!(fault <= tolerance * size)) faults.push(`${what}: off by ${fault}, sizes near ${size}`);
  };
  const typical = Math.max(1e-3, ...values.map(Math.abs));
  const objective = variables.map(({cost}, j) => cost * values[j]!);
  check("objective", Math.abs(sum(objective) - outcome.objective), size(objective) + 1e-12);
  for (const [j, {lower = 0, upper = Infinity, integer, name}] of variables.entries()) {
    check(
      `bounds of ${name}`,
      Math.max(lower - values[j]!, values[j]! - upper),
      Math.max(Math.abs(values[j]!), 1e-3 * typical),
    );
    if (integer) check(`whole ${name}`, Math.abs(values[j]! - Math.round(values[j]!)), 10);
  }
  const sizes = rows.map(({coefficients}) =>
    Math.max(size(products(coefficients, values)), 1e-3 * typical * largest(coefficients)),
  );
  for (const [i, {coefficients, lower = -Infinity, upper = Infinity, name}] of rows.entries()) {
    const activity = sum(products(coefficients, values));
    check(`activity of ${name}`, Math.abs(activity - activities[i]!), sizes[i]!);
    check(`limits of ${name}`, Math.max(lower - activity, activity - upper), sizes[i]!);
  }
  if (!duals || !reducedCosts) return faults;
  const sign = sense === "maximise" ? -1 : 1;
  const dearest = largest(variables.map(({cost}) => cost));
  for (const [j, {cost, lower = 0, upper = Infinity, name}] of variables.entries()) {
    const shares = rows.map(({coefficients}, i) => coefficients[j]! * duals[i]!);
    const scale = Math.abs(cost) + size(shares) + 1e-6 * dearest + 1e-12;
    check(`stationarity of ${name}`, Math.abs(cost - sum(shares) - reducedCosts[j]!), scale);
    checkPrice(
      `reduced cost of ${name}`,
      sign * reducedCosts[j]!,
      values[j]!,
      lower,
      upper,
      scale,
      Math.max(Math.abs(values[j]!), 1e-3 * typical),
    );
  }
  for (const [i, {coefficients, lower = -Infinity, upper = Infinity, name}] of rows.entries()) {
    const scale =
      largestPrice(
        coefficients,
        variables.map(({cost}) => cost),
      ) + Math.abs(duals[i]!);
    checkPrice(`price of ${name}`, sign * duals[i]!, activities[i]!, lower, upper, scale, sizes[i]!);
  }
  return faults;

  /** A price above 0 (minimising) needs a binding lower limit, one below 0 a binding upper one. */
  function checkPrice(
    what: string,
    price: number,
    value: number,
    lower: number,
    upper: number,
    scale: number,
    length: number,
  ) {
    if (Math.abs(price) <= tolerance * scale) return;
    const limit = price > 0 ? lower : upper;
    check(
      `${what} at its limit`,
      Math.abs(value - limit),
      length + (Number.isFinite(limit) ? Math.abs(limit) : 0),
    );
  }
}

function faultsOfConflict({variables, rows}: LinearProgram, multipliers: readonly number[]): string[] {
  let margin = 0;
  const terms: number[] = [];
  const add = (term: number) => {
    margin += term;
    terms.push(term);
  };
  for (const [i, {lower = -Infinity, upper = Infinity}] of rows.entries()) {
    const y = multipliers[i]!;
    if (y !== 0) add(y * (y > 0 ? lower : upper));
  }
  for (const [j, {lower = 0, upper = Infinity}] of variables.entries()) {
    const shares = rows.map(({coefficients}, i) => coefficients[j]! * multipliers[i]!);
    // Rounding leaves traces of multipliers that cancel; they are relative to the largest coefficient of each row.
    const traces = size(rows.map(({coefficients}, i) => largest(coefficients) * multipliers[i]!));
    const total = sum(shares);
    if (Math.abs(total) > 1e-11 * Math.max(size(shares), 0.1 * traces))
      add(-total * (total > 0 ? upper : lower));
  }
  return margin > 1e-12 * size(terms) ? [] : [`conflict: margin ${margin} of terms near ${size(terms)}`];
}

function faultsOfRay({variables, rows, sense}: LinearProgram, ray: readonly number[]): string[] {
  const faults: string[] = [];
  const stays = (what: string, step: number, lower: number, upper: number, scale: number) => {
    if (Math.abs(step) > 1e-10 * scale && (step > 0 ? upper : -lower) < Infinity)
      faults.push(`${what} ends the ray`);
  };
  for (const [j, {lower = 0, upper = Infinity, name}] of variables.entries())
    stays(name, ray[j]!, lower, upper, 1e-6);
  for (const {coefficients, lower = -Infinity, upper = Infinity, name} of rows) {
    const terms = products(coefficients, ray);
    stays(name, sum(terms), lower, upper, size(terms));
  }
  const gain = products(
    variables.map(({cost}) => (sense === "maximise" ? cost : -cost)),
    ray,
  );
  if (!(sum(gain) > 1e-10 * size(gain))) faults.push(`the ray gains ${sum(gain)}`);
  return faults;
}

function products(a: readonly number[], b: readonly number[]): number[] {
  return a.map((value, k) => value * b[k]!);
}

function sum(terms: readonly number[]): number {
  return terms.reduce((total, term) => total + term, 0);
}

function size(terms: readonly number[]): number {
  return terms.reduce((total, term) => total + Math.abs(term), 0);
}

function largest(terms: readonly number[]): number {
  return terms.reduce((most, term) => Math.max(most, Math.abs(term)), 0);
}

/** The largest cost per unit of a row that any of its variables has: the natural size of its price. */
function largestPrice(coefficients: readonly number[], costs: readonly number[]): number {
  return coefficients.reduce(
    (most, a, j) => (a === 0 ? most : Math.max(most, Math.abs(costs[j]! / a))),
    1e-12,
  );
}
