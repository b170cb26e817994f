import {ProgramBuilder} from "../../lp/program/builder.ts";
import type {Brief} from "../brief/brief.ts";
import type {Formulation} from "./formulate.ts";
import type {RowOrigin} from "./row-origin.ts";

/** The same program with the least amounts as rows; with such a row left out, an amount still cannot be negative. */
export function withMinimaAsRows(brief: Brief, {program, origins, shares}: Formulation): Formulation {
  const minima = brief.ingredients.flatMap(({min}, index) => (min > 0 ? [index] : []));
  const variables = program.variables.map((variable, j) =>
    minima.includes(j) ? {...variable, lower: 0} : variable,
  );
  const builder = new ProgramBuilder<RowOrigin>({...program, variables}, origins);
  for (const index of minima) {
    const {name, lower} = program.variables[index]!;
    builder.row({name, terms: [[builder.variableAt(index), 1]], lower: lower!}, {kind: "minimum", index});
  }
  return {...builder.build(), shares};
}
