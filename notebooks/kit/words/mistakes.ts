import {InputError, printable, show} from "../../../lib/core/errors.ts";

/** Value, or the mistake that the cook must mend first: on a page a mistake is shown, not thrown. */
export type Attempt<T> = {readonly value: T} | {readonly mistake: string};

/** Longest that each part of a mistake is shown, characters. */
const LONGEST_SHOWN = 400;

/** Ending of the place at which a ripple says that its pot cannot be cooked so far. */
const COOK_TO = /: cook to$/;

/** A mistake that has its words already. */
export class Mistake extends Error {}

/** Tries something; a mistake in what was typed becomes words. */
export function attempt<T>(make: () => T): Attempt<T> {
  try {
    return {value: make()};
  } catch (error) {
    return {mistake: mistakeOf(error)};
  }
}

/** A mistake in the page's own words; anything else is thrown on. */
export function mistakeOf(error: unknown): string {
  if (error instanceof Mistake) return error.message;
  if (!(error instanceof InputError)) throw error;
  const {place, problem, value, advice} = error;
  // What a sauce is cooked to comes as a named number.
  const typed = COOK_TO.test(place) && typeof value === "object" && value ? Object.values(value)[0] : value;
  const got = typed === undefined ? "" : Number.isNaN(typed) ? " (it is empty)" : ` (it is ${show(typed)})`;
  // What a file says comes back in these words: no sign in it may turn the line around or hide a part of it.
  const next = `${advice[0]!.toUpperCase()}${advice.slice(1)}`;
  return printable(`${clipped(inWords(place))}: ${clipped(problem)}${got}. ${clipped(next)}.`);
}

/** Both ends of a text that is too long to be shown: a file can name a column or a key at any length. */
function clipped(text: string): string {
  return text.length > LONGEST_SHOWN
    ? `${text.slice(0, LONGEST_SHOWN / 2)} … ${text.slice(-LONGEST_SHOWN / 4)}`
    : text;
}

/** Names of a page's numbers in the library, and on the page. */
const WORDS: Readonly<Record<string, string>> = {
  tubMillilitres: "One tub, ml",
  portionMillilitres: "One portion, ml",
  mixMillilitres: "Mix, ml",
  "machine.fillLimit": "The machine takes, ml",
  grams: "Finished ice cream, g",
  tubs: "Tubs",
  runs: "Full runs",
  loss: "Lost on the way, %",
  overrun: "Overrun, %",
  cookedGrams: "Weight of the cooked ripple, g",
  brix: "°Brix",
  freezer: "Freezer, °C",
  watts: "Cooling power, W",
  "lastRun.minutes": "The last run took, min",
  margin: "Margin, %",
  tax: "Sales tax, %",
  heated: "Heated all the same",
  late: "Goes in cold all the same",
  "options.made": "Made on",
  "options.bestBefore": "Best before",
  "options.lot": "Batch number",
  "options.maker": "Name and address",
  "options.storage": "How to store it",
  "options.portion": "One portion, g",
  "options.quantity.millilitres": "One tub holds",
  "size.width": "Sticker, wide",
  "size.height": "Sticker, high",
};

function inWords(place: string): string {
  const step = /^steps\[(\d+)\]/.exec(place);
  if (COOK_TO.test(place)) return WORDS.cookedGrams!;
  if (step) return `Step ${Number(step[1]) + 1} of the heating`;
  return Object.hasOwn(WORDS, place) ? WORDS[place]! : place;
}
