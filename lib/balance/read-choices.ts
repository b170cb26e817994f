import {InputError} from "../core/errors.ts";
import {folded} from "../core/nearest.ts";
import {readComposition} from "../pantry/composition.ts";
import type {Ingredient} from "../pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../pantry/pantry.ts";
import type {BriefInput, IngredientInput} from "./brief-schema.ts";
import type {Choice} from "./brief.ts";

/**
 * The ingredients of a brief, resolved: those given by name alone come from the pantry, and stock is a maximum where the
 * cook sets none.
 *
 * @param batch mass of the batch, g
 * @throws InputError for an unknown or repeated name, a composition that does not add up, limits that contradict
 */
export function readChoices(
  entries: BriefInput["ingredients"],
  pantry: Pantry,
  batch: number,
  place: string,
): Choice[] {
  const choices = entries.map((entry, i) => readChoice(entry, pantry, batch, `${place}: ingredients[${i}]`));
  refuseDuplicates(choices, place);
  return choices;
}

function readChoice(
  entry: BriefInput["ingredients"][number],
  pantry: Pantry,
  batch: number,
  place: string,
): Choice {
  const {
    name,
    composition,
    min = 0,
    max: most,
    step,
    unit,
    ...rest
  } = typeof entry === "string" ? ({name: entry} as IngredientInput) : entry;
  const at = `${place} "${name}"`;
  const known = composition === undefined ? findIngredient(pantry, name, place) : undefined;
  const ingredient = {
    ...known,
    ...Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)),
    name: known?.name ?? name,
    composition: known?.composition ?? readComposition(composition, `${at}: composition`),
    ...(unit !== undefined && {unit}),
  } as Ingredient;
  const max = most ?? ingredient.stock ?? Infinity;
  if (min > max) throw new InputError(`${at}: min`, "above max", min, `give a min of at most ${max} g`);
  if (min > batch)
    throw new InputError(
      `${at}: min`,
      "more than the whole batch",
      min,
      `give at most ${batch} g, or a larger batch`,
    );
  if (step !== undefined && unit !== undefined)
    throw new InputError(`${at}: step`, "given beside unit", step, "give either step or unit");
  const whole = step ?? unit;
  if (whole !== undefined && whole > batch) {
    throw new InputError(
      `${at}: ${step === undefined ? "unit" : "step"}`,
      "more than the whole batch",
      whole,
      `give at most ${batch} g`,
    );
  }
  return {ingredient, min, max, ...(whole !== undefined && {step: whole})};
}

function refuseDuplicates(choices: readonly Choice[], place: string): void {
  const seen = new Map<string, number>();
  for (const [i, {ingredient}] of choices.entries()) {
    const key = folded(ingredient.name) || ingredient.name;
    const first = seen.get(key);
    if (first !== undefined) {
      throw new InputError(
        `${place}: ingredients[${i}]`,
        `same name as ingredients[${first}]`,
        ingredient.name,
        "list each ingredient once",
      );
    }
    seen.set(key, i);
  }
}
