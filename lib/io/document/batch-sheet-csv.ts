import {expectSheet} from "./expect-sheet.ts";
import type {BatchSheet} from "../../kitchen/day/batch-sheet.ts";
import {softWarning} from "../../kitchen/size/scoop-words.ts";
import {csvText} from "../text/escape.ts";

const COLUMNS = ["kind", "section", "text", "grams", "grams_per_run", "note"];

/**
 * A batch sheet as CSV: one row per warning, figure, ingredient, step, log field, caution, with the columns kind, section, text, grams,
 * grams_per_run, note. Text that looks like a formula is made harmless; grams are rounded to 0.01 g.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * batchSheetCsv(batchSheet(product, {grams: 2000})).split("\r\n")[0]; // => "kind,section,text,grams,grams_per_run,note"
 * ```
 */
export function batchSheetCsv(sheet: BatchSheet): string {
  expectSheet(sheet);
  const warning = softWarning(sheet.scoop);
  const centi = (grams: number | undefined) =>
    grams === undefined ? undefined : Math.round(grams * 100) / 100;
  return csvText(
    COLUMNS,
    [
      ["title", "", sheet.title],
      ...(warning === undefined ? [] : [["warning", "", warning]]),
      ...sheet.figures.map(({label, value}) => ["figure", "", label, undefined, undefined, value]),
      ...sheet.sections.flatMap(({heading, lines}) =>
        lines.map((line) => [
          "ingredient",
          heading,
          line.ingredient,
          centi(line.grams),
          centi(line.gramsPerRun),
          [line.measure, ...line.allergens].filter(Boolean).join("; "),
        ]),
      ),
      ...sheet.steps.map(({text, notes}, i) => ["step", i + 1, text, undefined, undefined, notes.join(" ")]),
      ...sheet.log.map(({label, unit}) => ["log", "", label, undefined, undefined, unit]),
      ["allergens", "", sheet.allergens.join(", ")],
      ["ingredient list", "", sheet.ingredientList.map((piece) => piece.text).join("")],
      ...sheet.cautions.map(({topic, text}) => ["caution", topic, text]),
      ...sheet.curve.map(({temperature, ice}) => ["ice, g per 100 g", temperature, "", centi(ice)]),
    ].map((row) => COLUMNS.map((_, i) => row[i])),
  );
}
