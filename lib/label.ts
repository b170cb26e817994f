// `mixwright/label`: nutrition, allergens, list of ingredients and legal names of a product.

export {productAllergens} from "./kitchen/product/product.ts";
export {NUTRIENTS} from "./pantry/nutrient-keys.ts";
export {mixNutrient, nutrientOf} from "./pantry/nutrients.ts";
export {ENERGY_FACTORS} from "./pantry/energy.ts";
export {type Nutrition, nutritionOf} from "./kitchen/product/nutrition.ts";
export {nutritionLabel, type NutritionLine} from "./kitchen/label/nutrition-label.ts";
export {
  allergenWords,
  CEREAL_UNKNOWN,
  ingredientList,
  quidPercent,
  type LabelName,
  type LabelText,
} from "./kitchen/label/label.ts";
export {checkStandard, type Standard, STANDARD_FORCE, STANDARDS} from "./kitchen/label/standards.ts";
export {
  type FruitKind,
  LEAST_FRUIT,
  type ProductFacts,
  type StandardCheck,
} from "./kitchen/label/standard-check.ts";
export {leastMsnf} from "./kitchen/label/us-standards.ts";
export {type ProductFactsDetails, productFacts} from "./kitchen/label/product-facts.ts";
