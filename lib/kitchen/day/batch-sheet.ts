import {expectFlag, expectOptions} from "../../core/shape.ts";
import {finite} from "../../core/numbers.ts";
import type {CurvePoint} from "../../freezing/curve.ts";
import {freezingCurve} from "../../freezing/curve.ts";
import type {Learned} from "../../freezing/learned.ts";
import {scooping, type Scooping} from "../../freezing/scoop.ts";
import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import type {Caution} from "../safety/caution.ts";
import {counterWait} from "../safety/counter-wait.ts";
import {cautionsFor} from "../safety/cautions.ts";
import {mixTopics} from "../safety/mix-topics.ts";
import {countWords, isCounted} from "../size/counted.ts";
import {measureWords} from "../size/measure-words.ts";
import type {CounterWait} from "../size/scoop-words.ts";
import {followProcess} from "../cooking/follow-process.ts";
import {ingredientList, type LabelText} from "../label/label.ts";
import type {LabelName} from "../label/label-names.ts";
import {expectProcess, type Item, type Process, type ProcessStep} from "../cooking/process.ts";
import {productAllergens} from "../product/product-allergens.ts";
import {type Component, type Product} from "../product/product.ts";
import type {Machine, ScaleTo} from "../size/scale.ts";
import {scaleProduct} from "../product/scale-product.ts";
import {type LogField, logFields} from "./log-fields.ts";
import {sheetFigures} from "./sheet-figures.ts";

/** A kitchen measure of an ingredient and the mass of one, g: `{unit: "teaspoon", grams: 4.2}`; `gramsOf` weighs it. */
export interface SheetMeasure {
  readonly unit: string;
  readonly grams: number;
}

/** Options of a sheet, besides the product and its size. */
export interface SheetOptions {
  readonly machine?: Machine;
  /** Process of the base, in the grams of the product's own recipe; scaled with it. */
  readonly process?: Process;
  /** Steps of ripple and filling, in words, after those of the base. */
  readonly furtherSteps?: readonly string[];
  /** °C of the freezer, -40 to -5; -18 by default. */
  readonly freezer?: number;
  /** Air beaten in, % of the mix's volume, 0 to 200; by default that of the base's recipe, or 30. Where it is given, the sheet has the mass of a litre too. */
  readonly overrun?: number;
  /** Lesson of the kitchen's own reports on when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
  /** Whether the sheet has the cost of the ingredients; false by default, since a sheet hangs where everyone reads it. */
  readonly cost?: boolean;
  /** Kitchen measures beside the grams, by name of the ingredient; by default eggs and the like are counted, in halves. */
  readonly measures?: Readonly<Record<string, SheetMeasure>>;
  /** Ingredients that the product's name promises: they get their percentage. */
  readonly named?: readonly string[];
  readonly labelNames?: Readonly<Record<string, LabelName>>;
}

const OPTIONS = [
  "machine",
  "process",
  "furtherSteps",
  "freezer",
  "overrun",
  "learned",
  "cost",
  "measures",
  "named",
  "labelNames",
] satisfies (keyof SheetOptions)[];

/** One ingredient on the sheet. */
export interface SheetLine {
  readonly ingredient: string;
  /** g for the whole batch. */
  readonly grams: number;
  /** g for one run of the machine; absent for components that are not churned. */
  readonly gramsPerRun?: number;
  readonly measure?: string;
  readonly allergens: readonly Allergen[];
}

/** The ingredients of one component, in working order. */
export interface SheetSection {
  readonly heading: string;
  /** Yield, g. */
  readonly grams: number;
  readonly lines: readonly SheetLine[];
}

/** Everything that one A4 page for the kitchen needs; `lib/io` prints it. */
export interface BatchSheet {
  readonly title: string;
  /** The batch in figures, label and value with its unit. */
  readonly figures: readonly {readonly label: string; readonly value: string}[];
  readonly sections: readonly SheetSection[];
  readonly runs: number;
  readonly steps: readonly {readonly text: string; readonly notes: readonly string[]}[];
  readonly log: readonly LogField[];
  readonly allergens: readonly Allergen[];
  readonly ingredientList: readonly LabelText[];
  readonly cautions: readonly Caution[];
  readonly curve: readonly CurvePoint[];
  /** °C of the freezer. */
  readonly freezer: number;
  /** Scoop temperature of the base, and its verdict in the freezer. */
  readonly scoop: Scooping;
  /** Wait on the counter until it scoops; absent where it needs none or none helps. */
  readonly wait?: CounterWait;
}

/**
 * The batch sheet of a product at the size wanted: everything is scaled here, process included.
 *
 * @param product with one churned base
 * @param to amount to make, as for {@link scaleProduct}
 * @throws InputError as `scaleProduct`, `followProcess` and `ingredientList`, and for a freezer outside -40 to -5 °C
 *
 * @example
 * ```ts
 * const milk = {name: "milk ice", lines: [{ingredient: findIngredient(includedPantry(), "milk"), grams: 800}]};
 * batchSheet(makeProduct("milk ice", [baseComponent(milk)]), {grams: 2000}).sections[0]?.lines[0]?.grams; // => 2000
 * ```
 */
export function batchSheet(product: Product, to: ScaleTo, options: SheetOptions = {}): BatchSheet {
  expectOptions(options, OPTIONS);
  if (options.cost !== undefined) expectFlag(options.cost, "cost");
  const freezer = finite(options.freezer ?? -18, "freezer", {min: -40, max: -5}, "°C");
  const scaled = scaleProduct(product, to, options.machine);
  const base = scaled.product.components.find((component) => component.churned)!;
  const process = options.process && scaleProcess(options.process, scaled.baseFactor);
  const report = process && followProcess(base.recipe, process);
  const {learned, overrun = base.recipe.overrun} = options;
  const scoop = scooping(base.composition, freezer, {
    ...(overrun !== undefined && {overrun}),
    ...(learned && {learned}),
  });
  const wait = counterWait(base.composition, scoop, learned);
  return {
    title: product.name,
    figures: sheetFigures(scaled, base, scoop, {
      ...options,
      ...(overrun !== undefined && {overrun}),
      ...("machine" in to && {machine: to.machine}),
    }),
    sections: scaled.product.components.map((component) => section(component, scaled.runs, process, options)),
    runs: scaled.runs,
    steps: [
      ...(report?.steps ?? []).map(({text, notes}) => ({text, notes})),
      ...(options.furtherSteps ?? []).map((text) => ({text, notes: []})),
    ],
    log: logFields(report, scaled.runs),
    allergens: productAllergens(product),
    ingredientList: ingredientList(product, options.named, options.labelNames),
    cautions: [...mixTopics(scaled.product), ...cautionsFor(scaled.product, report, freezer)],
    curve: freezingCurve(base.composition),
    freezer,
    scoop,
    ...(wait && {wait}),
  };
}

/**
 * A process whose amounts are scaled with its recipe; temperatures and times stay.
 *
 * @param factor factor on every amount in g, at least 0
 * @throws InputError for anything that is no process, and a factor out of range
 *
 * @example
 * ```ts
 * scaleProcess({steps: [{heat: [{name: "whole milk", grams: 500}], to: 85}]}, 2); // => {steps: [{heat: [{name: "whole milk", grams: 1000}], to: 85}]}
 * ```
 */
export function scaleProcess(process: Process, factor: number): Process {
  expectProcess(process);
  finite(factor, "factor", {min: 0});
  const items = (list: readonly Item[]) =>
    list.map((item) => (typeof item === "string" ? item : {...item, grams: item.grams * factor}));
  const scaleStep = (step: ProcessStep): ProcessStep => {
    if ("heat" in step) return {...step, heat: items(step.heat)};
    if ("cool" in step) return {...step, cool: items(step.cool)};
    return {...step, pour: items(step.pour), onto: items(step.onto)};
  };
  return {...process, steps: process.steps.map(scaleStep)};
}

function section(
  component: Component,
  runs: number,
  process: Process | undefined,
  {measures = {}}: SheetOptions,
): SheetSection {
  const lines =
    component.churned && process ? inWorkingOrder(component.recipe.lines, process) : component.recipe.lines;
  return {
    heading: `${component.name}${component.percent < 100 ? `, ${component.percent.toFixed(0)} % of the tub` : ""}`,
    grams: component.grams,
    lines: lines.map(({ingredient, grams}) => ({
      ingredient: ingredient.name,
      grams,
      ...(component.churned && {gramsPerRun: grams / runs}),
      ...measured(
        ingredient,
        grams,
        Object.hasOwn(measures, ingredient.name) ? measures[ingredient.name] : undefined,
      ),
      allergens: ingredient.allergens ?? [],
    })),
  };
}

function measured(
  ingredient: Ingredient,
  grams: number,
  measure: SheetMeasure | undefined,
): {measure?: string} {
  if (!measure) {
    if (!isCounted(ingredient)) return {};
    const one = finite(ingredient.unit!, `${ingredient.name}: mass of one unit`, {min: 0.01}, "g");
    const counted = countWords(grams, one);
    return counted === undefined ? {} : {measure: counted};
  }
  finite(measure.grams, `${ingredient.name}: mass of one ${measure.unit}`, {min: 0.01}, "g");
  const count = grams / measure.grams;
  // Whole where that is within 1 %.
  const whole = Math.round(count);
  const amount = Math.abs(whole - count) <= 0.01 * count ? whole : Number(count.toFixed(1));
  return {measure: measureWords(amount, measure.unit)};
}

/** Ingredients in the order in which the process first names them, then the rest. */
function inWorkingOrder(lines: readonly RecipeLine[], process: Process): RecipeLine[] {
  const named = process.steps
    .flatMap((step) =>
      "heat" in step ? step.heat : "cool" in step ? step.cool : [...step.pour, ...step.onto],
    )
    .map((item) => (typeof item === "string" ? item : item.name));
  const place = ({ingredient}: RecipeLine) => {
    const i = named.indexOf(ingredient.name);
    return i < 0 ? named.length : i;
  };
  return [...lines].sort((a, b) => place(a) - place(b));
}
