import type {Conflict} from "../balance/answer.ts";
import {amountLines, limitName, wrap} from "./report-lines.ts";
import {decimal, roomy} from "../core/figures.ts";
import {plainName} from "./plain-name.ts";

/** Why no mix exists, and what would help, as text. */
export function conflictText(
  {targets, relaxations, amounts, reach, openers, cutShort}: Conflict,
  batch: number,
): string {
  const sections = [
    ["No mix of these ingredients meets every target."],
    targets.length
      ? [
          "These cannot hold together:",
          ...targets.map(
            (limit) => `  ${limitName(limit)}${limit.of === "dose" ? '; raise it with "doses"' : ""}`,
          ),
        ]
      : [],
    reach
      ? [`By itself, ${plainName(reach.target)} reaches ${decimal(reach.best, 2)} with these ingredients.`]
      : [],
    relaxations.length
      ? [
          "The least change that lets them meet:",
          ...relaxations.map(
            ({from, to, ...limit}) =>
              `  ${limitName({...limit, limit: from})}: make it ${decimal(roomy(limit.bound, to), 2)}`,
          ),
        ]
      : [],
    amounts ? ["With that change, for example:", ...amountLines({amounts, batch})] : [],
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
