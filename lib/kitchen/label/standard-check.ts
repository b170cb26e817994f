import type {Composition} from "../../pantry/parts.ts";

/** The facts of a product that standards ask for. */
export interface ProductFacts {
  /** The mix without bulky flavours (fruit, nuts, cocoa, ripple), g per 100 g. */
  readonly mix: Composition;
  /** Composition of the bulky flavours, g per 100 g; absent without any. */
  readonly bulky?: Composition;
  /** g of bulky flavours per 100 g of the finished food, 0 (default) to below 100. */
  readonly bulkyPercent?: number;
  /**
   * The same by the US rule, which counts cocoa solids for 2.5 times and fruit and nuts for 1.4 times their weight; from
   * `bulkyPercent`, the default, to below 100. The milk fat and milk solids of the rest are calculated with it.
   */
  readonly countedBulkyPercent?: number;
  /** Of the frozen food, g/ml. */
  readonly density: number;
  /** Solids of whey in per cent of the milk solids-not-fat, 0 by default. */
  readonly wheyPercentOfMsnf?: number;
  /** True for a sherbet or water ice flavoured with fruit, which must be acid and hold enough of it. */
  readonly fruit?: boolean;
  /** Fruit and juice in the finished food, as used, %; where it is absent their least is not checked. */
  readonly fruitPercent?: number;
  /** The kind of fruit, which decides how much there must be; `other` by default, the strictest. */
  readonly fruitKind?: FruitKind;
  /** Milk solids that are a goat's, % of all milk solids; 0 by default. */
  readonly goatPercent?: number;
}

/** Kinds of fruit that a sherbet must hold at least so much of, %: 21 CFR 135.140. */
export const LEAST_FRUIT = {citrus: 2, berry: 6, other: 10} as const;

/** A kind of fruit as a US rule knows it. */
export type FruitKind = keyof typeof LEAST_FRUIT;

/** One condition of a standard. */
export interface StandardCheck {
  readonly rule: string;
  /** In `unit`, as the rule counts it. */
  readonly found: number;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** True where the maximum itself is already too much. */
  readonly below?: boolean;
  readonly met: boolean;
  readonly source: string;
}

/** One condition, checked against the value found. */
export function check(
  rule: string,
  found: number,
  unit: string,
  limits: {min?: number; max?: number},
  source: string,
  below = false,
): StandardCheck {
  const {min = -Infinity, max = Infinity} = limits;
  const met = found >= min - 1e-9 && (below ? found < max - 1e-9 : found <= max + 1e-9);
  return {rule, found, unit, ...limits, ...(below ? {below} : {}), met, source};
}
