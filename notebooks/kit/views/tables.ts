import {html} from "htl";
import {scoopsAt} from "../../../lib/kitchen/size/scoop-words.ts";
import type {Prices} from "../../../lib/balance/explain/prices.ts";
import type {Binding} from "../../../lib/balance/mix/answer.ts";
import type {BriefInput, LimitsInput} from "../../../lib/balance/brief/brief-schema.ts";
import {decimal, degrees, grams} from "../../../lib/core/format.ts";
import {type MixMoney, OWN_MONEY} from "./mix-money.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {limit, setting} from "../words/numbers.ts";
import {figure} from "../page/plot.ts";
import {cell, column, row, small, withUnit} from "../page/row.ts";
import {limitLabel, limitText} from "./conflict-notice.ts";
import {keyed, sheet, table} from "../page/sheet.ts";

/** Shares below this are not in the mix, g per 100 g. */
export const TRACE = 1e-4;

/** Amounts to weigh for each mix, g, with the batch and its cost below. */
export function weighingSheet(
  mixes: readonly ShownMix<WeighedMix>[],
  money: MixMoney = OWN_MONEY,
): HTMLElement | undefined {
  const [first] = mixes;
  if (!first) return undefined;
  const {batch} = first.mix;
  const names = first.mix.amounts
    .map(({ingredient}, i) => ({
      ingredient,
      i,
      most: Math.max(...mixes.map(({mix}) => mix.amounts[i]!.percent)),
    }))
    .filter(({most}) => most > TRACE)
    .sort((a, b) => first.mix.amounts[b.i]!.grams - first.mix.amounts[a.i]!.grams || b.most - a.most);
  const weight = ({mix}: ShownMix<WeighedMix>, i: number) => {
    const {grams: g, percent} = mix.amounts[i]!;
    return percent > TRACE ? grams(g) : cell("–", "none");
  };
  const sum = (value: number | undefined) => (value === undefined ? "–" : money.write(decimal(value, 2)));
  const below = (heading: string, read: (shown: ShownMix<WeighedMix>) => string | HTMLElement) =>
    row(heading, mixes.map(read));
  return sheet({
    heading: "What to weigh",
    reading: `Grams for a batch of ${grams(batch)} g.${money.words && ` Money ${money.words}.`}`,
    name: "What to weigh, g",
    columns: [small("g"), ...keyed(mixes)],
    body: names.map(({ingredient, i}) =>
      row(
        ingredient,
        mixes.map((shown) => weight(shown, i)),
      ),
    ),
    foot: [
      below("in all", () => grams(batch)),
      below("cost of the batch", ({mix}) => sum(mix.cost)),
      below("cost per kg", ({mix}) =>
        sum(mix.cost === undefined ? undefined : (mix.cost / mix.batch) * 1000),
      ),
    ],
  });
}

/** Rows of the table of properties: what they are called, the target they answer, and how they read. */
const PROPERTIES: readonly (readonly [
  name: string,
  unit: string,
  target: string,
  read: (mix: WeighedMix) => string,
])[] = [
  ["fat", "%", "fat", ({shares}) => percent(shares.fat)],
  ["MSNF", "%", "msnf", ({shares}) => percent(shares.msnf)],
  ["total solids", "%", "totalSolids", ({shares}) => percent(shares.totalSolids)],
  ["sugars without lactose", "%", "sugars", ({shares}) => percent(shares.sugars)],
  ["dextrose + glucose-syrup solids", "%", "glucose", ({shares}) => percent(shares.glucose)],
  ["egg yolk solids", "%", "eggYolkSolids", ({shares}) => percent(shares.eggYolkSolids)],
  ["sweetness", "sucrose = 100", "sweetness", ({shares}) => percent(shares.sweetness)],
  ["freezing point", "", "freezingPoint", ({freezing}) => temperature(freezing.initialFreezingPoint, 2)],
  ["scoop temperature", "", "scoopTemperature", ({scoop}) => scoopsAt(scoop)],
  ["from the freezer", "", "", ({scoop}) => scoop.verdict],
];

/** Properties of each mix beside what was asked: shares, freezing point, scoop temperature. */
export function propertySheet(
  mixes: readonly ShownMix<WeighedMix>[],
  {targets = {}}: Pick<BriefInput, "targets">,
  freezer: number,
): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  return sheet({
    heading: "What comes out",
    reading: `In 100 g of mix; your limit below each name. Freezer ${setting(freezer)}.`,
    columns: ["", ...keyed(mixes)],
    body: PROPERTIES.map(([name, unit, target, read]) => {
      const asked = wish((targets as Record<string, LimitsInput | undefined>)[target]);
      return row(
        [...withUnit(name, unit), ...(asked ? [html`<span class="asked">${asked}</span>`] : [])],
        mixes.map(({mix}) => read(mix)),
      );
    }),
  });
}

/** Limits in words. */
function wish({min, max}: LimitsInput = {}): string {
  if (min !== undefined && max !== undefined)
    return min === max ? `exactly ${limit(min)}` : `${limit(min)} to ${limit(max)}`;
  return min !== undefined ? `at least ${limit(min)}` : max !== undefined ? `at most ${limit(max)}` : "";
}

function temperature(value: number | undefined, digits: number): string {
  return value === undefined ? "–" : degrees(value, digits);
}

/** The limits that hold the cheapest mix where it is, and what each costs. */
export function bindingSheet(
  [first]: readonly ShownMix[],
  freezer: number,
  prices?: Prices,
): HTMLElement | undefined {
  if (!first) return undefined;
  const {mix} = first;
  const range = ({path, bound}: Binding) => {
    const {from, to} = prices?.limits.find((one) => one.path === path && one.bound === bound) ?? {};
    if (from === undefined || to === undefined) return "–";
    return `${limit(from)} to ${Number.isFinite(to) ? limit(to) : "any"}`;
  };
  const body = mix.binding.map((binding) => {
    return row(limitLabel(binding, freezer), [
      limitText(binding),
      priceOf(binding),
      cell(range(binding), "roomy"),
    ]);
  });
  const reading = body.length
    ? "What one more (1 %, 1 °C, 100 g in the batch, 0.1 % of a dose) does to the price of a kilogram. Question the dearest first."
    : "No limit is in the way: this is simply the cheapest there is.";
  const columns = ["limit", "", "one more costs", column("valid from–to", "roomy")];
  return figure(
    "What each limit costs",
    reading,
    ...(body.length ? [table({name: "What the limits cost", columns, body})] : []),
    ...(prices ? [html`<p class="aside">${turningPrices(prices)}</p>`] : []),
  );
}

/** Prices that would change the mix, in a sentence: of ingredients in it, and of those not in it yet. */
function turningPrices({ingredients}: Prices): string {
  const used = ingredients
    .filter((one) => one.used && Number.isFinite(one.to))
    .map(({ingredient, to}) => `${ingredient} costs ${decimal(to, 2)}`);
  const unused = ingredients
    .filter((one) => !one.used && one.from > 0)
    .map(({ingredient, from}) => `${ingredient} below ${decimal(from, 2)}`);
  return [
    used.length ? `The recipe stays best until ${used.join(" or ")} per kg.` : "",
    unused.length ? `What would come in: ${unused.join(", ")} per kg.` : "",
  ].join(" ");
}

/** Money per kg of mix for a point or a degree more, for 100 g more of an ingredient in the batch, or 0.1 % of a dose. */
function priceOf({price, of}: Binding): string {
  if (price === undefined) return "–";
  const change = price * {ingredient: 100, dose: 0.1, target: 1, rule: 1}[of];
  if (Math.abs(change) < 5e-4) return "nothing";
  return `${change > 0 ? "+" : ""}${decimal(change, 3)}`;
}

function percent(value: number | undefined): string {
  return value === undefined ? "–" : decimal(value, 1);
}
