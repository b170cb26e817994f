import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {finite} from "../../core/numbers.ts";
import {parse} from "../../core/schema.ts";
import {USUAL_OVERRUN} from "../../freezing/firmness.ts";
import type {Learned} from "../../freezing/learned.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {nameKey} from "../../pantry/pantry.ts";
import {QUANTITIES} from "../../pantry/quantities.ts";
import {type Recipe, recipeMass} from "../../pantry/recipe.ts";
import {BRIEF_KEYS, briefSchema} from "../brief/brief-schema.ts";
import type {Choice, Target} from "../brief/brief.ts";
import {isFlavour} from "../../pantry/flavour-groups.ts";
import {SUBSTITUTION_WEIGHTS, type Weights} from "./similarity-traits.ts";
import {SPECIAL_SUBJECTS} from "../measure/measures.ts";
import {readTargets} from "../read/read-targets.ts";
import type {SubstituteOptions} from "./substitution-types.ts";

/** An ingredient that the remade recipe may contain. */
export interface Candidate {
  readonly ingredient: Ingredient;
  /** In the recipe as it was, g per batch; 0 for one that only the shelf has. */
  readonly before: number;
  /** Amount that there is, g. */
  readonly max: number;
  /** The least of it that stays, g; none by default. */
  readonly min?: number;
}

/** A checked question of substitution. */
export interface SubstitutionProblem {
  readonly before: Recipe;
  readonly batch: number;
  readonly freezer: number;
  /** Air beaten in, % of the mix's volume. */
  readonly overrun: number;
  readonly learned?: Learned;
  readonly weights: Weights;
  /** The ingredients that are out, each with the rest of it as its `max`. */
  readonly missing: readonly Candidate[];
  /** Ingredients that stay as they are. */
  readonly kept: readonly Candidate[];
  /** The recipe's other ingredients: they may move in a re-balance, and take the place of what is out. */
  readonly own: readonly Candidate[];
  /** Ingredients of the shelf that the recipe does not have. */
  readonly others: readonly Candidate[];
  readonly legalName?: {readonly name: string; readonly targets: readonly Target[]};
}

/**
 * A question of substitution, checked: the recipe scaled to the batch, each name resolved.
 *
 * @throws InputError for an empty recipe, an amount or weight out of range, a name that the recipe does not have, or a
 *   missing ingredient of which enough is left
 */
export function readSubstitution(recipe: Recipe, options: SubstituteOptions): SubstitutionProblem {
  const {lines, batch} = scaledLines(recipe, options.batch);
  const freezer = finite(options.freezer ?? -18, "freezer", {min: -40, max: -0.01}, "°C");
  const shelf = "ingredients" in options.from ? options.from.ingredients : options.from;
  const names = lines.map(({ingredient}) => ingredient.name);
  const find = (name: string, place: string) => {
    const line = lines.find(({ingredient}) => isCalled(ingredient, name));
    if (line) return line;
    const near = nearestNames(name, names);
    throw new InputError(
      place,
      "not in the recipe",
      name,
      `give ${(near.length ? near : names).join(" or ")}`,
    );
  };
  const out = missingFrom(options.without, lines, shelf, find);
  const left = finite(options.left ?? 0, "left", {min: 0}, "g");
  const [first] = out.lines;
  if (left > 0 && out.lines.length > 1)
    throw new InputError("left", "of several ingredients", left, "give it where one is out, or leave it out");
  if (left >= first!.before) {
    throw new InputError(
      "left",
      "enough for the recipe",
      left,
      `nothing is to be replaced; it takes ${first!.before} g`,
    );
  }
  const kept = options.keep
    ? options.keep.map((name, i) => find(name, `keep[${i}]`))
    : lines.filter((line) => !out.lines.includes(line) && isFlavour(line.ingredient));
  const both = kept.find((line) => out.lines.includes(line));
  if (both)
    throw new InputError("keep", "what is out cannot stay", both.ingredient.name, "leave it out of keep");
  const stocked = new Map(shelf.map((ingredient) => [nameKey(ingredient.name), ingredient]));
  const own = lines.filter((line) => !out.lines.includes(line) && !kept.includes(line));
  const others = shelf
    .filter((ingredient) => !lines.some((line) => isCalled(ingredient, line.ingredient.name)))
    .filter((ingredient) => !out.shelf.has(ingredient))
    .filter(
      (ingredient) =>
        !isFlavour(ingredient) || out.lines.some((line) => line.ingredient.group === ingredient.group),
    )
    .filter(({stock}) => stock === undefined || stock > 0)
    .map((ingredient) => ({ingredient, before: 0, max: ingredient.stock ?? Infinity}));
  const choices = [...lines, ...others].map(({ingredient}): Choice => ({ingredient, min: 0, max: Infinity}));
  return {
    before: {...recipe, lines: lines.map(({ingredient, before}) => ({ingredient, grams: before}))},
    batch,
    freezer,
    overrun: recipe.overrun ?? USUAL_OVERRUN,
    ...(options.learned && {learned: options.learned}),
    weights: readWeights(options.weights ?? {}),
    missing: out.lines.map((line) => ({...line, max: left})),
    kept,
    own: own.map((line) => {
      const stock = stocked.get(nameKey(line.ingredient.name))?.stock ?? Infinity;
      // The cook is taken to have as much as the recipe asks for.
      return {...line, max: Math.max(line.before, stock)};
    }),
    others,
    ...(options.legalName && {
      legalName: {
        name: options.legalName.name,
        targets: readNameTargets(options.legalName.targets, choices),
      },
    }),
  };
}

/** Ingredients that are out: lines of the recipe, in its order, and ingredients of the shelf that must not be offered. */
function missingFrom(
  without: string | readonly string[],
  lines: readonly Candidate[],
  shelf: readonly Ingredient[],
  find: (name: string, place: string) => Candidate,
): {readonly lines: readonly Candidate[]; readonly shelf: ReadonlySet<Ingredient>} {
  const names = typeof without === "string" ? [without] : without;
  const isOut = ({ingredient}: Pick<Candidate, "ingredient">) =>
    names.some((name) => isCalled(ingredient, name));
  const place = (i: number) => (typeof without === "string" ? "without" : `without[${i}]`);
  const onShelf = new Set(shelf.filter((ingredient) => isOut({ingredient})));
  const here = lines.filter(isOut);
  for (const [i, name] of names.entries()) {
    const known = [...onShelf].some((ingredient) => isCalled(ingredient, name));
    if (here.length === 0 || !known) find(name, place(i));
  }
  return {lines: here, shelf: onShelf};
}

/** The lines of the recipe in g per batch, one for each ingredient. */
export function scaledLines(recipe: Recipe, wanted: number | undefined): {lines: Candidate[]; batch: number} {
  if (recipe.lines.length === 0)
    throw new InputError("recipe", "has no ingredients", undefined, "give its lines");
  const grams = new Map<string, {ingredient: Ingredient; grams: number}>();
  for (const [i, line] of recipe.lines.entries()) {
    finite(line.grams, `recipe.lines[${i}].grams`, {min: 0}, "g");
    const key = nameKey(line.ingredient.name);
    grams.set(key, {ingredient: line.ingredient, grams: line.grams + (grams.get(key)?.grams ?? 0)});
  }
  const mass = recipeMass(recipe);
  if (mass <= 0) throw new InputError("recipe", "has no mass", mass, "give its amounts in g");
  const batch = wanted ?? mass;
  if (!(finite(batch, "batch", {min: 0}, "g") > 0))
    throw new InputError("batch", "nothing", batch, "give g above 0");
  const lines = [...grams.values()]
    .filter((line) => line.grams > 0)
    .map((line) => ({
      ingredient: line.ingredient,
      before: (line.grams * batch) / mass,
      max: Infinity,
    }));
  return {lines, batch};
}

function isCalled({name, aliases = []}: Ingredient, wanted: string): boolean {
  return [name, ...aliases].some((known) => nameKey(known) === nameKey(wanted));
}

/** The usual weights, replaced where others are given. */
export function readWeights(given: Partial<Weights>): Weights {
  for (const [name, weight] of Object.entries(given)) {
    if (!Object.hasOwn(SUBSTITUTION_WEIGHTS, name)) {
      const near = nearestNames(name, Object.keys(SUBSTITUTION_WEIGHTS));
      const known = near.length ? near : Object.keys(SUBSTITUTION_WEIGHTS);
      throw new InputError(`weights.${name}`, "unknown weight", weight, `use ${known.join(" or ")}`);
    }
    finite(weight, `weights.${name}`, {min: 0});
  }
  return {...SUBSTITUTION_WEIGHTS, ...given};
}

function readNameTargets(input: unknown, choices: readonly Choice[]): Target[] {
  const known = [...BRIEF_KEYS, ...SPECIAL_SUBJECTS, ...QUANTITIES];
  const targets = parse(briefSchema.shape.targets, input, "legalName.targets", known);
  return readTargets(targets ?? {}, choices, "legalName");
}
