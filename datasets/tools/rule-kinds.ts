/** Terms of the rules: foods of the tables, and the use of their figures. */
import type {Part} from "../../lib/pantry/parts.ts";
import {POTASSIUM_CHLORIDE_PER_MG, POTASSIUM_CITRATE_PER_MG} from "./salts.ts";

/** A food of a published table, per 100 g. */
export interface Food {
  readonly source: string;
  readonly sourceId: string;
  /** Whether carbohydrate is what water, protein, fat, ash and alcohol leave of 100 g (it then includes fibre). */
  readonly byDifference: boolean;
  /** Whether the total of sugars was measured, and not imputed or set equal to carbohydrate. */
  readonly sugarsMeasured: boolean;
  readonly liquid: boolean;
  /** g of a named constituent, absent where the source has none. */
  readonly grams: (name: string) => number | undefined;
  /** mg */
  readonly sodium: number | undefined;
  /** mg */
  readonly potassium: number | undefined;
  /** kcal */
  readonly energy: number | undefined;
  /** g/ml, as printed */
  readonly density: number | undefined;
  readonly portions: string;
}

/**
 * Use of the split of sugars: the amounts themselves, or their proportions scaled to the food's total sugars or to
 * its carbohydrate less fibre; or, for sugars that no table splits, half dextrose and half fructose, or sucrose.
 */
export type Sugars = "amounts" | "share of sugars" | "share of carbohydrate" | "halves" | "sucrose";

export interface Rule {
  readonly fat: Part;
  readonly protein: Part;
  readonly ash: Part;
  /** Part of the carbohydrate that is neither sugar, starch nor fibre. */
  readonly rest: Part;
  /** Part that takes up what the source's figures leave of 100 g, or exceed it by. */
  readonly difference: Part;
  /** Whether the sodium is salt, as far as the ash goes. */
  readonly salted?: boolean;
  /** Whether it is curd, so that where the source prints no ash, few milk salts follow from the protein. */
  readonly curd?: boolean;
  /** Whether milk salts follow from the protein even where the source prints ash. */
  readonly saltsFromProtein?: boolean;
  /** g of ash that dissolves per mg potassium; the rest is taken as insoluble (calcium salts, phosphate of fats). */
  readonly ashPerPotassium?: number;
  /** Sugars that the food can hold; others, printed at the limit of detection, stay in the rest. All by default. */
  readonly sugars?: readonly Part[];
  /** Sugars that the method of the table takes for others: as what they are. */
  readonly foundAs?: Readonly<Partial<Record<Part, Part>>>;
}

const plant: Rule = {
  fat: "otherFat",
  protein: "otherProtein",
  ash: "plantSalts",
  rest: "otherCarbohydrate",
  difference: "water",
};
const dairy: Rule = {
  fat: "milkFat",
  protein: "milkProtein",
  ash: "milkSalts",
  rest: "lactose",
  difference: "water",
  sugars: [],
};
const dairyWithSugars: Rule = {...plant, fat: "milkFat", protein: "milkProtein", ash: "milkSalts"};
const drink: Rule = {...plant, salted: true, ashPerPotassium: POTASSIUM_CHLORIDE_PER_MG};

/** Parts that a food's fat, protein, ash and unsplit carbohydrate count as. */
export const RULES: Readonly<Record<string, Rule>> = {
  dairy,
  "salted dairy": {...dairy, salted: true, saltsFromProtein: true},
  "fermented dairy": {...dairyWithSugars, rest: "organicAcids"},
  "salted fermented dairy": {...dairyWithSugars, rest: "organicAcids", salted: true, curd: true},
  "sweetened dairy": dairyWithSugars,
  egg: {...plant, fat: "eggFat", salted: true, ashPerPotassium: POTASSIUM_CITRATE_PER_MG, sugars: ["sucrose", "dextrose"]},
  plant,
  "salted plant": {...plant, salted: true},
  "plant drink": drink,
  "coconut drink": {...drink, fat: "coconutFat"},
  coconut: {...plant, fat: "coconutFat"},
  cocoa: {...plant, fat: "cocoaButter"},
  syrup: {...plant, difference: "otherSolids"},
  "salted syrup": {...plant, difference: "otherSolids", salted: true},
  starch: {...plant, rest: "starch"},
  gum: {...plant, rest: "stabiliser"},
  gelatine: {...plant, protein: "gelatine"},
  honey: {...plant, foundAs: {galactose: "maltose"}},
  oil: {...plant, difference: "otherFat"},
  "coconut oil": {...plant, fat: "coconutFat", difference: "coconutFat"},
  emulsifier: {...plant, fat: "emulsifier"},
};

/** g per 100 g by part. */
export type Parts = Partial<Record<Part, number>>;

/** An ingredient to be derived. */
export interface Task {
  readonly rule: string;
  readonly food: Food | undefined;
  /** Parts stated on the shelf, g per 100 g; they are taken out of the food's fat, protein, ash or carbohydrate. */
  readonly stated: Parts;
  readonly sugarsFrom: Food | undefined;
  readonly sugarsAs: Sugars;
  /** Source of the stated parts; from memory by default. */
  readonly partsFrom?: string;
  readonly place: string;
}

/** Adds g of a part. */
export type Add = (part: Part, grams: number) => void;
