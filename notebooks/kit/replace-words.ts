import type {Noticed} from "../../lib/balance/noticed.ts";
import type {Alternative, NoticedChange} from "../../lib/balance/substitution-types.ts";
import {decimal, grams} from "../../lib/core/figures.ts";

/** What the eater or the till notices, as the page calls it, with the digits that tell. */
export const NOTICED_WORDS: Readonly<Record<Noticed, {name: string; unit: string; digits: number}>> = {
  firmness: {name: "hard phase in the freezer", unit: "%", digits: 1},
  freezingPoint: {name: "starts to freeze at", unit: "°C", digits: 2},
  sweetness: {name: "sweetness", unit: "as % of sugar", digits: 1},
  fat: {name: "fat", unit: "%", digits: 1},
  totalSolids: {name: "total solids", unit: "%", digits: 1},
  lactose: {name: "lactose", unit: "%", digits: 1},
  protein: {name: "protein", unit: "%", digits: 2},
  eggYolkSolids: {name: "egg yolk solids", unit: "%", digits: 2},
  polyols: {name: "sugar alcohols", unit: "%", digits: 1},
  starch: {name: "starch", unit: "%", digits: 2},
  fibre: {name: "fibre", unit: "%", digits: 2},
  stabiliser: {name: "stabiliser", unit: "%", digits: 2},
  emulsifier: {name: "emulsifier", unit: "%", digits: 2},
  salt: {name: "salt", unit: "%", digits: 2},
  alcohol: {name: "alcohol", unit: "%", digits: 1},
  organicAcids: {name: "fruit acids", unit: "%", digits: 2},
  cost: {name: "cost", unit: "per kg", digits: 2},
};

/** Up and down in a cook's words, where there are such. */
const WAYS: Partial<Record<Noticed, readonly [more: string, less: string]>> = {
  firmness: ["harder", "softer"],
  sweetness: ["sweeter", "less sweet"],
  fat: ["richer in fat", "leaner"],
  cost: ["dearer", "cheaper"],
  freezingPoint: ["quicker to freeze", "slower to freeze"],
};

/** How much of all changes together is noticed: a change that counts 1 may just be noticed by itself. */
export function noticedWords({changes}: Alternative): string {
  const score = changes.reduce((total, {counts}) => total + counts, 0);
  if (score < 1) return "hardly anyone will notice";
  if (score < 3) return "a keen eater may notice";
  if (score < 8) return "most eaters will notice";
  return "it becomes another ice cream";
}

/** What comes in, with amounts: `45 g sucrose and 12 g dried glucose syrup`. */
export function takesWords({by, amounts, kind}: Alternative): string {
  const more = by.map((name) => {
    const {before, change} = amounts.find(({ingredient}) => ingredient === name)!;
    return `${grams(change)} g ${before > 0 ? "more " : ""}${name}`;
  });
  const making = amounts
    .filter(({ingredient, change}) => change >= 0.05 && !by.includes(ingredient) && kind !== "re-balanced")
    .map(({ingredient, change}) => `${grams(change)} g ${ingredient}`);
  const mass = making.length ? `${inWords(making)} to make up the weight` : "";
  if (kind === "left out" || !more.length) return mass ? `leave it out, with ${mass}` : "leave it out";
  return inWords(more) + (mass && `, with ${mass}`);
}

/** The changes that count most, in words; those too small to count are left out. */
export function mostNoticed(changes: readonly NoticedChange[]): string {
  const told = [...changes]
    .filter(
      ({what, change, counts}) =>
        counts >= 0.1 && Math.abs(change) >= 0.5 * 10 ** -NOTICED_WORDS[what].digits,
    )
    .sort((a, b) => b.counts - a.counts)
    .slice(0, 3)
    .map(({what, change}) => {
      const {name, unit, digits} = NOTICED_WORDS[what];
      const ways = WAYS[what];
      // A change of a percentage is in points: "0.5 % more" would be half a per cent of what was there.
      const by = `${decimal(Math.abs(change), digits)} ${unit.includes("%") ? "points" : unit}`;
      return ways ? `${ways[change > 0 ? 0 : 1]} by ${by}` : `${by} ${change > 0 ? "more" : "less"} ${name}`;
    });
  return told.length
    ? `${inWords(told)}.`.replace(/^./, (letter) => letter.toUpperCase())
    : "All but the same.";
}

/** Names as a cook would say them: "milk, cream and sugar". */
export function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
