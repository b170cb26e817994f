import {hardness} from "../../lib/freezing/firmness.ts";
import {compositionOf, partsIn} from "./parts-in.ts";
import {compare, type PublishedTables, type ValidationRow} from "./row.ts";

/** Mixes from cells, water making up 100 g. */
function mixIn(cell: string, place: string) {
  const parts = partsIn(cell);
  const solids = Object.values(parts).reduce((a, b) => a + b, 0);
  return compositionOf({...parts, water: 100 - solids}, place);
}

/** Published orders (1 where they are kept, 0 where not) and ratios of hardness. */
export function firmnessRows({firmness_checks}: PublishedTables): ValidationRow[] {
  return firmness_checks.map((row) => {
    const at = Number(row.temperature_C);
    const hard = (cell: string, overrun: string) =>
      hardness(mixIn(cell, row.what!), at, {overrun: Number(overrun)});
    const ratio = hard(row.harder!, row.harder_overrun!) / hard(row.softer!, row.softer_overrun!);
    const order = row.kind === "order";
    return compare({
      group: "firmness",
      use: "held",
      what: `${order ? "order" : "hardness"}: ${row.what}`,
      published: order ? 1 : Number(row.ratio),
      computed: order ? Number(ratio > 1) : ratio,
      // An order is kept or not: half way between is where it breaks.
      tolerance: order ? 0.5 : Number(row.tolerance),
      unit: "",
      source: row.source!,
    });
  });
}

/** Uncertainty of the temperature at which practice serves a class of dessert, °C: the anchors' own errors. */
const PRACTICE: Readonly<Record<string, number>> = {"hard ice cream": 1, "soft serve": 2};
const USUAL_PRACTICE = 1.5;

/**
 * Scoop temperatures of classes of dessert by the whole index: root mean square of the differences from practice, in the fit to
 * all and in the one that leaves the class out.
 */
export function classRows({firmness_fit}: PublishedTables): ValidationRow[] {
  return firmness_fit
    .filter((row) => row.form === "whole" && row.class !== "all")
    .flatMap((row) => {
      const common = {
        group: "classes of dessert",
        published: 0,
        tolerance: PRACTICE[row.class!] ?? USUAL_PRACTICE,
        unit: "°C",
        source: "common-practice",
      };
      return [
        compare({
          ...common,
          use: "fitted",
          what: `rms of the scoop temperatures of ${row.class}, in the fit`,
          computed: Number(row.rms_fitted_C),
        }),
        compare({
          ...common,
          use: "held",
          what: `rms of the scoop temperatures of ${row.class}, left out of the fit`,
          computed: Number(row.rms_left_out_C),
        }),
      ];
    });
}
