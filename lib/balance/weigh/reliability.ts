import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import {seededRandom} from "../../core/random.ts";
import {parse} from "../../core/schema.ts";
import {expectOptions, expectRecord} from "../../core/shape.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {type Part, PARTS} from "../../pantry/parts.ts";
import {type AmountsInput, gramsOf} from "../mix/amounts.ts";
import {type SpreadInput, spreadSchema} from "../brief/brief-schema.ts";
import type {Brief, Spread, Target} from "../brief/brief.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import {mixOf} from "../mix/mix-report.ts";
import {EXACT_ENOUGH} from "./nearby-steps.ts";
import {readSpread} from "../read/read-brief.ts";
import {shifted} from "../program/spread.ts";
import {subjectName, valueOf} from "../measure/of-subject.ts";

/** Reliability of a target in a kitchen with errors. */
export interface TargetReliability {
  readonly target: string;
  /** Share of the batches in which it holds, 0 to 1. */
  readonly holds: number;
  /** Values between which nine batches in ten lie, in the target's unit; absent where the mix has no such value. */
  readonly low?: number;
  readonly high?: number;
}

/** Reliability of a recipe. */
export interface Reliability {
  readonly targets: readonly TargetReliability[];
  /** Share of the batches in which every target holds, 0 to 1. */
  readonly all: number;
  /** Largest standard error of the shares, 0.5 / sqrt(batches), by the chance of the simulation. */
  readonly error: number;
}

/** Options of the simulation. Past a `deadline` the batches made so far count. */
export interface SimulationOptions extends TimeOptions {
  /** Number of batches; 1000 by default. */
  readonly batches?: number;
  /** Start of the sequence of random numbers; 1 by default. Equal seeds give equal results. */
  readonly seed?: number;
}

/**
 * The chance that each target of a brief holds in a kitchen with a spread of errors: a simulation of batches, each part and each
 * weighing anywhere within its spread with equal likelihood and independent of the others.
 *
 * A target of one exact value counts as held within 0.05 of it.
 *
 * @param source the brief, or its answer
 * @param amounts those of an answer as they are, or the mass of each ingredient as the recipe says, g, in the brief's order
 * @param spread as a brief or a cook states it: `{parts: {"cream 40 %": {milkFat: 1}}, weighing: 1}`
 * @throws InputError for anything but amounts and a spread, and for a number of batches that is not from 1 to 1 000 000
 *
 * @example
 * ```ts
 * const answer = balance(
 *   {ingredients: ["whole milk", "sucrose"], targets: {sugars: {min: 12}}, minimise: "sugars"},
 *   {pantry: includedPantry()},
 * );
 * // A mix on the very edge of its target keeps it in every other batch.
 * answer.status === "optimal" && reliability(answer, answer.amounts, {weighing: 2}).targets[0]?.holds; // => 0.5
 * ```
 */
export function reliability(
  source: BriefSource,
  amounts: AmountsInput,
  spread: Spread | SpreadInput,
  options: SimulationOptions = {},
): Reliability {
  const brief = briefOf(source);
  expectOptions(options, ["batches", "seed", "deadline", "now"]);
  return simulated(brief, gramsOf(brief, amounts), checkedSpread(spread, brief), options);
}

/** A spread that was checked before, as a brief holds it, or one as a cook writes it. */
function checkedSpread(spread: Spread | SpreadInput, {ingredients}: Brief): Spread {
  expectRecord(spread, "spread", "give how far the kitchen may be off, e.g. {weighing: 1}");
  const {parts, ...rest} = spread;
  const written = parts instanceof Map ? {...rest, parts: Object.fromEntries(parts)} : spread;
  return readSpread(
    parse(spreadSchema, written, "spread", ["parts", "weighing", ...PARTS]),
    ingredients,
    "spread",
  );
}

function simulated(
  brief: Brief,
  amounts: readonly number[],
  spread: Spread,
  options: SimulationOptions,
): Reliability {
  const most = finite(options.batches ?? 1000, "batches", {min: 1, max: 1_000_000});
  const deadline = deadlineOf(options);
  const next = seededRandom(finite(options.seed ?? 1, "seed"));
  if (!amounts.some((grams) => grams > 0))
    throw new InputError("amounts", "nothing at all", 0, "give the amounts of a mix, e.g. answer.amounts");
  const within = (width: number) => (2 * next() - 1) * width;
  const weighed = () => amounts.map((mass) => (mass > 0 ? Math.max(0, mass + within(spread.weighing)) : 0));
  const values = brief.targets.map((): (number | undefined)[] => []);
  const held = brief.targets.map(() => 0);
  let all = 0;
  let batches = 0;
  for (; batches < most; batches++) {
    // At least one batch is made, so that there is a share to give.
    if (batches > 0 && deadline && !(deadline.left() > 0)) break;
    const ingredients = brief.ingredients.map((choice) => ({
      ...choice,
      ingredient: drawn(choice.ingredient, spread, within),
    }));
    let grams = weighed();
    // Nothing at all on the scale is no batch.
    while (!grams.some((mass) => mass > 0)) grams = weighed();
    const total = grams.reduce((sum, mass) => sum + mass, 0);
    const mix = mixOf(
      {...brief, ingredients},
      grams.map((mass) => mass / total),
    );
    let every = true;
    for (const [k, target] of brief.targets.entries()) {
      const value = valueOf(target.subject, mix);
      values[k]!.push(value);
      if (holds(target, value)) held[k]!++;
      else every = false;
    }
    if (every) all++;
  }
  return {
    targets: brief.targets.map(({subject}, k) => ({
      target: subjectName(subject),
      holds: held[k]! / batches,
      ...middle(values[k]!),
    })),
    all: all / batches,
    error: 0.5 / Math.sqrt(batches),
  };
}

function drawn(ingredient: Ingredient, {parts}: Spread, within: (width: number) => number): Ingredient {
  let result = ingredient;
  for (const [part, width] of Object.entries(parts.get(ingredient.name) ?? {}))
    result = shifted(result, part as Part, within(width));
  return result;
}

function holds({min, max}: Target, value: number | undefined): boolean {
  const slack = min !== undefined && min === max ? EXACT_ENOUGH : 1e-9;
  // A mix that never freezes, or hardens, meets no limit on where it does.
  if (value === undefined) return false;
  return (min === undefined || value >= min - slack) && (max === undefined || value <= max + slack);
}

/** The 5th and the 95th percentile of the values. */
function middle(values: readonly (number | undefined)[]): Pick<TargetReliability, "low" | "high"> {
  const sorted = values.filter((value) => value !== undefined).sort((a, b) => a - b);
  if (sorted.length < values.length) return {};
  return {
    low: sorted[Math.floor(0.05 * (sorted.length - 1))]!,
    high: sorted[Math.ceil(0.95 * (sorted.length - 1))]!,
  };
}
