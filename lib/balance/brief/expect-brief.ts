import {finite} from "../../core/numbers.ts";
import {expectList, expectShape} from "../../core/shape.ts";
import {expectIngredient} from "../../pantry/expect.ts";
import type {Brief} from "./brief.ts";

/** Refuses anything but a checked brief, such as a brief in the form that a cook writes. */
export function expectBrief(value: Brief): void {
  const advice = "check it first: readBrief(input, pantry)";
  expectShape(value, {ingredients: "list", targets: "list"}, "brief", advice);
  expectShape(value, {name: "text", batch: "number", freezer: "number", overrun: "number"}, "brief", advice);
  expectList(value.ingredients, {ingredient: "object", min: "number", max: "number"}, "ingredients", advice);
  expectList(value.targets, {subject: "object"}, "targets", advice);
  if (value.aim !== undefined) expectShape(value.aim, {sense: "text", subject: "object"}, "aim", advice);
  for (const {ingredient} of value.ingredients) expectIngredient(ingredient);
  finite(value.batch, "brief.batch", {min: Number.MIN_VALUE}, "g");
  finite(value.freezer, "brief.freezer", {min: -40, max: -0.01}, "°C");
  finite(value.overrun, "brief.overrun", {min: 0, max: 200}, "%");
}
