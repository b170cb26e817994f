import {ProgramBuilder} from "../../lp/program/builder.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import type {Brief, Target} from "../brief/brief.ts";
import {type Formulation, formulate} from "./formulate.ts";
import {HELP, type RowOrigin} from "./row-origin.ts";

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
  extra: readonly Target[],
): Formulation {
  const {program, origins, shares} = formulate(brief, brief.aim, extra);
  const builder = new ProgramBuilder<RowOrigin>(
    withCosts(program, () => 0),
    origins,
  );
  for (const [j, share] of near.entries()) {
    const change = {name: `change of ${program.variables[j]!.name}`, cost: 1};
    builder.distance(change, [[builder.variableAt(j), shares[j]!]], share, HELP);
  }
  return {...builder.build(), shares};
}
