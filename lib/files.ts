// `mixwright/files`: pantries, prices, recipes, answers and sheets as CSV, JSON, HTML and Markdown.

export {batchSheetCsv} from "./io/document/batch-sheet-csv.ts";
export {batchSheetHtml} from "./io/document/batch-sheet-html.ts";
export {batchSheetMarkdown} from "./io/document/batch-sheet-markdown.ts";
export {readPantryCsv} from "./io/csv/pantry-csv.ts";
export {readPricesCsv} from "./io/csv/prices-csv.ts";
export {pantryJson, readIngredient, readPantryJson} from "./io/json/ingredient-json.ts";
export {readRecipe, readRecipeJson, recipeJson, type RecipeInput} from "./io/json/recipe-json.ts";
export {readRecipeCsv, recipeCsv} from "./io/csv/recipe-csv.ts";
export {readTypedRecipe, type TypedOptions, type TypedRecipe} from "./io/typed/read-typed.ts";
export type {CountedLine, TypedLine} from "./io/typed/typed-line.ts";
export type {EggGrades} from "./io/typed/egg.ts";
export {recipeHtml, recipeMarkdown} from "./io/document/recipe-out.ts";
export {answerJson} from "./io/document/answer-json.ts";
export {answerCsv, type AnswerExtras, answerHtml, answerMarkdown} from "./io/document/answer-out.ts";
export {type CurvePicture, freezingCurveSvg} from "./io/document/curve-svg.ts";
export {stickerHtml, stickerSvg} from "./io/document/sticker-out.ts";
export type {StickerSize} from "./io/document/sticker-layout.ts";
export {euPanelHtml, usPanelHtml} from "./io/document/panel-html.ts";
