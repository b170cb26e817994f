import type {Conflict} from "./answer.ts";
import type {Brief} from "./brief.ts";
import type {Formulation} from "./formulate.ts";
export function explainConflict(_brief: Brief, _formulation: Formulation): Conflict {
  return {targets: [], relaxations: []};
}
