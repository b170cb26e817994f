import * as z from "zod/mini";
import {
  compositionSchema,
  ingredientSchema as pantrySchema,
  labelSchema,
  partsSchema,
} from "../pantry/ingredient-schema.ts";

/** Largest number of ingredients in a brief. */
const MOST_INGREDIENTS = 2000;

/** What a brief may say of the customary doses beside limits of its own. */
const DOSE_WORDS = ["customary", "none"] as const;
/** Largest batch, g: a thousand tonnes. */
const MOST_GRAMS = 1e9;

const finite = () => z.number();
const positive = () => z.number().check(z.gt(0));
const notNegative = () => z.number().check(z.gte(0));
const text = () => z.string().check(z.minLength(1), z.maxLength(200));
/** A share of the batch such as "20 %", which follows the batch where grams do not. */
const percent = () =>
  z
    .string()
    .check(
      z.regex(
        /^\s*\d{1,3}(\.\d{1,12})?\s*%\s*$/,
        'give g as a number, or a share of the batch such as "20 %"',
      ),
    );
const temperature = () => z.number().check(z.gte(-40), z.lte(-0.01));

const limits = {min: z.optional(finite()), max: z.optional(finite()), equal: z.optional(finite())};
const limitsSchema = z.strictObject(limits);
const atSchema = z.strictObject({at: temperature(), ...limits});
const swingSchema = z.strictObject({from: temperature(), to: temperature(), ...limits});

/** An ingredient of a brief: all that a pantry may say of one, and what the brief wants of it. */

const ingredientSchema = z.strictObject({
  ...pantrySchema.shape,
  min: z.optional(z.union([notNegative(), percent()])),
  max: z.optional(z.union([notNegative(), percent()])),
  step: z.optional(positive()),
  pack: z.optional(positive()),
  minIfUsed: z.optional(z.union([positive(), percent()])),
  onlyWith: z.optional(z.strictObject({ingredient: text(), min: z.union([positive(), percent()])})),
  ratio: z.optional(z.strictObject({to: text(), grams: positive()})),
});

const spreadSchema = z.strictObject({
  parts: z.optional(z.record(text(), partsSchema)),
  weighing: z.optional(notNegative()),
});

export const aimSchema = z.union([
  text(),
  z.strictObject({ice: z.strictObject({at: temperature()})}),
  z.strictObject({hardPhase: z.strictObject({at: temperature()})}),
  z.strictObject({heatShock: z.strictObject({from: temperature(), to: temperature()})}),
]);

/** What a brief looks like as JSON: the one source of its type, its reader and its JSON Schema. */
export const briefSchema = z.strictObject({
  $schema: z.optional(z.string()),
  name: z.optional(text()),
  batch: z.optional(positive().check(z.lte(MOST_GRAMS))),
  pantry: z.optional(text()),
  prices: z.optional(text()),
  freezer: z.optional(temperature()),
  maxIngredients: z.optional(z.number().check(z.gte(1), z.int())),
  ingredients: z
    .array(z.union([text(), ingredientSchema]))
    .check(z.minLength(1), z.maxLength(MOST_INGREDIENTS)),
  targets: z.optional(
    z.catchall(
      z.object({
        ice: z.optional(z.array(atSchema)),
        hardPhase: z.optional(z.array(atSchema)),
        heatShock: z.optional(z.array(swingSchema)),
        freezingPoint: z.optional(limitsSchema),
        scoopTemperature: z.optional(limitsSchema),
      }),
      limitsSchema,
    ),
  ),
  doses: z.optional(z.union([z.enum(DOSE_WORDS), z.record(text(), notNegative())])),
  wholePacks: z.optional(z.boolean()),
  spread: z.optional(spreadSchema),
  margin: z.optional(z.boolean()),
  near: z.optional(z.record(text(), notNegative())),
  minimise: z.optional(aimSchema),
  maximise: z.optional(aimSchema),
});

/**
 * A brief as the cook writes it.
 *
 * `batch` (default 1000, at most 1e9) and an ingredient's `min`, `max` (no more than its `stock`), `step` and `unit`: g; `price`: money per kg; targets: g per
 * 100 g of mix, °C for `at`, `from`, `to`, `freezingPoint` and `scoopTemperature`, sucrose = 100 for `sweetness`,
 * money per kg for `cost`; `freezer`: °C, default -18. `pantry` and `prices` are paths of CSV files beside the brief,
 * read by the command.
 *
 * An ingredient's `min`, `max`, `minIfUsed` and the `min` of its `onlyWith` may be a share of the batch, `"20 %"`: it follows
 * the batch, where grams stay what they are.
 *
 * `doses`: customary upper limits on salt, gums, emulsifiers, polyols and what else is taken by the pinch or the spoon (see
 * `DOSES`) hold by default (`"customary"`); `"none"` lifts them all, `{"salt": 1}` sets some of the cook's own, g per 100 g
 * of mix. What the brief asks for outright goes before a customary dose.
 *
 * `pack` of an ingredient is the mass it is bought in, g; with `wholePacks` a minimal cost pays every opened pack in full.
 *
 * Practical rules: `step` or `unit` of an ingredient allows whole multiples only; `minIfUsed` means none or at least so
 * many g; `onlyWith` that it is used only beside at least `min` g of another; `ratio` fixes it at `grams` per g of
 * another; `maxIngredients` of the brief limits how many are used. `spread` is how far the kitchen may be off,
 * g per 100 g by ingredient and part, and g for each weighing; with `margin` the targets hold for all of it. `near` is a recipe, g by ingredient, that one of the
 * candidates stays as close to as the targets allow.
 */
export type BriefInput = ReadonlyLists<Omit<z.input<typeof briefSchema>, "targets">> & {
  targets?: TargetsInput | undefined;
};

/** The same data, whose lists may be readonly: nothing that is read is changed. */
type ReadonlyLists<T> = T extends readonly (infer Entry)[]
  ? readonly ReadonlyLists<Entry>[]
  : T extends object
    ? {[Key in keyof T]: ReadonlyLists<T[Key]>}
    : T;

/** Targets by the name of what they limit: a quantity, `cost`, a property of the ingredients, or one of those named here. */
export interface TargetsInput {
  [name: string]: LimitsInput | readonly AtInput[] | readonly SwingInput[] | undefined;
  ice?: readonly AtInput[] | undefined;
  hardPhase?: readonly AtInput[] | undefined;
  heatShock?: readonly SwingInput[] | undefined;
  freezingPoint?: LimitsInput | undefined;
  scoopTemperature?: LimitsInput | undefined;
}

/** A target at a temperature, °C. */
export type AtInput = z.input<typeof atSchema>;

/** A target between two temperatures, °C. */
export type SwingInput = z.input<typeof swingSchema>;

/** An ingredient of a brief with more than its name. */
export type IngredientInput = ReadonlyLists<z.input<typeof ingredientSchema>>;

/** How far a kitchen may be off, as a brief or a command states it. */
export type SpreadInput = z.input<typeof spreadSchema>;

/** Lower and upper limit of a target, or one value to be met. */
export type LimitsInput = z.input<typeof limitsSchema>;

/** Every key that a brief knows, for suggestions. */
export const BRIEF_KEYS: readonly string[] = [
  ...Object.keys(briefSchema.shape),
  ...Object.keys(ingredientSchema.shape),
  ...Object.keys(compositionSchema.shape),
  ...Object.keys(labelSchema.shape),
  "ingredient",
  "parts",
  "weighing",
  "to",
  "grams",
  ...Object.keys(swingSchema.shape),
  ...Object.keys(atSchema.shape),
];
