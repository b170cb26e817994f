import {firmness, firmnessReference} from "../../freezing/firmness.ts";
import {verdictBands} from "../../freezing/scoop.ts";
import {tenth} from "../../core/format.ts";
import type {SolveOptions} from "../../lp/solve/solve.ts";
import type {Brief} from "../brief/brief.ts";
import {tubOf} from "../measure/tub-of.ts";
import {noWorseThan, WARMEST} from "../program/no-worse.ts";
import {solveBrief} from "./solve-brief.ts";

/**
 * A brief with further limits, so that no mix has a worse verdict in its freezer than its own answer (see {@link noWorseThan}): other
 * mixes that are offered must be a frozen dessert as much as that answer is. Where the brief optimises nothing, so that any mix could be
 * its answer, the hardest that it allows is taken; where even that is soft, no limit is added.
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
