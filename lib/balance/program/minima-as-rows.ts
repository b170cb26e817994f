import type {Brief} from "../brief/brief.ts";
import type {Formulation} from "./formulate.ts";

/** The same program with the least amounts as rows: without such a limit an ingredient may still not fall below nothing. */
export function withMinimaAsRows(brief: Brief, {program, meanings, shares}: Formulation): Formulation {
  const minima = brief.ingredients.flatMap(({min}, index) => (min > 0 ? [index] : []));
  return {
    program: {
      ...program,
      variables: program.variables.map((variable, j) =>
        minima.includes(j) ? {...variable, lower: 0} : variable,
      ),
      rows: [
        ...program.rows,
        ...minima.map((index) => ({
          name: brief.ingredients[index]!.ingredient.name,
          coefficients: program.variables.map((_, j) => (j === index ? 1 : 0)),
          lower: program.variables[index]!.lower!,
        })),
      ],
    },
    meanings: [...meanings, ...minima.map((index) => ({kind: "minimum", index}) as const)],
    shares,
  };
}
