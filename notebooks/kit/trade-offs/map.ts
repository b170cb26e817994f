import {decimal} from "../../../lib/core/format.ts";
import type {TradeScene} from "./scene.ts";

/** A place in the chart, in the units of its axes. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A cell of the map, and the least that a mix there costs, money per kg. */
export interface Cell {
  readonly row: number;
  readonly column: number;
  readonly cost: number;
}

type Ends = readonly [number, number];

/** Ends of the axes while the region is being worked out: those of the last one, so that nothing jumps under the hand. */
let before: {axes: string; x: Ends; y: Ends} | undefined;

/**
 * The cells that have a price, and a rim of one cell around them at the mean of its neighbours: the outline cuts through
 * cells whose middle lies beyond it.
 */
export function dilated(costs: readonly (readonly (number | undefined)[])[]): Cell[] {
  return costs.flatMap((row, r) =>
    row.flatMap((own, c): Cell[] => {
      if (own !== undefined) return [{row: r, column: c, cost: own}];
      const around = [-1, 0, 1]
        .flatMap((dr) => [-1, 0, 1].map((dc) => costs[r + dr]?.[c + dc]))
        .filter((cost) => cost !== undefined);
      return around.length
        ? [{row: r, column: c, cost: around.reduce((sum, cost) => sum + cost, 0) / around.length}]
        : [];
    }),
  );
}

/** The colour of a cost, from the least, 0, to the most, 1. */
export function shade(share: number): string {
  return `color-mix(in oklab, var(--map-dear) ${decimal(100 * share, 1)}%, var(--map-cheap))`;
}

/** Distance between evenly spaced values. */
export function stepOf(values: readonly number[]): number {
  return values[1]! - values[0]!;
}

/** Ends of the axes, with some room; while the region is being worked out those of the last one. */
export function domainsOf({x, y, found, brief}: TradeScene, points: readonly Point[]): {x: Ends; y: Ends} {
  const axes = `${brief.name} ${x.key} ${y.key}`;
  const last = found.region || before?.axes !== axes ? undefined : before;
  const ends = (values: readonly number[], known: Ends | undefined): Ends => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const pad = known ? 0 : 0.05 * (high - low) || 0.5;
    return [Math.min(low - pad, known?.[0] ?? Infinity), Math.max(high + pad, known?.[1] ?? -Infinity)];
  };
  const domains = {
    x: ends(
      points.map((point) => point.x),
      last?.x,
    ),
    y: ends(
      points.map((point) => point.y),
      last?.y,
    ),
  };
  before = {axes, ...domains};
  return domains;
}
