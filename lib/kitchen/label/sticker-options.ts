import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectFlag, expectOptions} from "../../core/shape.ts";
import {type Product, productDensity} from "../product/product.ts";
import {euPanel, linearPanel} from "./eu-panel.ts";
import type {LabelLaw, WayOfSale} from "./label-law.ts";
import type {LabelName} from "./label-names.ts";
import {linearUsPanel, usPanel} from "./us-panel.ts";

/** Particulars of a sticker besides the product: the dates, the lot and the words of local law are the cook's own. */
export interface StickerOptions {
  /** `EU` by default. */
  readonly law?: LabelLaw;
  /** Way of sale, `prepacked` by default: particulars that its law asks for and the sticker lacks are listed. */
  readonly sold?: WayOfSale;
  /** Content of the tub, g or ml, above 0. */
  readonly quantity?: {readonly grams: number} | {readonly millilitres: number};
  /** Days as `2027-03-31`: when it was made, and until when it is best. */
  readonly made?: string;
  readonly bestBefore?: string;
  /** Batch number; printed with an L where it has none. */
  readonly lot?: string;
  /** `Keep frozen at −18 °C or below.` by default; empty for none. */
  readonly storage?: string;
  /** Name and address. */
  readonly maker?: string;
  /** Words of the cook's own at the end. */
  readonly words?: string;
  /** Ingredients that the product's name promises, for their percentage. */
  readonly named?: readonly string[];
  /** Printed names of ingredients, by their name on the shelf. */
  readonly names?: Readonly<Record<string, LabelName>>;
  /** True to name additives by their E number (not in the United States) and leave out added water up to 5 %; false by default. */
  readonly eNumbers?: boolean;
  readonly leaveOutWater?: boolean;
  /** True to print the nutrition declaration; false by default, since many small makers need none. */
  readonly nutrition?: boolean;
  /** A portion, g, at most the contents of the tub; with `nutrition`. */
  readonly portion?: number;
  /** Air beaten in, % of the mix's volume, 0 to 300, 30 by default: for the mass of a serving by volume. */
  readonly overrun?: number;
}

/** A nutrition declaration on a sticker. */
export interface StickerNutrition {
  readonly line: string;
  /** Rows of name and figures, the first of them the headings; absent where only a line will do. */
  readonly rows?: readonly (readonly string[])[];
  /** Line below the table: the size of a portion, and their number in the tub. */
  readonly note?: string;
}

/** g in the tub; `undefined` where its quantity is not said. */
export function tubGrams(
  product: Product,
  {quantity, portion, nutrition}: StickerOptions,
  overrun: number,
): number | undefined {
  const density = productDensity(product, overrun);
  if (nutrition !== undefined) expectFlag(nutrition, "options.nutrition");
  if (quantity !== undefined) expectOptions(quantity, ["grams", "millilitres"], "options.quantity");
  const held =
    quantity === undefined
      ? undefined
      : "grams" in quantity
        ? finite(quantity.grams, "options.quantity.grams", {min: 1, max: 1e6}, "g")
        : finite(quantity.millilitres, "options.quantity.millilitres", {min: 1, max: 1e6}, "ml") * density;
  if (portion !== undefined) {
    finite(portion, "options.portion", {min: 1, max: 1e6}, "g");
    if (held !== undefined && portion > held + 1e-9)
      throw new InputError(
        "options.portion",
        "more than the tub holds",
        portion,
        `give at most ${Math.floor(held)} g`,
      );
  }
  return held;
}

/** The nutrition declaration for a sticker: in the US only as a line, since the panel has a format of its own. */
export function declaration(
  product: Product,
  {portion, overrun = 30, quantity}: StickerOptions,
  law: LabelLaw,
  held: number | undefined,
): StickerNutrition {
  if (law === "US") {
    const container = quantity && (held ?? 0) / productDensity(product, overrun);
    const panel = usPanel(product, {overrun, ...(container !== undefined && {container})});
    expectWhole(Object.values(panel.lacking).flat());
    return {line: linearUsPanel(panel)};
  }
  const panel = euPanel(product, {
    ...(portion !== undefined && {portion}),
    ...(portion !== undefined && held !== undefined && {portions: held / portion}),
  });
  expectWhole(panel.lacking);
  return {
    line: linearPanel(panel),
    rows: [
      ["Nutrition", "100 g", ...(panel.portion ? [`portion ${Math.round(panel.portion.grams)} g`] : [])],
      ...panel.per100.map(({name, text = ""}, i) => [
        name,
        text,
        ...(panel.portion ? [panel.portion.lines[i]?.text ?? ""] : []),
      ]),
    ],
    ...(panel.portion && {note: panel.sentences[0]!}),
  };
}

/** Refuses a declaration with a gap: a label has all of it or none. */
function expectWhole(lacking: readonly string[]): void {
  if (lacking.length)
    throw new InputError(
      "nutrition",
      `not known of ${[...new Set(lacking)].join(", ")}`,
      undefined,
      "give their nutrients from the packs, or leave the declaration out",
    );
}

/** `500 ml`, `1.5 l`, `350 g`; in the United States fluid ounces or ounces first (21 CFR 101.7, from memory). */
export function quantityText(quantity: NonNullable<StickerOptions["quantity"]>, law: LabelLaw): string {
  const [value, unit, large] =
    "grams" in quantity
      ? [quantity.grams, "g", "kg"]
      : [quantity.millilitres, law === "US" ? "mL" : "ml", law === "US" ? "L" : "l"];
  const metric =
    value >= 1000 ? `${Number((value / 1000).toFixed(2))} ${large}` : `${Number(value.toFixed(0))} ${unit}`;
  if (law !== "US") return metric;
  const customary =
    "grams" in quantity ? `${(value / 28.349523).toFixed(1)} oz` : `${(value / 29.57353).toFixed(1)} fl oz`;
  return `${customary} (${metric})`;
}
