/** Countries for whose law a label can be written. */
export const LABEL_LAWS = ["EU", "GB", "US"] as const;

/** Country for whose law a label is written: the European Union, Great Britain, the United States. */
export type LabelLaw = (typeof LABEL_LAWS)[number];

/** Ways of sale: packed before it is offered; packed on the premises for direct sale; scooped or packed at the customer's request. */
export const WAYS_OF_SALE = ["prepacked", "direct", "loose"] as const;

/** Way in which a food is sold. */
export type WayOfSale = (typeof WAYS_OF_SALE)[number];

/** Force of a particular: the law asks for it, exempts from it, or it is offered though no law asks. */
export type Force = "law" | "exempt" | "offered";

/** Reading of a rule: in its own text, as others quote it, or not at all. A rule that was not read fails no product. */
export type HowRead = "text" | "quoted" | "from memory";
