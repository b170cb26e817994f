import {tenth} from "../../core/format.ts";
import {firmness, firmnessReference, unclippedFirmness} from "../../freezing/firmness.ts";
import {COLDEST_SCOOP, verdictAt, verdictBands} from "../../freezing/scoop.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Brief, Target} from "../brief/brief.ts";
import {REACH_ROOM} from "../measure/scoop-temperature.ts";
import {tubOf} from "../measure/tub-of.ts";

/** Warmest temperature at which a mix is asked to hold its shape, °C: the model of ice ends at 0. */
export const WARMEST = -0.1;

/** A freezer, the air beaten into the mix, and the kitchen's calibration. */
type Tub = Pick<Brief, "freezer" | "overrun" | "learned">;

/**
 * Limits on the firmness that leave no mix a worse verdict in the freezer than a given one has: none that is softer than what
 * scoops, unless the given one is (then none softer than that), none that is harder, and none that never hardens where the
 * given one does.
 *
 * @param composition of the given mix, g per 100 g
 */
export function noWorseThan(composition: Composition, brief: Tub): Target[] {
  const tub = tubOf(brief);
  const at = Math.min(WARMEST, tenth(brief.freezer));
  const reference = firmnessReference(tub.overrun, tub.learned);
  const hard = firmness(composition, at);
  const [, scoops, firm] = verdictBands(tub);
  const verdict = verdictAt(composition, at, tub);
  const most = verdict === "hard" ? undefined : Math.max(hard, (verdict === "firm" ? firm : scoops)!.to);
  const limits: Target = {
    subject: {kind: "firmness", at},
    min: Math.min(unclippedFirmness(composition, at), scoops!.from) - reference,
    ...(most !== undefined && {max: most - reference}),
  };
  if (verdict === "never hardens") return [limits];
  const reach = Math.min(unclippedFirmness(composition, COLDEST_SCOOP) - reference, REACH_ROOM);
  return [limits, {subject: {kind: "firmness", at: COLDEST_SCOOP}, min: reach}];
}
