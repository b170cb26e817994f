import {isQuantity, type Quantity, quantityIn} from "../../pantry/quantities.ts";
import type {Measure} from "./measure.ts";
import type {Offer} from "./offer.ts";
import {LIKE_SUCROSE, PERCENT} from "./units.ts";
import {weightedSum} from "./weighted-sum.ts";

/** A quantity of the composition. */
export interface QuantitySubject {
  readonly kind: "quantity";
  readonly quantity: Quantity;
}

/** Quantities of the composition: parts, and sums derived from them, g per 100 g; sweetness with sucrose = 100. */
export const quantity: Measure<QuantitySubject, "limits"> = {
  ...weightedSum<QuantitySubject>(
    (subject) => subject.quantity,
    (subject, {composition}) => quantityIn(composition, subject.quantity),
  ),
  kind: "quantity",
  written: "limits",
  meaning: "a quantity of the composition",
  named: (name) => (isQuantity(name) ? {kind: "quantity", quantity: name} : undefined),
  unit: (subject) => (subject.quantity === "sweetness" ? LIKE_SUCROSE : PERCENT),
  range: (subject) => [0, subject.quantity === "sweetness" ? 200 : 100],
  value: (subject, {composition}) => quantityIn(composition, subject.quantity),
  offers: [
    offered("fat", {label: "Fat", from: 0, to: 25, step: 0.5}, "maximise", {ends: ["leanest", "richest"]}),
    offered("msnf", {label: "MSNF (milk solids-not-fat)", from: 0, to: 20, step: 0.5}, "maximise"),
    offered("totalSolids", {label: "Total solids", from: 20, to: 60, step: 0.5}, "maximise"),
    offered("sugars", {label: "Sugars without lactose", from: 0, to: 35, step: 0.5}, "minimise", {
      name: "sugars",
    }),
    {
      key: "glucose",
      subject: () => ({kind: "quantity", quantity: "glucose"}),
      target: {label: "Dextrose + glucose-syrup solids", from: 0, to: 15, step: 0.5},
    },
    offered("eggYolkSolids", {label: "Egg yolk solids", from: 0, to: 6, step: 0.1}, "maximise"),
    offered("sweetness", {label: "Sweetness", from: 0, to: 35, step: 0.5}, "minimise", {
      ends: ["least sweet", "sweetest"],
    }),
    axisAlone("protein", "maximise"),
    axisAlone("lactose", "minimise"),
  ],
};

/** A quantity offered as a target and, under the same name, as an axis. */
function offered(
  key: Quantity,
  target: NonNullable<Offer<QuantitySubject>["target"]>,
  better: "minimise" | "maximise",
  more: Partial<NonNullable<Offer<QuantitySubject>["axis"]>> = {},
): Offer<QuantitySubject> {
  const {label} = target;
  const name = /^[A-Z][a-z]/.test(label) ? `${label[0]!.toLowerCase()}${label.slice(1)}` : label;
  return {key, subject: () => ({kind: "quantity", quantity: key}), target, axis: {name, better, ...more}};
}

function axisAlone(key: Quantity, better: "minimise" | "maximise"): Offer<QuantitySubject> {
  return {key, subject: () => ({kind: "quantity", quantity: key}), axis: {name: key, better}};
}
