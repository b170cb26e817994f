import {tenth} from "../../core/format.ts";
import {COLDEST} from "../../freezing/held-water.ts";
import {unclippedHardPhase} from "../../freezing/ice.ts";
import {referenceHardPhase, verdictAt, verdictBands} from "../../freezing/scoop.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Target} from "../brief/brief.ts";
import {REACH_ROOM} from "../measure/scoop-temperature.ts";

/** Warmest temperature at which a mix is asked to hold its shape, °C: the model of ice ends at 0. */
export const WARMEST = -0.1;

/**
 * Limits on the hard phase that leave no mix a worse verdict in the freezer than a given one has: none that is softer than what
 * scoops, unless the given one is (then none softer than that), none that is harder, and none that never hardens where the
 * given one does.
 *
 * @param composition of the given mix, g per 100 g
 * @param freezer °C
 */
export function noWorseThan(composition: Composition, freezer: number): Target[] {
  const at = Math.min(WARMEST, tenth(freezer));
  const hard = unclippedHardPhase(composition, at);
  const [, scoops, firm] = verdictBands();
  const verdict = verdictAt(composition, at);
  const most = verdict === "hard" ? undefined : Math.max(hard, (verdict === "firm" ? firm : scoops)!.to);
  const limits: Target = {
    subject: {kind: "hardPhase", at},
    min: Math.min(hard, scoops!.from),
    ...(most !== undefined && {max: most}),
  };
  if (verdict === "never hardens") return [limits];
  const reach = Math.min(unclippedHardPhase(composition, COLDEST), referenceHardPhase().mean + REACH_ROOM);
  return [limits, {subject: {kind: "hardPhase", at: COLDEST}, min: reach}];
}
