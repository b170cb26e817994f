import {insoluble} from "../../lib/freezing/insoluble.ts";
import {FATS, solidFat} from "../../lib/freezing/solid-fat.ts";
import {frozenState} from "../../lib/freezing/state.ts";
import {sum} from "../../lib/core/numbers.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {type Composition, PARTS} from "../../lib/pantry/parts.ts";
import {readTable} from "./read-table.ts";

/** A mix of which it is known, or practice holds, how hard it is at a temperature. */
export interface Anchor {
  readonly kind: string;
  readonly mix: string;
  readonly composition: Composition;
  /** °C, and how well it is known. */
  readonly temperature: number;
  readonly error: number;
  /** % */
  readonly overrun: number;
  /** ln of its hardness there over that of a tub that scoops. */
  readonly hardness: number;
  /** Source of the mix. */
  readonly source: string;
  /** Ice, g per 100 g, by temperature. */
  readonly ice: (temperature: number) => number;
}

/** The anchors of `datasets/firmness_anchors.csv`. */
export function readAnchors(): Anchor[] {
  return readTable("firmness_anchors.csv").map((row) => {
    const keys = [...PARTS, "msnf", "dextroseEquivalent"].filter((key) => row[key]);
    const composition = readComposition(
      Object.fromEntries(keys.map((key) => [key, Number(row[key])])),
      row.mix!,
    );
    return {
      kind: row.class!,
      mix: row.mix!,
      composition,
      temperature: Number(row.temperature_C),
      error: Number(row.error_C),
      overrun: Number(row.overrun_percent),
      hardness: Number(row.hardness_ln),
      source: row.source!,
      ice: (temperature) => frozenState(composition, temperature).ice,
    };
  });
}

/** Coordinates that tell classes of dessert apart: water, fat and insoluble solids, g per 100 g, and ln of the volume. */
export function placeOf({composition, overrun}: Pick<Anchor, "composition" | "overrun">): number[] {
  return [
    composition.water ?? 0,
    sum(FATS.map((fat) => composition[fat] ?? 0)),
    insoluble(composition),
    Math.log(1 + overrun / 100),
  ];
}

/** A published comparison: mixes by what was changed in them, g per 100 g of the first. */
function changed(of: Composition, change: Composition): Composition {
  return Object.fromEntries(Object.entries({...of, ...change}).filter(([, grams]) => grams));
}

/** Ice, solid fat and insoluble solids with crystals at a temperature. */
export function termsAt(composition: Composition, temperature: number): [number, number, number] {
  const {ice, crystals} = frozenState(composition, temperature);
  return [ice, solidFat(composition, temperature), insoluble(composition) + crystals];
}

/** Pairs of mixes of the published ratios, harder first, with the row of `firmness_facts.csv` that has the ratio. */
export function ratioPairs(): {readonly what: string; readonly harder: Composition; readonly softer: Composition}[] {
  const base = (milkFat: number, msnf: number, sucrose: number) =>
    readComposition({milkFat, msnf, sucrose, stabiliser: 0.3, water: 99.7 - milkFat - msnf - sucrose}, "pair");
  const hydrolysed = [7, 10].map((msnf) => {
    const harder = base(15, msnf, 14);
    // One water enters each lactose that is split: 360.31 over 342.30.
    const half = (harder.lactose! * 1.0526) / 2;
    const water = harder.water! - harder.lactose! * 0.0526;
    const softer = changed(harder, {lactose: 0, dextrose: half, galactose: half, water});
    return {what: "hydrolysed", harder, softer};
  });
  const sucrose = base(7, 10, 16);
  const trehalose = changed(sucrose, {sucrose: 0, trehalose: 16});
  const erythritol = changed(sucrose, {sucrose: 0, erythritol: 16});
  return [
    ...hydrolysed,
    {what: "trehalose over sucrose", harder: trehalose, softer: sucrose},
    {what: "erythritol over trehalose", harder: erythritol, softer: trehalose},
  ];
}
