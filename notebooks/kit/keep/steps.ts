import {InputError} from "../../../lib/core/errors.ts";
import {contentOf, readVersion, type RecipeContent} from "./kept-recipe.ts";

/** Steps to go back to, and those gone back over: the nearest last. */
export interface Steps {
  readonly past: readonly RecipeContent[];
  readonly future: readonly RecipeContent[];
}

export const NO_STEPS: Steps = {past: [], future: []};

/** Most steps that are remembered. */
const MOST = 60;

/** Most characters of all of them. */
const MOST_CHARACTERS = 400_000;

/** Steps after a change: what was before can be gone back to, what was gone back over is forgotten. */
export function stepFrom({past}: Steps, before: RecipeContent): Steps {
  let left = MOST_CHARACTERS;
  const kept = [...past, before].slice(-MOST).reverse();
  const fitting = kept.findIndex(({text, notes}) => (left -= text.length + notes.length) < 0);
  return {past: (fitting < 0 ? kept : kept.slice(0, fitting)).reverse(), future: []};
}

/** One step back from where it stands. */
export function stepBack(
  {past, future}: Steps,
  now: RecipeContent,
): {to: RecipeContent; steps: Steps} | undefined {
  const to = past.at(-1);
  return to && {to, steps: {past: past.slice(0, -1), future: [...future, now]}};
}

/** One step forward again. */
export function stepForward(
  {past, future}: Steps,
  now: RecipeContent,
): {to: RecipeContent; steps: Steps} | undefined {
  const to = future.at(-1);
  return to && {to, steps: {past: [...past, now], future: future.slice(0, -1)}};
}

/** Steps as text, for another page of the tab. */
export function stepsText(steps: Steps): string {
  return JSON.stringify(steps);
}

/** Steps that {@link stepsText} wrote; none where it is anything else. */
export function stepsFrom(text: string | undefined): Steps {
  try {
    const {past, future} = JSON.parse(text ?? "") as Record<"past" | "future", unknown>;
    return {past: contents(past), future: contents(future)};
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof InputError || error instanceof TypeError)
      return NO_STEPS;
    throw error;
  }
}

function contents(list: unknown): RecipeContent[] {
  if (!Array.isArray(list) || list.length > MOST) return [];
  return list.map((one: unknown) => {
    const version = readVersion({...(one as object), changed: "2026-01-01T00:00:00Z"}, "step");
    return contentOf(version);
  });
}
