import {unclippedHardPhase, unclippedIce} from "../../freezing/ice.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {quantityIn} from "../../pantry/quantities.ts";
import type {Subject} from "../brief/subject.ts";

/**
 * What 100 g of an ingredient brings to a linear subject; a mix has the mass-weighted mean.
 *
 * Ice is taken before it is cut off at zero, so that it stays linear: an ingredient that holds more water than it has
 * counts negative and melts the ice of the others.
 */
export function coefficientOf(subject: Subject, ingredient: Ingredient): number {
  const {composition} = ingredient;
  switch (subject.kind) {
    case "quantity":
      return quantityIn(composition, subject.quantity);
    case "property":
      return ingredient.properties?.[subject.property] ?? 0;
    case "cost":
      return ingredient.price ?? 0;
    case "ice":
      return unclippedIce(composition, subject.at);
    case "hardPhase":
      return unclippedHardPhase(composition, subject.at);
    case "heatShock": {
      const [cold, warm] =
        subject.from < subject.to ? [subject.from, subject.to] : [subject.to, subject.from];
      return unclippedIce(composition, cold) - unclippedIce(composition, warm);
    }
    default:
      throw new RangeError(`${subject.kind} is no weighted sum of the ingredients`);
  }
}
