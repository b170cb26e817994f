import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {isNutrient, NUTRIENT_KEYS} from "../../pantry/nutrient-keys.ts";
import {isQuantity, QUANTITIES} from "../../pantry/quantities.ts";
import type {BriefInput} from "../brief/brief-schema.ts";
import type {Aim, Choice} from "../brief/brief.ts";
import {requirePrices} from "../measure/cost.ts";
import {requireNutrient} from "../measure/nutrient.ts";
import {
  isSpecial,
  measureOf,
  MEASURES,
  type SpecialKind,
  SPECIAL_SUBJECTS,
  type Subject,
} from "../measure/measures.ts";
import {AT_TEMPERATURES, isAtTemperatures} from "../measure/written.ts";

/**
 * The subject of a name: a quantity, a nutrient, a measure with a key of its own and no temperature, or a property that every ingredient
 * of the brief has.
 *
 * @throws InputError for an unknown name, with the nearest known ones, or a property that an ingredient lacks
 */
export function subjectOf(name: string, choices: readonly Choice[], place: string): Subject {
  if (isQuantity(name)) return {kind: "quantity", quantity: name};
  if (isNutrient(name)) return {kind: "nutrient", nutrient: name};
  if (isSpecial(name)) return specialSubject(name, {});
  const properties = new Set(choices.flatMap(({ingredient}) => Object.keys(ingredient.properties ?? {})));
  if (!properties.has(name)) {
    const near = nearestNames(name, [...QUANTITIES, ...NUTRIENT_KEYS, ...SPECIAL_SUBJECTS, ...properties]);
    throw new InputError(
      place,
      "unknown quantity",
      name,
      near.length
        ? `did you mean ${near.join(" or ")}`
        : `use ${[...SPECIAL_SUBJECTS, ...QUANTITIES, ...NUTRIENT_KEYS, ...properties].join(", ")}`,
      {code: "unknown name"},
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

/** The subject of a key of its own, at the temperatures that are written with it. */
export function specialSubject(kind: SpecialKind, written: object): Subject {
  const {written: how} = MEASURES[kind];
  const keys: readonly string[] = isAtTemperatures(how) ? AT_TEMPERATURES[how].keys : [];
  const given = Object.entries(written).filter(([key]) => keys.includes(key));
  return {kind, ...Object.fromEntries(given)} as Subject;
}

/**
 * Aim of a brief: its own, else the least cost if any ingredient has a price, else none.
 *
 * @throws InputError for two aims, an unknown one, or one that no linear program can pursue
 */
export function readAim(
  raw: Pick<BriefInput<string>, "minimise" | "maximise">,
  choices: readonly Choice[],
  place: string,
): Aim | undefined {
  if (raw.minimise !== undefined && raw.maximise !== undefined) {
    throw new InputError(`${place}: maximise`, "given beside minimise", raw.maximise, "give one of them");
  }
  const sense = raw.maximise === undefined ? "minimise" : "maximise";
  const wish = raw.minimise ?? raw.maximise;
  if (wish === undefined) {
    // A brief with targets but without prices has no aim: any mix that meets the targets answers it.
    return choices.some(({ingredient}) => ingredient.price !== undefined)
      ? {sense, subject: {kind: "cost"}}
      : undefined;
  }
  const at = `${place}: ${sense}`;
  if (typeof wish !== "string") {
    const [kind, written] = Object.entries(wish)[0] as [SpecialKind, object];
    if (sense === "maximise" && MEASURES[kind].isOnlyKeptSmall)
      throw new InputError(
        `${at}.${kind}`,
        "can only be made small",
        written,
        `minimise it, or set "${kind}" limits`,
      );
    return {sense, subject: specialSubject(kind, written)};
  }
  if (isSpecial(wish)) refuseAim(wish, at);
  return {sense, subject: subjectOf(wish, choices, at)};
}

/** Refuses an aim that is a temperature, or that lacks the temperature it is written with. */
function refuseAim(key: SpecialKind, place: string): void {
  const {written} = MEASURES[key];
  if (isAtTemperatures(written)) {
    const {needs, example} = AT_TEMPERATURES[written];
    throw new InputError(place, needs, key, `write {"${key}": ${example}}`);
  }
  if (written === "temperature") {
    throw new InputError(
      place,
      `${key} is no weighted sum of the ingredients`,
      key,
      'use {"hardPhase": {"at": -18}}, which falls and rises with it',
    );
  }
}

/**
 * Refuses ingredients whose part in a subject is not known: without a price where it is the cost, without a figure where it is a nutrient.
 *
 * @throws InputError naming them
 */
export function requireKnown(subject: Subject, choices: readonly Choice[], place: string): void {
  if (subject.kind === "cost") return requirePrices(choices, place);
  if (subject.kind === "nutrient") return requireNutrient(subject, choices, place);
  const {isUnknownIn, name} = measureOf(subject);
  const lacking = choices.filter(({ingredient}) => isUnknownIn?.(subject, ingredient));
  if (lacking.length === 0) return;
  const names = lacking.map(({ingredient}) => ingredient.name);
  throw new InputError(
    `${place}: ingredients`,
    `${name(subject)} not known of ${names.slice(0, 5).join(", ")}${names.length > 5 ? " …" : ""}`,
    undefined,
    `say what each has of it, leave those ingredients out, or drop ${name(subject)}`,
    {code: "missing"},
  );
}
