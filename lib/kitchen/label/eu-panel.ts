import {finite} from "../../core/numbers.ts";
import {expectList, expectOptions, expectShape, expectText, expectTexts} from "../../core/shape.ts";
import {nutritionOf, type Nutrition} from "../product/nutrition.ts";
import {expectProduct, type Product} from "../product/product.ts";
import {nutritionLabel, type NutritionLine} from "./nutrition-label.ts";

/** A nutrition declaration of the European Union, of 100 g and, if wanted, of a portion. */
export interface EuPanel {
  readonly per100: readonly NutritionLine[];
  readonly portion?: {
    /** g. */
    readonly grams: number;
    readonly lines: readonly NutritionLine[];
    /** % of the reference intake of each line, where there is one. */
    readonly intakes: readonly (string | undefined)[];
  };
  /** Words that must stand beside it. */
  readonly sentences: readonly string[];
  /** Ingredients that do not say their saturates or their sodium: with any, the declaration is not whole. */
  readonly lacking: readonly string[];
}

/** Portions that a declaration may speak of. */
export interface EuPanelOptions {
  /** g, from 1. */
  readonly portion?: number;
  /** Number of portions in the pack, from 1. */
  readonly portions?: number;
}

/** Reference intakes of an adult, kJ and g: Regulation (EU) No 1169/2011, Annex XIII, Part B. */
export const REFERENCE_INTAKES = {
  energy: 8400,
  fat: 70,
  saturates: 20,
  carbohydrate: 260,
  sugars: 90,
  protein: 50,
  salt: 6,
} as const;

/**
 * The nutrition declaration of a product by Regulation (EU) No 1169/2011, Articles 30 to 35 and Annex XV, which stand in the law of
 * Great Britain too: energy, fat, saturates, carbohydrate, sugars, protein and salt, with polyols and fibre between where there are
 * any; of 100 g, and of a portion with its share of the reference intakes. Figures may be calculated from those of the ingredients
 * (Article 31(4)). Many an ice needs none: see `labelDuties`. This is not licensed advice.
 *
 * @param options `portion`, g from 1; `portions`, how many the pack holds, which must be said beside it (Article 33)
 * @throws InputError for a portion or a number of them outside its range
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * const panel = euPanel(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), {portion: 60});
 * panel.per100.map(({name, text}) => `${name} ${text}`); // => ["energy 255 kJ / 61 kcal", "fat 3.3 g", "of which saturates 1.9 g", "carbohydrate 4.8 g", "of which sugars 4.8 g", "protein 3.1 g", "salt 0.11 g"]
 * panel.portion?.intakes.slice(0, 2); // => ["2 %", "3 %"]
 * ```
 */
export function euPanel(product: Product, options: EuPanelOptions = {}): EuPanel {
  expectProduct(product);
  expectOptions(options, ["portion", "portions"]);
  const {portion, portions} = options;
  if (portions !== undefined) finite(portions, "options.portions", {min: 1, max: 1e6});
  const of100 = nutritionOf(product);
  const sentences: string[] = [];
  if (portion !== undefined) {
    finite(portion, "options.portion", {min: 1, max: 1e6}, "g");
    const whole = portions !== undefined && Math.abs(portions - Math.round(portions)) < 0.05;
    const count =
      portions === undefined
        ? ""
        : `; the pack holds ${whole ? "" : "about "}${Math.round(portions)} ${Math.round(portions) === 1 ? "portion" : "portions"}`;
    sentences.push(`A portion is ${Math.round(portion)} g${count}.`);
    sentences.push("Reference intake of an average adult (8 400 kJ/2 000 kcal)");
  }
  return {
    per100: lines(of100),
    ...(portion !== undefined && {
      portion: {
        grams: portion,
        lines: lines(nutritionOf(product, portion)),
        intakes: intakes(nutritionOf(product, portion), lines(of100)),
      },
    }),
    sentences,
    lacking: [
      ...new Set([...(of100.saturates === undefined ? of100.lackingSaturates : []), ...of100.lackingSodium]),
    ],
  };
}

/** The lines, fibre only where it is more than a trace: it is voluntary (Article 30(2)). */
function lines(nutrition: Nutrition): NutritionLine[] {
  return nutritionLabel(nutrition).filter(({name, text}) => name !== "fibre" || text !== "<0.5 g");
}

function intakes(nutrition: Nutrition, shown: readonly NutritionLine[]): (string | undefined)[] {
  return shown.map(({name}) => {
    const key = name.replace("of which ", "") as keyof typeof REFERENCE_INTAKES;
    const intake = REFERENCE_INTAKES[key] as number | undefined;
    const value = key === "energy" ? nutrition.kilojoules : nutrition[key];
    return intake === undefined || value === undefined
      ? undefined
      : `${Math.round((100 * value) / intake)} %`;
  });
}

/**
 * A declaration in a line, as Article 34(2) lets it where a table has no room.
 *
 * @throws InputError for anything but a panel of {@link euPanel}
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 100}];
 * linearPanel(euPanel(makeProduct("sugar", [baseComponent({name: "sugar", lines})]))).slice(0, 52); // => "Nutrition per 100 g: energy 1700 kJ / 400 kcal, fat "
 * ```
 */
export function linearPanel(panel: EuPanel): string {
  expectEuPanel(panel);
  const {per100, portion, sentences} = panel;
  const listed = (all: readonly NutritionLine[]) =>
    all.map(({name, text}) => `${name} ${text ?? "not known"}`).join(", ");
  const sized = portion ? ` Per portion of ${Math.round(portion.grams)} g: ${listed(portion.lines)}.` : "";
  // No share of the intakes is printed, so that the sentence on them can stay away.
  return `Nutrition per 100 g: ${listed(per100)}.${sized}${sized && ` ${sentences[0]!}`}`;
}

/**
 * Refuses anything but a panel of {@link euPanel}.
 *
 * @throws InputError naming the line that is none
 */
export function expectEuPanel(panel: EuPanel): void {
  const advice = "make it with euPanel(product)";
  const shape = {per100: "list", sentences: "list", lacking: "list"} as const;
  expectShape(panel, shape, "panel", advice);
  expectLines(panel.per100, "panel.per100");
  expectTexts(panel.sentences, "panel.sentences", advice);
  expectTexts(panel.lacking, "panel.lacking", advice);
  if (panel.portion === undefined) return;
  expectShape(panel.portion, {grams: "number", lines: "list", intakes: "list"}, "panel.portion", advice);
  expectLines(panel.portion.lines, "panel.portion.lines");
}

function expectLines(lines: readonly NutritionLine[], place: string): void {
  const advice = "make it with euPanel(product)";
  expectList(lines, {name: "text"}, place, advice);
  for (const [i, {text}] of lines.entries())
    if (text !== undefined) expectText(text, `${place}[${i}].text`, advice);
}
