import {folded, nearestNames} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {ingredientsNamed, nameKey, type Pantry} from "../../pantry/pantry.ts";

/** Meaning of a name in a recipe. */
export type TypedName =
  | {readonly kind: "found"; readonly ingredient: Ingredient; readonly taken?: string}
  | {readonly kind: "which"; readonly choices: readonly string[]}
  | {readonly kind: "unknown"; readonly near: readonly string[]};

/** A name that is known, if only as a choice. */
type Known = Exclude<TypedName, {kind: "unknown"}>;

/** Words that do not matter for the weight. */
const HARMLESS = new Set(
  `fresh freshly squeezed chilled cold warm hot room temperature tepid ripe very good quality best organic large medium
   small extra big local chopped roughly finely coarsely sliced diced grated sifted softened melted beaten separated peeled cored pitted
   stoned hulled washed rinsed trimmed plus a few for optional pure real of the some your favourite favorite preferably ground split
   scraped cut into pieces cubes cubed halved and at approx about from fridge homemade whole-bean crushed pressed strained sieved
   packed loosely bought shop heaped level seeds removed only lightly more serve serving dusting taste to`.split(
    /\s+/,
  ),
);

/** Words that matter a little: the cook is told that they were left out. */
const TOLD = new Set(
  `frozen toasted unsweetened tinned canned bottled uht pasteurised pasteurized homogenised homogenized natural fine granulated
   dry powdered blended mashed pureed puréed boiled sweet plain raw skinned blanched unsalted salted strong`.split(
    /\s+/,
  ),
);

/** Most choices that are offered for a name. */
const MOST_CHOICES = 8;

/**
 * The ingredient that a cook's words mean: found as they stand, found by leaving words out or mending a slip (with a note), a choice
 * among several, or unknown with the nearest names. Words that could mean two ingredients are never settled here.
 *
 * @param name as written, without its amount
 * @param notes words in brackets or after a comma: they may decide ("milk (full fat)") or not ("butter, softened")
 */
export function nameIn(pantry: Pantry, name: string, notes: readonly string[] = []): TypedName {
  return knownName(pantry, name, notes) ?? slippedName(pantry, name);
}

/** {@link nameIn} without mending slips: `undefined` for a name that is not known as it stands. */
export function knownName(pantry: Pantry, name: string, notes: readonly string[] = []): Known | undefined {
  const bare = name
    .replace(/^of\s+/i, "")
    .replace(/\bfree[- ]range\b/gi, " ")
    .replace(/\bchoc\b/gi, "chocolate")
    .trim();
  const whole = exact(pantry, bare);
  const noted = notes
    .flatMap((note) => [note, withoutHarmless(note)])
    .flatMap((note) => (note ? [`${note} ${bare}`, `${bare} ${note}`] : []));
  for (const words of noted) {
    const found = exact(pantry, words);
    if (found?.kind === "found") return found;
  }
  // A note that is a full name itself, "double cream (cream 48 %)", only settles a choice.
  if (whole?.kind === "which") {
    const settled = notes.map((note) => exact(pantry, note)).find((one) => one?.kind === "found");
    return settled ?? whole;
  }
  if (whole) return whole;
  const words = folded(bare).split(" ").filter(Boolean);
  const plain = words.filter((word) => !HARMLESS.has(word));
  if (plain.length && plain.length < words.length) {
    const found = exact(pantry, plain.join(" "));
    if (found) return found;
  }
  const fewer = plain.filter((word) => !TOLD.has(word));
  if (fewer.length && fewer.length < plain.length) {
    const found = exact(pantry, fewer.join(" "));
    if (found) return found.kind === "found" ? told(found.ingredient, bare) : found;
  }
  const [either, or] = bare.split(/\s+or\s+/i);
  if (or !== undefined) {
    const found = knownName(pantry, either!, notes);
    if (found?.kind === "found") return told(found.ingredient, bare);
  }
  return byWords(pantry, fewer.length ? fewer : plain, bare);
}

function withoutHarmless(note: string): string {
  return folded(note)
    .split(" ")
    .filter((word) => !HARMLESS.has(word))
    .join(" ");
}

/** The ingredient of a name or alias, in the singular or the plural. */
function exact(pantry: Pantry, words: string): Known | undefined {
  for (const form of forms(words)) {
    const found = ingredientsNamed(pantry, form);
    if (found.length === 1) return {kind: "found", ingredient: found[0]!};
    if (found.length > 1)
      return {kind: "which", choices: found.slice(0, MOST_CHOICES).map((one) => one.name)};
  }
  return undefined;
}

function forms(words: string): string[] {
  const trimmed = words.trim();
  if (!trimmed) return [];
  return [
    trimmed,
    trimmed.replace(/(\p{L}{2,})ies\b/gu, "$1y"),
    trimmed.replace(/(\p{L}{2,}(?:ch|sh|s|x|o))es\b/gu, "$1"),
    trimmed.replace(/(\p{L}{2,}[^s\s])s\b/gu, "$1"),
    `${trimmed}s`,
  ];
}

/** Ingredients that have all these words in one of their names: a single one is found, with a note; several are a choice. */
function byWords(pantry: Pantry, words: readonly string[], written: string): Known | undefined {
  const wanted = words.map(singular).filter((word) => word.length > 1);
  if (!wanted.length) return undefined;
  const isMeant = (known: readonly string[]) => wanted.every((word) => known.includes(word));
  const matching = wordsIn(pantry).filter(({names}) => names.some(isMeant));
  const found = matching.map(({ingredient}) => ingredient);
  if (!found.length || found.length > 3 * MOST_CHOICES) return undefined;
  if (found.length === 1) {
    // Part of a spirit's name is not the spirit: eau is no eau de vie.
    const isWhole = matching[0]!.names.some(
      (known) =>
        isMeant(known) && known.every((word) => wanted.includes(word) || /\d|^(?:%|vol)$/.test(word)),
    );
    const [only] = found;
    return isWhole || !((only!.composition.alcohol ?? 0) > 0)
      ? told(only!, written)
      : {kind: "which", choices: [only!.name]};
  }
  return {kind: "which", choices: found.slice(0, MOST_CHOICES).map(({name}) => name)};
}

/** Words of every name of an ingredient, each in the singular. */
interface Words {
  readonly ingredient: Ingredient;
  readonly names: readonly (readonly string[])[];
}

const wordsOf = new WeakMap<Pantry, readonly Words[]>();

/** Words of all names of a pantry, taken apart once: a recipe asks for them line by line, at each key that is typed. */
function wordsIn(pantry: Pantry): readonly Words[] {
  const before = wordsOf.get(pantry);
  if (before) return before;
  const words = pantry.ingredients.map((ingredient) => ({
    ingredient,
    names: [ingredient.name, ...(ingredient.aliases ?? [])].map((name) =>
      folded(name).split(" ").map(singular),
    ),
  }));
  wordsOf.set(pantry, words);
  return words;
}

/** An unknown name: a single slip in a long word is mended, with a note; anything more becomes a question. */
export function slippedName(pantry: Pantry, written: string): TypedName {
  const plain = folded(written)
    .split(" ")
    .filter((word) => word && !HARMLESS.has(word));
  const words = plain.join(" ") || written;
  const owners = new Map<string, Ingredient>();
  for (const one of pantry.ingredients)
    for (const known of [...(one.aliases ?? []), one.name]) owners.set(known, one);
  const near = nearestNames(words, owners.keys(), 12);
  const mended = near.filter((known) => oneSlip(nameKey(words), nameKey(known)));
  const meant = new Set(mended.map((known) => owners.get(known)!));
  if (meant.size === 1) return told([...meant][0]!, written);
  // Half of the letters alike is chance, as of star anise and custard apple, unless they are a word.
  const alike = new Set(nearestNames(words, owners.keys(), 12, MISSPELT));
  const offered = near.filter((known) => alike.has(known) || haveWordInCommon(words, known));
  return {kind: "unknown", near: [...new Set(offered.map((known) => owners.get(known)!.name))].slice(0, 5)};
}

/** Share of the letters in which a misspelt name still differs from what was meant. */
const MISSPELT = 0.35;

/** Whether two names share a word of four letters or more. */
function haveWordInCommon(one: string, other: string): boolean {
  const words = nameKey(one).split(" ");
  return nameKey(other)
    .split(" ")
    .some((word) => word.length >= 4 && words.includes(word));
}

/** Whether two keys differ by one letter wrong, missing, doubled or swapped, in a word of six letters or more, or two swapped in one of five. */
function oneSlip(one: string, other: string): boolean {
  const [some, others] = [one.split(" "), other.split(" ")];
  if (some.length !== others.length) return false;
  const unlike = some.filter((word) => !others.includes(word));
  const unlikeOthers = others.filter((word) => !some.includes(word));
  if (unlike.length !== 1 || unlikeOthers.length !== 1) return false;
  const [a, b] = [unlike[0]!, unlikeOthers[0]!];
  // A digit is never a slip, and a short word may be another word: malt is no salt.
  if (/\d/.test(a + b) || Math.min(a.length, b.length) < 5) return false;
  let start = 0;
  while (start < Math.min(a.length, b.length) && a[start] === b[start]) start++;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a.at(-1 - end) === b.at(-1 - end)) end++;
  const [left, right] = [a.slice(start, a.length - end), b.slice(start, b.length - end)];
  return (
    (Math.max(left.length, right.length) <= 1 && Math.max(a.length, b.length) >= 6) ||
    (left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0])
  );
}

function singular(word: string): string {
  return word
    .replace(/ies$/, "y")
    .replace(/(?<=(?:ch|sh|s|x|o))es$/, "")
    .replace(/(?<=[^s])s$/, "");
}

function told(ingredient: Ingredient, written: string): Known & {kind: "found"} {
  return {kind: "found", ingredient, taken: `${written} taken as ${ingredient.name}`};
}
