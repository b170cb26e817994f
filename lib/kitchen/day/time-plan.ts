import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectOptions, expectShape} from "../../core/shape.ts";
import {heatToRemove} from "../../freezing/enthalpy.ts";
import type {Learned} from "../../freezing/learned.ts";
import {scooping} from "../../freezing/scoop.ts";
import {hardeningTime, temperingTime, type Tub} from "../../freezing/tub.ts";
import type {Composition} from "../../pantry/parts.ts";
import {whole} from "../size/scale.ts";
import {temperSentence} from "../safety/counter-wait.ts";
import {duration} from "../size/scoop-words.ts";

/** A run of the machine that has been timed. */
export interface TimedRun {
  readonly composition: Composition;
  readonly grams: number;
  /** Temperature of the mix as it went in, °C. */
  readonly from: number;
  /** Temperature at which it was drawn, °C. */
  readonly draw: number;
  readonly minutes: number;
}

/** Data that the day's times depend on. */
export interface Day {
  /** The churned mix, g per 100 g. */
  readonly composition: Composition;
  /** Mix in one run of the machine, g. */
  readonly gramsPerRun: number;
  /** Number of runs, 1 by default. */
  readonly runs?: number;
  /**
   * Chilling what was heated: from, to in °C, the mean cooling power of bath, chiller or refrigerator in W, and its mass in g, that of
   * the whole mix unless given.
   */
  readonly chill?: {
    readonly from: number;
    readonly to: number;
    readonly watts: number;
    readonly grams?: number;
  };
  /** Churning: the mix goes in at `from` °C and is drawn at `draw` °C, by a power in W or as in a run that was timed. */
  readonly churn: {readonly from: number; readonly draw: number} & (
    | {readonly watts: number}
    | {readonly lastRun: TimedRun}
  );
  /** The tub, and the freezer it goes into. */
  readonly tub: Tub;
  /** % of the mix's volume. */
  readonly overrun: number;
  /** Lesson of the kitchen's own reports on when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
  readonly freezer: {
    /** °C of the air. */
    readonly temperature: number;
    /** m/s, 0 (still air) by default. */
    readonly airSpeed?: number;
    /** Temperature that the core is to reach, °C; 3 °C warmer than the air by default. */
    readonly core?: number;
  };
  /** °C of the room where it is tempered. */
  readonly room: number;
}

/** One stage of the day. */
export interface Stage {
  readonly stage: "chill" | "churn" | "harden" | "temper";
  /** Absent when it cannot be reached, e.g. a core colder than the air. */
  readonly minutes?: number;
  readonly text: string;
}

/** The day in stages. */
export interface TimePlan {
  readonly stages: readonly Stage[];
  /** Minutes from the end of heating until the last tub is hard; absent when the time of a stage is absent. */
  readonly minutesUntilHard?: number;
}

/** Mass to be cooled, the temperatures between which, and the power that cools it. */
export interface CoolingOptions {
  /** Mass of the mix, g, at least 1. */
  readonly grams: number;
  /** °C, -40 to 120. */
  readonly from: number;
  /** °C, not above `from`, -40 or above. */
  readonly to: number;
  /**
   * Mean heat flow out of the mix, W, at least 1. A machine's rated power is for other conditions and does not count the heat of
   * its dasher: a timed run ({@link usefulPower}) is more reliable.
   */
  readonly watts: number;
}

/**
 * Minutes to cool so much mix at a cooling power: heat to remove over power.
 *
 * @throws InputError for a number outside its range, or a mix that is to get warmer
 *
 * @example
 * ```ts
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * coolingMinutes(mix, {grams: 2000, from: 85, to: 4, watts: 400}); // => 22
 * ```
 */
export function coolingMinutes(composition: Composition, options: CoolingOptions): number {
  expectOptions(options, ["grams", "from", "to", "watts"]);
  const {grams, from, to, watts} = options;
  finite(from, "from", {min: -40, max: 120}, "°C");
  finite(to, "to", {min: -40, max: 120}, "°C");
  if (to > from)
    throw new InputError("to", `warmer than the mix, which is at ${from} °C`, to, "give a lower temperature");
  const kilojoules = (heatToRemove(composition, from, to) * finite(grams, "grams", {min: 1}, "g")) / 1000;
  return (1000 * kilojoules) / finite(watts, "watts", {min: 1}, "W") / 60;
}

/**
 * Mean cooling power of a machine from a run that was timed, W: heat removed over time.
 *
 * @throws InputError for a run of no mass or no time, or a draw warmer than the mix
 *
 * @example
 * ```ts
 * usefulPower({composition: {water: 70, sucrose: 30}, grams: 1000, from: 4, draw: -6, minutes: 20}); // => 121
 * ```
 */
export function usefulPower(run: TimedRun): number {
  expectOptions(run, ["composition", "grams", "from", "draw", "minutes"], "lastRun");
  const {composition, grams, from, draw} = run;
  const minutes = finite(run.minutes, "lastRun.minutes", {min: 0.1}, "min");
  return coolingMinutes(composition, {grams, from, to: draw, watts: 1}) / minutes;
}

/** Refuses a day whose parts have another shape; their numbers are checked where they are used. */
function expectDay(day: Day): void {
  expectShape(
    day,
    {composition: "object", churn: "object", tub: "object", freezer: "object"},
    "day",
    "give {composition, gramsPerRun, churn, tub, overrun, freezer, room}",
  );
  expectOptions(day.churn, ["from", "draw", "watts", "lastRun"], "churn");
  expectOptions(day.freezer, ["temperature", "airSpeed", "core"], "freezer");
  if (day.chill !== undefined) expectOptions(day.chill, ["from", "to", "watts", "grams"], "chill");
  finite(day.freezer.temperature, "freezer.temperature", {min: -40, max: 60}, "°C");
  finite(day.room, "room", {min: -40, max: 60}, "°C");
}

/**
 * Times for chilling, churning, hardening and tempering; estimates, as good as the powers given.
 *
 * @throws InputError for any number outside its range
 *
 * @example
 * ```ts
 * timePlan({
 *   composition: {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17},
 *   gramsPerRun: 1500,
 *   runs: 2,
 *   churn: {from: 4, draw: -6, watts: 250},
 *   tub: {shape: "box", length: 16, width: 11, height: 6},
 *   overrun: 30,
 *   freezer: {temperature: -25},
 *   room: 20,
 * }).stages.map(({stage}) => stage); // => ["churn", "harden", "temper"]
 * ```
 */
export function timePlan(day: Day): TimePlan {
  expectDay(day);
  const runs = whole(day.runs ?? 1, "runs");
  const {composition, gramsPerRun, churn, freezer, tub, overrun} = day;
  const watts = "watts" in churn ? churn.watts : usefulPower(churn.lastRun);
  const perRun = coolingMinutes(composition, {
    grams: gramsPerRun,
    from: churn.from,
    to: churn.draw,
    watts,
  });
  const core = freezer.core ?? Math.min(freezer.temperature + 3, churn.draw);
  const air = {airTemperature: freezer.temperature, airSpeed: freezer.airSpeed ?? 0, overrun};
  const harden = hardeningTime(composition, tub, {draw: churn.draw, core, ...air})?.minutes;
  const frozen = {overrun, ...(day.learned && {learned: day.learned})};
  const temper = temperingTime(composition, tub, {
    freezer: freezer.temperature,
    airTemperature: day.room,
    ...frozen,
  });
  const stages: Stage[] = [
    ...(day.chill ? [chillStage(day.chill, composition, day.chill.grams ?? gramsPerRun * runs)] : []),
    {
      stage: "churn",
      minutes: perRun * runs,
      text: `Churn to ${churn.draw} °C: ${runs === 1 ? "one run" : `${runs} runs`} of about ${perRun.toFixed(0)} minutes.`,
    },
    {
      stage: "harden",
      ...(harden !== undefined && {minutes: harden}),
      text:
        harden === undefined
          ? `The core does not reach ${core} °C in air of ${freezer.temperature} °C.`
          : `Harden in air of ${freezer.temperature} °C until the core is at ${core} °C: about ${duration(harden)}.`,
    },
    {
      stage: "temper",
      ...(temper && {minutes: temper.minutes}),
      text: temperSentence(scooping(composition, freezer.temperature, frozen), temper, day.room),
    },
  ];
  const before = stages.filter(({stage}) => stage !== "temper").map(({minutes}) => minutes ?? NaN);
  const total = sum(before);
  return {stages, ...(Number.isNaN(total) ? {} : {minutesUntilHard: total})};
}

function chillStage(
  {from, to, watts}: NonNullable<Day["chill"]>,
  composition: Composition,
  grams: number,
): Stage {
  const minutes = coolingMinutes(composition, {grams, from, to, watts});
  return {stage: "chill", minutes, text: `Chill from ${from} to ${to} °C: about ${duration(minutes)}.`};
}
