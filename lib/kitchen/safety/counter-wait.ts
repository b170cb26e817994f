import {degrees, setDegrees} from "../../core/format.ts";
import type {Learned} from "../../freezing/learned.ts";
import type {Scooping} from "../../freezing/scoop.ts";
import {temperingTime, type TubTime} from "../../freezing/tub.ts";
import type {Composition} from "../../pantry/parts.ts";
import {COOLING, REFREEZING_LIMIT} from "../cooking/pasteurisation.ts";
import {type CounterWait, duration, NEVER, TOO_LONG} from "../size/scoop-words.ts";

/** A tub of a litre, cm, on a counter, °C. */
const LITRE = {shape: "box", length: 16, width: 10.5, height: 6} as const;
const COUNTER = 20;

/**
 * Longest that a tub is to stand in a room, minutes (common practice, no source): kitchens take one out a quarter to half an hour ahead.
 * The surface warms first, and what melts there freezes again to coarse ice.
 */
const LONGEST = 60;

/** Warmest that a cabinet from which ice cream is scooped is kept, °C (common practice, no source). */
const CABINET = -10;

/**
 * Time that a litre tub of a mix needs on a counter at 20 °C until it scoops, and whether that is too long; `undefined` where it needs
 * none or none helps.
 *
 * @param learned calibration by the kitchen's own reports, if the verdict rests on it
 */
export function counterWait(
  composition: Composition,
  {freezer, overrun, verdict, unsure}: Scooping,
  learned?: Learned,
): CounterWait | undefined {
  if ((verdict !== "firm" && verdict !== "hard") || unsure === "no ice") return undefined;
  const time = temperingTime(composition, LITRE, {
    freezer,
    airTemperature: COUNTER,
    overrun,
    ...(learned && {learned}),
  });
  return time && {minutes: time.minutes, tooLong: tooLong(time, COUNTER) !== undefined};
}

/**
 * What is against such a wait, in words; `undefined` for nothing. A refrigerator holds food cold (at 7.2 °C or below by a former UK rule),
 * so a tub may stand there longer, as long as its surface stays below the −2.2 °C from which that rule asks to heat it again.
 */
function tooLong({minutes, surface}: TubTime, room: number): string | undefined {
  if (minutes > LONGEST && room > COOLING.temperature) return TOO_LONG(`at ${setDegrees(room)}`);
  return surface > REFREEZING_LIMIT
    ? `its surface is above ${degrees(REFREEZING_LIMIT)} before it softens at ${setDegrees(room)}`
    : undefined;
}

/**
 * Tempering in a sentence.
 *
 * @param time that the tub takes; absent where it does not get there
 * @param room °C
 */
export function temperSentence(scoop: Scooping, time: TubTime | undefined, room: number): string {
  if (scoop.unsure === "no ice") return "It holds no ice: there is nothing to temper.";
  switch (scoop.verdict) {
    case "never hardens":
      return `It ${NEVER}: there is nothing to temper.`;
    case "soft":
      return "It is soft from the freezer: no tempering.";
    case "scoops":
      return "It scoops straight from the freezer.";
    default: {
      if (time === undefined)
        return `It is ${scoop.verdict} from the freezer, and stays so at ${setDegrees(room)}.`;
      const at = degrees(scoop.temperature!);
      const against = tooLong(time, room);
      if (against === undefined)
        return `Temper at ${setDegrees(room)} until it is at ${at}: about ${duration(time.minutes)}.`;
      const cabinet = scoop.temperature! <= CABINET ? `serve it from a cabinet at ${at}, or ` : "";
      return `It is ${scoop.verdict} from the freezer, and ${against}: ${cabinet}change the recipe.`;
    }
  }
}
