import {csvText} from "../../lib/io/escape.ts";
import type {ShownMix, WeighedMix} from "./mixes.ts";
import {type Axis} from "./trade-axes.ts";
import type {TradeScene} from "./trade-scene.ts";
import {axisName} from "./trade-words.ts";

/** The front as CSV: one corner a row, with the grams of each ingredient. */
export function frontCsv({front, x, y, brief}: TradeScene): string {
  const names = brief.ingredients.map(({ingredient}) => ingredient.name);
  return csvText(
    [axisName(x), axisName(y), ...names.map((name) => `${name}, g`)],
    front.points.map(({x: atX, y: atY, mix}) => [atX, atY, ...mix.amounts.map(({grams}) => grams)]),
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

/** Mixes side by side as CSV: the grams of each ingredient, then what each is. */
export function mixesCsv(mixes: readonly ShownMix<WeighedMix>[]): string {
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
      ...first.mix.amounts.map(({ingredient}, i) => row(ingredient, "g", ({amounts}) => amounts[i]!.grams)),
      row("cost", "money", ({cost}) => cost),
      row("freezing point", "°C", ({freezing}) => freezing.initialFreezingPoint),
      row("scoop temperature", "°C", ({scoop}) => scoop.temperature),
      ...Object.keys(first.mix.shares).map((name) => row(name, "per 100 g", ({shares}) => shares[name])),
    ],
  );
}

/** Mixes side by side as JSON. */
export function mixesJson(mixes: readonly ShownMix<WeighedMix>[]): string {
  return `${JSON.stringify(
    mixes.map(({label, mix}) => ({name: label, ...mix})),
    undefined,
    1,
  )}\n`;
}
