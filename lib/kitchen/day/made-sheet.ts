import {finite} from "../../core/numbers.ts";
import {expectRecord} from "../../core/shape.ts";
import {baseProcess, type Making} from "../cooking/base-process.ts";
import {type BatchSheet, batchSheet, type SheetOptions} from "./batch-sheet.ts";
import {furtherSteps, usualAfter} from "./further-steps.ts";
import {type Product, productDensity} from "../product/product.ts";
import type {ScaleTo} from "../size/scale.ts";
import {scaleProduct} from "../product/scale-product.ts";

/** Options of a sheet that runs from the first step to the freezer. */
export interface MadeSheetOptions extends Omit<SheetOptions, "process" | "furtherSteps"> {
  /** Making of the base; a cooked custard unless given. */
  readonly making?: Making;
  /** Temperature at which it is drawn from the machine, °C; by default that at which half of the water is ice. */
  readonly draw?: number;
  /** Volume of one tub, ml, at least 1; with it and `overrun` the sheet has the mass of a full one. */
  readonly tubMillilitres?: number;
}

/**
 * The batch sheet of a product from the first step of its base to the hard tub: heated or not as `making` says, ripple, rest,
 * churning, filling, hardening.
 *
 * @param to amount to make, as for {@link scaleProduct}
 * @throws InputError as `batchSheet` and `baseProcess`
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = ["whole milk", "egg yolk", "sucrose"].map((name) => ({
 *   ingredient: findIngredient(pantry, name),
 *   grams: 200,
 * }));
 * const product = makeProduct("custard", [baseComponent({name: "custard", lines})]);
 * madeSheet(product, {grams: 1200}, {freezer: -20}).freezer; // => -20
 * ```
 */
export function madeSheet(product: Product, to: ScaleTo, made: MadeSheetOptions = {}): BatchSheet {
  expectRecord(made, "options", 'give an object, e.g. {making: {way: "custard"}}');
  const {making = {way: "custard"}, draw, tubMillilitres: tub, ...options} = made;
  if (draw !== undefined) finite(draw, "draw", {min: -40, max: 20}, "°C");
  if (tub !== undefined) finite(tub, "tubMillilitres", {min: 1}, "ml");
  const scaled = scaleProduct(product, to, options.machine);
  const base = scaled.product.components.find(({churned}) => churned)!;
  const {freezer, overrun = base.recipe.overrun} = options;
  const runs = options.machine || "machine" in to ? {runs: scaled.runs} : {};
  const filled =
    tub === undefined || overrun === undefined
      ? {}
      : {tub: {millilitres: tub, grams: tub * productDensity(scaled.product, overrun)}};
  return batchSheet(product, to, {
    ...options,
    process: baseProcess(base.recipe.lines, making),
    furtherSteps: furtherSteps(scaled.product, {
      ...usualAfter(base.composition, making.cool, freezer),
      ...runs,
      ...filled,
      ...(draw !== undefined && {draw}),
    }),
  });
}
