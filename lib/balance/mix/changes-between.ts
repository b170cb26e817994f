import type {Amount, Binding} from "./answer.ts";
import {limitKey} from "../brief/limit-path.ts";

/** A limit that a mix meets exactly, without its price. */
export type BindingLimit = Omit<Binding, "price">;

/** Differences in kind between one mix and the next. */
export interface Turnover {
  /** Ingredients that come in, and that go out. */
  readonly enters: readonly string[];
  readonly leaves: readonly string[];
  /** Limits that begin to bind, and that cease to. */
  readonly binds: readonly BindingLimit[];
  readonly frees: readonly BindingLimit[];
}

/** Amount below which an ingredient counts as unused, g per 100 g of mix. */
const NONE = 1e-6;

/** The parts of a mix that {@link changesBetween} compares. */
export interface MixState {
  readonly amounts: readonly Amount[];
  readonly binding: readonly BindingLimit[];
}

/** Ingredients that enter and leave, and limits that begin and cease to bind, between two mixes of the same ingredients. */
export function changesBetween(before: MixState, after: MixState): Turnover {
  const used = ({amounts}: MixState) =>
    new Set(amounts.filter(({percent}) => percent > NONE).map(({ingredient}) => ingredient));
  const bound = ({binding}: MixState) => new Map(binding.map((limit) => [limitKey(limit), limit]));
  const [usedBefore, usedAfter] = [used(before), used(after)];
  const [boundBefore, boundAfter] = [bound(before), bound(after)];
  return {
    enters: [...usedAfter].filter((name) => !usedBefore.has(name)),
    leaves: [...usedBefore].filter((name) => !usedAfter.has(name)),
    binds: [...boundAfter].flatMap(([key, limit]) => (boundBefore.has(key) ? [] : [limit])),
    frees: [...boundBefore].flatMap(([key, limit]) => (boundAfter.has(key) ? [] : [limit])),
  };
}

/** True where nothing is different in kind. */
export function isNothing({enters, leaves, binds, frees}: Turnover): boolean {
  return enters.length + leaves.length + binds.length + frees.length === 0;
}
