import type {Brief} from "../../balance/brief/brief.ts";
import type {Amount, Conflict, ConflictingLimit, Relaxation} from "../../balance/mix/answer.ts";
import {tubOf} from "../../balance/measure/tub-of.ts";
import {scooping} from "../../freezing/scoop.ts";
import {firstWarnings} from "../../kitchen/product/first-warnings.ts";
import {mixCautions} from "../../kitchen/product/mix-cautions.ts";
import {mixComposition} from "../../pantry/mix.ts";
import {amountLines, limitName, wrap, wrapWords} from "./report-lines.ts";
import {decimal} from "../../core/format.ts";
import {plainName} from "../text/plain-name.ts";

/** New value of a limit, in words. */
export function changeWords({of, to, toPercent, dropped, inStock}: Relaxation): string {
  if (dropped) return "leave it out";
  const unit = {target: "", rule: "", ingredient: " g", dose: " %"}[of];
  const figure = toPercent === undefined ? `${decimal(to, 2)}${unit}` : `${decimal(toPercent, 2)} %`;
  return inStock ? `have ${figure} of it` : `make it ${figure}`;
}

/** Cautions about the example of a conflict: the limits alone do not make it food. */
export function exampleCautions(amounts: readonly Amount[], brief: Brief): string[] {
  const known = new Map(brief.ingredients.map(({ingredient: {name, composition}}) => [name, composition]));
  const composition = mixComposition(
    amounts.map(({ingredient, grams}) => ({composition: known.get(ingredient) ?? {}, grams})),
  );
  const scoop = scooping(composition, brief.freezer, tubOf(brief));
  return [...new Set([...firstWarnings({composition, scoop}), ...mixCautions(composition)])];
}

function limitLines(limits: readonly ConflictingLimit[]): string[] {
  return limits.map(
    (limit) => `  ${limitName(limit)}${limit.of === "dose" ? '; raise it with "doses"' : ""}`,
  );
}

/** The conflict and the remedies, as text. */
export function conflictText(
  {targets, more, behind, relaxations, relaxation, amounts, reach, openers, cutShort}: Conflict,
  brief: Brief,
): string {
  const {batch} = brief;
  const sections = [
    ["No mix of these ingredients meets every target."],
    targets.length
      ? [
          targets.length < 2 ? "This cannot be met at all:" : "These cannot hold together:",
          ...limitLines(targets),
        ]
      : [],
    more ? ["Other limits conflict as well: to drop one of these is not enough."] : [],
    behind?.targets.length
      ? [`Without “${limitName(behind.without)}”, these still cannot hold:`, ...limitLines(behind.targets)]
      : [],
    reach
      ? [`By itself, ${plainName(reach.target)} reaches ${decimal(reach.best, 2)} with these ingredients.`]
      : [],
    relaxations.length
      ? [
          "The least change that makes it possible:",
          ...relaxations.map((move) => `  ${limitName({...move, limit: move.from})}: ${changeWords(move)}`),
        ]
      : relaxation === "impossible"
        ? ["No change of the limits alone makes it possible: a rule or the batch stands in the way."]
        : cutShort
          ? []
          : ["Which change would let them meet was not searched to the end."],
    amounts
      ? [
          "With that change, for example:",
          ...amountLines({amounts, batch}),
          ...exampleCautions(amounts, brief).flatMap(wrapWords),
        ]
      : [],
    openers.length
      ? ["Or add one of these to the ingredients, and it can be met:", ...wrap(openers.join(", "))]
      : [],
    cutShort
      ? [
          "The time limit came before all of this was searched: fewer limits may",
          "conflict than are named here, and a change or an ingredient that helps may",
          "be missing. Allow more time (--deadline in the command) to see them.",
        ]
      : [],
  ];
  return sections
    .filter((lines) => lines.length)
    .map((lines) => lines.join("\n"))
    .join("\n\n");
}
