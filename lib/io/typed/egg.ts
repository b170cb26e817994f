import type {Ingredient} from "../../pantry/ingredient.ts";

/** Grading systems for the size of eggs. */
export type EggGrades = "EU" | "US";

/**
 * Mass of an egg in its shell by grade, g. EU: the middle of S below 53, M 53 to 63, L 63 to 73, XL from 73 g (Delegated Regulation
 * (EU) 2023/2465, Article 5; the ends of S and XL are open, so 50 and 76 are taken). US: the least net weight of a dozen by twelve
 * (USDA weight classes, secondary quote).
 */
const GRADES: Readonly<Record<EggGrades, Readonly<Record<string, number>>>> = {
  EU: {small: 50, medium: 58, large: 68, "extra large": 76},
  US: {peewee: 35.4, small: 42.5, medium: 49.6, large: 56.7, "extra large": 63.8, jumbo: 70.9},
};

/** Shares of an egg in its shell: shell 0.10, white 0.60, yolk 0.30 (means of a textbook, quoted by a poultry association). */
const SHARES: Readonly<Record<string, number>> = {"whole egg": 0.9, "egg yolk": 0.3, "egg white": 0.6};

const SIZE = /\b(peewee|small|medium|extra[ -]large|very large|large|jumbo|xl)\b/i;
const LETTER = /(?:\bsize\s+|[([]\s*)(S|M|L|XL)\b/;

/**
 * Mass of one egg, yolk or white of the size that a line names, g, with words for the cook. `undefined` for anything but eggs, and
 * where the line names no size.
 *
 * @param written the line, for its size
 */
export function eggOfSize(
  {name}: Ingredient,
  written: string,
  grades: EggGrades,
): {readonly grams: number; readonly taken: string} | undefined {
  const share = SHARES[name];
  if (share === undefined) return undefined;
  const letter = LETTER.exec(written)?.[1];
  const word = letter
    ? {S: "small", M: "medium", L: "large", XL: "extra large"}[letter as "S" | "M" | "L" | "XL"]
    : SIZE.exec(written)?.[1]!
        .toLowerCase()
        .replace("-", " ")
        .replace(/^(?:xl|very large)$/, "extra large");
  const shell = word === undefined ? undefined : GRADES[grades][word];
  if (shell === undefined) return undefined;
  const grams = Math.round(10 * shell * share) / 10;
  return {
    grams,
    taken: `one taken as ${grams} g, ${name === "whole egg" ? "without its shell" : "by itself"}: ${grades} size ${word}`,
  };
}
