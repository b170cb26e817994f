import type {AxisInput} from "../../../lib/balance/read/axis.ts";
import type {Brief} from "../../../lib/balance/brief/brief.ts";
import {type CostMap, costMapSteps} from "../../../lib/balance/trade-off/cost-map.ts";
import {feasibleRegionSteps, type Region} from "../../../lib/balance/trade-off/feasible-region.ts";
import {tradeOffSteps} from "../../../lib/balance/trade-off/trade-off.ts";
import type {TradeOff} from "../../../lib/balance/trade-off/trade-off-types.ts";
import {changed} from "../controls/control.ts";
import {longRun} from "../page/long-run.ts";

/** Time that a hand must rest before the region and its map are worked out, ms. */
const REST = 250;

/** Fineness of the map. */
export const GRID = {columns: 40, rows: 30} as const;

/** Question: the front between two things, and all that can be had of them. */
interface Asked {
  readonly brief: Brief;
  readonly x: {readonly input: AxisInput; readonly plain: AxisInput};
  readonly y: {readonly input: AxisInput; readonly plain: AxisInput};
  /** Whether everything has a price, so that there is a map. */
  readonly priced: boolean;
  /** Whether there is a region: not of two temperatures. */
  readonly spread: boolean;
}

/** Knowledge so far. */
export interface TradeFound {
  /** Of this question; absent while it is being worked out. */
  readonly front?: TradeOff;
  readonly region?: Region;
  readonly map?: CostMap;
}

/** The search for front, region and map: a control that tells when it has found more. */
export interface TradeSearch {
  readonly element: HTMLElement;
  /**
   * Answer to a question as far as it is known at once; the front where it takes no longer than a picture.
   *
   * @param key the same for the same question
   * @throws InputError for a mistake in an axis
   */
  ask(key: string, asked: Asked): TradeFound;
}

/** A search in chunks: the front first, region and map when the hand rests. */
export function tradeSearch(): TradeSearch {
  const run = longRun();
  let current: string | undefined;
  let found: TradeFound = {};
  let timer: ReturnType<typeof setTimeout> | undefined;

  return {
    element: run.element,
    ask(key, asked) {
      if (key === current) return found;
      const first = current === undefined;
      clearTimeout(timer);
      run.stop();
      current = key;
      found = {};
      let later = false;
      const add = (more: TradeFound) => {
        if (current !== key) return;
        found = {...found, ...more};
        if (later) changed(run.element);
      };
      const {brief, x, y, priced, spread} = asked;
      const around = () => {
        const axes = {x: x.plain, y: y.plain};
        const grid = GRID;
        if (!spread) return;
        if (priced)
          run.start({
            words: "Pricing the map …",
            steps: costMapSteps(brief, axes, grid),
            done: (map) => add("region" in map ? {map, region: map.region} : {region: map}),
          });
        else
          run.start({
            words: "Drawing what can be reached …",
            steps: feasibleRegionSteps(brief, axes),
            done: (region) => add({region}),
          });
      };
      try {
        run.start({
          words: "Looking for the front …",
          steps: tradeOffSteps(brief, {x: x.input, y: y.input}),
          done: (front) => {
            add({front});
            if (front.status === "front") timer = setTimeout(around, first ? 0 : REST);
          },
        });
      } catch (error) {
        current = undefined;
        throw error;
      }
      later = true;
      return found;
    },
  };
}
