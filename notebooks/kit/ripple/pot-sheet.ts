import type {RippleMade} from "../../../lib/kitchen/ripple/ripple-brief.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {inventedMoney, inventedPrice} from "../words/invented-money.ts";
import {row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** Sheet of the pot: what goes in, what comes out, and the cost: nothing is said of what has no price, invented ones are slanted. */
export function potSheet(
  {recipe, cooked, cost}: RippleMade,
  {unpriced, own}: {readonly unpriced: readonly string[]; readonly own: ReadonlySet<string>},
): HTMLElement {
  const total = recipe.lines.reduce((sum, {grams: g}) => sum + g, 0);
  const less = (g: number) => (g > 0 ? `−${grams(g)}` : grams(g));
  const money = (value: number, invented: boolean) =>
    invented ? inventedMoney(decimal(value, 2)) : decimal(value, 2);
  const gaps = recipe.lines.filter(({ingredient}) => unpriced.includes(ingredient.name));
  const invented = recipe.lines.some(({ingredient}) => !own.has(ingredient.name));
  return sheet({
    heading: "What goes into the pot",
    reading: `The least dear amounts that meet what is asked.${invented && gaps.length < recipe.lines.length ? " Slanted money is at invented prices: type yours beside the ingredient." : ""} Weigh the pot empty first: the scale says when to stop.`,
    name: "What goes into the pot",
    columns: ["", "g", "money"],
    body: recipe.lines.map(({ingredient, grams: g}) =>
      row(ingredient.name, [
        grams(g),
        gaps.some((one) => one.ingredient.name === ingredient.name)
          ? "–"
          : own.has(ingredient.name)
            ? decimal((g * (ingredient.price ?? 0)) / 1000, 2)
            : inventedPrice(decimal((g * (ingredient.price ?? 0)) / 1000, 2), ingredient.name),
      ]),
    ),
    foot: [
      row("in the pot", [grams(total), gaps.length ? "–" : money(cost, invented)]),
      ...(cooked.sievedOut > 0 ? [row("stays in the sieve", [less(cooked.sievedOut), ""])] : []),
      row("boils off", [less(cooked.waterBoiledOff), ""]),
      row("cooked ripple", [grams(cooked.grams), ""]),
    ],
  });
}
