/** Whose law a label is written for. */
export const LABEL_LAWS = ["EU", "GB", "US"] as const;

/** Whose law a label is written for: the European Union, Great Britain, the United States. */
export type LabelLaw = (typeof LABEL_LAWS)[number];

/** Ways of sale: packed before it is offered, packed where it is sold to whoever comes, or scooped and packed at request. */
export const WAYS_OF_SALE = ["prepacked", "direct", "loose"] as const;

/** Way in which a food is sold. */
export type WayOfSale = (typeof WAYS_OF_SALE)[number];

/** Duty of a label: it must say something, may leave it out, or may say it though no law asks. */
export type Force = "law" | "exempt" | "offered";

/** Reading of a rule: in its own text, where others quote it, or not at all. A rule that was not read fails no product. */
export type HowRead = "text" | "quoted" | "from memory";
