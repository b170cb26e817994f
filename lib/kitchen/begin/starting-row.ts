import type {Quantity} from "../../pantry/quantities.ts";
import type {NormReading} from "../reading/norm-row.ts";
import type {FlavourKind} from "./flavours.ts";
import type {StartingKey} from "./starting-keys.ts";

/** Subject of a limit of a starting point: an ingredient, the one chosen for the flavour, or a target of the mix. */
export type StartingSubject =
  | {readonly of: "ingredient"; readonly name: string}
  | {readonly of: "flavour"; readonly name: FlavourKind | "sour fruit"}
  | {readonly of: "target"; readonly name: Quantity | "scoopTemperature"};

/** A limit of a starting point; without `min` and `max` an ingredient may go in in any amount. */
export type StartingRow = StartingSubject & {
  readonly point: StartingKey;
  /** % of the batch of an ingredient; g per 100 g, °C, or sucrose = 100 of a target. */
  readonly min?: number;
  readonly max?: number;
  /** The law, code, book or page, or "common practice, no source". */
  readonly source: string;
  /** Place in the source. */
  readonly where?: string;
  /** Absent for common practice. */
  readonly read?: NormReading;
  readonly note?: string;
};
