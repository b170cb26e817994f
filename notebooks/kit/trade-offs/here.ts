import {dot, type Markish, text} from "@observablehq/plot";
import {openBrief} from "../../../lib/balance/brief/checked.ts";
import {valueOf} from "../../../lib/balance/measure/of-subject.ts";
import {mixOf} from "../../../lib/balance/mix/mix-report.ts";
import {type Recipe, recipeMass} from "../../../lib/pantry/recipe.ts";
import {eachOnce} from "../words/load-recipe.ts";
import type {Point} from "./map.ts";
import type {TradeScene} from "./scene.ts";

/** Place of a recipe in the chart of its own trade-off; nothing in that of another. */
export function hereIn({brief, front}: TradeScene, recipe: Recipe | undefined): Point | undefined {
  if (!recipe || recipe.name !== brief.name) return undefined;
  const lines = eachOnce(recipe);
  const batch = recipeMass(recipe);
  const own = openBrief(
    lines.map(({ingredient}) => ingredient),
    {name: recipe.name, batch, freezer: brief.freezer, overrun: brief.overrun},
  );
  const mix = mixOf(
    own,
    lines.map(({grams}) => grams / batch),
  );
  const [x, y] = [valueOf(front.x.subject, mix), valueOf(front.y.subject, mix)];
  return x === undefined || y === undefined ? undefined : {x, y};
}

/** A cross with its words: here is the cook's own recipe. */
export function hereMarks(here: Point | undefined): Markish[] {
  if (!here) return [];
  return [
    dot([here], {x: "x", y: "y", r: 7, fill: "var(--paper)", stroke: "var(--accent)", strokeWidth: 2.5}),
    dot([here], {x: "x", y: "y", r: 2, fill: "var(--accent)", stroke: "none"}),
    text([here], {
      x: "x",
      y: "y",
      text: () => "you are here",
      dy: -16,
      fontWeight: 600,
      fill: "var(--accent)",
      stroke: "var(--paper)",
      strokeWidth: 4,
    }),
  ];
}
