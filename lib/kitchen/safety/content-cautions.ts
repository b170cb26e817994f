import {decimal, degrees} from "../../core/format.ts";
import {CRYSTALLISING} from "../../freezing/crystals.ts";
import {saturations} from "../../freezing/solubility.ts";
import {dosesOver} from "../../pantry/doses.ts";
import type {Part} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {unauthorisedCautions} from "../../pantry/unauthorised.ts";
import type {Caution} from "./caution.ts";
import {addedPolyols, MANY_POLYOLS} from "../label/statements.ts";
import {mixDensity} from "../size/density.ts";
import {type Product, productComposition} from "../product/product.ts";

/**
 * Alcohol above which there is a caution, % of the mix's volume. New York's law for ice cream with alcohol (section 1352-c, as read)
 * begins above 0.5 %; a teaspoon of vanilla extract in a litre comes to 0.2 %.
 */
const ALCOHOL = 0.5;

/** Most alcohol that the same law allows, % of the mix's volume. The European Union's 1.2 % is for drinks and does not apply to an ice. */
const NEW_YORK = 5;

/** Density of alcohol near 20 °C, g/ml (from memory), as {@link mixDensity} has it. */
const ALCOHOL_DENSITY = 0.789;

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
  const alcohol = quantityOf(composition, "alcohol");
  const byVolume = (alcohol * mixDensity(composition)) / ALCOHOL_DENSITY;
  if (byVolume > ALCOHOL) {
    cautions.push({
      topic: "alcohol",
      text: `Holds ${alcohol.toFixed(1)} % alcohol by weight, ${byVolume.toFixed(1)} % of the volume: say so where it is sold, and keep it from children.${byVolume > NEW_YORK ? ` New York allows at most ${NEW_YORK} % of the volume.` : ""}`,
    });
  }
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
    const over = dosesOver(recipe.lines);
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
