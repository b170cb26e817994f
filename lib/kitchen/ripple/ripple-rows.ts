import {type Limits, sum} from "../../core/numbers.ts";
import {firmnessReference, firmnessWithoutIce, stiffening} from "../../freezing/firmness.ts";
import {unclippedHardPhase, unclippedIce} from "../../freezing/ice.ts";
import type {Row} from "../../lp/program/program.ts";
import {blend} from "../../pantry/mix.ts";
import {type Composition, PARTS} from "../../pantry/parts.ts";
import {quantityIn} from "../../pantry/quantities.ts";
import {solublesIn} from "../sugar/brix.ts";
import {invertedIn} from "../sugar/inversion.ts";
import type {AtTemperature, RippleBrief, RippleIngredient} from "./ripple-brief.ts";

/** A column of the program: the contribution of one g of it to the finished sauce. */
interface Column {
  /** g per 100 g of the column; they sum to less than 100 when something stays in the sieve. */
  readonly brings: Composition;
  readonly fruit: number;
  /** g that go into the pot per g. */
  readonly intoPot: number;
  /** g of water that boil off per g. */
  readonly boiled: number;
}

/** A target as a linear condition, with its value. */
export interface TargetRow {
  readonly target: string;
  readonly unit: string;
  readonly limits: Limits;
  /** Value of the target for amounts of the columns. */
  readonly valueOf: (amounts: readonly number[]) => number;
  readonly rows: readonly Row[];
}

/** One column per ingredient, one for the water that is boiled off, and one for the batch, which brings nothing. */
function columnsOf(brief: RippleBrief): Column[] {
  const water: Column = {brings: {water: -100}, fruit: 0, intoPot: 0, boiled: 1};
  const batch: Column = {brings: {}, fruit: 0, intoPot: 0, boiled: 0};
  return [...brief.ingredients.map((entry) => ingredientColumn(entry, brief.inversion ?? 0)), water, batch];
}

function ingredientColumn(entry: RippleIngredient, inversion: number): Column {
  const {composition} = entry.ingredient;
  const lost = entry.sievedPercent ?? 0;
  const kept = scaled(
    blend([
      {composition, mass: 100},
      {composition: entry.sieved ?? composition, mass: -lost},
    ]),
    1 - lost / 100,
  );
  return {
    brings: invertedIn(kept, inversion),
    fruit: entry.fruit ? 1 : 0,
    intoPot: 1 - lost / 100,
    boiled: 0,
  };
}

function scaled(composition: Composition, factor: number): Composition {
  return Object.fromEntries(
    Object.entries(composition).map(([part, grams]) => [
      part,
      part === "dextroseEquivalent" ? grams : grams * factor,
    ]),
  );
}

/**
 * The targets of a ripple as rows of the linear program (see {@link fixedRows} for its columns). Each is a ratio kept within limits (°Brix:
 * soluble solids over liquid; the rest: over the finished sauce), which is multiplied out.
 */
export function targetRows(brief: RippleBrief): TargetRow[] {
  const columns = columnsOf(brief);
  const mass = (column: Column) => sum(PARTS.map((part) => column.brings[part] ?? 0)) / 100;
  const water = (column: Column) => (column.brings.water ?? 0) / 100;
  const soluble = (column: Column) => solublesIn(column.brings) / 100;
  const liquid = (column: Column) => soluble(column) + water(column);
  const per100 = (quantity: (composition: Composition) => number) => (column: Column) =>
    quantity(column.brings) / 100;
  const ratio = (
    target: string,
    unit: string,
    limits: Limits | undefined,
    above: (column: Column) => number,
    below: (column: Column) => number,
  ): TargetRow[] => (limits ? [ratioRow(columns, target, unit, limits, above, below)] : []);
  const {hardPhase, ice, firmness, brix} = brief;
  return [
    ...ratio("°Brix", "°Brix", typeof brix === "number" ? {min: brix, max: brix} : brix, soluble, liquid),
    ...ratio(
      `hard phase at ${hardPhase?.at} °C`,
      "%",
      hardPhase,
      per100((c) => unclippedHardPhase(c, hardPhase!.at)),
      mass,
    ),
    ...ratio(
      `ice at ${ice?.at} °C`,
      "%",
      ice,
      per100((c) => unclippedIce(c, ice!.at)),
      mass,
    ),
    ...(firmness ? [firmnessRow(columns, firmness, mass)] : []),
    ...ratio("fruit", "%", brief.fruit, (column) => column.fruit, mass),
    ...ratio(
      "sweetness",
      "",
      brief.sweetness,
      per100((c) => quantityIn(c, "sweetness")),
      mass,
    ),
    ...ratio(
      "water boiled off",
      "% of the pot",
      brief.reductionPercent,
      (c) => c.boiled,
      (c) => c.intoPot,
    ),
  ];
}

/**
 * The rows that must hold whatever the targets. Their columns are for 100 g of cooked ripple: g of each ingredient, g of water boiled
 * off, and, last, the batch as 100 / its mass in g. In these terms a batch of any size is linear, and so is the cost per kg.
 *
 * They say that 100 g result, that some water stays, and that each ingredient keeps its least and greatest amount.
 */
export function fixedRows(brief: RippleBrief): Row[] {
  const columns = columnsOf(brief);
  const amounts = brief.ingredients.flatMap(({ingredient, min = 0, max = Infinity}, i) => {
    const against = (grams: number) =>
      columns.map((_, j) => (j === i ? 1 : j === columns.length - 1 ? -grams : 0));
    return [
      ...(min > 0 ? [{name: `${ingredient.name} at least`, coefficients: against(min), lower: 0}] : []),
      ...(max < Infinity ? [{name: `${ingredient.name} at most`, coefficients: against(max), upper: 0}] : []),
    ];
  });
  return [
    {name: "mass", coefficients: columns.map((c) => c.intoPot - c.boiled), lower: 100, upper: 100},
    {name: "water", coefficients: columns.map((c) => (c.brings.water ?? 0) / 100), lower: 0},
    ...amounts,
  ];
}

/**
 * Firmness beyond that of a tub without air that scoops. The stiffening by the cold counts for the mass that is left after boiling; and
 * "at most" is a row without ice too, since ice is never negative.
 */
function firmnessRow(
  columns: readonly Column[],
  {at, ...limits}: AtTemperature,
  mass: (column: Column) => number,
): TargetRow {
  const still = (column: Column) =>
    (firmnessWithoutIce(column.brings, at) - stiffening(at)) / 100 +
    ((stiffening(at) - firmnessReference(0)) * mass(column)) / 100;
  const name = `firmness at ${at} °C`;
  const row = (above: (column: Column) => number, kept: Limits) =>
    ratioRow(columns, name, "points", kept, above, mass);
  const whole = row((column) => still(column) + unclippedIce(column.brings, at) / 100, limits);
  const iceless = row(still, limits.max === undefined ? {} : {max: limits.max});
  return {
    ...whole,
    valueOf: (amounts) => Math.max(whole.valueOf(amounts), iceless.valueOf(amounts)),
    rows: [...whole.rows, ...iceless.rows],
  };
}

function ratioRow(
  columns: readonly Column[],
  target: string,
  unit: string,
  {min, max}: Limits,
  above: (column: Column) => number,
  below: (column: Column) => number,
): TargetRow {
  const coefficients = (limit: number) => columns.map((c) => above(c) - (limit / 100) * below(c));
  const total = (amounts: readonly number[], of: (column: Column) => number) =>
    sum(columns.map((column, j) => of(column) * amounts[j]!));
  return {
    target,
    unit,
    limits: {...(min !== undefined && {min}), ...(max !== undefined && {max})},
    valueOf: (amounts) => (100 * total(amounts, above)) / total(amounts, below),
    rows: [
      ...(min === undefined ? [] : [{name: `${target} at least`, coefficients: coefficients(min), lower: 0}]),
      ...(max === undefined ? [] : [{name: `${target} at most`, coefficients: coefficients(max), upper: 0}]),
    ],
  };
}
