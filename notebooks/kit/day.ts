import {finite} from "../../lib/core/numbers.ts";
import {baseProcess, type Making} from "../../lib/kitchen/base-process.ts";
import {type BatchSheet, batchSheet} from "../../lib/kitchen/batch-sheet.ts";
import type {Caution} from "../../lib/kitchen/cautions.ts";
import {type Pack, productCost, type ProductCost} from "../../lib/kitchen/cost.ts";
import {furtherSteps} from "../../lib/kitchen/further-steps.ts";
import {followProcess, type ProcessReport} from "../../lib/kitchen/heat-step.ts";
import {makeProduct, type Product, productDensity} from "../../lib/kitchen/product.ts";
import type {Machine, ScaleTo} from "../../lib/kitchen/scale.ts";
import {scaleProduct, type ScaledProduct} from "../../lib/kitchen/scale-product.ts";
import {coolingMinutes, type TimedRun, timePlan, type TimePlan} from "../../lib/kitchen/time-plan.ts";
import {recipeMass} from "../../lib/pantry/recipe.ts";
import {handiest, type Measures} from "./day-measures.ts";
import type {Sizes} from "./selling.ts";
import {cautionsFor} from "../../lib/kitchen/cautions.ts";

/** Everything that a day depends on. */
export interface DayWish extends Sizes {
  /** The product at any size. */
  readonly product: Product;
  readonly packs: Readonly<Record<string, Pack>>;
  readonly measures: Measures;
  readonly to: ScaleTo;
  readonly machine: Machine;
  /** Step of the scale, g. */
  readonly scale: number;
  /** % */
  readonly overrun: number;
  readonly heating: Required<Omit<Making, "minutes">>;
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
  readonly named: readonly string[];
}

/** A day worked out. */
export interface Day {
  /** Scaled, and rounded to what the scale shows. */
  readonly scaled: ScaledProduct;
  readonly process: ProcessReport;
  /** Minutes that cooling takes after the heat. */
  readonly chillMinutes: number;
  readonly plan: TimePlan;
  readonly cost: ProductCost;
  readonly cautions: readonly Caution[];
  readonly sheet: BatchSheet;
  /** g in a full tub. */
  readonly tubGrams: number;
  /** The ingredient that the scale's step moves most, %. */
  readonly rounding: {readonly ingredient: string; readonly percent: number};
}

/** Works out a day: scaled, rounded, heated, cooled, timed, costed, and put on a sheet. */
export function planDay(wish: DayWish): Day {
  const {heating, overrun, machine, draw, freezer, room, tub, portion} = wish;
  const exact = scaleProduct(wish.product, wish.to, machine);
  const product = onTheScale(exact.product, wish.scale);
  const grams = product.components.reduce((sum, {mass}) => sum + mass, 0);
  const scaled = scaleProduct(product, {grams}, machine);
  const base = product.components.find(({churned}) => churned)!;
  const unhurried = followProcess(base.recipe, baseProcess(base.recipe.lines, heating));
  const warm = unhurried.steps.find(({step}) => "cool" in step)!;
  const chillMinutes = coolingMinutes(base.composition, warm.grams, warm.before, warm.after, wish.chiller);
  const steps = baseProcess(base.recipe.lines, {...heating, minutes: Math.round(chillMinutes)});
  const process = followProcess(base.recipe, steps);
  const tubGrams = finite(tub, "tubMillilitres", {min: 1}, "ml") * productDensity(product, overrun);
  const timed = (run: {grams: number; minutes: number}): TimedRun => ({
    ...run,
    composition: base.composition,
    from: heating.cool,
    draw,
  });
  const cautions = cautionsFor(product, process);
  return {
    scaled,
    process,
    chillMinutes,
    plan: timePlan({
      composition: base.composition,
      gramsPerRun: scaled.gramsPerRun,
      runs: scaled.runs,
      chill: {from: warm.before, to: warm.after, watts: wish.chiller},
      churn: {
        from: heating.cool,
        draw,
        ...("watts" in wish.churn ? wish.churn : {lastRun: timed(wish.churn)}),
      },
      tub: roundTub(tub),
      overrun,
      freezer: {temperature: freezer},
      room,
    }),
    cost: productCost(
      product,
      {grams, overrun, tubMillilitres: tub, portionMillilitres: portion},
      wish.packs,
    ),
    cautions,
    sheet: {
      ...batchSheet(
        product,
        {grams},
        {
          machine,
          process: steps,
          furtherSteps: furtherSteps(product, {
            cool: heating.cool,
            runs: scaled.runs,
            draw,
            freezer,
            tub: {millilitres: tub, grams: tubGrams},
          }),
          storage: freezer,
          overrun,
          measures: handiest(
            product.components.flatMap(({recipe}) => recipe.lines),
            wish.measures,
          ),
          named: wish.named,
        },
      ),
      cautions,
    },
    tubGrams,
    rounding: mostMoved(exact.product, product),
  };
}

/** Below this an amount is weighed on a fine scale, to a tenth of the step, g. */
const FINE = 20;

/** A product whose ingredients weigh whole steps of a scale; what boils off stays the same share. */
function onTheScale(product: Product, step: number): Product {
  finite(step, "The scale shows steps of, g", {min: 0.01, max: 100}, "g");
  const components = product.components.map((component) => {
    const lines = component.recipe.lines.map((line) => {
      const fine = line.grams < FINE ? step / 10 : step;
      return {...line, grams: Math.round(line.grams / fine) * fine};
    });
    const recipe = {...component.recipe, lines};
    return {
      ...component,
      recipe,
      mass: (component.mass * recipeMass(recipe)) / recipeMass(component.recipe),
    };
  });
  const grams = components.reduce((sum, {mass}) => sum + mass, 0);
  return makeProduct(
    product.name,
    components.map((component) => ({...component, percent: (100 * component.mass) / grams})),
  );
}

function mostMoved(exact: Product, rounded: Product): Day["rounding"] {
  const moves = exact.components.flatMap(({recipe}, i) =>
    recipe.lines.map(({ingredient, grams}, j) => ({
      ingredient: ingredient.name,
      percent: grams > 0 ? 100 * Math.abs(rounded.components[i]!.recipe.lines[j]!.grams / grams - 1) : 0,
    })),
  );
  return moves.reduce((most, move) => (move.percent > most.percent ? move : most));
}

/** A round tub as high as it is wide, in cm, that holds so many ml. */
function roundTub(millilitres: number) {
  const diameter = ((4 * millilitres) / Math.PI) ** (1 / 3);
  return {shape: "cylinder", diameter, height: diameter} as const;
}
