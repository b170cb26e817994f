import {InputError} from "../core/errors.ts";
import {sum} from "../core/numbers.ts";
import {ENERGY_FACTORS} from "./energy.ts";

/** The figures of a label that are checked against one another, g per 100 g. */
interface Figures {
  readonly fat: number;
  readonly saturates?: number;
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly polyols?: number;
  readonly protein: number;
  readonly salt: number;
  readonly fibre?: number;
  readonly alcohol?: number;
  readonly kilojoules?: number;
  readonly kilocalories?: number;
}

/** kJ in a kcal (thermochemical calorie): what Regulation (EU) 1169/2011, Annex XIV, rounds its factors from. */
const KJ_PER_KCAL = 4.184;

/** Largest deviation of the ratio of printed kJ to kcal from it, as a share: the factors' own ratios are 4.0 (fibre) to 4.25. */
const RATIO_OFF = 0.08;

/** Largest difference between printed energy and that of the figures: a share, and kcal for rounding, acids and what a class guesses. */
const ENERGY_OFF = {share: 0.2, kilocalories: 12};

/** A figure less its last zero: what a missing decimal point would leave. */
const tenth = (grams: number) => Number((grams / 10).toFixed(2));

/** Advice on more than 100 g in 100 g, up to ten times as much, as a lost decimal point would leave; undefined for any other value. */
export function beyondWords(grams: unknown): string | undefined {
  return typeof grams === "number" && grams > 100 && grams <= 1000
    ? `give a number from 0 to 100 g per 100 g; is its decimal point missing (${tenth(grams)})?`
    : undefined;
}

/**
 * Refuses more than 100 g in 100 g, with what a missing decimal point would make of it.
 *
 * @throws InputError for a number above 100 and up to 1000; any other value passes
 */
export function refuseBeyond(grams: unknown, place: string): void {
  const advice = beyondWords(grams);
  if (advice !== undefined)
    throw new InputError(place, "out of range", grams, advice, {code: "out of range"});
}

/** Advice on a figure that is too large: a lost decimal point where a tenth of it would do. */
function pointOr(grams: number, most: number, otherwise: string): string {
  return tenth(grams) <= most ? `is its decimal point missing (${tenth(grams)})? ${otherwise}` : otherwise;
}

/**
 * Refuses figures of a label that cannot all be true, saying both and the likely slip: parts larger than their whole or than 100 g, and
 * energy that the other figures or its own twin contradict.
 *
 * @throws InputError naming the figure
 */
export function refuseSlips(label: Figures, place: string): void {
  const {
    fat,
    saturates = 0,
    carbohydrate,
    sugars,
    polyols = 0,
    protein,
    salt,
    fibre = 0,
    alcohol = 0,
  } = label;
  // Rounding may print a part slightly larger than its whole.
  if (saturates > fat + 0.5)
    throw new InputError(
      `${place}: saturates`,
      `more than the fat of ${fat} g`,
      saturates,
      pointOr(saturates, fat, `give at most ${fat} g, or are the two swapped?`),
    );
  if (sugars + polyols > carbohydrate + 0.5)
    throw new InputError(
      `${place}: sugars`,
      `sugars and polyols exceed the carbohydrate of ${carbohydrate} g`,
      sugars + polyols,
      pointOr(
        sugars,
        carbohydrate - polyols,
        `give at most ${carbohydrate} g together, or are the two swapped?`,
      ),
    );
  const figures = {fat, carbohydrate, protein, salt, fibre, alcohol};
  const total = sum(Object.values(figures));
  const suspect = Object.entries(figures).find(([, grams]) => grams > 10 && total - 0.9 * grams <= 100);
  if (total > 104)
    throw new InputError(
      place,
      "the figures do not sum to 100 g",
      Number(total.toFixed(1)),
      `${suspect ? `is the decimal point of ${suspect[0]} missing (${suspect[1]}, ${tenth(suspect[1])})? ` : ""}check them; carbohydrate is without fibre, alcohol in g`,
    );
  refuseEnergy(label, place);
}

/** Energy of the figures, kcal per 100 g, and the least of it where the polyols are erythritol. */
function energyOfFigures({fat, carbohydrate, polyols = 0, protein, fibre = 0, alcohol = 0}: Figures): number {
  const of = (kind: keyof typeof ENERGY_FACTORS, grams: number) => ENERGY_FACTORS[kind].kilocalories * grams;
  return (
    of("fat", fat) +
    of("carbohydrate", Math.max(0, carbohydrate - polyols)) +
    of("polyols", polyols) +
    of("protein", protein) +
    of("fibre", fibre) +
    of("alcohol", alcohol)
  );
}

function refuseEnergy(label: Figures, place: string): void {
  const {kilojoules, kilocalories, polyols = 0} = label;
  if (kilojoules !== undefined && kilocalories !== undefined && kilocalories >= 10) {
    const ratio = kilojoules / kilocalories;
    if (Math.abs(ratio / KJ_PER_KCAL - 1) > RATIO_OFF)
      throw new InputError(
        `${place}: kilojoules`,
        `not ${KJ_PER_KCAL} times the ${kilocalories} kcal`,
        kilojoules,
        ratio < 1
          ? "are kJ and kcal swapped?"
          : `check both; ${kilocalories} kcal are about ${Math.round(kilocalories * KJ_PER_KCAL)} kJ`,
      );
  }
  const printed = kilocalories ?? (kilojoules === undefined ? undefined : kilojoules / KJ_PER_KCAL);
  if (printed === undefined) return;
  const ours = energyOfFigures(label);
  const off = ENERGY_OFF.share * ours + ENERGY_OFF.kilocalories;
  const least = ours - off - ENERGY_FACTORS.polyols.kilocalories * polyols;
  if (printed <= ours + off && printed >= least) return;
  const given = kilocalories === undefined ? "kilojoules" : "kilocalories";
  throw new InputError(
    `${place}: ${given}`,
    `the figures come to about ${Math.round(ours)} kcal (${Math.round(ours * KJ_PER_KCAL)} kJ; Regulation (EU) 1169/2011, Annex XIV)`,
    label[given],
    slipOf(printed / Math.max(ours, 1)),
  );
}

/** Likely reasons why printed energy is so many times that of the figures. */
function slipOf(times: number): string {
  const near = (value: number) => Math.abs(times / value - 1) < 0.15;
  if (near(KJ_PER_KCAL) || near(1 / KJ_PER_KCAL)) return "are kJ and kcal swapped?";
  if (near(10) || near(0.1)) return "is a decimal point missing, or one too many?";
  return times > 1
    ? "are the figures per portion, and the energy per 100 g? Give all per 100 g"
    : "is the energy per portion, and are the figures per 100 g? Give all per 100 g";
}
