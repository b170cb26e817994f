/** A nutrient that an ingredient says of itself: no composition tells it. */
export type SaidNutrient =
  | "saturates"
  | "monounsaturates"
  | "polyunsaturates"
  | "trans"
  | "cholesterol"
  | "sodium"
  | "calcium"
  | "iron"
  | "potassium"
  | "vitaminD"
  | "addedSugars";

/** Any nutrient: those that follow from the composition too, and salt, which follows from the sodium. */
export type NutrientKey =
  | SaidNutrient
  | "carbohydrate"
  | "dietaryFibre"
  | "saltEquivalent"
  | "kilojoules"
  | "kilocalories";

/**
 * The nutrients of an ingredient or a mix, per 100 g: unit, and name in plain words. What further stands on a label (fat, protein,
 * `totalSugars`, `polyols`) is a quantity of the composition.
 */
export const NUTRIENTS: Readonly<
  Record<NutrientKey, {readonly unit: "g" | "mg" | "µg" | "kJ" | "kcal"; readonly name: string}>
> = {
  saturates: {unit: "g", name: "saturated fat"},
  monounsaturates: {unit: "g", name: "monounsaturated fat"},
  polyunsaturates: {unit: "g", name: "polyunsaturated fat"},
  trans: {unit: "g", name: "trans fat"},
  cholesterol: {unit: "mg", name: "cholesterol"},
  sodium: {unit: "mg", name: "sodium"},
  calcium: {unit: "mg", name: "calcium"},
  iron: {unit: "mg", name: "iron"},
  potassium: {unit: "mg", name: "potassium"},
  vitaminD: {unit: "µg", name: "vitamin D"},
  addedSugars: {unit: "g", name: "added sugars"},
  carbohydrate: {unit: "g", name: "carbohydrate without fibre"},
  dietaryFibre: {unit: "g", name: "dietary fibre, gums among it"},
  saltEquivalent: {unit: "g", name: "salt (sodium x 2.5)"},
  kilojoules: {unit: "kJ", name: "energy in kJ"},
  kilocalories: {unit: "kcal", name: "energy in kcal"},
};

/** The keys of all nutrients. */
export const NUTRIENT_KEYS = Object.keys(NUTRIENTS) as readonly NutrientKey[];

const DERIVED: readonly NutrientKey[] = [
  "carbohydrate",
  "dietaryFibre",
  "saltEquivalent",
  "kilojoules",
  "kilocalories",
];

/** The keys of what an ingredient may say of itself. */
export const SAID_NUTRIENTS = NUTRIENT_KEYS.filter((key): key is SaidNutrient => !DERIVED.includes(key));

/** Nutrients as an ingredient says them, per 100 g of it: absent is unknown, 0 is known to be none. */
export type Nutrients = Readonly<Partial<Record<SaidNutrient, number>>>;

/** True where a text names a nutrient. */
export function isNutrient(name: string): name is NutrientKey {
  return Object.hasOwn(NUTRIENTS, name);
}
