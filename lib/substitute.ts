// `mixwright/substitute`: what replaces an ingredient, and which ingredients are equal in what.

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
