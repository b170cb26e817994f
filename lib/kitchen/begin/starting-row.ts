import type {Quantity} from "../../pantry/quantities.ts";
import type {NormReading} from "../reading/norm-row.ts";
import type {FlavourKind} from "./flavours.ts";
import type {StartingKey} from "./starting-keys.ts";

/** What a starting point limits: an ingredient, what is chosen for its flavour, or what the mix has. */
export type StartingSubject =
  | {readonly of: "ingredient"; readonly name: string}
  | {readonly of: "flavour"; readonly name: FlavourKind | "sour fruit"}
  | {readonly of: "target"; readonly name: Quantity | "scoopTemperature"};

/** A limit of a starting point; an ingredient without one may go in as it likes. */
export type StartingRow = StartingSubject & {
  readonly point: StartingKey;
  /** % of the batch of an ingredient; g per 100 g, °C, or sucrose = 100 of a target. */
  readonly min?: number;
  readonly max?: number;
  /** The law, code, book or page, or "common practice, no source". */
  readonly source: string;
  /** Where it stands there. */
  readonly where?: string;
  /** Absent for common practice. */
  readonly read?: NormReading;
  readonly note?: string;
};
