import type {SimilarityTrait} from "../../../lib/balance/substitute/similarity-traits.ts";
import type {
  Alternative,
  AmountChange,
  NoticedChange,
} from "../../../lib/balance/substitute/substitution-types.ts";
import {decimal, grams} from "../../../lib/core/format.ts";

/** Traits that the eater or the till notices, as the page calls them, with the digits that tell. */
export const NOTICED_WORDS: Readonly<Record<SimilarityTrait, {name: string; unit: string; digits: number}>> =
  {
    firmness: {name: "firmness in the freezer", unit: "points", digits: 1},
    freezingPoint: {name: "freezing point", unit: "°C", digits: 2},
    sweetness: {name: "sweetness", unit: "sucrose = 100", digits: 1},
    fat: {name: "fat", unit: "%", digits: 1},
    totalSolids: {name: "total solids", unit: "%", digits: 1},
    lactose: {name: "lactose", unit: "%", digits: 1},
    protein: {name: "protein", unit: "%", digits: 2},
    casein: {name: "casein", unit: "%", digits: 1},
    eggYolkSolids: {name: "egg yolk solids", unit: "%", digits: 2},
    polyols: {name: "sugar alcohols", unit: "%", digits: 1},
    starch: {name: "starch", unit: "%", digits: 2},
    fibre: {name: "fibre", unit: "%", digits: 2},
    stabiliser: {name: "stabiliser", unit: "%", digits: 2},
    thickeningGum: {name: "thickening gum", unit: "%", digits: 2},
    gellingGum: {name: "gelling gum", unit: "%", digits: 2},
    gelatine: {name: "gelatine", unit: "%", digits: 2},
    emulsifier: {name: "emulsifier", unit: "%", digits: 2},
    waterInOilEmulsifier: {name: "water-in-oil emulsifier", unit: "%", digits: 2},
    salt: {name: "salt", unit: "%", digits: 2},
    alcohol: {name: "alcohol", unit: "%", digits: 1},
    organicAcids: {name: "acids", unit: "%", digits: 2},
    fruit: {name: "fruit", unit: "%", digits: 1},
    cost: {name: "cost", unit: "per kg", digits: 2},
  };

/** Up and down in a cook's words, where there are such. */
const WAYS: Partial<Record<SimilarityTrait, readonly [more: string, less: string]>> = {
  firmness: ["harder", "softer"],
  sweetness: ["sweeter", "less sweet"],
  fat: ["richer in fat", "leaner"],
  organicAcids: ["sourer", "less sour"],
  cost: ["dearer", "cheaper"],
  freezingPoint: ["quicker to freeze", "slower to freeze"],
};

/** Words on how much of all changes together is noticed: a change that counts 1 may just be noticed by itself. */
export function noticedWords({changes}: Alternative): string {
  const score = changes.reduce((total, {counts}) => total + counts, 0);
  if (score < 1) return "hardly anyone will notice";
  if (score < 3) return "a keen eater may notice";
  if (score < 8) return "most eaters will notice";
  return "it becomes another ice cream";
}

/** A change below this shows nowhere: no scale in a kitchen has it, g. */
const SHOWS = 0.05;

/** Ingredients to add and to take out beside those that are missing: all that the sheet to weigh from shows. */
export function movesOf(
  {amounts}: Pick<Alternative, "amounts">,
  missing: readonly string[],
): Readonly<Record<"add" | "takeOut", readonly AmountChange[]>> {
  const others = amounts.filter(({ingredient}) => !missing.includes(ingredient));
  return {
    add: others.filter(({change}) => change >= SHOWS).sort((a, b) => b.change - a.change),
    takeOut: others.filter(({change}) => change <= -SHOWS).sort((a, b) => a.change - b.change),
  };
}

/** Whether a change shows, in the sentence as in the sheet. */
export function showsChange(change: number): boolean {
  return Math.abs(change) >= SHOWS;
}

/** The whole of what is done, with amounts: `take out 282 g whole milk; add 516 g mascarpone and 166 g water`. */
export function takesWords(alternative: Alternative, missing: readonly string[]): string {
  const {add, takeOut} = movesOf(alternative, missing);
  const out = takeOut.map(
    ({ingredient, after, change}) => `${after < SHOWS ? "all " : ""}${grams(-change)} g ${ingredient}`,
  );
  const more = add.map(
    ({ingredient, before, change}) => `${grams(change)} g ${before > 0 ? "more " : ""}${ingredient}`,
  );
  const done = [
    ...(alternative.kind === "left out" ? ["leave it out"] : []),
    ...(out.length ? [`take out ${inWords(out)}`] : []),
    ...(more.length ? [`add ${inWords(more)}`] : []),
  ];
  return done.join("; ") || "leave it out";
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
      const by =
        unit === "sucrose = 100"
          ? decimal(Math.abs(change), digits)
          : `${decimal(Math.abs(change), digits)} ${unit === "%" ? "points" : unit}`;
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
