// `mixwright/label`: nutrition, allergens, list of ingredients and legal names of a product.

export {productAllergens} from "./kitchen/product/product-allergens.ts";
export {NUTRIENTS} from "./pantry/nutrient-keys.ts";
export {mixNutrient} from "./pantry/mix-nutrient.ts";
export {nutrientOf} from "./pantry/nutrients.ts";
export {ENERGY_FACTORS} from "./pantry/energy.ts";
export {
  type Nutrition,
  nutritionOf,
  type NutritionPer100,
  nutritionPer100,
} from "./kitchen/product/nutrition.ts";
export {nutritionLabel, type NutritionLine} from "./kitchen/label/nutrition-label.ts";
export {ingredientList, type LabelText, type ListOptions, quidPercent} from "./kitchen/label/label.ts";
export {labelGaps} from "./kitchen/label/label-gaps.ts";
export {allergenWords, CEREAL_UNKNOWN, NUT_UNKNOWN, usAllergenWords} from "./kitchen/label/allergen-words.ts";
export {customaryName, type LabelName, type ListStyle} from "./kitchen/label/label-names.ts";
export {checkStandard, type Standard, STANDARD_FORCE, STANDARDS} from "./kitchen/label/standards.ts";
export {
  type FruitKind,
  LEAST_FRUIT,
  type ProductFacts,
  type StandardCheck,
} from "./kitchen/label/standard-check.ts";
export {leastMsnf} from "./kitchen/label/us-standards.ts";
export {type ProductFactsDetails, productFacts} from "./kitchen/label/product-facts.ts";
export {type NameElsewhere, namesElsewhere} from "./kitchen/label/names-elsewhere.ts";
export {type LabelStatement, labelStatements, type StatementOptions} from "./kitchen/label/statements.ts";
export {labelDuties, type LabelDuty} from "./kitchen/label/duties.ts";
export {
  type Force,
  type HowRead,
  LABEL_LAWS,
  type LabelLaw,
  type WayOfSale,
  WAYS_OF_SALE,
} from "./kitchen/label/label-law.ts";
export {
  type EuPanel,
  euPanel,
  type EuPanelOptions,
  linearPanel,
  REFERENCE_INTAKES,
} from "./kitchen/label/eu-panel.ts";
export {
  DAILY_VALUES,
  US_SERVING_MILLILITRES,
  type UsPanel,
  usPanel,
  type UsPanelLine,
  type UsPanelOptions,
} from "./kitchen/label/us-panel.ts";
export {type Sticker, stickerOf, type StickerText} from "./kitchen/label/sticker.ts";
export type {StickerNutrition, StickerOptions} from "./kitchen/label/sticker-options.ts";
