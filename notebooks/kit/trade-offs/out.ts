import {csvText} from "../../../lib/io/text/escape.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {type Axis} from "./axes.ts";
import type {TradeScene} from "./scene.ts";
import {axisName} from "./words.ts";

/** The front as CSV: one corner a row, with the grams of each ingredient. */
export function frontCsv({front, x, y, brief}: TradeScene): string {
  const names = brief.ingredients.map(({ingredient}) => ingredient.name);
  return csvText(
    [axisName(x), axisName(y), ...names.map((name) => `${name}, g`)],
    front.points.map(({x: atX, y: atY, mix}) => [
      figure(atX),
      figure(atY),
      ...mix.amounts.map(({grams}) => weighed(grams)),
    ]),
  );
}

/** The front as JSON, every number to its last digit. */
export function frontJson({front, x, y, brief, found}: TradeScene): string {
  const axis = ({key, unit, sense}: Axis) => ({
    quantity: key,
    unit,
    better: sense === "minimise" ? "less" : "more",
  });
  const region = found.region?.status === "region" ? found.region.corners : undefined;
  return `${JSON.stringify({name: brief.name, batch: brief.batch, x: axis(x), y: axis(y), exact: front.exact, front: front.points, region}, undefined, 1)}\n`;
}

/**
 * Mixes side by side as CSV: the grams of each ingredient, then what each is.
 *
 * @param words whose prices the cost is at, where they are not the cook's own
 */
export function mixesCsv(mixes: readonly ShownMix<WeighedMix>[], words: string): string {
  const [first] = mixes;
  if (!first) return "";
  const row = (name: string, unit: string, read: (mix: WeighedMix) => number | undefined) => [
    name,
    unit,
    ...mixes.map(({mix}) => read(mix)),
  ];
  return csvText(
    ["name", "unit", ...mixes.map(({label}) => label)],
    [
      ...first.mix.amounts.map(({ingredient}, i) =>
        row(ingredient, "g", ({amounts}) => weighed(amounts[i]!.grams)),
      ),
      row(`cost ${words}`.trim(), "money", ({cost}) => figure(cost)),
      row("freezing point", "°C", ({freezing}) => figure(freezing.initialFreezingPoint)),
      row("scoop temperature", "°C", ({scoop}) => figure(scoop.unsure ? undefined : scoop.temperature)),
      ...Object.keys(first.mix.shares).map((name) =>
        row(name, "per 100 g", ({shares}) => figure(shares[name])),
      ),
    ],
  );
}

/** A figure as a reader needs it: four digits after the point at most. */
function figure(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Number(value.toFixed(4));
}

/** A mass as a scale may show it, g: hundredths. */
function weighed(grams: number): number {
  return Number(grams.toFixed(2));
}

/** Mixes side by side as JSON. */
export function mixesJson(mixes: readonly ShownMix<WeighedMix>[]): string {
  return `${JSON.stringify(
    mixes.map(({label, mix}) => ({name: label, ...mix})),
    undefined,
    1,
  )}\n`;
}
