import type {Product} from "../product/product.ts";
import {tasteCautions} from "../product/taste.ts";
import type {Caution} from "./caution.ts";

/** Cautions on the taste and texture of what is churned of a product, as they stand where its recipe is read. */
export function mixTopics({components}: Product): Caution[] {
  const churned = components.filter((component) => component.churned);
  return churned.flatMap(({composition}) => tasteCautions(composition)).map((text) => ({topic: "mix", text}));
}
