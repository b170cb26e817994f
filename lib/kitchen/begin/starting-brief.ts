import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions, expectText, oneOf} from "../../core/shape.ts";
import type {BriefInput} from "../../balance/brief/brief-input.ts";
import {goesBy, type Pantry} from "../../pantry/pantry.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {isSourFruit} from "../reading/kind.ts";
import {type FlavourKind, flavoursOf, fruitShare} from "./flavours.ts";
import {STARTING_KEYS, type StartingKey} from "./starting-keys.ts";
import {STARTING_POINTS, type StartingPoint} from "./starting-points.ts";
import type {StartingRow} from "./starting-row.ts";
import {STARTING_TABLE} from "./starting-table.ts";

/** Options of a brief to start from. */
export interface StartingOptions {
  /** Mass to make, g, at least 1; 1000 by default. */
  readonly grams?: number;
  /** °C, -40 to -0.01; -18 by default. */
  readonly freezer?: number;
  /** Ingredient for the flavour, by name, where the point leaves it open. */
  readonly flavour?: string;
}

/** A limit from one or more rows: at each end the tightest. */
interface Limits {
  min?: number;
  max?: number;
}

/**
 * The brief of a starting point (`STARTING_POINTS` lists them), ready for `balance`: ingredients with limits in per cent of the batch,
 * targets of the mix, and an aim. `startingLimits` gives the source of each limit.
 *
 * @param pantry where the flavour is looked up
 * @throws InputError for an unknown point, a flavour that the pantry does not have or that does not suit the point, and a number out of range
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const answer = balance(startingBrief("sorbet", pantry, {flavour: "mango"}), {pantry});
 * answer.status; // => "optimal"
 * ```
 */
export function startingBrief(key: StartingKey, pantry: Pantry, options: StartingOptions = {}): BriefInput {
  const point = startingPoint(key);
  expectOptions(options, ["grams", "freezer", "flavour"]);
  const {grams = 1000, freezer = -18} = options;
  finite(grams, "options.grams", {min: 1}, "g");
  finite(freezer, "options.freezer", {min: -40, max: -0.01}, "°C");
  if (options.flavour !== undefined) expectText(options.flavour, "options.flavour");
  const flavour = flavourOf(point, pantry, options.flavour);
  const rows = startingLimits(key);
  const ingredients = [
    ...(flavour ? [[flavour.name, flavourLimits(rows, point.flavour!.kind, flavour)] as const] : []),
    ...merged(rows, "ingredient"),
  ];
  return {
    name: flavour ? `${flavour.name} ${SORT[point.flavour!.kind]}` : point.name,
    batch: grams,
    freezer,
    ingredients: ingredients.map(([name, {min, max}]) => ({
      name,
      ...(min !== undefined && {min: `${min} %`}),
      ...(max !== undefined && {max: `${max} %`}),
    })),
    targets: Object.fromEntries(merged(rows, "target")),
    ...point.aim,
  };
}

/** Name of the dessert by the kind of its flavour. */
const SORT: Readonly<Record<FlavourKind, string>> = {fruit: "sorbet", nut: "ice cream", spirit: "ice cream"};

/**
 * The limits of a starting point, each with its source: of an ingredient or a flavour in % of the batch, of a target in its own unit. Of two
 * limits of the same thing the tighter holds.
 *
 * @throws InputError for an unknown point
 *
 * @example
 * ```ts
 * const [yolk] = startingLimits("custard").filter(({name}) => name === "egg yolk");
 * `${yolk?.min} %: ${yolk?.source}`; // => "5 %: Italian code of practice"
 * ```
 */
export function startingLimits(key: StartingKey): StartingRow[] {
  const known = startingPoint(key).key;
  return STARTING_TABLE.filter(({point}) => point === known);
}

/** The starting point of a key. */
export function startingPoint(key: StartingKey): StartingPoint {
  const known = oneOf(key, STARTING_KEYS, "starting point", "starting point");
  return STARTING_POINTS.find((point) => point.key === known)!;
}

/** The ingredient for the flavour, where the point has one. */
export function flavourOf(
  point: StartingPoint,
  pantry: Pantry,
  wanted: string | undefined,
): Ingredient | undefined {
  if (!point.flavour) {
    if (wanted === undefined) return undefined;
    throw new InputError("options.flavour", `${point.name} has no flavour to choose`, wanted, "leave it out");
  }
  const {kind, first} = point.flavour;
  const all = flavoursOf(kind, pantry);
  const name = wanted ?? first;
  const found = all.find((one) => one.name === name) ?? all.find((one) => goesBy(one, name));
  if (found) return found;
  const names = all.map((one) => one.name);
  const near = nearestNames(name, names);
  throw new InputError(
    "options.flavour",
    `no ${kind} for ${point.name}`,
    name,
    near.length ? `did you mean ${near.join(" or ")}?` : `give one such as ${names.slice(0, 3).join(", ")}`,
  );
}

function flavourLimits(rows: readonly StartingRow[], kind: FlavourKind, flavour: Ingredient): Limits {
  const limits = new Map(merged(rows, "flavour"));
  const own = limits.get(kind) ?? {};
  if (kind !== "fruit") return own;
  const code = (isSourFruit(flavour) ? limits.get("sour fruit") : own)?.min ?? 0;
  const share = fruitShare(flavour, code);
  return {min: share, max: Math.min(own.max ?? Infinity, share + 5)};
}

/** The rows on one kind of subject as limits by name, in the order of the table. */
function merged(rows: readonly StartingRow[], of: StartingRow["of"]): [string, Limits][] {
  const limits = new Map<string, Limits>();
  for (const row of rows) {
    if (row.of !== of) continue;
    const {min = -Infinity, max = Infinity} = limits.get(row.name) ?? {};
    const [low, high] = [Math.max(min, row.min ?? -Infinity), Math.min(max, row.max ?? Infinity)];
    limits.set(row.name, {
      ...(Number.isFinite(low) && {min: low}),
      ...(Number.isFinite(high) && {max: high}),
    });
  }
  return [...limits];
}
