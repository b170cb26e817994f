import {finite} from "../../core/numbers.ts";
import {expectOptions} from "../../core/shape.ts";
import {expectProduct, type Product, productDensity} from "../product/product.ts";
import {usNutrition} from "./us-nutrition.ts";
import {dailyPercent, mineralPercent, usFigure} from "./us-rounding.ts";

/** One line of a Nutrition Facts panel. */
export interface UsPanelLine {
  readonly name: string;
  /** Indent: 0, 1 below another nutrient, 2 below that. */
  readonly level: 0 | 1 | 2;
  /** With its unit, for each column; absent where it is not known. */
  readonly amounts: readonly (string | undefined)[];
  /** % of the daily value for each column; absent where there is none or it is not known. */
  readonly daily: readonly (string | undefined)[];
}

/** A Nutrition Facts panel: its words in the order of the law. */
export interface UsPanel {
  /** `about 3 servings per container`; absent without a container. */
  readonly servings?: string;
  /** `2/3 cup (99g)`. */
  readonly serving: string;
  /** g of a serving. */
  readonly grams: number;
  /** Heading of each column; two where a container holds 2 to 3 servings. */
  readonly columns: readonly string[];
  readonly calories: readonly string[];
  /** Fat to protein, in order. */
  readonly nutrients: readonly UsPanelLine[];
  /** Vitamin D, calcium, iron, potassium. */
  readonly vitamins: readonly UsPanelLine[];
  /** Ingredients that lack a figure, by that figure; empty for a whole panel. */
  readonly lacking: Readonly<Record<string, readonly string[]>>;
}

/** Facts of the tub that a panel needs. */
export interface UsPanelOptions {
  /** Air beaten in, % of the churned mix's volume, 0 to 300; 30 by default. */
  readonly overrun?: number;
  /** Content of a container, ml, from 1. */
  readonly container?: number;
}

/** Reference amount of ice cream, frozen yogurt and sherbet: 2/3 cup of 240 ml; 21 CFR 101.12(b), as two pages quote it. */
export const US_SERVING_MILLILITRES = 160;

/** Daily values, g, mg or µg: 21 CFR 101.9(c)(8)(iv) and (c)(9), as quoted by others. */
export const DAILY_VALUES = {
  fat: 78,
  saturated: 20,
  cholesterol: 300,
  sodium: 2300,
  carbohydrate: 275,
  fibre: 28,
  addedSugars: 50,
  vitaminD: 20,
  calcium: 1300,
  iron: 18,
  potassium: 4700,
} as const;

/** Mark of a nutrient whose figure is not its line's plain text. */
type Figure = Parameters<typeof usFigure>[1];

/** The lines in their order: name, level, key, unit and rounding. */
const NUTRIENTS = [
  ["Total Fat", 0, "fat", "g", "fat"],
  ["Saturated Fat", 1, "saturated", "g", "fat"],
  ["Trans Fat", 1, "trans", "g", "fat"],
  ["Cholesterol", 0, "cholesterol", "mg", "cholesterol"],
  ["Sodium", 0, "sodium", "mg", "sodium"],
  ["Total Carbohydrate", 0, "carbohydrate", "g", "carbohydrate"],
  ["Dietary Fiber", 1, "fibre", "g", "carbohydrate"],
  ["Total Sugars", 1, "sugars", "g", "carbohydrate"],
  ["Added Sugars", 2, "addedSugars", "g", "carbohydrate"],
  ["Sugar Alcohol", 1, "sugarAlcohol", "g", "carbohydrate"],
  ["Protein", 0, "protein", "g", "carbohydrate"],
] as const;

const VITAMINS = [
  ["Vitamin D", 0, "vitaminD", "mcg", "vitaminD"],
  ["Calcium", 0, "calcium", "mg", "mineral"],
  ["Iron", 0, "iron", "mg", "iron"],
  ["Potassium", 0, "potassium", "mg", "mineral"],
] as const;

/**
 * The Nutrition Facts of a product, rounded and in the order of 21 CFR 101.9(c) and (d): a serving is 2/3 cup, a container that holds
 * less than two is one serving, and one of two to three gets a second column (101.9(b)(6) and (12)). Sugar alcohol has a line only
 * where it is present. This is not licensed advice.
 *
 * @param options `overrun`, % of the churned mix's volume, 0 to 300, 30 by default; `container`, ml, from 1
 * @throws InputError for an overrun or a container outside its range, and a product without a churned component
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * const panel = usPanel(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), {container: 500});
 * panel.serving; // => "2/3 cup (127g)"
 * panel.servings; // => "about 3 servings per container"
 * panel.calories; // => ["80"]
 * panel.nutrients[0]; // => {name: "Total Fat", amounts: ["4g"], daily: ["5%"]}
 * ```
 */
export function usPanel(product: Product, options: UsPanelOptions = {}): UsPanel {
  expectProduct(product);
  expectOptions(options, ["overrun", "container"]);
  const density = productDensity(product, options.overrun ?? 30);
  const {container} = options;
  if (container !== undefined) finite(container, "options.container", {min: 1, max: 1e6}, "ml");
  const held = container === undefined ? Infinity : container / US_SERVING_MILLILITRES;
  const alone = held < 2;
  const grams = density * (alone ? container! : US_SERVING_MILLILITRES);
  const masses = held >= 2 && held <= 3 ? [grams, density * container!] : [grams];
  const of100 = usNutrition(product);
  const line = ([name, level, key, unit, kind]: (
    | typeof NUTRIENTS
    | typeof VITAMINS
  )[number]): UsPanelLine => {
    const value = of100[key];
    const each = masses.map((mass) => (value === undefined ? undefined : (value * mass) / 100));
    return {
      name,
      level,
      amounts: each.map((amount) => (amount === undefined ? undefined : printed(amount, kind, unit))),
      daily: each.map((amount) => percent(amount, key)),
    };
  };
  const serving = `${alone ? "1 container" : "2/3 cup"} (${Math.round(grams)}g)`;
  return {
    ...(container !== undefined && {servings: servingsText(held)}),
    serving,
    grams,
    columns: masses.length > 1 ? ["Per serving", "Per container"] : ["Amount per serving"],
    calories: masses.map((mass) => usFigure((of100.calories * mass) / 100, "calories").text),
    nutrients: NUTRIENTS.filter(([, , key]) => key !== "sugarAlcohol" || of100.sugarAlcohol > 0).map(line),
    vitamins: VITAMINS.map(line),
    lacking: of100.lacking,
  };
}

function printed(amount: number, kind: Figure, unit: string): string {
  const {text, lessThan} = usFigure(amount, kind);
  return `${lessThan ? "less than " : ""}${text}${unit}`;
}

function percent(amount: number | undefined, key: string): string | undefined {
  if (amount === undefined || !Object.hasOwn(DAILY_VALUES, key)) return undefined;
  const daily = DAILY_VALUES[key as keyof typeof DAILY_VALUES];
  const small = ["vitaminD", "calcium", "iron", "potassium"].includes(key);
  return small ? mineralPercent(amount, daily) : dailyPercent(amount, daily);
}

/** 21 CFR 101.9(b)(8): to the nearest 0.5 from 2 to 5, whole above, with "about" where it is rounded. */
function servingsText(held: number): string {
  if (held < 2) return "1 serving per container";
  const step = held <= 5 ? 0.5 : 1;
  const rounded = Math.round(held / step) * step;
  return `${Math.abs(rounded - held) > 0.01 * held ? "about " : ""}${rounded} servings per container`;
}

/** The Nutrition Facts of a serving in a line, as small packs may have them: 21 CFR 101.9(j)(13)(ii)(A)(2), from memory. */
export function linearUsPanel({servings, serving, calories, nutrients, vitamins}: UsPanel): string {
  const listed = [...nutrients, ...vitamins].map(({name, amounts, daily}) => {
    const amount = amounts[0] ?? "not known";
    const percent = daily[0] === undefined ? "" : ` (${daily[0]} DV)`;
    return name === "Added Sugars"
      ? `Includes ${amount} Added Sugars${percent}`
      : `${name} ${amount}${percent}`;
  });
  return `Nutrition Facts: ${servings ? `${servings}, ` : ""}serving size ${serving}. Amount per serving: Calories ${calories[0]}, ${listed.join(", ")}.`;
}
