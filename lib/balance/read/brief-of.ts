import {InputError} from "../../core/errors.ts";
import {NO_PANTRY} from "../../pantry/pantry.ts";
import type {BriefInput} from "../brief/brief-schema.ts";
import type {Brief} from "../brief/brief.ts";
import {checkedIn} from "../brief/checked.ts";
import {readBrief} from "./read-brief.ts";

/**
 * A brief where one is asked for: a checked one (from `readBrief`), an answer of `balance`, which holds the brief that it answers, or
 * one as a cook writes it, if it describes every ingredient itself.
 */
export type BriefSource = Brief | BriefInput<string> | {readonly status: string; readonly brief?: Brief};

/**
 * The checked brief of a source. What was checked before is not read again.
 *
 * @throws InputError for an answer that has lost its brief in a copy, and for a mistake in a brief as it is written
 */
export function briefOf(source: BriefSource): Brief {
  const known = checkedIn(source);
  if (known) return known;
  if (typeof source === "object" && source !== null && "status" in source)
    throw new InputError(
      "brief",
      "a copy of an answer, without the brief that it answers",
      undefined,
      "give the answer as balance returned it, or the brief: readBrief(input, pantry)",
    );
  return readBrief(source, NO_PANTRY);
}
