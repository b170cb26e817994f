import type {Ingredient} from "../../pantry/ingredient.ts";
import {expectBrief} from "./expect-brief.ts";
import {type Brief, CHECKED} from "./brief.ts";

/** A brief whose names are resolved and whose numbers are in range. A copy with another limit stays one; JSON does not show it. */
export function asChecked(brief: Omit<Brief, typeof CHECKED>): Brief {
  return {...brief, [CHECKED]: true};
}

/** A brief that asks for nothing: for mixes that are there already. */
export function openBrief(
  ingredients: readonly Ingredient[],
  rest: Pick<Brief, "name" | "batch" | "freezer" | "overrun" | "learned">,
): Brief {
  const choices = ingredients.map((ingredient) => ({ingredient, min: 0, max: Infinity}));
  return asChecked({...rest, ingredients: choices, targets: []});
}

/** Whether a value is a brief that was checked before. */
export function isChecked(value: unknown): value is Brief {
  return typeof value === "object" && value !== null && CHECKED in value;
}

/** An answer with the brief that it answers, which neither JSON nor a copy of it shows. */
export function withBrief<T extends object>(answer: T, brief: Brief): T {
  return Object.defineProperty(answer, "brief", {value: brief, enumerable: false});
}

/** The checked brief of an answer, or what is a checked brief itself; `undefined` for anything else. */
export function checkedIn(value: unknown): Brief | undefined {
  const held: unknown = typeof value === "object" && value !== null && "brief" in value ? value.brief : value;
  if (!isChecked(held)) return undefined;
  expectBrief(held);
  return held;
}
