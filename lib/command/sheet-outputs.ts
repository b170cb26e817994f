import type {Learned} from "../freezing/learned.ts";
import {batchSheetCsv} from "../io/document/batch-sheet-csv.ts";
import {batchSheetHtml} from "../io/document/batch-sheet-html.ts";
import {batchSheetMarkdown} from "../io/document/batch-sheet-markdown.ts";
import {euPanelHtml, usPanelHtml} from "../io/document/panel-html.ts";
import {stickerHtml, stickerSvg, stickerText} from "../io/document/sticker-out.ts";
import {euPanel} from "../kitchen/label/eu-panel.ts";
import {usPanel} from "../kitchen/label/us-panel.ts";
import {baseComponent, makeProduct, productDensity} from "../kitchen/product/product.ts";
import type {Recipe} from "../pantry/recipe.ts";
import type {Options} from "./arguments.ts";
import {recipeSheet} from "./recipe-sheet.ts";
import {overrunOf, panelOptions, recipeSticker} from "./recipe-sticker.ts";
import {nutritionOfRecipe} from "./with-nutrition.ts";

/** Output of `sheet`: files by the paths that the options name, and text for the screen where no file is named or with `--json`. */
export interface SheetOutputs {
  readonly files: readonly (readonly [path: string, content: string])[];
  readonly screen: string;
  /** Notes to the cook on the output. */
  readonly notes: readonly string[];
}

/** The batch sheet of a recipe, or its sticker, and the nutrition panel, as the options ask for them. */
export function sheetOutputs(
  recipe: Recipe,
  options: Options,
  learned: {readonly learned?: Learned},
): SheetOutputs {
  const {html, svg, csv, markdown, panel} = options;
  const files = (...given: (readonly [string | undefined, () => string])[]) =>
    given.flatMap(([path, content]) => (path === undefined ? [] : [[path, content()] as const]));
  const panels = files([panel, () => panelOf(recipe, options)]);
  const made = recipeSticker(recipe, options);
  if (made) {
    const {sticker, size} = made;
    const written = files([html, () => stickerHtml(sticker, size)], [svg, () => stickerSvg(sticker, size)]);
    // Laid out for the screen too, so that a text that does not fit is refused there as well.
    if (!written.length) stickerSvg(sticker, size);
    return {
      files: [...written, ...panels],
      screen: options.json
        ? JSON.stringify({...sticker, ...nutritionOfRecipe(recipe)})
        : stickerText(sticker).trimEnd(),
      notes: sticker.lacking.length
        ? [`not on the sticker, though a prepacked tub needs it: ${sticker.lacking.join("; ")}`]
        : [],
    };
  }
  const sheet = recipeSheet(recipe, options, learned);
  return {
    files: [
      ...files(
        [html, () => batchSheetHtml(sheet)],
        [csv, () => batchSheetCsv(sheet)],
        [markdown, () => batchSheetMarkdown(sheet)],
      ),
      ...panels,
    ],
    screen: options.json
      ? JSON.stringify({...sheet, ...nutritionOfRecipe(recipe)})
      : batchSheetMarkdown(sheet).trimEnd(),
    notes: [],
  };
}

/** The nutrition panel of the law that is asked for. */
function panelOf(recipe: Recipe, options: Options): string {
  const product = makeProduct(recipe.name, [baseComponent(recipe)]);
  const overrun = overrunOf(recipe, options);
  const {law, quantity, portion} = panelOptions(options);
  const density = productDensity(product, overrun);
  const litre = quantity && ("grams" in quantity ? quantity.grams / density : quantity.millilitres);
  if (law === "US")
    return usPanelHtml(
      usPanel(product, {overrun, ...(litre !== undefined && {container: litre})}),
      recipe.name,
    );
  const portions = litre !== undefined &&
    portion !== undefined && {portions: Math.max(1, (litre * density) / portion)};
  return euPanelHtml(euPanel(product, {...(portion !== undefined && {portion}), ...portions}), recipe.name);
}
