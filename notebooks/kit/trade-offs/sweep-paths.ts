import type {BriefInput, LimitsInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {SpecialKind} from "../../../lib/balance/measure/measures.ts";
import {subjectName, subjectNamed, unitOf} from "../../../lib/balance/measure/of-subject.ts";
import {specialSubject} from "../../../lib/balance/read/read-subject.ts";
import {trueMinus} from "../../../lib/core/format.ts";
import {labelOf} from "../controls/targets.ts";
import type {Ranged} from "./sweep-range.ts";

/** A number of the brief that can run. */
export interface Path extends Ranged {
  readonly name: string;
}

/** Brief and range that a sweep is shown of. */
export interface Swept {
  readonly brief: BriefInput;
  readonly freezer: number;
  readonly pantry: Pantry;
  /** px. */
  readonly width: number;
}

/** All limits and prices of a brief. */
export function pathsOf({brief, freezer, pantry}: Swept): Path[] {
  const sides = (path: string, name: string, unit: string, limits: LimitsInput): Path[] =>
    (["min", "max"] as const).flatMap((side) => {
      const value = limits[side];
      return value === undefined
        ? []
        : [
            {
              path: `${path}.${side}`,
              name: `${name}, ${side === "min" ? "at least" : "at most"}`,
              unit,
              value,
              other: side === "min" ? {max: limits.max} : {min: limits.min},
            },
          ];
    });
  const limits = Object.entries(brief.targets ?? {}).flatMap(([key, entry]) => {
    if (!entry) return [];
    if (!Array.isArray(entry)) {
      const {short} = unitOf(subjectNamed(key));
      return sides(`targets.${key}`, labelOf(key, freezer), short, entry as LimitsInput);
    }
    return entry.flatMap((one: LimitsInput, i) => {
      const subject = specialSubject(key as SpecialKind, one);
      const name = trueMinus(subjectName(subject));
      const capital = `${name[0]!.toUpperCase()}${name.slice(1)}`;
      return sides(`targets.${key}[${i}]`, capital, unitOf(subject).short, one);
    });
  });
  const known = new Map(pantry.ingredients.map(({name, price}) => [name, price]));
  const prices = brief.ingredients.flatMap((entry, i) => {
    const {name, price} = typeof entry === "string" ? {name: entry} : entry;
    const value = price ?? known.get(name);
    return value === undefined
      ? []
      : [{path: `ingredients[${i}].price`, name: `Price of ${name}`, unit: "per kg", value}];
  });
  return [...limits, ...prices];
}
