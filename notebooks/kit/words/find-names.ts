import {distance} from "fastest-levenshtein";
import {folded, nearestNames} from "../../../lib/core/nearest.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../../../lib/pantry/pantry.ts";

/** An ingredient that was looked for. */
export interface FoundName {
  readonly ingredient: Ingredient;
  /** The other name by which it was found; absent where its own name was. */
  readonly also?: string;
}

/** Ingredients found: the likeliest first. */
export interface FoundNames {
  readonly found: readonly FoundName[];
  /** Whether no name has the words as they are typed, so that these are the nearest. */
  readonly near: boolean;
  /** Ingredient that the words mean by a number (cream 45 %), where no name has them and the pantry knows what that is made of. */
  readonly numbered?: Ingredient;
}

/** So many names are offered that are near as a whole. */
const NEAREST = 8;

/** Letters from which a word may have one slip, and two. */
const SLIPS = {one: 4, two: 7};

/**
 * Looks for ingredients by any part of their name or of what else they are called, in any order of words; where nothing has the
 * words, by what their number says, or by words with a slip of the hand.
 */
export function nameFinder(pantry: Pantry): (words: string) => FoundNames {
  const known = pantry.ingredients.map((ingredient) => ({
    ingredient,
    names: [ingredient.name, ...(ingredient.aliases ?? [])].map((name) => ({name, text: folded(name)})),
  }));
  type Known = (typeof known)[number];
  const found = (rank: (text: string) => number | undefined) =>
    known
      .flatMap(({ingredient, names}: Known) => {
        const ranks = names.map(({text}, i) => {
          const at = rank(text);
          // One's own name goes before another one of the same fit.
          return at === undefined ? Infinity : at + (i ? 0.05 : 0);
        });
        const best = Math.min(...ranks);
        const at = ranks.indexOf(best);
        return best === Infinity
          ? []
          : [
              {
                ingredient,
                best,
                length: names[at]!.text.length,
                ...(ranks[0] === Infinity && {also: names[at]!.name}),
              },
            ];
      })
      .sort((a, b) => a.best - b.best || a.length - b.length)
      .map(({ingredient, also}): FoundName => ({ingredient, ...(also !== undefined && {also})}));
  // Where no word is near by itself, the names that are near as a whole.
  const whole = (typed: string): FoundName[] => {
    const nearest = nearestNames(
      typed,
      known.flatMap(({names}) => names.map(({name}) => name)),
      NEAREST,
    );
    const owners = nearest.flatMap((name) => {
      const owner = known.find(({names}) => names.some((one) => one.name === name))!;
      return [{ingredient: owner.ingredient, ...(owner.ingredient.name !== name && {also: name})}];
    });
    return owners.filter((one, i) => owners.findIndex(({ingredient}) => ingredient === one.ingredient) === i);
  };
  return (typed) => {
    const text = folded(typed.slice(0, 200));
    const words = text.split(" ").filter(Boolean);
    if (!words.length) return {found: [], near: false};
    const exact = found((name) => {
      if (!words.every((word) => name.includes(word))) return undefined;
      if (name === text) return 0;
      if (name.startsWith(text)) return 1;
      const starts = name.split(" ");
      return words.every((word) => starts.some((start) => start.startsWith(word))) ? 2 : 3;
    });
    if (exact.length) return {found: exact, near: false};
    const numbered = namedByNumber(pantry, typed);
    if (numbered) return {found: [], near: false, numbered};
    const near = found((name) => {
      const starts = name.split(" ");
      const off = words.map((word) => Math.min(...starts.map((start) => slips(word, start))));
      const sum = off.reduce((total, one) => total + one, 0);
      return Number.isFinite(sum) ? sum + starts.length / 10 : undefined;
    });
    return {found: near.length ? near : whole(typed), near: true};
  };
}

/** Slips between a typed word and the beginning of another; too many are infinite. */
function slips(word: string, other: string): number {
  if (other.startsWith(word)) return 0;
  const allowed = /\d/.test(word) || word.length < SLIPS.one ? 0 : word.length < SLIPS.two ? 1 : 2;
  if (!allowed) return Infinity;
  const off = Math.min(
    distance(word, other),
    ...[-1, 0, 1].map((more) => distance(word, other.slice(0, word.length + more)) + 0.05),
  );
  return Math.min(off < allowed + 0.5 ? off : Infinity, swapped(word, other));
}

/** One slip where two neighbours are swapped. */
function swapped(word: string, other: string): number {
  for (let i = 0; i + 1 < word.length; i++)
    if (other.startsWith(word.slice(0, i) + word[i + 1]! + word[i]! + word.slice(i + 2))) return 1;
  return Infinity;
}

function namedByNumber(pantry: Pantry, words: string): Ingredient | undefined {
  try {
    return /\d/.test(words) ? findIngredient(pantry, words) : undefined;
  } catch {
    return undefined;
  }
}
