import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {isQuantity, QUANTITIES} from "../../pantry/quantities.ts";
import type {BriefInput} from "../brief/brief-schema.ts";
import type {Aim, Choice} from "../brief/brief.ts";
import type {SpecialKind, Subject} from "../brief/subject.ts";

/** Names of subjects that are no quantities of a composition. */
export const SPECIAL_SUBJECTS: readonly string[] = Object.keys({
  cost: true,
  ice: true,
  hardPhase: true,
  heatShock: true,
  freezingPoint: true,
  scoopTemperature: true,
} satisfies Record<SpecialKind, true>);

/**
 * The subject of a name: a quantity, the cost, a freezing property without a temperature of its own, or a property that
 * every ingredient of the brief has.
 *
 * @throws InputError for an unknown name, with the nearest known ones, or a property that an ingredient lacks
 */
export function subjectOf(name: string, choices: readonly Choice[], place: string): Subject {
  if (isQuantity(name)) return {kind: "quantity", quantity: name};
  if (name === "cost" || name === "freezingPoint" || name === "scoopTemperature") return {kind: name};
  const properties = new Set(choices.flatMap(({ingredient}) => Object.keys(ingredient.properties ?? {})));
  if (!properties.has(name)) {
    const near = nearestNames(name, [...QUANTITIES, ...SPECIAL_SUBJECTS, ...properties]);
    throw new InputError(
      place,
      "unknown quantity",
      name,
      near.length
        ? `did you mean ${near.join(" or ")}`
        : `use ${[...SPECIAL_SUBJECTS, ...QUANTITIES, ...properties].join(", ")}`,
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

/**
 * What a brief minimises or maximises: what it says, else the cost if any ingredient has a price, else nothing.
 *
 * @throws InputError for two aims, an unknown one, or one that no linear program can pursue
 */
export function readAim(raw: BriefInput<string>, choices: readonly Choice[], place: string): Aim | undefined {
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
