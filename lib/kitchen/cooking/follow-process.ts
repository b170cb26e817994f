import {InputError} from "../../core/errors.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {expectRecipe} from "../../pantry/recipe.ts";
import {type Pot, potComposition, potMass} from "./pot.ts";
import {cool, cooledInTime, heat, heats, pour, type StepReport} from "./process-steps.ts";
import {expectProcess, type Process} from "./process.ts";
import {Worktop} from "./worktop.ts";

/** Report of a process. */
export interface ProcessReport {
  readonly steps: readonly StepReport[];
  /** The result of the last step. */
  readonly result: {readonly grams: number; readonly composition: Composition; readonly temperature: number};
  /** Whether a step heats. */
  readonly heated: boolean;
  /** Highest temperature of a step whose result weighs at least as much as the final one, °C. */
  readonly peak: number;
  /** Ingredients of the result that went through no published pair, in the order of the recipe. */
  readonly untreated: readonly string[];
  /** Ingredients of the recipe, or earlier results, that no step has used up. */
  readonly unused: readonly string[];
  /** Whether the last heated mix was cooled to the published limit in the published time; absent when that is not known. */
  readonly cooledInTime?: boolean;
}

/**
 * Follows a written process over a recipe: the temperatures that heating, pouring and cooling give by heat balance, which
 * published pairs of temperature and time are met, and which ingredients met none.
 *
 * Temperatures are calculated for a pot without losses: a thermometer in the mix decides. This is not licensed advice.
 *
 * @param recipe ingredients used, g
 * @param process steps in order; °C, s, min
 * @throws InputError for a name that is neither ingredient nor earlier result, in `start` for one that is no ingredient, more than there is, a heat step that ends
 *   below the temperature of its items, a cooling step that ends above it, or a temperature outside 0 to 200 °C
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = ["whole milk", "sucrose"].map((name) => ({
 *   ingredient: findIngredient(pantry, name),
 *   grams: 500,
 * }));
 * const process = {steps: [{heat: ["whole milk", "sucrose"], to: 82, holdSeconds: 30}]};
 * followProcess({name: "base", lines}, process).untreated; // => []
 * followProcess({name: "base", lines}, {steps: [{heat: ["whole milk"], to: 60}]}).untreated; // => ["whole milk"]
 * ```
 */
export function followProcess(recipe: Recipe, process: Process): ProcessReport {
  expectRecipe(recipe);
  expectProcess(process);
  if (process.steps.length === 0) {
    throw new InputError(
      recipe.name,
      "a process without steps",
      undefined,
      "add a step that heats, pours or cools",
    );
  }
  const worktop = new Worktop(recipe, process.start ?? {});
  const steps: StepReport[] = [];
  let last: Pot = {contents: [], temperature: 0};
  process.steps.forEach((step, i) => {
    const place = `steps[${i}]`;
    const {pot, into, report} =
      "heat" in step
        ? heat(step, worktop, place)
        : "pour" in step
          ? pour(step, worktop, place)
          : cool(step, worktop, place, steps.some(heats));
    worktop.put(into, pot, place);
    last = pot;
    steps.push(report);
  });
  const untreated = last.contents
    .filter((content) => !content.treated)
    .map((content) => content.ingredient.name);
  const inTime = cooledInTime(steps);
  return {
    steps,
    result: {grams: potMass(last), composition: potComposition(last), temperature: last.temperature},
    heated: steps.some(heats),
    peak: Math.max(...steps.filter((step) => step.grams >= potMass(last) - 1e-6).map((step) => step.after)),
    untreated: [...new Set(untreated)],
    unused: worktop.left(last),
    ...(inTime !== undefined && {cooledInTime: inTime}),
  };
}
