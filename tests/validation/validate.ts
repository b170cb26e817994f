/** Prints every published figure beside the computed one; fails when one lies outside its tolerance. */
import {readTables} from "../../datasets/published/read-tables.ts";
import {holds} from "../../datasets/published/row.ts";
import {validationRows} from "../../datasets/published/rows.ts";

const rows = validationRows(readTables());
const figure = (value: number) => value.toFixed(4);
const lines = rows.map((row) => [
  holds(row) ? "" : "OUTSIDE",
  row.what,
  figure(row.published),
  figure(row.computed),
  figure(row.difference),
  row.tolerance < 1e-4 ? row.tolerance.toExponential(0) : figure(row.tolerance),
  row.unit,
  row.source,
]);
const header = ["", "figure", "published", "computed", "difference", "tolerance", "unit", "source"];
const table = [header, ...lines];
const widths = header.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
for (const line of table) {
  const cells = line.map((cell, i) =>
    i >= 2 && i <= 5 ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!),
  );
  console.log(cells.join("  ").trimEnd());
}

const outside = rows.filter((row) => !holds(row));
const sources = new Set(rows.map((row) => row.source));
console.log(
  `\n${rows.length} figures from ${sources.size} sources, ${outside.length} outside their tolerance.`,
);
if (outside.length > 0) process.exitCode = 1;
