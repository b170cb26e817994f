import {inventedMoney} from "../words/invented-money.ts";
import {inventedPrices, inventedWords} from "../words/price-origin.ts";
import type {WeighedMix} from "../page/mixes.ts";

/** Style of sums of money on a page: those at invented prices look it. */
export interface MixMoney {
  /** Words to say once beside the sums; empty where every price is the cook's own. */
  readonly words: string;
  /** Names of what has an invented price. */
  readonly invented: readonly string[];
  readonly write: (text: string) => string | HTMLElement;
}

/** Shares below this are not in a mix, g per 100 g. */
const TRACE = 1e-4;

/** Money at prices that are all the cook's own. */
export const OWN_MONEY: MixMoney = {words: "", invented: [], write: (text) => text};

/**
 * Style of the money of some mixes.
 *
 * @param prices money per kg, by ingredient, as the mixes were worked out with
 * @param own names whose price the cook gave
 */
export function mixMoney(
  mixes: readonly {readonly mix: Pick<WeighedMix, "amounts">}[],
  prices: ReadonlyMap<string, number>,
  own: {readonly has: (name: string) => boolean},
): MixMoney {
  const used = [
    ...new Set(
      mixes.flatMap(({mix}) =>
        mix.amounts.filter(({percent}) => percent > TRACE).map(({ingredient}) => ingredient),
      ),
    ),
  ];
  const invented = inventedPrices(
    used.flatMap((name) => (prices.has(name) ? [{name, price: prices.get(name)!}] : [])),
    own,
  );
  return invented.length
    ? {words: inventedWords(invented, used.length), invented, write: inventedMoney}
    : OWN_MONEY;
}

/**
 * Names of the ingredients of a brief whose price stands there: the cook gave it.
 *
 * @param shelved names whose price the cook has set on the shelf
 */
export function pricedIn(
  entries: readonly (string | {readonly name: string; readonly price?: number | undefined})[],
  shelved: Iterable<string> = [],
): Set<string> {
  const priced = entries.flatMap((entry) =>
    typeof entry !== "string" && entry.price !== undefined ? [entry.name] : [],
  );
  return new Set([...priced, ...shelved]);
}
