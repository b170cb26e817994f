import {InputError} from "../core/errors.ts";
import {parse} from "../core/schema.ts";
import type {Pantry} from "../pantry/pantry.ts";
import {QUANTITIES} from "../pantry/quantities.ts";
import {BRIEF_KEYS, briefSchema} from "./brief-schema.ts";
import type {Brief, Choice} from "./brief.ts";
import {readChoices} from "./read-choices.ts";
import {readAim, SPECIAL_SUBJECTS} from "./read-subject.ts";
import {readTargets} from "./read-targets.ts";

/**
 * A checked brief from the JSON shape a cook writes.
 *
 * @param input a {@link BriefInput}, or anything that claims to be one
 * @param pantry where ingredients given by name are looked up
 * @param place what the input is called in errors, e.g. the file's name
 * @throws InputError naming place, value and next step, for anything not understood, unknown, out of range,
 *   contradictory in itself, duplicated, or missing (a price when cost is minimised)
 */
export function readBrief(input: unknown, pantry: Pantry, place = "brief"): Brief {
  const raw = parse(briefSchema, input, place, [...BRIEF_KEYS, ...SPECIAL_SUBJECTS, ...QUANTITIES]);
  const batch = raw.batch ?? 1000;
  const ingredients = readChoices(raw.ingredients, pantry, batch, place);
  const targets = readTargets(raw.targets ?? {}, ingredients, place);
  const aim = readAim(raw, ingredients, place);
  for (const {subject} of aim ? [...targets, aim] : targets) {
    if (subject.kind === "cost") requirePrices(ingredients, place);
  }
  return {
    name: raw.name ?? "mix",
    batch,
    freezer: raw.freezer ?? -18,
    ingredients,
    targets,
    ...(raw.maxIngredients !== undefined && {maxIngredients: raw.maxIngredients}),
    ...(aim && {aim}),
  };
}

function requirePrices(choices: readonly Choice[], place: string): void {
  const without = choices
    .filter(({ingredient}) => ingredient.price === undefined)
    .map(({ingredient}) => ingredient.name);
  if (without.length) {
    throw new InputError(
      `${place}: ingredients`,
      `no price for ${without.slice(0, 5).join(", ")}${without.length > 5 ? " …" : ""}`,
      undefined,
      'give each a "price" in money per kg (0 if it is free), or minimise something else',
    );
  }
}
