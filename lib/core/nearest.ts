import {distance} from "fastest-levenshtein";

/**
 * The names most like a mistyped one, best first: for "did you mean" in errors.
 *
 * Case, spacing and punctuation are forgiven; a name that contains the typed words counts as near.
 *
 * @param typed the unknown name
 * @param names the names that exist
 * @param count at most so many suggestions
 * @param apart share of the letters in which a suggestion may differ, below 1
 */
export function nearestNames(typed: string, names: Iterable<string>, count = 3, apart = 0.5): string[] {
  const wanted = folded(typed.slice(0, 200));
  const scored: {name: string; score: number}[] = [];
  for (const name of new Set(names)) {
    const candidate = folded(name);
    const contains = wanted.length > 2 && candidate.includes(wanted);
    const score = contains ? 0.1 : distance(wanted, candidate) / Math.max(wanted.length, candidate.length, 1);
    if (score < apart) scored.push({name, score});
  }
  return scored
    .sort((a, b) => a.score - b.score || (a.name < b.name ? -1 : 1))
    .slice(0, count)
    .map((d) => d.name);
}

/** A name folded for comparison: lower case, no accents, single spaces, no punctuation but `%`, `.` and `+`. */
export function folded(name: string): string {
  // Most names are folded already, and a brief looks up thousands.
  if (PLAIN.test(name)) return name;
  return name
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%.+]+/gu, " ")
    .replace(/(\d)\s+%/g, "$1%")
    .trim();
}

/** A name that {@link folded} leaves as it is. */
const PLAIN = /^[a-z\d%.+]+(?: [a-z\d.+][a-z\d%.+]*)*$/;

/** Advice on what to write instead of an unknown word: the nearest first, then all there are. */
export function oneOfThese(given: string, known: readonly string[]): string {
  const near = nearestNames(given, known);
  return `${near.length ? `did you mean ${near.join(" or ")}? If not, ` : ""}use ${known.join(", ")}`;
}
