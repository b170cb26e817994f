// `mixwright/substitute`: what a recipe is like and how to change it, what replaces an ingredient, and which ingredients are equal in what.

export {substitute, substituteSteps} from "./balance/substitute/substitute.ts";
export type {
  Alternative,
  AmountChange,
  Broken,
  NoticedChange,
  SubstituteOptions,
  Substitution,
} from "./balance/substitute/substitution-types.ts";
export {
  type SimilarityTrait,
  SIMILARITY_TRAITS,
  type Weights,
  SUBSTITUTION_WEIGHTS,
} from "./balance/substitute/similarity-traits.ts";
export {
  EQUAL_IN,
  equivalents,
  equivalentsTable,
  type EqualIn,
  type Equivalent,
  type EquivalentRow,
} from "./balance/substitute/equivalents.ts";
export {type Split, splitInto} from "./balance/substitute/split.ts";
export {
  describeRecipe,
  type DescribeOptions,
  type RecipeDescription,
} from "./kitchen/reading/describe-recipe.ts";
export {compareRecipes, type ComparedAmount, type Comparison} from "./kitchen/reading/compare-recipes.ts";
export {type KindName, KINDS} from "./kitchen/reading/kind-names.ts";
export type {Kind} from "./kitchen/reading/kind.ts";
export type {Norm} from "./kitchen/reading/norms.ts";
export type {NormProperty, NormReading, NormRow} from "./kitchen/reading/norm-row.ts";
export {type Pull, PULLED, type Pulled, type Pulls, pullsOf} from "./balance/change/pulls.ts";
export {staplesIn} from "./balance/explain/staples.ts";
export {suggestChanges, suggestChangesSteps} from "./balance/change/suggest-changes.ts";
export {
  type BeforeAfter,
  type Change,
  type ChangeOptions,
  type Changes,
  type NoChange,
  TOWARDS,
  type Towards,
} from "./balance/change/change-types.ts";
