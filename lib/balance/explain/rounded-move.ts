import {roomy} from "../../core/format.ts";
import type {Relaxation} from "../mix/answer.ts";
import type {Brief, Choice} from "../brief/brief.ts";
import {measureOf, type Subject} from "../measure/measures.ts";

/**
 * A move as it is listed and applied: to the hundredth that leaves more room, in the unit that the cook gave the limit in,
 * within what a brief may say. A temperature that no brief may ask for means that the limit goes.
 */
export function roundedMove(
  {batch}: Pick<Brief, "batch">,
  move: Relaxation,
  choice?: Choice,
  subject?: Subject,
): Relaxation {
  const {bound} = move;
  if (choice) {
    const raised =
      bound === "max" && choice.ingredient.stock !== undefined && move.to > choice.ingredient.stock;
    const {inStock: _inStock, ...rest} = move;
    const stock = raised ? ({inStock: true} as const) : {};
    if (move.percent === undefined || raised)
      return {...withoutPercent(rest), ...stock, to: Math.max(0, roomy(bound, move.to))};
    const toPercent = Math.min(100, Math.max(0, roomy(bound, (100 * move.to) / batch)));
    return {...rest, toPercent, to: (toPercent * batch) / 100};
  }
  if (!subject) return {...move, to: Math.min(100, roomy(bound, move.to))};
  const [lowest, highest] = measureOf(subject).range(subject);
  const to = Number.isFinite(move.to) ? roomy(bound, move.to) : move.to;
  if (to >= lowest && to <= highest) return {...move, to};
  const end = to < lowest ? lowest : highest;
  return {...move, to: end, ...(measureOf(subject).temperature && {dropped: true as const})};
}

function withoutPercent({percent: _percent, ...move}: Relaxation): Relaxation {
  return move;
}
