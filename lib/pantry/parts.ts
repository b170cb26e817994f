/**
 * The parts of a composition: exclusive, in g per 100 g, together 100.
 *
 * Beyond the parts every recipe card knows, some are kept apart because they behave differently when frozen: coconut fat
 * (solid fat curve), plant salts (the soluble mineral salts of fruit, cocoa, nuts and eggs, mostly potassium) and each
 * sugar alcohol and rare sugar (solute; some crystallise). Polydextrose, oligofructose and inulin are soluble fibre. Gelatine sets like a stabiliser
 * and is protein. Other carbohydrate is what a label counts as such beside sugars and starch (dextrins, fructans, what a table
 * leaves unsplit); it behaves as the other solids do.
 */
export const PARTS = [
  "water",
  "milkFat",
  "eggFat",
  "cocoaButter",
  "coconutFat",
  "otherFat",
  "milkProtein",
  "otherProtein",
  "lactose",
  "milkSalts",
  "sucrose",
  "dextrose",
  "fructose",
  "maltose",
  "galactose",
  "glucoseSyrupSolids",
  "sorbitol",
  "xylitol",
  "erythritol",
  "mannitol",
  "maltitol",
  "lactitol",
  "isomalt",
  "trehalose",
  "allulose",
  "isomaltulose",
  "tagatose",
  "glycerol",
  "polydextrose",
  "oligofructose",
  "inulin",
  "starch",
  "fibre",
  "salt",
  "plantSalts",
  "alcohol",
  "organicAcids",
  "stabiliser",
  "gelatine",
  "emulsifier",
  "otherCarbohydrate",
  "otherSolids",
] as const;

/** Name of one part of a composition. */
export type Part = (typeof PARTS)[number];

/**
 * Parts of an ingredient or a mix, g per 100 g. An absent part is not there.
 *
 * `dextroseEquivalent` (0 to 100, dextrose = 100) belongs to `glucoseSyrupSolids`, and whatever has some needs one; in a mix it is the mass-weighted
 * mean, which is exact because reducing power adds up by mass.
 */
export type Composition = Readonly<Partial<Record<Part, number>>> & {readonly dextroseEquivalent?: number};
