import {decimal, degrees} from "../../core/format.ts";
import {CRYSTALLISING} from "../../freezing/crystals.ts";
import {saturations} from "../../freezing/solubility.ts";
import {dosesOver, WRITTEN_DOSES} from "../../pantry/doses.ts";
import type {Part} from "../../pantry/parts.ts";
import {unauthorisedCautions} from "../../pantry/unauthorised.ts";
import type {Caution} from "./caution.ts";
import {addedPolyols, MANY_POLYOLS} from "../label/statements.ts";
import {alcoholCaution} from "../product/alcohol.ts";
import {type Product, productComposition} from "../product/product.ts";

/** Sweeteners that crystallise out of a frozen mix. */
const SANDY: ReadonlySet<Part> = new Set(CRYSTALLISING.filter((part) => part !== "lactose"));
/** Amount of such a sweetener from which its crystals are felt, g per 100 g: common practice, no source. */
const FELT = 1;

/**
 * Cautions about the contents of a product: alcohol, polyols, sweeteners that crystallise, ingredients that may not be sold everywhere,
 * amounts beyond customary doses.
 *
 * @param freezer °C of the freezer, -40 to -5
 */
export function contentCautions(product: Product, freezer: number): Caution[] {
  const cautions: Caution[] = [];
  const composition = productComposition(product);
  const alcohol = alcoholCaution(composition);
  if (alcohol !== undefined) cautions.push({topic: "alcohol", text: alcohol});
  const polyols = addedPolyols(product);
  if (polyols > MANY_POLYOLS) {
    cautions.push({
      topic: "polyols",
      text: `Holds ${polyols.toFixed(0)} % added polyols. Above ${MANY_POLYOLS} % the label must say “excessive consumption may produce laxative effects” (Regulation (EU) No 1169/2011, Annex III). Say it at the counter too.`,
    });
  }
  for (const text of unauthorisedCautions(composition)) cautions.push({topic: "law", text});
  // Each component by itself: base and ripple do not share their water.
  for (const {name, composition: own} of product.components) {
    const found = saturations(own, freezer).filter(({part, ratio}) => SANDY.has(part) && ratio > 1);
    for (const {part, ratio} of found) {
      if ((own[part] ?? 0) < FELT) continue;
      cautions.push({
        topic: "crystals",
        text: `${name}: ${own[part]!.toFixed(0)} % ${part} is ${decimal(ratio, ratio < 10 ? 1 : 0)} times what its unfrozen water dissolves at ${degrees(freezer, 0)} (solubility extrapolated). It crystallises: the tub turns hard and sandy. Replace most of it.`,
      });
    }
  }
  for (const {recipe} of product.components.filter(({churned}) => churned)) {
    const over = dosesOver(recipe.lines, WRITTEN_DOSES);
    if (!over.length) continue;
    const listed = over.map(
      ({name, has, limit}) => `${name}: ${shown(has)} %, customary are at most ${shown(limit)} %`,
    );
    cautions.push({topic: "doses", text: `${recipe.name} goes beyond custom. ${listed.join("; ")}.`});
  }
  return cautions;
}

/** A dose, with enough digits to tell it from its limit. */
function shown(percent: number): string {
  return String(Number(percent.toPrecision(3)));
}
