import {expectShape} from "../core/shape.ts";
import type {Brief} from "./brief.ts";

/** Refuses what is no checked brief, such as one as a cook writes it. */
export function expectBrief(value: Brief): void {
  expectShape(
    value,
    {ingredients: "list", targets: "list"},
    "brief",
    "check it first: readBrief(input, pantry)",
  );
}
