import type {Row} from "../../lp/program/program.ts";
import type {Brief, Target} from "../brief/brief.ts";
import {type Formulation, formulate} from "./formulate.ts";
import type {Meaning} from "./meaning.ts";

/**
 * The program of the mix that meets a brief with the least change from given shares: the sum of what is taken out and put
 * in is smallest. Each ingredient has a further variable, at least the size of its change either way.
 *
 * @param near share of the batch of each ingredient, in the brief's order
 * @param extra further targets beside the brief's
 */
export function formulateClosest(
  brief: Brief,
  near: readonly number[],
  extra: readonly Target[] = [],
): Formulation {
  const {program, meanings, shares} = formulate(brief, brief.aim, extra);
  const width = program.variables.length;
  const help: Meaning = {kind: "help"};
  const row = (
    name: string,
    coefficients: (index: number) => number,
    limits: Pick<Row, "lower" | "upper">,
  ): Row => ({
    name,
    coefficients: Array.from({length: width + near.length}, (_, index) => coefficients(index)),
    ...limits,
  });
  const changes = near.flatMap((share, j) => {
    const own = (change: number) => (index: number) =>
      index === j ? shares[j]! : index === width + j ? change : 0;
    const {name} = program.variables[j]!;
    return [row(`less ${name}`, own(1), {lower: share}), row(`more ${name}`, own(-1), {upper: share})];
  });
  return {
    program: {
      variables: [
        ...program.variables.map((variable) => ({...variable, cost: 0})),
        ...near.map((_, j) => ({name: `change of ${program.variables[j]!.name}`, cost: 1})),
      ],
      rows: [
        ...program.rows.map(({name, coefficients, ...limits}) =>
          row(name, (index) => coefficients[index] ?? 0, limits),
        ),
        ...changes,
      ],
    },
    meanings: [...meanings, ...changes.map(() => help)],
    shares,
  };
}
