import {decimal, degrees} from "../../core/format.ts";
import {initialFreezingPoint} from "../../freezing/ice.ts";
import type {Scooping} from "../../freezing/scoop.ts";
import {costOf} from "../product/cost.ts";
import {type Component, productDensity, productLines} from "../product/product.ts";
import type {Machine} from "../size/scale.ts";
import {scoopsAt} from "../size/scoop-words.ts";
import type {ScaledProduct} from "../product/scale-product.ts";

/**
 * The batch in figures, label and value with its unit.
 *
 * @param base the churned component
 * @param asked further contents: overrun, % of the mix's volume; whether to give the cost; the machine whose runs to give
 */
export function sheetFigures(
  scaled: ScaledProduct,
  base: Component,
  scoop: Scooping,
  {overrun, cost, machine}: {readonly overrun?: number; readonly cost?: boolean; readonly machine?: Machine},
): {label: string; value: string}[] {
  const freezes = initialFreezingPoint(base.composition);
  const runs = scaled.runs === 1 ? "1 run" : `${scaled.runs} runs of ${decimal(scaled.gramsPerRun, 0)} g`;
  return [
    {label: "Finished", value: `${decimal(scaled.grams, 0)} g`},
    {
      label: "Mix to churn",
      value: `${decimal(scaled.mixGrams, 0)} g, ${decimal(scaled.mixMillilitres / 1000, 2)} l`,
    },
    ...(machine ? [{label: "Machine", value: runs}] : []),
    ...(overrun === undefined
      ? []
      : [
          {
            label: `One litre at ${overrun} % overrun`,
            value: `${(1000 * productDensity(scaled.product, overrun)).toFixed(0)} g`,
          },
        ]),
    ...(freezes === undefined ? [] : [{label: "Starts to freeze", value: `${degrees(freezes)}`}]),
    {label: `Scoops at ${decimal(scoop.overrun, 0)} % overrun, estimated`, value: scoopsAt(scoop)},
    ...(cost ? [{label: "Ingredients cost", value: costOfAll(scaled)}] : []),
  ];
}

/** Cost of the ingredients, in the currency of the prices; ingredients without a price are named. */
function costOfAll({product, grams}: ScaledProduct): string {
  const lines = productLines(product, grams);
  const unpriced = lines.filter(({ingredient}) => ingredient.price === undefined);
  if (unpriced.length)
    return `not known: no price for ${unpriced.map(({ingredient}) => ingredient.name).join(", ")}`;
  const {total} = costOf(lines);
  return `${decimal(total, 2)}, ${decimal((1000 * total) / grams, 2)} per kg`;
}
