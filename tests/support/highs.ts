import * as module from "highs";
import type {LegacyHighs} from "highs";
import type {LinearProgram} from "../../lib/lp/program.ts";

// Its type declarations describe another module format than the one that is loaded.
const highs = await (module as unknown as {default: () => Promise<LegacyHighs>}).default();

/** The verdict of HiGHS (an independent solver) on a program, at tight tolerances. */
export function solveByHighs(program: LinearProgram): {status: string; objective: number} {
  const solution = highs.solve(lpText(program), {
    primal_feasibility_tolerance: 1e-9,
    dual_feasibility_tolerance: 1e-9,
    presolve: "off",
    output_flag: false,
  });
  return {status: solution.Status, objective: solution.ObjectiveValue};
}

/** A program in the CPLEX LP format. */
function lpText({sense, variables, rows}: LinearProgram): string {
  const terms = (coefficients: readonly number[]) =>
    coefficients.map((c, j) => (c === 0 ? "" : ` ${c < 0 ? "-" : "+"} ${Math.abs(c)} x${j}`)).join("") ||
    " 0 x0";
  const lines = [
    sense === "maximise" ? "Maximize" : "Minimize",
    `obj:${terms(variables.map(({cost}) => cost))}`,
    "Subject To",
  ];
  for (const [i, {coefficients, lower, upper}] of rows.entries()) {
    if (lower !== undefined) lines.push(`l${i}:${terms(coefficients)} >= ${lower}`);
    if (upper !== undefined) lines.push(`u${i}:${terms(coefficients)} <= ${upper}`);
  }
  lines.push("Bounds");
  for (const [j, {lower = 0, upper = Infinity}] of variables.entries()) {
    lines.push(`${lower === -Infinity ? "-inf" : lower} <= x${j} <= ${upper === Infinity ? "+inf" : upper}`);
  }
  const whole = variables.flatMap(({integer}, j) => (integer ? [`x${j}`] : []));
  return [...lines, ...(whole.length ? ["General", ...whole] : []), "End", ""].join("\n");
}
