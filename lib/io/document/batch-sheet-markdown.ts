import {expectSheet} from "./expect-sheet.ts";
import type {BatchSheet, SheetSection} from "../../kitchen/day/batch-sheet.ts";
import {outOfFreezer, softWarning} from "../../kitchen/size/scoop-words.ts";
import {escapeMarkdown} from "../text/escape.ts";
import {decimal, grams as weight, setDegrees, trueMinus} from "../../core/format.ts";

/** Text to be read: escaped, with true minus signs. */
const plain = (text: string) => escapeMarkdown(trueMinus(text));

/**
 * A batch sheet as Markdown (CommonMark with GitHub's tables and task lists), everything escaped; the curve as a table.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * batchSheetMarkdown(batchSheet(product, {grams: 2000})).split("\n")[0]; // => "# milk ice"
 * ```
 */
export function batchSheetMarkdown(sheet: BatchSheet): string {
  expectSheet(sheet);
  const points = sheet.curve.filter(
    (point) => Number.isInteger(point.temperature) && point.temperature % 3 === 0,
  );
  const warning = softWarning(sheet.scoop);
  return `${[
    `# ${plain(sheet.title)}`,
    ...(warning === undefined ? [] : [`**${plain(warning)}**`]),
    sheet.figures.map(({label, value}) => `- ${plain(label)}: **${plain(value)}**`).join("\n"),
    ...sheet.sections.map((section) => ingredients(section, sheet.runs)),
    ...steps(sheet),
    "## Log",
    sheet.log.map(({label, unit}) => `- ${plain(label)}: \\_\\_\\_\\_\\_\\_ ${plain(unit)}`).join("\n"),
    "## Allergens and ingredients",
    sheet.allergens.length
      ? sheet.allergens.map((name) => `**${plain(name)}**`).join(", ")
      : "None declared by the ingredients.",
    sheet.ingredientList
      .map(({text, emphasised}) => (emphasised ? `**${plain(text)}**` : plain(text)))
      .join(""),
    "## Cautions",
    sheet.cautions.map(({topic, text}) => `- **${plain(topic)}**: ${plain(text)}`).join("\n"),
    "## Freezing curve",
    plain(
      `From a freezer at ${setDegrees(sheet.freezer)} ${outOfFreezer(sheet.scoop, sheet.wait)} (an estimate).`,
    ),
    table(
      ["°C", "ice, % of the mix", "water that is ice, %"],
      points.map(({temperature, ice, frozen}) => [
        decimal(temperature, 0),
        ice.toFixed(1),
        frozen.toFixed(0),
      ]),
    ),
  ].join("\n\n")}\n`;
}

/** The steps to tick, under their heading; nothing where no process was given. */
function steps(sheet: BatchSheet): string[] {
  const lines = sheet.steps.map(({text, notes}, i) =>
    [`${i + 1}. [ ] ${plain(text)}`, ...notes.map((note) => `   - ${plain(note)}`)].join("\n"),
  );
  return lines.length ? ["## Steps", lines.join("\n")] : [];
}

function ingredients({heading, grams, lines}: SheetSection, runs: number): string {
  const perRun = runs > 1 && lines.some((line) => line.gramsPerRun !== undefined);
  const rows = lines.map((line) => [
    plain(line.ingredient),
    `${weight(line.grams)} g`,
    ...(perRun ? [`${weight(line.gramsPerRun ?? 0)} g`] : []),
    plain(line.measure ?? ""),
    line.allergens.length ? `**${plain(line.allergens.join(", "))}**` : "",
  ]);
  const header = ["Ingredient", "Weight", ...(perRun ? ["Per run"] : []), "Or", "Allergens"];
  return `## ${plain(heading)}\n\n${table(header, rows)}\n\nYield: ${weight(grams)} g`;
}

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(header), line(header.map(() => "---")), ...rows.map(line)].join("\n");
}
