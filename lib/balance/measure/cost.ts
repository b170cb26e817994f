import {InputError} from "../../core/errors.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedPlainly} from "./naming.ts";
import {MONEY} from "./units.ts";
import {weightedSum} from "./weighted-sum.ts";

/** The cost of the ingredients. */
export interface CostSubject {
  readonly kind: "cost";
}

const named = namedPlainly("cost");

/** The cost of the ingredients, money per kg of mix. */
export const cost: Measure<CostSubject, "limits"> = {
  ...weightedSum<CostSubject>(named.name, (_, {price}) => price ?? 0),
  kind: "cost",
  written: "limits",
  meaning: "cost of the ingredients, money per kg of mix",
  named: named.named,
  unit: () => MONEY,
  range: () => [0, Infinity],
  isUnknownIn: (_, {price}) => price === undefined,
  offers: [
    {
      key: "cost",
      subject: () => ({kind: "cost"}),
      axis: {name: "cost", better: "minimise", digits: 2, ends: ["cheapest", "dearest"]},
    },
  ],
};

/**
 * Refuses ingredients without a price, where the cost is asked for.
 *
 * @throws InputError naming them
 */
export function requirePrices(choices: MixContext["ingredients"], place: string): void {
  const without = choices
    .filter(({ingredient}) => ingredient.price === undefined)
    .map(({ingredient}) => ingredient.name);
  if (without.length) {
    throw new InputError(
      `${place}: ingredients`,
      `no price for ${without.slice(0, 5).join(", ")}${without.length > 5 ? " …" : ""}`,
      undefined,
      'give each a "price" in money per kg (0 if it is free), or minimise something else',
    );
  }
}
