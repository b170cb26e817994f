import {InputError} from "../../core/errors.ts";
import {isNutrient, type NutrientKey, NUTRIENTS} from "../../pantry/nutrient-keys.ts";
import {nutrientIn} from "../../pantry/nutrients.ts";
import type {Measure, MixContext} from "./measure.ts";
import type {Unit} from "./units.ts";
import {weightedSum} from "./weighted-sum.ts";

/** A nutrient or energy: a label's figure that does not follow from the parts of a composition. */
export interface NutrientSubject {
  readonly kind: "nutrient";
  readonly nutrient: NutrientKey;
}

/** Largest amount in 100 g that makes sense, by unit: 100 g of it; for energy, that of pure fat. */
const MOST = {g: 100, mg: 100_000, µg: 1e8, kJ: 3700, kcal: 900} as const;

/** Nutrients and energy, per 100 g of mix, each in its unit. */
export const nutrient: Measure<NutrientSubject, "limits"> = {
  ...weightedSum<NutrientSubject>(
    (subject) => subject.nutrient,
    (subject, ingredient) => nutrientIn(ingredient, subject.nutrient) ?? 0,
  ),
  kind: "nutrient",
  written: "limits",
  meaning: "a nutrient, or the energy, per 100 g",
  named: (name) => (isNutrient(name) ? {kind: "nutrient", nutrient: name} : undefined),
  unit: (subject) => unitOf(subject.nutrient),
  range: (subject) => [0, MOST[NUTRIENTS[subject.nutrient].unit]],
  isUnknownIn: (subject, ingredient) => nutrientIn(ingredient, subject.nutrient) === undefined,
  offers: [],
};

function unitOf(key: NutrientKey): Unit {
  const {unit} = NUTRIENTS[key];
  const full = `${unit} per 100 g`;
  return {full, short: unit === "g" ? "%" : full};
}

/**
 * Refuses ingredients of which a nutrient is not known, where it is asked for: unknown is not none.
 *
 * @throws InputError naming them
 */
export function requireNutrient(
  {nutrient: key}: NutrientSubject,
  choices: MixContext["ingredients"],
  place: string,
): void {
  const lacking = choices
    .filter(({ingredient}) => nutrientIn(ingredient, key) === undefined)
    .map(({ingredient}) => ingredient.name);
  const [first] = lacking;
  if (first === undefined) return;
  // Salt is calculated from the sodium, which is the figure that an ingredient gives.
  const said = key === "saltEquivalent" ? "sodium" : key;
  throw new InputError(
    `${place}: ingredients`,
    `${said} not known of ${lacking.slice(0, 5).join(", ")}${lacking.length > 5 ? " …" : ""}`,
    undefined,
    `give it of each as its packet or a table has it, {"name": ${JSON.stringify(first)}, "nutrients": {"${said}": …}} in ${NUTRIENTS[said].unit} per 100 g (0 if it has none), leave those ingredients out, or drop ${key}`,
    {code: "missing"},
  );
}
