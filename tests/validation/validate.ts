/**
 * Prints every published figure beside the computed one, in two tables: what the model was fitted to, and what it is held
 * against. Fails when one lies outside its tolerance.
 */
import {readTables} from "../../datasets/published/read-tables.ts";
import {holds, type ValidationRow} from "../../datasets/published/row.ts";
import {validationRows} from "../../datasets/published/rows.ts";

const rows = validationRows(readTables());
const figure = (value: number) => value.toFixed(4);

/** One table, with its heading. */
function print(heading: string, shown: readonly ValidationRow[]): void {
  const lines = shown.map((row) => [
    holds(row) ? "" : "OUTSIDE",
    row.what,
    figure(row.published),
    figure(row.computed),
    figure(row.difference),
    row.tolerance > 0 && row.tolerance < 1e-4 ? row.tolerance.toExponential(0) : figure(row.tolerance),
    row.unit,
    row.source,
  ]);
  const header = ["", "figure", "published", "computed", "difference", "tolerance", "unit", "source"];
  const table = [header, ...lines];
  const widths = header.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
  console.log(`\n${heading}\n`);
  for (const line of table) {
    const cells = line.map((cell, i) =>
      i >= 2 && i <= 5 ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!),
    );
    console.log(cells.join("  ").trimEnd());
  }
}

const [fitted, held] = (["fitted", "held"] as const).map((use) => rows.filter((row) => row.use === use)) as [
  ValidationRow[],
  ValidationRow[],
];
print("Fitted to: that these agree shows that the fit is sound, no more.", fitted);
print("Held against: what the model was not fitted to.", held);

const outside = rows.filter((row) => !holds(row));
const sources = new Set(rows.map((row) => row.source));
console.log(
  `\n${rows.length} figures from ${sources.size} sources: ${fitted.length} fitted to, ${held.length} held against; ${outside.length} outside their tolerance.`,
);
if (outside.length > 0) process.exitCode = 1;
