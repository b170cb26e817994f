import {InputError} from "../../core/errors.ts";

/** The time that a run has, on one clock. Every loop that may take long looks at it. */
export interface Deadline {
  /** Milliseconds that are left; not above 0 once the time is up, `Infinity` where there is no limit. */
  readonly left: () => number;
}

/** Thrown inside a run whose time is up; `solve` and `balance` turn it into an undecided answer. */
export class OutOfTime extends Error {
  override readonly name = "OutOfTime";
}

/** Milliseconds that a call may take by default. */
export const USUAL_TIME = 10_000;

/** A run without a limit. */
export const NO_DEADLINE: Deadline = {left: () => Infinity};

/**
 * A deadline some time from now.
 *
 * @param milliseconds above 0; `Infinity` for no limit
 * @param now a clock in milliseconds, by default `performance.now` where there is one: without a clock there is no deadline
 * @throws InputError naming the option for no time above 0, and for a clock that is no function
 */
export function deadlineIn(
  milliseconds: number,
  now: (() => number) | undefined = clock(),
  option = "timeLimit",
): Deadline {
  if (!(typeof milliseconds === "number" && milliseconds > 0))
    throw new InputError(option, "not a time", milliseconds, "give milliseconds above 0");
  if (now === undefined) return NO_DEADLINE;
  if (typeof now !== "function")
    throw new InputError("now", "not a clock", now, "give a function such as () => performance.now()");
  const end = now() + milliseconds;
  return {left: () => end - now()};
}

/** Time that a call of many programs may take. */
export interface TimeOptions {
  /** Milliseconds for the whole call, above 0; by default there is no limit but the 10 s of each program. */
  readonly deadline?: number;
  /** A clock in milliseconds for the deadline; default `performance.now`, where there is one. */
  readonly now?: () => number;
}

/**
 * The deadline of a call, if it has one.
 *
 * @throws InputError naming the option for no time above 0, or a clock that is no function
 */
export function deadlineOf({deadline, now}: TimeOptions): Deadline | undefined {
  const wanted = deadlineIn(deadline === undefined ? Infinity : deadline, now, "deadline");
  return deadline === undefined ? undefined : wanted;
}

/** The clock of the surroundings, read for deadlines alone. */
function clock(): (() => number) | undefined {
  const {performance} = globalThis as {readonly performance?: {readonly now: () => number}};
  return performance && (() => performance.now());
}

/** The first part of the time that is left, from 0 to 1 of it. */
export function partOfTime(deadline: Deadline, share: number): Deadline {
  const kept = (1 - share) * deadline.left();
  return kept < Infinity ? {left: () => deadline.left() - kept} : deadline;
}

/** @throws OutOfTime once the time is up */
export function checkTime(deadline: Deadline): void {
  if (!(deadline.left() > 0)) throw new OutOfTime("time is up");
}

/** Result of a function, or a substitute where time runs out within it. */
export function beforeTime<T, S>(work: () => T, late: () => S): T | S {
  try {
    return work();
  } catch (error) {
    if (error instanceof OutOfTime) return late();
    throw error;
  }
}
