import type {CostLine} from "../../../lib/kitchen/product/cost.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {inventedMoney, inventedPrice} from "../words/invented-money.ts";
import {type Money, unpricedWords} from "../words/money.ts";
import {row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** Cost of each ingredient, with the packs to open and what they leave; money at invented prices has its own ink. */
export function spendSheet({known, unpriced, invented, atInvented}: Money): HTMLElement {
  const packed = known.lines.some(({packs}) => packs !== undefined);
  const pack = ({packs, leftover}: Partial<CostLine> = {}) => {
    if (!packed) return [];
    return packs === undefined ? ["", ""] : [String(packs), grams(leftover ?? 0)];
  };
  const money = ({ingredient, cost}: CostLine) =>
    invented.includes(ingredient) ? inventedPrice(decimal(cost, 2), ingredient) : decimal(cost, 2);
  const total = decimal(known.total, 2);
  return sheet({
    heading: "Where the money goes",
    reading: [
      atInvented ? `Slanted money is ${atInvented.replace(/, none of them yours$/, "")}.` : "",
      unpriced.length ? unpricedWords(unpriced) : "",
      "Yours go behind “@” in the recipe, for a kilogram or for a pack, as in “@ 6.20 for 1000 g”: a pack adds how many to open and what is left.",
    ]
      .filter(Boolean)
      .join(" "),
    name: "Where the money goes",
    columns: ["", "g", "money", ...(packed ? ["packs", "left, g"] : [])],
    body: [...known.lines]
      .sort((a, b) => b.cost - a.cost)
      .map((line) => row(line.ingredient, [grams(line.grams), money(line), ...pack(line)])),
    foot: [
      row(unpriced.length ? "in all, without what has no price" : "in all", [
        grams(known.lines.reduce((sum, line) => sum + line.grams, 0)),
        atInvented ? inventedMoney(total) : total,
        ...pack(),
      ]),
      ...(packed ? [row("to lay out, whole packs", ["", decimal(known.outlay, 2), ...pack()])] : []),
    ],
  });
}
