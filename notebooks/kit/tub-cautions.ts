import {type Caution, cautionsFor} from "../../lib/kitchen/cautions.ts";
import type {ProcessReport} from "../../lib/kitchen/heat-step.ts";
import type {Product} from "../../lib/kitchen/product.ts";
import {recipeMass} from "../../lib/pantry/recipe.ts";

/** The library's cautions, and the one for hot sugar whenever a sauce is boiled down, however weak it is. */
export function tubCautions(product: Product, process?: ProcessReport): Caution[] {
  const cautions = cautionsFor(product, process);
  const boiled = product.components.find(({churned, mass, recipe}) => !churned && mass < recipeMass(recipe));
  if (!boiled || cautions.some(({topic}) => topic === "hot sugar")) return cautions;
  const text = `${boiled.name} boils hotter than water and clings to the skin: long sleeves, a deep pot, no children near.`;
  return [{topic: "hot sugar", text}, ...cautions];
}
