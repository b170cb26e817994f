import type {Quantity} from "../../pantry/quantities.ts";
import type {KindName} from "./kind-names.ts";

/** Subject of a norm: a quantity of the composition, a temperature, or the share of fruit (juice too) or nuts. */
export type NormProperty = Quantity | "freezingPoint" | "scoopTemperature" | "fruit" | "nuts";

/** Reading of a norm's source: its own text, as others quote it, or worked out by this model from the mixes that it publishes. */
export type NormReading = "primary text" | "secondary quote" | "worked out from its mixes";

/** Usual range of a quantity in frozen desserts of a kind. */
export interface NormRow {
  readonly kind: KindName;
  readonly property: NormProperty;
  readonly min?: number;
  readonly max?: number;
  /** `%` (g per 100 g), `°C`, or `sucrose = 100`. */
  readonly unit: string;
  /** The law, code, book or page, or "common practice, no source". */
  readonly source: string;
  /** Place in the source. */
  readonly where?: string;
  /** Absent for common practice. */
  readonly read?: NormReading;
  readonly note?: string;
}
