import {finite} from "../../../lib/core/numbers.ts";
import {baseProcess, type Making} from "../../../lib/kitchen/cooking/base-process.ts";
import type {BatchSheet} from "../../../lib/kitchen/day/batch-sheet.ts";
import type {Caution} from "../../../lib/kitchen/safety/caution.ts";
import {cautionsFor} from "../../../lib/kitchen/safety/cautions.ts";
import {mixTopics} from "../../../lib/kitchen/safety/mix-topics.ts";
import type {Pack} from "../../../lib/kitchen/product/cost.ts";
import {countWords, isCounted} from "../../../lib/kitchen/size/counted.ts";
import {followProcess, type ProcessReport} from "../../../lib/kitchen/cooking/follow-process.ts";
import type {LabelName} from "../../../lib/kitchen/label/label-names.ts";
import {madeSheet} from "../../../lib/kitchen/day/made-sheet.ts";
import {type Product, productDensity, productLines} from "../../../lib/kitchen/product/product.ts";
import type {Machine, ScaleTo} from "../../../lib/kitchen/size/scale.ts";
import {scaleProduct, type ScaledProduct} from "../../../lib/kitchen/product/scale-product.ts";
import {coolingMinutes, type TimedRun, timePlan, type TimePlan} from "../../../lib/kitchen/day/time-plan.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {handiest, type Measures} from "./day-measures.ts";
import {type Attempt, attempt, Mistake} from "../words/mistakes.ts";
import {type Money, moneyOf, type Sizes} from "../words/money.ts";
import {mostMoved, onTheScale} from "../words/on-the-scale.ts";

/** Everything that a day depends on. */
export interface DayWish extends Sizes {
  /** The product at any size. */
  readonly product: Product;
  readonly packs: Readonly<Record<string, Pack>>;
  /** Ingredients whose price the cook has typed. */
  readonly own: ReadonlySet<string>;
  readonly measures: Measures;
  readonly to: ScaleTo;
  readonly machine: Machine;
  /** Step of the scale, g. */
  readonly scale: number;
  /** % */
  readonly overrun: number;
  readonly heating: Omit<Required<Making>, "minutes">;
  /** Mean power of bath, chiller or refrigerator, W. */
  readonly chiller: number;
  /** Power of the machine, W, or the last run: g and minutes. */
  readonly churn: {readonly watts: number} | {readonly grams: number; readonly minutes: number};
  /** °C at which it is drawn. */
  readonly draw: number;
  /** °C */
  readonly freezer: number;
  /** °C */
  readonly room: number;
  /** Ingredients that the name promises, each of which is in the product. */
  readonly named: readonly string[];
  /** Names that the cook has for ingredients. */
  readonly called: Readonly<Record<string, LabelName>>;
  /** Whether nothing of the base can be read. */
  readonly unread: boolean;
  /** Whether lines of the recipe wait for an answer: then there is no sheet to work by. */
  readonly waiting: boolean;
}

/** Masses of everything. */
export interface Amounts {
  /** Scaled, and rounded to what the scale shows. */
  readonly scaled: ScaledProduct;
  /** The ingredient that the scale's step moves most, %. */
  readonly rounding: {readonly ingredient: string; readonly percent: number};
}

/** Heating of the day, and what it does. */
export interface Heating {
  readonly process: ProcessReport;
  /** Minutes that cooling takes after the heat. */
  readonly chillMinutes: number;
  /** Temperatures of what is cooled, before and after, °C, and its mass, g. */
  readonly warm: {readonly before: number; readonly after: number; readonly grams: number};
}

/** A day worked out: each part by itself, so that a gap costs only what depends on it. */
export interface Day {
  /** The product at the size wanted, or as typed where the size makes no sense. */
  readonly product: Product;
  readonly amounts: Attempt<Amounts>;
  readonly heating: Attempt<Heating>;
  readonly plan: Attempt<TimePlan>;
  readonly money: Attempt<Money>;
  readonly sheet: Attempt<BatchSheet>;
  /** g in a full tub. */
  readonly tubGrams: Attempt<number>;
  readonly cautions: readonly Caution[];
  /** Mistakes that the cook must correct, each once. */
  readonly mistakes: readonly string[];
}

/** Works out a day: scaled, rounded, heated, cooled, timed, costed, and put on a sheet. */
export function planDay(wish: DayWish): Day {
  const {overrun, machine, freezer, tub} = wish;
  const amounts = attempt(() => amountsOf(wish));
  const product = "value" in amounts ? amounts.value.scaled.product : wish.product;
  const heating = attempt(() => heatingOf(product, wish));
  const plan = attempt(() => planOf(need(amounts).scaled, need(heating), wish));
  const money = attempt(() => moneyOf(need(amounts).scaled, wish));
  const tubGrams = attempt(
    () => finite(tub, "tubMillilitres", {min: 1}, "ml") * productDensity(product, overrun),
  );
  const sheet = attempt(() => {
    const {grams} = need(amounts).scaled;
    const {chillMinutes} = need(heating);
    need(tubGrams);
    return madeSheet(
      product,
      {grams},
      {
        making: {...wish.heating, minutes: Math.round(chillMinutes)},
        machine,
        draw: wish.draw,
        tubMillilitres: tub,
        freezer,
        overrun,
        measures: handiest(productLines(need(amounts).scaled.product, grams), wish.measures),
        named: wish.named,
        labelNames: wish.called,
      },
    );
  });
  const parts = [amounts, heating, plan, money, tubGrams, sheet];
  const process = "value" in heating ? heating.value.process : undefined;
  const colder = freezer >= -40 && freezer <= -5 ? freezer : -18;
  return {
    product,
    amounts,
    heating,
    plan,
    money,
    tubGrams,
    sheet: wish.waiting ? {mistake: ""} : sheet,
    cautions: [...mixTopics(product), ...cautionsFor(product, process, colder)],
    mistakes: [...new Set(parts.flatMap((part) => ("mistake" in part ? [part.mistake] : [])))],
  };
}

/** Amounts to weigh: on the sheet, and without one where lines are left out or the heat makes no sense. */
export function weighable({sheet, amounts}: Day): Attempt<Pick<BatchSheet, "runs" | "sections">> {
  if ("value" in sheet || "mistake" in amounts) return sheet;
  const {product, runs} = amounts.value.scaled;
  const sections = product.components.map(({name, percent, grams: mass, churned, recipe}) => ({
    heading: `${name}${percent < 100 ? `, ${percent.toFixed(0)} % of the tub` : ""}`,
    grams: mass,
    lines: recipe.lines.map(({ingredient, grams}) => ({
      ingredient: ingredient.name,
      grams,
      ...(churned && {gramsPerRun: grams / runs}),
      ...counted(ingredient, grams),
      allergens: ingredient.allergens ?? [],
    })),
  }));
  return {value: {runs, sections}};
}

function counted(ingredient: Ingredient, grams: number): {measure?: string} {
  const measure = isCounted(ingredient) ? countWords(grams, ingredient.unit!) : undefined;
  return measure === undefined ? {} : {measure};
}

/** Value that another part has worked out, or its mistake again. */
function need<T>(part: Attempt<T>): T {
  if ("mistake" in part) throw new Mistake(part.mistake);
  return part.value;
}

function amountsOf({product, to, machine, scale, unread}: DayWish): Amounts {
  if (unread) throw new Mistake("");
  const exact = scaleProduct(product, to, machine);
  const rounded = onTheScale(exact.product, scale);
  const grams = rounded.components.reduce((sum, {grams: mass}) => sum + mass, 0);
  return {scaled: scaleProduct(rounded, {grams}, machine), rounding: mostMoved(exact.product, rounded)};
}

function heatingOf({components}: Product, {heating, chiller, unread}: DayWish): Heating {
  if (unread) throw new Mistake("");
  const {recipe, composition} = components.find(({churned}) => churned)!;
  const unhurried = followProcess(recipe, baseProcess(recipe.lines, heating));
  // Fruit may be cooked, and cooled, before the mix.
  const warm = unhurried.steps.find(({step}) => "cool" in step && step.into === "mix")!;
  const chillMinutes = coolingMinutes(composition, {
    grams: warm.grams,
    from: warm.before,
    to: warm.after,
    watts: chiller,
  });
  const steps = baseProcess(recipe.lines, {...heating, minutes: Math.round(chillMinutes)});
  return {process: followProcess(recipe, steps), chillMinutes, warm};
}

function planOf({product, gramsPerRun, runs}: ScaledProduct, {warm}: Heating, wish: DayWish): TimePlan {
  const {heating, draw, churn, tub, overrun, freezer, room, chiller} = wish;
  const {composition} = product.components.find(({churned}) => churned)!;
  const timed = (run: {grams: number; minutes: number}): TimedRun => ({
    ...run,
    composition,
    from: heating.cool,
    draw,
  });
  return timePlan({
    composition,
    gramsPerRun,
    runs,
    chill: {from: warm.before, to: warm.after, watts: chiller, grams: warm.grams},
    churn: {from: heating.cool, draw, ...("watts" in churn ? churn : {lastRun: timed(churn)})},
    tub: roundTub(finite(tub, "tubMillilitres", {min: 1}, "ml")),
    overrun,
    freezer: {temperature: freezer},
    room,
  });
}

/** A round tub as high as it is wide, in cm, that holds so many ml. */
function roundTub(millilitres: number) {
  const diameter = ((4 * millilitres) / Math.PI) ** (1 / 3);
  return {shape: "cylinder", diameter, height: diameter} as const;
}
