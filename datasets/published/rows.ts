import {classRows, firmnessRows} from "./firmness.ts";
import {equivalenceRows, exampleRows, measuredRows, milkRows, mixRows} from "./mixes.ts";
import {activityRows, thermalRows} from "./physics.ts";
import type {PublishedTables, ValidationRow} from "./row.ts";
import {norrishRows, solutionRows} from "./solutions.ts";

/** Every published figure of freezing that the project knows, beside what the library computes. */
export function validationRows(tables: PublishedTables): ValidationRow[] {
  return [
    ...activityRows(tables),
    ...solutionRows(tables),
    ...norrishRows(tables),
    ...equivalenceRows(tables),
    ...milkRows(tables),
    ...exampleRows(tables),
    ...measuredRows(tables),
    ...mixRows(tables),
    ...firmnessRows(tables),
    ...classRows(tables),
    ...thermalRows(tables),
  ];
}
