import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Nutrients} from "../../pantry/nutrient-keys.ts";
import {ownIngredient} from "../../pantry/own-ingredient.ts";
import {findIngredient, nameKey, type Pantry} from "../../pantry/pantry.ts";
import type {BriefInput, IngredientInput} from "../brief/brief-schema.ts";
import type {Choice} from "../brief/brief.ts";

/**
 * The ingredients of a brief, resolved: those given by name alone come from the pantry, and no more is taken than is in stock.
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
  const inputs = entries.map((entry): IngredientInput => (typeof entry === "string" ? {name: entry} : entry));
  const ingredients = inputs.map((input, i) => readIngredient(input, pantry, `${place}: ingredients[${i}]`));
  refuseDuplicates(ingredients, place);
  return inputs.map((input, i) => {
    const ingredient = ingredients[i]!;
    const at = `${place}: ingredients[${i}] "${ingredient.name}"`;
    return {
      ingredient,
      ...(input.pack !== undefined && {pack: input.pack}),
      ...readAmounts(input, ingredient, batch, at),
      ...readRules(input, i, ingredients, batch, at),
    };
  });
}

/** Keys that a brief may give of an ingredient in place of the pantry. */
const SAID = [
  "aliases",
  "price",
  "stock",
  "unit",
  "density",
  "portions",
  "group",
  "grade",
  "source",
] as const;

function readIngredient(input: IngredientInput, pantry: Pantry, place: string): Ingredient {
  const own = ownIngredient(input, place);
  const known = own ?? findIngredient(pantry, input.name, place);
  const said = SAID.flatMap((key) => (input[key] === undefined ? [] : [[key, input[key]] as const]));
  const {allergens, nutrients, properties} = input;
  return {
    ...known,
    ...(Object.fromEntries(said) as Partial<Ingredient>),
    // The allergens of an ingredient of one's own are there already: those declared and those evident.
    ...(allergens && !own && {allergens}),
    ...(nutrients && {nutrients: {...known.nutrients, ...nutrients} as Nutrients}),
    ...(properties && {properties: {...known.properties, ...properties}}),
  };
}

/** Limits and steps of an amount, g per batch. */
function readAmounts(
  input: IngredientInput,
  ingredient: Ingredient,
  batch: number,
  at: string,
): Pick<Choice, "min" | "max" | "percents" | "step" | "minIfUsed"> {
  const {step, unit} = input;
  const {stock = Infinity} = ingredient;
  const percents = {
    ...inPercent("min", input.min),
    ...inPercent("max", input.max),
    ...inPercent("minIfUsed", input.minIfUsed),
    ...inPercent("onlyWith", input.onlyWith?.min),
  };
  const given = (amount: number | string | undefined, key: string) => gramsOf(amount, batch, `${at}: ${key}`);
  const [min = 0, most = Infinity, minIfUsed] = [
    given(input.min, "min"),
    given(input.max, "max"),
    given(input.minIfUsed, "minIfUsed"),
  ];
  const max = Math.min(most, stock);
  for (const [key, grams, said] of [
    ["min", min, input.min],
    ["minIfUsed", minIfUsed, input.minIfUsed],
  ] as const) {
    if (grams === undefined || grams <= max) continue;
    throw max === stock
      ? new InputError(
          `${at}: ${key}`,
          "more than is in stock",
          said,
          `give at most ${stock} g, or a larger stock`,
        )
      : new InputError(
          `${at}: ${key}`,
          "above max",
          said,
          `give at most ${typeof input.max === "string" ? `"${input.max.trim()}", that is ` : ""}${max} g`,
        );
  }
  if (step !== undefined && unit !== undefined) {
    throw new InputError(`${at}: step`, "given beside unit", step, "give either step or unit");
  }
  for (const [key, grams] of Object.entries({min, step, unit, minIfUsed})) {
    if (grams !== undefined && grams > batch) {
      throw new InputError(
        `${at}: ${key}`,
        "more than the whole batch",
        grams,
        `give at most ${batch} g, or a larger batch`,
      );
    }
  }
  const whole = step ?? unit;
  const held = max === most ? percents : withoutMax(percents);
  return {
    min,
    max,
    ...(Object.keys(held).length > 0 && {percents: held}),
    ...(whole !== undefined && {step: whole}),
    ...(minIfUsed !== undefined && {minIfUsed}),
  };
}

type Percents = NonNullable<Choice["percents"]>;

/** An amount given as a share of the batch, in per cent under its key; empty for grams. */
function inPercent(key: keyof Percents, amount: number | string | undefined): Percents {
  return typeof amount === "string" ? {[key]: Number(amount.replace("%", ""))} : {};
}

/** The shares of the batch without the upper one, in place of which the stock limits. */
function withoutMax({max: _max, ...others}: Percents): Percents {
  return others;
}

/** An amount in g, from g or a share of the batch. */
function gramsOf(amount: number | string | undefined, batch: number, place: string): number | undefined {
  if (typeof amount !== "string") return amount;
  const percent = Number(amount.replace("%", ""));
  if (percent <= 100) return (percent * batch) / 100;
  throw new InputError(place, "more than the whole batch", amount, 'give at most "100 %"');
}

/** Rules that name another ingredient of the brief. */
function readRules(
  {onlyWith, ratio}: IngredientInput,
  own: number,
  ingredients: readonly Ingredient[],
  batch: number,
  at: string,
): Pick<Choice, "onlyWith" | "ratio"> {
  const indexOf = (name: string, place: string): number => {
    const index = indexOfName(name, ingredients, place);
    if (index === own)
      throw new InputError(place, "the ingredient itself", name, "name another ingredient of the brief");
    return index;
  };
  return {
    ...(onlyWith && {
      onlyWith: {
        index: indexOf(onlyWith.ingredient, `${at}: onlyWith.ingredient`),
        min: gramsOf(onlyWith.min, batch, `${at}: onlyWith.min`)!,
      },
    }),
    ...(ratio && {ratio: {index: indexOf(ratio.to, `${at}: ratio.to`), grams: ratio.grams}}),
  };
}

/**
 * Place of an ingredient of the brief, by name or alias.
 *
 * @throws InputError for a name that the brief does not have
 */
export function indexOfName(name: string, ingredients: readonly Ingredient[], place: string): number {
  const index = ingredients.findIndex((ingredient) => sameName(ingredient, name));
  if (index >= 0) return index;
  const near = nearestNames(
    name,
    ingredients.map((ingredient) => ingredient.name),
  );
  throw new InputError(
    place,
    "no ingredient of this brief",
    name,
    near.length ? `did you mean ${near.join(" or ")}` : "add it to the ingredients",
    {code: "unknown name"},
  );
}

function sameName({name, aliases = []}: Ingredient, wanted: string): boolean {
  return [name, ...aliases].some((known) => nameKey(known) === nameKey(wanted));
}

function refuseDuplicates(ingredients: readonly Ingredient[], place: string): void {
  const seen = new Map<string, number>();
  for (const [i, {name}] of ingredients.entries()) {
    const key = nameKey(name);
    const first = seen.get(key);
    if (first !== undefined) {
      throw new InputError(
        `${place}: ingredients[${i}]`,
        `same name as ingredients[${first}]`,
        name,
        "list each ingredient once",
      );
    }
    seen.set(key, i);
  }
}
