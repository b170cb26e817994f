import * as z from "zod/mini";
import {INGREDIENT_CLASSES} from "./from-label.ts";
import {beyondWords} from "./label-slips.ts";
import {ALLERGENS, GRADES} from "./ingredient.ts";
import {SAID_NUTRIENTS, type SaidNutrient} from "./nutrient-keys.ts";
import {PARTS} from "./parts.ts";

const text = () => z.string().check(z.minLength(1), z.maxLength(200));
const positive = () => z.number().check(z.gt(0));
const notNegative = () => z.number().check(z.gte(0));
/** Grams per 100 g; of more than 100 the error says what slipped. */
const figure = () => z.number().check(z.gte(0), z.lte(100, {error: ({input}) => beyondWords(input)}));
const share = () => z.optional(figure());
const words = <T extends z.ZodMiniType>(word: T) => z.array(word).check(z.maxLength(20));

const parts = Object.fromEntries(PARTS.map((part) => [part, share()])) as Record<
  (typeof PARTS)[number],
  z.ZodMiniOptional<z.ZodMiniNumber<number>>
>;

/** Something for each part, g per 100 g. */
export const partsSchema = z.strictObject(parts);

/** A composition as JSON, g per 100 g by part or shorthand: see `readComposition` for what else must hold. */
export const compositionSchema = z.strictObject({
  ...parts,
  msnf: share(),
  wheySolids: share(),
  fat: share(),
  dextroseEquivalent: z.optional(z.number().check(z.gte(5), z.lte(100))),
});

/** Nutrients that an ingredient says of itself, per 100 g in their own units: see `NUTRIENTS`. */
const nutrientsSchema = z.strictObject(
  Object.fromEntries(SAID_NUTRIENTS.map((key) => [key, z.optional(notNegative())])) as Record<
    SaidNutrient,
    z.ZodMiniOptional<z.ZodMiniNumber<number>>
  >,
);

/** A nutrition label as JSON, g per 100 g, with the class of ingredients that it is read by: see `fromLabel`. */
export const labelSchema = z.strictObject({
  class: z.enum(INGREDIENT_CLASSES),
  fat: figure(),
  saturates: share(),
  carbohydrate: figure(),
  sugars: figure(),
  protein: figure(),
  salt: figure(),
  fibre: share(),
  polyols: share(),
  alcohol: share(),
  water: share(),
  kilojoules: z.optional(notNegative()),
  kilocalories: z.optional(notNegative()),
});

/**
 * An ingredient as JSON: the one source of its reader and its JSON Schema. Units as in `Ingredient`. What is in it stands in
 * `composition`, or in `label` as its packet has it: `ownIngredient` reads either.
 */
export const ingredientSchema = z
  .strictObject({
    name: text(),
    composition: z.optional(compositionSchema),
    label: z.optional(labelSchema),
    aliases: z.optional(words(text())),
    price: z.optional(notNegative()),
    stock: z.optional(notNegative()),
    unit: z.optional(positive()),
    density: z.optional(positive()),
    portions: z.optional(z.record(text(), positive())),
    allergens: z.optional(words(z.enum(ALLERGENS))),
    nutrients: z.optional(nutrientsSchema),
    properties: z.optional(z.record(text(), z.number())),
    group: z.optional(text()),
    grade: z.optional(z.enum(GRADES)),
    source: z.optional(text()),
  })
  .check(
    z.refine(({composition, label}) => (composition === undefined) !== (label === undefined), {
      error: "give either composition or label",
      params: {problem: "not said, or said twice, what is in it"},
    }),
  );
