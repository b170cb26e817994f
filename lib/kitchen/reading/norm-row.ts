import type {Quantity} from "../../pantry/quantities.ts";
import type {KindName} from "./kind-names.ts";

/** What a norm may speak of: a quantity of the composition, a temperature, or the share of fruit (juice too) or nuts. */
export type NormProperty = Quantity | "freezingPoint" | "scoopTemperature" | "fruit" | "nuts";

/** How a norm's source was read: as it stands, as others quote it, or from the mixes that it publishes, by this model. */
export type NormReading = "primary text" | "secondary quote" | "worked out from its mixes";

/** What frozen desserts of a kind usually have of something. */
export interface NormRow {
  readonly kind: KindName;
  readonly property: NormProperty;
  readonly min?: number;
  readonly max?: number;
  /** `%` (g per 100 g), `°C`, or `sucrose = 100`. */
  readonly unit: string;
  /** The law, code, book or page, or "common practice, no source". */
  readonly source: string;
  /** Where it stands there. */
  readonly where?: string;
  /** Absent for common practice. */
  readonly read?: NormReading;
  readonly note?: string;
}
