import {expectList, expectShape} from "../../core/shape.ts";
import type {LinearProgram} from "./program.ts";

/** Refuses anything but a linear program; its numbers are checked where they are read. */
export function expectProgram(value: LinearProgram): void {
  const advice = "give {variables: [{name, cost}], rows: [{name, coefficients}]}";
  expectShape(value, {variables: "list", rows: "list"}, "program", advice);
  expectList(value.variables, {}, "variables", advice);
  expectList(value.rows, {coefficients: "object"}, "rows", advice);
}
