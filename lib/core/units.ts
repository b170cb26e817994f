import {expectRecord, expectText} from "./shape.ts";
import {InputError, show} from "./errors.ts";
import {FRACTION_SIGNS, FRACTIONS} from "./fractions.ts";
import {nearestNames} from "./nearest.ts";
import {finite} from "./numbers.ts";

/** Meaning of a kitchen measure: so much mass, so much volume, or so many of something. */
export type Measure = {
  readonly count: number;
  /** The unit in mathjs's word (`tablespoon`, `fluidounce`), or the thing counted as it was written; empty for none. */
  readonly of: string;
} & (
  | {readonly kind: "mass"; readonly grams: number}
  | {readonly kind: "volume"; readonly millilitres: number}
  | {readonly kind: "count"}
);

/**
 * The kitchen's words for the units of mathjs, which holds their sizes: teaspoon 5 ml and tablespoon 15 ml (the metric
 * spoons); cup 236.588 ml, fluid ounce 29.5735 ml, pint, quart and gallon of the United States; ounce 28.3495 g and
 * pound 453.592 g (avoirdupois).
 */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  mg: ["mg", "milligram", "milligrams"],
  g: ["g", "gram", "grams", "gramme", "grammes"],
  kg: ["kg", "kilo", "kilos", "kilogram", "kilograms"],
  oz: ["oz", "ounce", "ounces"],
  lb: ["lb", "lbs", "pound", "pounds"],
  ml: ["ml", "millilitre", "millilitres", "milliliter", "milliliters"],
  cl: ["cl", "centilitre", "centilitres"],
  dl: ["dl", "decilitre", "decilitres"],
  l: ["l", "litre", "litres", "liter", "liters"],
  teaspoon: ["teaspoon", "teaspoons", "tsp"],
  tablespoon: ["tablespoon", "tablespoons", "tbsp"],
  cup: ["cup", "cups"],
  fluidounce: ["fluid ounce", "fluid ounces", "fl oz", "floz"],
  pint: ["pint", "pints"],
  quart: ["quart", "quarts"],
  gallon: ["gallon", "gallons"],
};

const UNIT_OF = new Map(Object.entries(WORDS).flatMap(([unit, words]) => words.map((word) => [word, unit])));
const MASSES = new Set(["mg", "g", "kg", "oz", "lb"]);
const QUANTITY = new RegExp(`^([\\d.,/${FRACTION_SIGNS}\\s]+)(\\p{L}[^\\d]*)?$`, "u");

/**
 * Reads a kitchen measure: `"250 ml"`, `"1 1/2 cups"`, `"½ tsp"`, `"2,5 oz"`, `"3 eggs"`, `"3"`.
 *
 * A word that names no unit makes a count of that thing, whose mass depends on the ingredient. Spoons are the metric ones of
 * 5 and 15 ml; the cup, fluid ounce, pint, quart and gallon are those of the United States.
 *
 * mathjs is loaded on the first call that needs a unit, because loading it takes longer than everything else.
 *
 * @param text number, then unit or thing; at most 100 characters
 * @param place where the text stands, for the error; `measure` by default
 * @throws InputError for a text without a number, a number that is not above 0, or a text too long
 *
 * @example
 * ```ts
 * await readMeasure("1 1/2 cups"); // => {kind: "volume", count: 1.5, of: "cup", millilitres: 354.9}
 * await readMeasure("3 eggs"); // => {kind: "count", count: 3, of: "eggs"}
 * ```
 */
export async function readMeasure(text: string, place = "measure"): Promise<Measure> {
  expectText(place, "place");
  expectText(text, place, 'give a number and a unit, e.g. "2 tablespoons"');
  const found = text.length <= 100 ? QUANTITY.exec(text) : null;
  const amount = found ? readAmount(found[1]!.trim()) : undefined;
  if (!found || amount === undefined || !(amount > 0) || !Number.isFinite(amount)) {
    throw new InputError(
      place,
      "not a kitchen measure",
      text,
      'give a number above 0 (thousands without a comma) and a unit, e.g. "2 tablespoons", "250 ml", "3 eggs"',
    );
  }
  const word = (found[2] ?? "").trim();
  const unit = kitchenUnit(word);
  if (unit === undefined) return {kind: "count", count: amount, of: word};
  return MASSES.has(unit)
    ? {kind: "mass", count: amount, of: unit, grams: await convert(amount, unit, "g")}
    : {kind: "volume", count: amount, of: unit, millilitres: await convert(amount, unit, "ml")};
}

/**
 * So much mass or volume in a kitchen unit, e.g. 473.18 ml in `cup` is 2.
 *
 * @param size grams or millilitres, at least 0
 * @param unit a unit of mass for grams, of volume for millilitres; spoons, cups and ounces as in {@link readMeasure}
 * @throws InputError for an unknown unit, or a unit of the other kind
 *
 * @example
 * ```ts
 * await inUnit({millilitres: 45}, "tablespoon"); // => 3
 * ```
 */
export async function inUnit(
  size: {readonly grams: number} | {readonly millilitres: number},
  unit: string,
): Promise<number> {
  expectRecord(size, "size", "give {grams} or {millilitres}");
  const known = kitchenUnit(expectText(unit, "unit", "give a unit, e.g. cup"));
  if (known === undefined) {
    const near = nearestNames(unit, UNIT_OF.keys());
    throw new InputError(
      "unit",
      "unknown unit",
      unit,
      near.length ? `did you mean ${near.join(" or ")}` : `use ${Object.keys(WORDS).join(", ")}`,
    );
  }
  const mass = "grams" in size;
  if (!mass && !("millilitres" in size))
    throw new InputError("size", "neither a mass nor a volume", size, "give {grams} or {millilitres}");
  if (mass !== MASSES.has(known)) {
    const kind = mass ? "mass" : "volume";
    throw new InputError("unit", `${show(unit)} is no unit of ${kind}`, undefined, `give a unit of ${kind}`);
  }
  return mass
    ? convert(finite(size.grams, "grams", {min: 0}, "g"), "g", known)
    : convert(finite(size.millilitres, "millilitres", {min: 0}, "ml"), "ml", known);
}

/** The mathjs unit that a word means, if any; `T` and `t` are left out, because cooks do not agree on them. */
export function kitchenUnit(word: string): string | undefined {
  return UNIT_OF.get(
    word
      .toLowerCase()
      .replace(/\.(?=\s|$)/g, "")
      .replace(/\s+/g, " "),
  );
}

const DECIMAL = new RegExp(`^(\\d+(?:\\.\\d+|,\\d{1,2})?)?\\s*([${FRACTION_SIGNS}])?$`, "u");

/** A number as cooks write it: `2`, `2.5`, `2,5`, `1/2`, `1 1/2`, `½`, `1½`; `undefined` when it is none. */
function readAmount(text: string): number | undefined {
  const broken = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (broken) return Number(broken[1] ?? 0) + Number(broken[2]) / Number(broken[3]);
  // Three digits after a comma may be thousands: neither is guessed.
  const found = DECIMAL.exec(text);
  if (!found || text === "") return undefined;
  return Number((found[1] ?? "0").replace(",", ".")) + (FRACTIONS[found[2] ?? ""] ?? 0);
}

type Convert = (amount: number, from: string, to: string) => number;
let loading: Promise<Convert> | undefined;

async function convert(amount: number, from: string, to: string): Promise<number> {
  loading ??= import("mathjs").then(({create, unitDependencies}) => {
    const {unit} = create({...unitDependencies});
    return (amount, from, to) => unit(amount, from).toNumber(to);
  });
  return (await loading)(amount, from, to);
}
