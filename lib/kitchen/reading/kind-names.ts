/** The kinds of frozen dessert that are told apart. */
export const KINDS = [
  "ice cream",
  "rich ice cream",
  "egg custard ice cream",
  "light ice cream",
  "gelato",
  "milk ice",
  "soft serve",
  "frozen yoghurt",
  "chocolate ice cream",
  "nut ice cream",
  "fruit ice cream",
  "vegetable-fat ice cream",
  "sherbet",
  "sorbet",
  "sorbet of sour fruit",
  "chocolate sorbet",
  "water ice",
  "granita",
  "ice cream with little milk",
  "dairy-free ice cream",
] as const;

/** A kind of frozen dessert. */
export type KindName = (typeof KINDS)[number];
