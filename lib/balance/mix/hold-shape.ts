import {firmness, firmnessReference} from "../../freezing/firmness.ts";
import {verdictBands} from "../../freezing/scoop.ts";
import {tenth} from "../../core/format.ts";
import type {SolveOptions} from "../../lp/solve/solve.ts";
import type {Brief} from "../brief/brief.ts";
import {tubOf} from "../measure/tub-of.ts";
import {noWorseThan, WARMEST} from "../program/no-worse.ts";
import {solveBrief} from "./solve-brief.ts";

/**
 * A brief with limits that leave out whatever is worse in its freezer than its own answer (see {@link noWorseThan}): what is
 * offered beside that answer must be as much of a frozen dessert. Where the brief optimises nothing, so that its answer is any
 * mix, that answer is the hardest that it allows; where even that is soft, nothing is left out.
 */
export function holdingShape(brief: Brief, search: SolveOptions = {}): Brief {
  const at = Math.min(WARMEST, tenth(brief.freezer));
  const aim = brief.aim ?? {sense: "maximise", subject: {kind: "firmness", at}};
  const {wholePacks: _wholePacks, ...plain} = brief;
  const best = solveBrief(plain, brief.name, aim, [], search);
  if (best.status !== "optimal") return brief;
  if (brief.aim) return {...brief, targets: [...brief.targets, ...noWorseThan(best.composition, brief)]};
  const {from} = verdictBands(tubOf(brief)).find(({verdict}) => verdict === "scoops")!;
  if (firmness(best.composition, at) < from) return brief;
  const least = from - firmnessReference(brief.overrun, brief.learned);
  return {...brief, targets: [...brief.targets, {subject: {kind: "firmness", at}, min: least}]};
}
