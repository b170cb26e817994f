import * as z from "zod/mini";
import {
  compositionSchema,
  ingredientSchema as pantrySchema,
  labelSchema,
  partsSchema,
} from "../../pantry/ingredient-schema.ts";
import {MEASURES, SPECIAL_SUBJECTS} from "../measure/measures.ts";
import {
  AT_TEMPERATURES,
  atSchema,
  isAtTemperatures,
  limitsSchema,
  swingSchema,
  temperatureSchema,
} from "../measure/written.ts";
import type {AimInput, AtInput, BriefInput, IngredientInput, LimitsInput, SwingInput} from "./brief-input.ts";

/** Largest number of ingredients in a brief. */
const MOST_INGREDIENTS = 2000;

/** Words of a brief on the customary doses, in place of limits of its own. */
const DOSE_WORDS = ["customary", "none"] as const;
/** Largest batch, g: a thousand tonnes. */
const MOST_GRAMS = 1e9;

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

export const spreadSchema = z.strictObject({
  parts: z.optional(z.record(text(), partsSchema)),
  weighing: z.optional(notNegative()),
});

/** Measures that are written at temperatures of their own, each with its schemas. */
const atTemperatures = SPECIAL_SUBJECTS.flatMap((key) => {
  const {written} = MEASURES[key];
  return isAtTemperatures(written) ? [{key, schemas: AT_TEMPERATURES[written]}] : [];
});

export const aimSchema = z.union([
  text(),
  ...atTemperatures.map(({key, schemas}) => z.strictObject({[key]: schemas.wish()})),
]) as unknown as z.ZodMiniType<AimInput<string>, AimInput<string>>;

/** Quantities that are limited by their name alone all have the same limits; of these, temperatures are named for editors. */
const targetsSchema = z.catchall(
  z.object(
    Object.fromEntries<z.ZodMiniType>([
      ...atTemperatures.map(({key, schemas}) => [key, z.optional(schemas.target)] as const),
      ...SPECIAL_SUBJECTS.flatMap((key) =>
        MEASURES[key].written === "temperature" ? [[key, z.optional(limitsSchema)] as const] : [],
      ),
    ]),
  ),
  limitsSchema,
) as unknown as z.ZodMiniType<WrittenTargets, WrittenTargets>;

/** The targets of a brief by their names, as they are written. */
export type WrittenTargets = Readonly<
  Record<string, LimitsInput | readonly AtInput[] | readonly SwingInput[] | undefined>
>;

/** Result of `calibrate`. */
const learnedSchema = z.strictObject({
  reports: notNegative(),
  shift: z.number(),
  narrowing: z.number().check(z.gte(0), z.lte(10)),
  scatter: positive(),
});

/** A brief as JSON: the one source of its type, its reader and its JSON Schema. */
export const briefSchema = z.strictObject({
  $schema: z.optional(z.string()),
  name: z.optional(text()),
  batch: z.optional(positive().check(z.lte(MOST_GRAMS))),
  pantry: z.optional(text()),
  prices: z.optional(text()),
  freezer: z.optional(temperatureSchema()),
  overrun: z.optional(z.number().check(z.gte(0), z.lte(200))),
  learned: z.optional(learnedSchema),
  maxIngredients: z.optional(z.number().check(z.gte(1), z.int())),
  ingredients: z
    .array(z.union([text(), ingredientSchema]))
    .check(z.minLength(1), z.maxLength(MOST_INGREDIENTS)),
  targets: z.optional(targetsSchema),
  doses: z.optional(z.union([z.enum(DOSE_WORDS), z.record(text(), notNegative())])),
  wholePacks: z.optional(z.boolean()),
  spread: z.optional(spreadSchema),
  margin: z.optional(z.boolean()),
  near: z.optional(z.record(text(), notNegative())),
  minimise: z.optional(aimSchema),
  maximise: z.optional(aimSchema),
});

export type {
  AtInput,
  BriefInput,
  IngredientInput,
  LimitsInput,
  SpreadInput,
  SwingInput,
  TargetsInput,
} from "./brief-input.ts";

/** Proof by the compiler that the documented type and the schema take the same data, but for the names of targets. */
export const SAME_SHAPE: Same<
  Omit<BriefInput<string>, "targets">,
  Omit<ReadonlyLists<z.input<typeof briefSchema>>, "targets">
> &
  Same<keyof BriefInput, keyof z.input<typeof briefSchema>> &
  Same<keyof IngredientInput, keyof z.input<typeof ingredientSchema>> &
  Same<AtInput, z.input<typeof atSchema>> &
  Same<SwingInput, z.input<typeof swingSchema>> &
  Same<LimitsInput, z.input<typeof limitsSchema>> = true;

/** `true` where each of two types is assignable to the other. */
type Same<A, B> = [A, B] extends [B, A] ? true : false;

/** The same data, whose lists may be readonly: nothing that is read is changed. */
type ReadonlyLists<T> = T extends readonly (infer Entry)[]
  ? readonly ReadonlyLists<Entry>[]
  : T extends object
    ? {[Key in keyof T]: ReadonlyLists<T[Key]>}
    : T;

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
