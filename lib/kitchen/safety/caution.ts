/** Subject of a caution. */
export type CautionTopic =
  | "mix"
  | "egg"
  | "milk"
  | "unheated"
  | "hot sugar"
  | "alcohol"
  | "polyols"
  | "crystals"
  | "doses"
  | "allergens"
  | "cooling"
  | "law";

/** A caution. */
export interface Caution {
  readonly topic: CautionTopic;
  readonly text: string;
}
