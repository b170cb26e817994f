import type {BriefInput, LimitsInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {degrees} from "../../../lib/core/figures.ts";
import {labelOf} from "../controls/targets.ts";

/** A number of the brief that can run. */
export interface Path {
  /** As `sweep` takes it. */
  readonly path: string;
  readonly name: string;
  readonly unit: string;
  readonly value: number;
}

/** What a sweep is shown of. */
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
            },
          ];
    });
  const units: Record<string, string> = {
    freezingPoint: "°C",
    scoopTemperature: "°C",
    sweetness: "sucrose = 100",
    cost: "per kg",
  };
  const limits = Object.entries(brief.targets ?? {}).flatMap(([key, entry]) => {
    if (!entry) return [];
    if (!Array.isArray(entry))
      return sides(`targets.${key}`, labelOf(key, freezer), units[key] ?? "%", entry as LimitsInput);
    return entry.flatMap((one, i) =>
      "at" in one
        ? sides(
            `targets.${key}[${i}]`,
            `${key === "ice" ? "Ice" : "Hard phase"} at ${degrees(one.at, Number.isInteger(one.at) ? 0 : 1)}`,
            "%",
            one,
          )
        : sides(`targets.${key}[${i}]`, "Heat shock", "%", one),
    );
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

/** Where a number runs at first: a little to either side; a price from nothing to twice. */
export function rangeOf({path, value, unit}: Path): [number, number] {
  if (path.endsWith(".price")) return [0, 2 * value || 1];
  if (unit === "°C") return [value - 1, Math.min(value + 1, -0.1)];
  const room = Math.max(1, 0.15 * Math.abs(value));
  return [Math.max(0, value - room), value + room];
}
