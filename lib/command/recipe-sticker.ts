import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import type {StickerSize} from "../io/document/sticker-layout.ts";
import {LABEL_LAWS, type LabelLaw} from "../kitchen/label/label-law.ts";
import type {LabelName} from "../kitchen/label/label-names.ts";
import {type Sticker, stickerOf} from "../kitchen/label/sticker.ts";
import type {StickerOptions} from "../kitchen/label/sticker-options.ts";
import {baseComponent, makeProduct} from "../kitchen/product/product.ts";
import {nameIn, type Recipe} from "../pantry/recipe.ts";
import {numberOf, type Options} from "./arguments.ts";

/** Options that are a sticker's alone. */
const OF_STICKER = [
  "net",
  "made",
  "until",
  "lot",
  "maker",
  "storage",
  "law",
  "promise",
  "print",
  "nutrition",
  "portion",
  "small",
] as const satisfies readonly (keyof Options)[];

/** Options of a sticker that a panel has too. */
const FOR_PANEL: ReadonlySet<string> = new Set(["net", "law", "portion"]);

/**
 * The sticker that the options ask for, and its size; nothing where they ask for none.
 *
 * @throws InputError for a size, an amount or a law that is not understood, a name that is not in the recipe, an option that a sticker
 *   does not heed or that heeds no sheet, and as `stickerOf`
 */
export function recipeSticker(
  recipe: Recipe,
  options: Options,
): {readonly sticker: Sticker; readonly size: StickerSize} | undefined {
  if (options.sticker === undefined) {
    const stray =
      OF_STICKER.find((name) => options[name] !== undefined && !(options.panel && FOR_PANEL.has(name))) ??
      (options.svg === undefined ? undefined : "svg");
    if (stray === undefined) return undefined;
    throw new InputError(
      `--${stray}`,
      "for a sticker alone",
      undefined,
      "add its size, e.g. --sticker 90x60",
    );
  }
  for (const name of ["csv", "markdown", "grams", "way", "heated", "late"] as const)
    if (options[name] !== undefined)
      throw new InputError(
        `--${name}`,
        "not for a sticker",
        undefined,
        "leave it out, or leave out --sticker",
      );
  const {made, until, lot, maker, storage} = options;
  const given: StickerOptions = {
    ...panelOptions(options),
    named: (options.promise ?? []).map((name) => nameIn(recipe, name, "--promise")),
    names: printedNames(recipe, options.print ?? []),
    nutrition: options.nutrition ?? false,
    ...(made !== undefined && {made}),
    ...(until !== undefined && {bestBefore: until}),
    ...(lot !== undefined && {lot}),
    ...(maker !== undefined && {maker}),
    ...(storage !== undefined && {storage}),
    overrun: overrunOf(recipe, options),
  };
  const product = makeProduct(recipe.name, [baseComponent(recipe)]);
  return {
    sticker: named(() => stickerOf(product, given)),
    size: {...sizeOf(options.sticker), smallPack: options.small ?? false},
  };
}

/** Name on the command line of each option of the library. */
const FLAGS: Readonly<Record<string, string>> = {
  "options.made": "--made",
  "options.bestBefore": "--until",
  "options.lot": "--lot",
  "options.maker": "--maker",
  "options.storage": "--storage",
  "options.portion": "--portion",
  "options.quantity.grams": "--net",
  "options.quantity.millilitres": "--net",
};

/** Result of a function, its errors with the names of the command line as their place. */
function named<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof InputError) || !Object.hasOwn(FLAGS, error.place)) throw error;
    throw new InputError(FLAGS[error.place]!, error.problem, error.value, error.advice);
  }
}

/** Options that a sticker and a panel share: the law, the amount in the tub, and the portion. */
export function panelOptions({law = "EU", net, portion}: Options) {
  const known = law.toUpperCase() as LabelLaw;
  if (!LABEL_LAWS.includes(known))
    throw new InputError("--law", "unknown", law, `use ${LABEL_LAWS.join(", ")}`);
  return {
    law: known,
    ...(net !== undefined && {quantity: quantityOf(net)}),
    ...(portion !== undefined && {portion: numberOf("--portion", portion, 1, 1e6)}),
  };
}

/** The air that `--overrun` says, or the recipe, or 30 %. */
export function overrunOf(recipe: Recipe, {overrun}: Options): number {
  return overrun === undefined ? (recipe.overrun ?? 30) : numberOf("--overrun", overrun, 0, 200);
}

/** `90x60`, mm. */
function sizeOf(text: string): {width: number; height: number} {
  const found = /^\s*(\d{1,4}(?:\.\d+)?)\s*(?:mm)?\s*[x×*]\s*(\d{1,4}(?:\.\d+)?)\s*(?:mm)?\s*$/i.exec(text);
  if (!found) throw new InputError("--sticker", "no size", text, "give width x height in mm, e.g. 90x60");
  const [width, height] = [Number(found[1]), Number(found[2])];
  for (const side of [width, height])
    if (side < 20 || side > 300)
      throw new InputError("--sticker", "out of range", text, "give 20 to 300 mm each way, e.g. 90x60");
  return {width, height};
}

const GRAMS: Readonly<Record<string, number>> = {g: 1, kg: 1000};
const MILLILITRES: Readonly<Record<string, number>> = {ml: 1, cl: 10, l: 1000};

/** `500 ml`, `350 g`. */
function quantityOf(text: string): NonNullable<StickerOptions["quantity"]> {
  const found = /^\s*(\d{1,6}(?:\.\d+)?)\s*(ml|cl|l|g|kg)\s*$/i.exec(text);
  const [value, unit] = [Number(found?.[1]), found?.[2]?.toLowerCase() ?? ""];
  if (!found || !(value > 0))
    throw new InputError("--net", "no amount", text, "give it in ml, l, g or kg, e.g. 500ml");
  return unit in GRAMS ? {grams: value * GRAMS[unit]!} : {millilitres: value * MILLILITRES[unit]!};
}

/** `spirit 40 % vol=rum`, and `white chocolate=white chocolate (sugar, cocoa butter)`. */
function printedNames(recipe: Recipe, given: readonly string[]): Record<string, LabelName> {
  return Object.fromEntries(
    given.map((text) => {
      const at = text.indexOf("=");
      const [shelf, printed] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
      if (at < 1 || !printed) {
        const near =
          nearestNames(
            text,
            recipe.lines.map(({ingredient}) => ingredient.name),
          )[0] ?? "sucrose";
        throw new InputError(
          "--print",
          "no name and what to print",
          text,
          `write NAME=PRINTED, e.g. "${near}=sugar"`,
        );
      }
      const own = /^([^()]+?)\s*\((.+)\)$/.exec(printed);
      return [
        nameIn(recipe, shelf, "--print"),
        own ? {name: own[1]!, contains: own[2]!} : {name: printed},
      ] as const;
    }),
  );
}
