/** Speed of the verified solve beside bare engines, in one process: `npx tsx tests/bench/lp.ts`. Medians, model building included. */
import jslp from "javascript-lp-solver";
import {solve as yalps} from "yalps";
import {loadHighs} from "../../lib/lp/engines/engine-highs.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {solveAsync} from "../../lib/lp/solve/solve-async.ts";
import {blend, wholeProgram} from "../support/programs.ts";
import {referenceOf} from "../support/reference-lp.ts";

const highs = await loadHighs();

/** The program as javascript-lp-solver and yalps take it. */
function keyed({variables, rows}: LinearProgram) {
  const constraints: Record<string, {min?: number; max?: number; equal?: number}> = {};
  const columns: Record<string, Record<string, number>> = {};
  const limits = (lower: number, upper: number) =>
    lower === upper
      ? {equal: lower}
      : {...(lower > -Infinity && {min: lower}), ...(upper < Infinity && {max: upper})};
  for (const [i, {lower = -Infinity, upper = Infinity}] of rows.entries())
    constraints[`r${i}`] = limits(lower, upper);
  for (const [j, {cost, lower = 0, upper = Infinity}] of variables.entries()) {
    const column: Record<string, number> = {cost};
    for (const [i, {coefficients}] of rows.entries())
      if (coefficients[j] !== 0) column[`r${i}`] = coefficients[j]!;
    if (lower > 0 || upper < Infinity) {
      constraints[`b${j}`] = limits(lower > 0 ? lower : -Infinity, upper);
      column[`b${j}`] = 1;
    }
    columns[`x${j}`] = column;
  }
  return {constraints, variables: columns};
}

const bare = (jslp as unknown as {Solve(model: unknown): unknown}).Solve.bind(jslp);
const engines: Record<string, (program: LinearProgram) => unknown> = {
  mixwright: (program) => solve(program),
  "bare jslp": (program) => bare({optimize: "cost", opType: "min", ...keyed(program)}),
  yalps: (program) => yalps({direction: "minimize", objective: "cost", ...keyed(program)}),
  HiGHS: (program) => referenceOf(highs, program),
};

function median(times: number[]): number {
  return times.toSorted((a, b) => a - b)[times.length >> 1]!;
}

function report(name: string, times: Record<string, number[]>): void {
  const own = median(times["mixwright"]!);
  const cells = Object.entries(times).map(([engine, all]) => {
    const time = median(all);
    const ratio = engine === "mixwright" ? "" : ` (mixwright takes ${(own / time).toFixed(2)} of it)`;
    return `${engine} ${time.toFixed(3)} ms${ratio}`;
  });
  console.log(`${name}: ${cells.join(", ")}`);
}

console.log("least-cost blends, about 20 range rows");
for (const [count, repeats] of [
  [10, 400],
  [30, 400],
  [100, 200],
  [300, 100],
  [1000, 40],
] as const) {
  const times: Record<string, number[]> = {};
  for (let k = 0; k < repeats; k++) {
    const {program} = blend(count, k % 50);
    for (const [engine, run] of Object.entries(engines)) {
      const started = performance.now();
      run(program);
      if (k >= repeats / 10) (times[engine] ??= []).push(performance.now() - started);
    }
  }
  report(`n = ${count}`, times);
}

console.log("\nat most so many ingredients, each 0 or at least 0.5 %");
for (const [count, most] of [
  [10, 5],
  [30, 7],
  [100, 8],
  [300, 8],
] as const) {
  const times: Record<string, number[]> = {};
  const ends: string[] = [];
  for (let seed = 1; seed <= 15; seed++) {
    const program = wholeProgram(count, seed, most);
    const started = performance.now();
    const outcome = await solveAsync(program, {now: () => performance.now()});
    (times["mixwright"] ??= []).push(performance.now() - started);
    ends.push(outcome.status);
    const again = performance.now();
    referenceOf(highs, program, {time_limit: 5});
    (times["HiGHS"] ??= []).push(performance.now() - again);
  }
  report(`n = ${count}`, times);
  const undecided = ends.filter((end) => end === "undecided").length;
  console.log(
    `   slowest ${Math.max(...times["mixwright"]!).toFixed(0)} ms, undecided ${undecided} of ${ends.length}`,
  );
}

const {program} = blend(30, 7);
const started = performance.now();
for (let k = 0; k < 1000; k++) {
  const {lower, upper, ...row} = program.rows[3]!;
  const step = (k - 500) * 1e-5;
  const moved = {
    ...row,
    ...(lower !== undefined && {lower: lower + step}),
    ...(upper !== undefined && {upper: upper + step}),
  };
  solve({...program, rows: program.rows.with(3, moved)});
}
console.log(
  `\n1,000-point sweep of one limit at n = 30: ${((performance.now() - started) / 1000).toFixed(3)} s`,
);
