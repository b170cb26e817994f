import type {Ingredient} from "../../pantry/ingredient.ts";
import {nameKey, type Pantry} from "../../pantry/pantry.ts";
import {
  type AmountFirst,
  amountFirst,
  isMass,
  isMetric,
  oneTaken,
  plainAmount,
  plainCount,
  type TypedAmount,
} from "./amount.ts";
import {knownName} from "./name.ts";

/** The amount that a line comes to by what stands behind its name, or the question to ask about it. */
export type Settled = {readonly amount: TypedAmount} | {readonly question: string};

/** Words behind a weight that say of what: of all of it, ready to use. */
const READY =
  /^(?:(?:in|when|once|after|total|all|altogether|together|net|weight|flesh|pulp|meat|drained|peeled|pitted|stoned|shelled|cleaned|trimmed|prepared|cored|ready)\b[\s,.]*)*$/i;

/** Those of them that tell what goes in from what was bought. */
const EDIBLE = /\b(?:flesh|pulp|meat|drained|peeled|pitted|stoned|shelled|cleaned|trimmed|cored)\b/i;

/** Words that give the weight of one of several. */
const EACH = /\b(?:each|apiece|a piece|per piece)\b/i;

/** Factor by which the weight of one must be off what is customary before all are thought of, and the other way round. */
const CLEARLY = 1.5;

/** Mass of a leaf of gelatine, g (common practice, no source). */
export const LEAF = 2;

/**
 * The amount of a line by the notes behind its name. A weight there is the cook's own, and goes before what a table has for one, a
 * spoon or a millilitre: `3 egg yolks (60 g)`, `4 bananas (400 g peeled)`, `1 tin condensed milk (397 g)`. An amount of something
 * else there is a second ingredient, which one line cannot hold.
 */
export function settledAmount(
  amount: TypedAmount,
  notes: readonly string[],
  ingredient: Ingredient,
  pantry: Pantry,
): Settled {
  for (const note of notes) {
    // "or 25 g honey" is what would do instead.
    const second = /^or\b/i.test(note) ? undefined : secondIn(note, ingredient, pantry);
    if (second !== undefined)
      return {question: `two ingredients in one line: write “${second}” on a line of its own`};
  }
  if (amount.percent) return {amount};
  for (const note of notes) {
    const weight = weightIn(note, ingredient, pantry);
    if (!weight) continue;
    if (isMass(amount)) {
      // Of two masses the one that goes in counts: "1 kg mango (600 g flesh)".
      if (!isMass(weight) || !EDIBLE.test(note)) continue;
      return {
        amount: {...plainAmount(weight), taken: [...amount.taken, ...weight.taken, `${note.trim()} counts`]},
      };
    }
    // Of two volumes the first is the cook's.
    if (isMetric(amount) && !isMass(weight)) continue;
    return settled(amount, weight, EACH.test(note), ingredient);
  }
  return {amount};
}

/** What of a note is another ingredient with its amount: `50 ml cream` of `+ 50 ml cream`, of `boiled with 50 g sugar` the sugar. */
function secondIn(note: string, ingredient: Ingredient, pantry: Pantry): string | undefined {
  for (const {index} of note.matchAll(/(?<![\p{L}\d.,/])(?=[\d½⅓⅔¼¾⅛])/gu)) {
    const written = note.slice(index);
    const amount = amountFirst(written);
    if (!amount || amount.percent) continue;
    const name = amount.rest.replace(/^\s*(?:of\b|[-–—:])\s*/i, "").trim();
    // A weight ends the note or is of what the line names; a time, a temperature or a size names nothing known.
    const other = /\p{L}/u.test(name) && !READY.test(name) && knownName(pantry, name);
    if (!other || isPartOnly(name)) continue;
    if (
      other.kind === "found" &&
      (other.ingredient.name === ingredient.name ||
        (!note.startsWith("+") && isSource(other.ingredient, ingredient, amount)))
    )
      continue;
    if (other.kind === "which" && other.choices.includes(ingredient.name)) continue;
    return written.trim();
  }
  return undefined;
}

/** True for a number of the whole thing of which the line has a part: eggs of yolks, lemons of their juice. */
function isSource(whole: Ingredient, part: Ingredient, {unit, pack}: TypedAmount): boolean {
  if (unit !== undefined || pack !== undefined) return false;
  const words = nameKey(whole.name)
    .split(" ")
    .filter((word) => word !== "whole");
  const others = nameKey(part.name).split(" ");
  return words.every((word) => others.includes(word));
}

/** True for a part without the thing that it is of: `200 ml juice` behind oranges. */
function isPartOnly(name: string): boolean {
  return /^(?:juice|zest|peel|skin|pulp)$/i.test(name);
}

/** The mass or metric volume that a note is, with a word on what it is of at most. */
function weightIn(note: string, ingredient: Ingredient, pantry: Pantry): AmountFirst | undefined {
  const bare = note.replace(/^(?:about|approx\.?|ca\.?|or|=|each|total|in total|weighing)\s*:?\s*/i, "");
  const weight = amountFirst(bare);
  if (!weight || weight.percent || !(isMass(weight) || isMetric(weight))) return undefined;
  const rest = weight.rest
    .replace(EACH, "")
    .replace(/[)\].]/g, "")
    .trim();
  if (READY.test(rest)) return weight;
  const named = knownName(pantry, rest);
  return named?.kind === "found" && named.ingredient.name === ingredient.name ? weight : undefined;
}

/** Of several, a weight may be of one or of all: what is customary for one tells, and where nothing is, the cook is asked. */
function settled(
  {count, unit, pack}: TypedAmount,
  weight: AmountFirst,
  each: boolean,
  ingredient: Ingredient,
): Settled {
  const {count: size, unit: measure, taken} = weight;
  const of = (factor: number, ...told: string[]) => ({
    amount: {count: factor * size, taken: [...taken, ...told], ...(measure !== undefined && {unit: measure})},
  });
  const several = unit === undefined && count > 1;
  if (!several) return of(1);
  if (each) return of(count);
  const written = `${plainCount(size)} ${measure}`;
  const one = pack === undefined ? ingredient.unit : customary(pack, ingredient);
  if (one !== undefined && isMass(weight)) {
    const [ofOne, ofAll] = [size / one, size / one / count].map((ratio) => Math.abs(Math.log(ratio)));
    if (Math.abs(ofOne! - ofAll!) > Math.log(CLEARLY))
      return ofOne! < ofAll!
        ? of(count, oneTaken(written, count))
        : of(1, `${written} taken as all ${plainCount(count)} together`);
  }
  if (pack !== undefined && one === undefined) return of(count, oneTaken(written, count));
  const all = `${plainCount(count * size)} ${measure}`;
  return {
    question: `is ${written} one of them, or all ${plainCount(count)}? Write “${all} ${ingredient.name}” or “${written} ${ingredient.name}”`,
  };
}

function customary(pack: string, {name, portions = {}}: Ingredient): number | undefined {
  if (/^(?:leaf|leaves|sheets?)$/.test(pack) && /gelatin/i.test(name)) return LEAF;
  return Object.entries(portions).find(([portion]) => portion === pack.replace(/s$/, ""))?.[1];
}
