import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions, expectShape} from "../../core/shape.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../pantry/recipe.ts";
import {mixDensity} from "./density.ts";
import {finishedDensity} from "./overrun.ts";

/** Size of the batch to make. */
export type ScaleTo =
  | {readonly grams: number}
  | {readonly mixMillilitres: number}
  | Tubs
  /** So many full runs of the machine. */
  | {readonly runs: number; readonly machine: Machine};

/** Tubs to fill with the frozen mix. */
export interface Tubs {
  readonly tubs: number;
  /** Volume of one tub, ml. */
  readonly tubMillilitres: number;
  /** % of the mix's volume. */
  readonly overrun: number;
  /** Share of the mix lost in pots and machine, %; 0 by default. */
  readonly loss?: number;
}

/** A batch freezer or an ice-cream machine. */
export interface Machine {
  /** Most mix that it takes in one run, ml: the fill limit, not the volume of the bowl. */
  readonly fillLimit: number;
}

/** A recipe made larger or smaller. */
export interface Scaled {
  readonly recipe: Recipe;
  /** Factor on every ingredient. */
  readonly factor: number;
  /** Mass of the mix, g. */
  readonly grams: number;
  /** Volume of the liquid mix, ml. */
  readonly millilitres: number;
  /** g/ml */
  readonly density: number;
  /** Equal runs that the machine needs; 1 without a machine. */
  readonly runs: number;
  /** Mix in one run, g. */
  readonly gramsPerRun: number;
}

function expectMachine(machine: unknown): void {
  if (typeof machine === "object" && machine !== null && "fillLimit" in machine)
    expectOptions(machine, ["fillLimit"], "machine");
  expectShape(machine, {fillLimit: "number"}, "machine", "give {runs, machine: {fillLimit}}");
}

/** The densities that a mix or a frozen product may have, g/ml. */
function expectDensity(density: number): void {
  finite(density, "density", {min: 0.1, max: 3}, "g/ml");
}

/**
 * Refuses anything but a size of the batch.
 *
 * @throws InputError naming the forms of a size
 */
export function expectScaleTo(to: ScaleTo): void {
  const given: unknown = to;
  if (typeof given === "object" && given !== null) {
    if (["grams", "mixMillilitres", "tubs"].some((key) => key in given)) return;
    if ("runs" in given) return expectMachine("machine" in given ? given.machine : undefined);
  }
  throw new InputError(
    "to",
    "does not say how much to make",
    given,
    Number.isFinite(given)
      ? `give {grams: ${String(given)}}`
      : "give {grams}, {mixMillilitres}, {tubs, tubMillilitres, overrun} or {runs, machine}",
  );
}

/**
 * Scales a recipe to a mass, a volume of mix, a number of tubs, or full runs of a machine, and splits it into equal runs.
 *
 * The volume comes from {@link mixDensity}. Steps that depend on size (time to chill, to cook) do not scale with it.
 *
 * @param recipe ingredients of the mix, g
 * @param to size of the batch: g, ml of liquid mix, tubs at an overrun, or runs of a machine
 * @param machine splits the batch; not needed when `to` names one
 * @throws InputError for an empty recipe, a `to` that is none of these, and for a mass, volume, number or overrun outside its range
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * scale({name: "milk ice", lines}, {grams: 2000}); // => {factor: 2.5, grams: 2000, runs: 1}
 * ```
 */
export function scale(recipe: Recipe, to: ScaleTo, machine?: Machine): Scaled {
  const mass = recipeMass(recipe);
  if (!(mass > 0)) {
    throw new InputError(recipe.name, "nothing to scale", mass, "give at least one ingredient its grams");
  }
  const density = mixDensity(recipeComposition(recipe));
  const grams = mixGrams(to, density);
  const factor = grams / mass;
  return {
    recipe: {...recipe, lines: recipe.lines.map((line) => ({...line, grams: line.grams * factor}))},
    factor,
    grams,
    millilitres: grams / density,
    density,
    ...equalRuns(grams, density, "machine" in to ? to.machine : machine),
  };
}

/**
 * Splits a batch into equal runs that stay within a machine's fill limit; one run without a machine.
 *
 * @param grams of mix
 * @param density of the mix, g/ml
 * @throws InputError for a fill limit below 10 ml
 *
 * @example
 * ```ts
 * equalRuns(5000, 1.09, {fillLimit: 2000}); // => {runs: 3, gramsPerRun: 1666.7}
 * ```
 */
export function equalRuns(
  grams: number,
  density: number,
  machine?: Machine,
): {runs: number; gramsPerRun: number} {
  finite(grams, "grams", {min: 0}, "g");
  expectDensity(density);
  if (machine === undefined) return {runs: 1, gramsPerRun: grams};
  expectMachine(machine);
  const limit = finite(machine.fillLimit, "machine.fillLimit", {min: 10}, "ml") * density;
  // A batch that fills its runs exactly needs no further one for a rounding error.
  const runs = Math.max(1, Math.ceil(grams / limit - 1e-9));
  return {runs, gramsPerRun: grams / runs};
}

/**
 * Mass of mix that is wanted, g.
 *
 * @param density of the mix, g/ml
 * @throws InputError as {@link scale}
 *
 * @example
 * ```ts
 * mixGrams({mixMillilitres: 2000}, 1.09); // => 2180
 * ```
 */
export function mixGrams(to: ScaleTo, density: number): number {
  expectScaleTo(to);
  expectDensity(density);
  if ("grams" in to) return finite(to.grams, "grams", {min: 1}, "g");
  if ("mixMillilitres" in to) return finite(to.mixMillilitres, "mixMillilitres", {min: 1}, "ml") * density;
  if ("runs" in to) {
    const limit = finite(to.machine.fillLimit, "machine.fillLimit", {min: 10}, "ml");
    return whole(to.runs, "runs") * limit * density;
  }
  return gramsForTubs(to, finishedDensity(density, to.overrun));
}

/**
 * Mass to make in order to fill so many tubs, g, the loss included.
 *
 * @param density of the frozen product, g/ml
 * @throws InputError for a tub below 1 ml, a number of tubs that is not whole, or a loss outside 0 to 90 %
 *
 * @example
 * ```ts
 * gramsForTubs({tubs: 10, tubMillilitres: 500, overrun: 30}, 1.09); // => 5450
 * ```
 */
export function gramsForTubs(to: Tubs, density: number): number {
  expectScaleTo(to);
  expectDensity(density);
  const {tubs, tubMillilitres, overrun, loss = 0} = to;
  finite(overrun, "overrun", {min: 0, max: 300}, "%");
  const tub = finite(tubMillilitres, "tubMillilitres", {min: 1}, "ml");
  const kept = 1 - finite(loss, "loss", {min: 0, max: 90}, "% of the mix") / 100;
  return (whole(tubs, "tubs") * tub * density) / kept;
}

/**
 * The value itself if it is a whole number of at least 1.
 *
 * @throws InputError otherwise, naming the place
 */
export function whole(value: number, place: string): number {
  finite(value, place, {min: 1});
  if (!Number.isInteger(value))
    throw new InputError(place, "not a whole number", value, "give a whole number");
  return value;
}
