import {InputError} from "../core/errors.ts";
import {folded, nearestNames} from "../core/nearest.ts";
import {finite} from "../core/numbers.ts";
import {parse} from "../core/schema.ts";
import {readComposition} from "../pantry/composition.ts";
import type {Ingredient} from "../pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../pantry/pantry.ts";
import {isQuantity, QUANTITIES} from "../pantry/quantities.ts";
import {
  BRIEF_KEYS,
  briefSchema,
  type BriefInput,
  type IngredientInput,
  type LimitsInput,
} from "./brief-schema.ts";
import type {Aim, Brief, Choice, Target} from "./brief.ts";
import {type Subject, subjectName} from "./subject.ts";

const SPECIAL = ["cost", "ice", "hardPhase", "heatShock", "freezingPoint", "scoopTemperature"];

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
  const raw = parse(briefSchema, input, place, [...BRIEF_KEYS, ...SPECIAL, ...QUANTITIES]);
  const batch = raw.batch ?? 1000;
  const ingredients = raw.ingredients.map((entry, i) =>
    readChoice(entry, pantry, batch, `${place}: ingredients[${i}]`),
  );
  refuseDuplicates(ingredients, place);
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
    ...(aim && {aim}),
  };
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

function readTargets(
  raw: NonNullable<BriefInput["targets"]>,
  choices: readonly Choice[],
  place: string,
): Target[] {
  const targets: Target[] = [];
  for (const [name, value] of Object.entries(raw)) {
    if (value === undefined) continue;
    const at = `${place}: targets.${name}`;
    if (name === "ice" || name === "hardPhase") {
      for (const [i, entry] of (value as NonNullable<(typeof raw)["ice"]>).entries()) {
        targets.push(readLimits({kind: name, at: entry.at}, entry, `${at}[${i}]`));
      }
    } else if (name === "heatShock") {
      for (const [i, entry] of (value as NonNullable<(typeof raw)["heatShock"]>).entries()) {
        targets.push(readLimits({kind: name, from: entry.from, to: entry.to}, entry, `${at}[${i}]`));
      }
    } else targets.push(readLimits(subjectOf(name, choices, at), value as LimitsInput, at));
  }
  return targets;
}

function readLimits(subject: Subject, limits: LimitsInput, place: string): Target {
  const {equal} = limits;
  if (equal !== undefined && (limits.min !== undefined || limits.max !== undefined)) {
    throw new InputError(place, "equal given beside min or max", equal, "give either equal, or min and max");
  }
  const {min = equal, max = equal} = limits;
  const [lowest, highest, unit] = rangeOf(subject);
  for (const [key, value] of Object.entries({min, max})) {
    if (value !== undefined)
      finite(value, `${place}.${equal === undefined ? key : "equal"}`, {min: lowest, max: highest}, unit);
  }
  if (min === undefined && max === undefined)
    throw new InputError(place, "no limit", undefined, "give min, max or equal");
  if (min !== undefined && max !== undefined && min > max) {
    throw new InputError(`${place}.min`, "above max", min, `give a min of at most ${max}`);
  }
  return {subject, ...(min !== undefined && {min}), ...(max !== undefined && {max})};
}

/** Lowest and highest limit that makes sense, with its unit. */
function rangeOf(subject: Subject): [number, number, string] {
  switch (subject.kind) {
    case "freezingPoint":
    case "scoopTemperature":
      return [-40, -0.01, "°C"];
    case "cost":
      return [0, Infinity, "money per kg"];
    case "property":
      return [-Infinity, Infinity, "per 100 g"];
    case "quantity":
      return subject.quantity === "sweetness" ? [0, 200, ""] : [0, 100, "g per 100 g"];
    default:
      return [0, 100, "g per 100 g"];
  }
}

function subjectOf(name: string, choices: readonly Choice[], place: string): Subject {
  if (isQuantity(name)) return {kind: "quantity", quantity: name};
  if (name === "cost" || name === "freezingPoint" || name === "scoopTemperature") return {kind: name};
  const properties = new Set(choices.flatMap(({ingredient}) => Object.keys(ingredient.properties ?? {})));
  if (!properties.has(name)) {
    const near = nearestNames(name, [...QUANTITIES, ...SPECIAL, ...properties]);
    throw new InputError(
      place,
      "unknown quantity",
      name,
      near.length
        ? `did you mean ${near.join(" or ")}`
        : `use ${[...SPECIAL, ...QUANTITIES, ...properties].join(", ")}`,
    );
  }
  for (const {ingredient} of choices) {
    if (!Object.hasOwn(ingredient.properties ?? {}, name)) {
      throw new InputError(
        `${place}: ingredient "${ingredient.name}"`,
        `has no ${name}`,
        undefined,
        `give it {"properties": {"${name}": …}} per 100 g (0 if it has none)`,
      );
    }
  }
  return {kind: "property", property: name};
}

function readAim(raw: BriefInput, choices: readonly Choice[], place: string): Aim | undefined {
  if (raw.minimise !== undefined && raw.maximise !== undefined) {
    throw new InputError(`${place}: maximise`, "given beside minimise", raw.maximise, "give one of them");
  }
  const sense = raw.maximise === undefined ? "minimise" : "maximise";
  const wish = raw.minimise ?? raw.maximise;
  if (wish === undefined) {
    // Without prices a brief with targets alone is still a fair question: any mix that meets them answers it.
    return choices.some(({ingredient}) => ingredient.price !== undefined)
      ? {sense, subject: {kind: "cost"}}
      : undefined;
  }
  const at = `${place}: ${sense}`;
  if (typeof wish !== "string") {
    if ("ice" in wish) return {sense, subject: {kind: "ice", at: wish.ice.at}};
    if ("hardPhase" in wish) return {sense, subject: {kind: "hardPhase", at: wish.hardPhase.at}};
    return {sense, subject: {kind: "heatShock", ...wish.heatShock}};
  }
  if (wish === "ice" || wish === "hardPhase") {
    throw new InputError(at, "needs a temperature", wish, `write {"${wish}": {"at": -18}}`);
  }
  if (wish === "heatShock")
    throw new InputError(at, "needs two temperatures", wish, 'write {"heatShock": {"from": -18, "to": -14}}');
  if (wish === "freezingPoint" || wish === "scoopTemperature") {
    throw new InputError(
      at,
      `${wish} is no weighted sum of the ingredients`,
      wish,
      'use {"hardPhase": {"at": -18}}, which falls and rises with it',
    );
  }
  return {sense, subject: subjectOf(wish, choices, at)};
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

/** Name of what the aim measures, for reports. */
export function aimName(aim: Aim): string {
  return `${aim.sense} ${subjectName(aim.subject)}`;
}
