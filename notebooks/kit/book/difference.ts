import {decimal, setDegrees} from "../../../lib/core/format.ts";
import {InputError} from "../../../lib/core/errors.ts";
import {counts, readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type RecipeContent, titleOf} from "../keep/kept-recipe.ts";

/** So many differences are told; more are counted. */
const TOLD = 6;

/** A recipe's text, as far as it is read. */
interface Parts {
  /** By name: what the cook calls it, g in all, and the prices that its lines say. */
  readonly amounts: ReadonlyMap<
    string,
    {readonly called: string; readonly grams: number; readonly price: string}
  >;
  /** Lines that are no amount of something: steps, remarks, and what is not understood. */
  readonly others: readonly string[];
}

/**
 * Changes of a recipe since a version of it, in a few words each: `sugar 150 g → 140 g`, `salt 3 g added`, `notes changed`.
 * Amounts are told by ingredient; a line that cannot be read, by its text.
 */
export async function changesSince(
  earlier: RecipeContent,
  today: RecipeContent,
  pantry: Pantry,
): Promise<string[]> {
  const text = textChanges(await partsOf(earlier, pantry), await partsOf(today, pantry));
  const changes = [
    ...(earlier.name === today.name ? [] : [`name “${earlier.name}” → “${today.name}”`]),
    ...text,
    ...became("freezer", earlier.freezer, today.freezer, setDegrees),
    ...became("overrun", earlier.overrun, today.overrun, (value) => `${value} %`),
    ...(earlier.notes === today.notes ? [] : ["notes changed"]),
  ];
  return changes.length || earlier.text === today.text ? changes : ["the same amounts, written otherwise"];
}

/** The same as one sentence. */
export function changesWords(changes: readonly string[]): string {
  if (!changes.length) return "The same as today.";
  const more = changes.length - TOLD;
  // One more is told, not counted.
  const told = more > 1 ? [...changes.slice(0, TOLD), `${more} more`] : changes;
  return `Since then: ${told.join("; ")}.`;
}

async function partsOf({name: title, text}: RecipeContent, pantry: Pantry): Promise<Parts> {
  const read = await readTypedRecipe(text, pantry).catch((error: unknown) => {
    if (error instanceof InputError) return undefined;
    throw error;
  });
  const amounts = new Map<string, {called: string; grams: number; price: string}>();
  if (!read)
    return {
      amounts,
      others: text
        .split("\n")
        .map((line) => line.trim())
        .filter(Boolean),
    };
  for (const line of read.lines.filter(counts)) {
    const {name} = line.ingredient;
    const before = amounts.get(name);
    amounts.set(name, {
      called: before?.called ?? line.called,
      grams: (before?.grams ?? 0) + line.grams,
      price: `${before?.price ?? ""}${line.price ?? ""}`,
    });
  }
  // A title that is the name is told as that.
  const others = read.lines.filter((line) => !counts(line) && titleOf(line.text) !== title);
  return {amounts, others: others.map((line) => line.text.trim())};
}

function textChanges(earlier: Parts, today: Parts): string[] {
  const names = new Set([...today.amounts.keys(), ...earlier.amounts.keys()]);
  const lines = (before: Parts, after: Parts) => after.others.filter((line) => !before.others.includes(line));
  return [
    ...[...names].flatMap((name) => {
      const [old, now] = [earlier.amounts.get(name), today.amounts.get(name)];
      if (!old) return [`${now!.called} ${weight(now!.grams)} added`];
      if (!now) return [`${old.called} ${weight(old.grams)} left out`];
      const [was, is] = [weight(old.grams), weight(now.grams)];
      return [
        ...(was === is ? [] : [`${now.called} ${was} → ${is}`]),
        ...(old.price === now.price ? [] : [`price of ${now.called} changed`]),
      ];
    }),
    ...lines(today, earlier).map((line) => `“${shortened(line)}” left out`),
    ...lines(earlier, today).map((line) => `“${shortened(line)}” added`),
  ];
}

function became(
  what: string,
  was: number | undefined,
  is: number | undefined,
  write: (value: number) => string,
): string[] {
  const said = (value: number | undefined) => (value === undefined ? "not said" : write(value));
  return was === is ? [] : [`${what} ${said(was)} → ${said(is)}`];
}

/** To a tenth of a gram from 100 g, a hundredth below, without idle noughts. */
function weight(grams: number): string {
  return `${decimal(grams, grams >= 100 ? 1 : 2).replace(/\.?0+$/, "")} g`;
}

/** Longest line that is told whole, characters. */
const LONGEST = 60;

function shortened(line: string): string {
  return line.length > LONGEST ? `${line.slice(0, LONGEST).trimEnd()}…` : line;
}
