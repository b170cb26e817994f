import type {Brief} from "../../balance/brief/brief.ts";
import type {Amount, Conflict} from "../../balance/mix/answer.ts";
import {decimal, grams} from "../../core/format.ts";
import {changeWords, exampleCautions} from "../report/report-conflict.ts";
import {plainName} from "../text/plain-name.ts";
import type {TableSection} from "../text/tables.ts";

/** The conflict and the remedies, as tables. */
export function conflictSections(
  {targets, relaxations, amounts}: Conflict,
  brief: Brief | undefined,
): TableSection[] {
  return [
    {
      heading: "No mix meets every target",
      sentences: [targets.length < 2 ? "This cannot be met at all:" : "These cannot hold together:"],
      columns: ["Target", "Bound", "Limit"],
      rows: targets.map((t) => [plainName(t.target), t.bound, decimal(t.limit, 2)]),
    },
    {
      heading: "The least change that makes it possible",
      columns: ["Target", "Bound", "From", "To"],
      rows: relaxations.map((t) => [plainName(t.target), t.bound, decimal(t.from, 2), changeWords(t)]),
    },
    ...(amounts
      ? [
          {
            ...amountsSection("With that change, for example", amounts),
            ...(brief && {sentences: exampleCautions(amounts, brief)}),
          },
        ]
      : []),
  ];
}

/** Amounts as a table, without those that are next to nothing. */
export function amountsSection(heading: string, amounts: readonly Amount[]): TableSection {
  return {
    heading,
    columns: ["Ingredient", "g", "%"],
    rows: amounts
      .filter(({percent}) => percent > 1e-4)
      .map(({ingredient, grams: g, percent}) => [ingredient, grams(g), decimal(percent, 2)]),
  };
}
