import {
  type EarlierVersion,
  type KeptRecipe,
  nextRevision,
  type RecipeContent,
  sameContent,
} from "./kept-recipe.ts";

/** Kind of a change: by typing, or by a press (a change taken, a name given, a version restored). */
export type How = "typed" | "pressed";

/** Most earlier versions that are kept. */
export const MOST_EARLIER = 30;

/** A text that has rested so long is a version worth going back to, ms. */
const RESTED = 120_000;

/** Share of the text that must be left, or what was there before is kept whatever the time. */
const SHRUNK = 0.5;

/**
 * A recipe after a change; what it was before is kept where that is worth going back to: it had rested for two minutes, a press
 * changed it, or most of the text went at once. A change that changes nothing gives the same recipe.
 *
 * @param now the time, ms since 1970
 */
export function changedRecipe(
  present: KeptRecipe,
  content: RecipeContent,
  how: How,
  now: number,
): KeptRecipe {
  if (sameContent(present, content)) return present;
  const {id, revision, earlier, deleted} = present;
  const worth =
    how === "pressed" ||
    now - Date.parse(present.changed) >= RESTED ||
    content.text.length < SHRUNK * present.text.length;
  return {
    ...content,
    id,
    changed: new Date(now).toISOString(),
    revision: nextRevision(revision),
    earlier: worth ? withEarlier(earlier, asEarlier(present)) : earlier,
    ...(deleted !== undefined && {deleted}),
  };
}

/** A recipe as one of its own earlier versions. */
export function asEarlier({name, text, notes, freezer, overrun, changed}: KeptRecipe): EarlierVersion {
  return {
    name,
    text,
    notes,
    ...(freezer !== undefined && {freezer}),
    ...(overrun !== undefined && {overrun}),
    changed,
  };
}

function withEarlier(earlier: readonly EarlierVersion[], version: EarlierVersion): EarlierVersion[] {
  return [version, ...earlier.filter((other) => !sameContent(other, version))].slice(0, MOST_EARLIER);
}

/** Fewest lines that make a recipe, for {@link isAnother}. */
const A_RECIPE = 3;

/** Whether a text is another recipe and no change of the first: both have three lines at least, and share none. */
export function isAnother(before: string, after: string): boolean {
  const [old, fresh] = [linesOf(before), linesOf(after)];
  return old.size >= A_RECIPE && fresh.size >= A_RECIPE && [...fresh].every((line) => !old.has(line));
}

function linesOf(text: string): Set<string> {
  return new Set(
    text
      .split("\n")
      .map((line) => line.trim())
      .filter(Boolean),
  );
}
