import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {isFreshDairy} from "./dairy.ts";
import {COOLING, checkHold, DAIRY_PAIRS, held as heldAt, type HeatPair} from "./pasteurisation.ts";
import {heatTo, type Pot, potMass, pourTogether} from "./pot.ts";
import type {CoolStep, HeatStep, Item, PourStep, ProcessStep} from "./process.ts";
import type {Worktop} from "./worktop.ts";

/** Report of a step. */
export interface StepReport {
  readonly step: ProcessStep;
  /** In plain words. */
  readonly text: string;
  /** Temperature of the items once mixed, before heating or cooling, °C. */
  readonly before: number;
  /** °C */
  readonly after: number;
  /** g */
  readonly grams: number;
  /** Heat put in, kJ; negative for cooling, 0 for pouring. */
  readonly kilojoules: number;
  /** Published pairs of temperature and time that the step meets by itself. */
  readonly pairs: readonly HeatPair[];
  readonly notes: readonly string[];
}

/** Temperature above which a mix with egg curdles, °C: common practice, no source. */
const CURDLES = 85;

/** Temperature from which egg thickens, and a mix may look cooked, °C: common practice, no source. */
const WARM = 60;

/** Temperature, °C, and time, s, from which a pan loses water that is noticed: common practice, no source. */
const [BOILS_OFF, LONG] = [90, 300] as const;

/** Largest error of the temperature of a poured mix, which is colder than calculated, °C: heat for pot, air, melting fat and dissolving sugar is left out. */
const UNSURE = 3;

/** A step's result, the name it stands under, and the report. */
interface Ran {
  readonly pot: Pot;
  readonly into: string;
  readonly report: StepReport;
}

/** Mixes the items, heats them and holds them. */
export function heat(step: HeatStep, worktop: Worktop, place: string): Ran {
  const to = finite(step.to, `${place}.to`, {min: 0, max: 200}, "°C");
  const seconds = finite(step.holdSeconds ?? 0, `${place}.holdSeconds`, {min: 0, max: 86_400}, "s");
  const mixed = pourTogether(worktop.take(step.heat, `${place}.heat`));
  if (to < mixed.temperature - UNSURE) {
    throw new InputError(
      `${place}.to`,
      `a heat step below the mix's temperature, which is ${mixed.temperature.toFixed(1)} °C`,
      to,
      "give a higher temperature, or make it a step that cools",
    );
  }
  const pairs = checkHold(to, seconds).filter((pair) => pair.met);
  const contents = pairs.length
    ? mixed.contents.map((content) => ({...content, treated: true}))
    : mixed.contents;
  const pot = {contents, temperature: to};
  const held = seconds > 0 ? `, hold ${duration(seconds)}` : "";
  return {
    pot,
    into: step.into ?? nameOf(step.heat[0]!),
    report: {
      step,
      text: `Heat ${names(step.heat)} to ${Number(to.toFixed(1))} °C${held}`,
      before: mixed.temperature,
      after: to,
      grams: potMass(pot),
      kilojoules: Math.max(0, heatTo(mixed, to)),
      pairs,
      notes: [
        ...eggNotes(pot, to),
        pairs.length ? metWords(pairs) : notMet(to, seconds),
        ...(to >= BOILS_OFF && seconds >= LONG
          ? ["Cover it: weigh it after, and make up with water what boiled away."]
          : []),
      ],
    },
  };
}

/** Pours items onto others: the mixed temperature by heat balance. */
export function pour(step: PourStep, worktop: Worktop, place: string): Ran {
  const from = worktop.take(step.pour, `${place}.pour`);
  const onto = worktop.take(step.onto, `${place}.onto`);
  const pot = pourTogether([...from, ...onto]);
  const cold = onto.every(({contents, temperature}) => temperature < WARM && contents.every(isTreated));
  return {
    pot,
    into: step.into,
    report: {
      step,
      text: cold
        ? `Stir ${names(step.pour)} into the cold ${names(step.onto)}`
        : `Pour ${names(step.pour)} onto ${names(step.onto)}`,
      before: pourTogether(onto).temperature,
      after: pot.temperature,
      grams: potMass(pot),
      kilojoules: 0,
      pairs: [],
      notes: [
        pot.temperature < WARM
          ? `About ${pot.temperature.toFixed(0)} °C once mixed.`
          : `It reaches about ${pot.temperature.toFixed(0)} °C and cools from there: not enough by itself to pasteurise.`,
        ...eggNotes(pot, pot.temperature),
        ...(cold && from.some(({contents}) => contents.some(isRawDairy))
          ? ["What goes in cold is not pasteurised by this heat: it must have been when bought."]
          : []),
      ],
    },
  };
}

function isRawDairy({ingredient, treated}: Pot["contents"][number]): boolean {
  return !treated && isFreshDairy(ingredient);
}

/**
 * Mixes the items and cools them.
 *
 * @param heated whether a step before it heated something: only then is there a time to keep
 */
export function cool(step: CoolStep, worktop: Worktop, place: string, heated: boolean): Ran {
  const to = finite(step.to, `${place}.to`, {min: 0, max: 150}, "°C");
  const mixed = pourTogether(worktop.take(step.cool, `${place}.cool`));
  if (to > mixed.temperature + 1e-6) {
    throw new InputError(
      `${place}.to`,
      `a cooling step above the mix's temperature, which is ${mixed.temperature.toFixed(1)} °C`,
      to,
      "give a lower temperature, or make it a step that heats",
    );
  }
  if (step.minutes !== undefined) finite(step.minutes, `${place}.minutes`, {min: 0}, "min");
  return {
    pot: {...mixed, temperature: to},
    into: step.into ?? nameOf(step.cool[0]!),
    report: {
      step,
      text: `Cool ${names(step.cool)} to ${Number(to.toFixed(1))} °C${step.minutes === undefined ? "" : ` in ${duration(step.minutes * 60)}`}`,
      before: mixed.temperature,
      after: to,
      grams: potMass(mixed),
      kilojoules: heatTo(mixed, to),
      pairs: [],
      notes: heated
        ? [
            `At most ${COOLING.temperature} °C within ${COOLING.minutes} minutes of heating: a former UK rule, kept as guidance; your local code decides.`,
          ]
        : [],
    },
  };
}

/**
 * Whether the last heated mix is cooled to the published limit in the published time, all cooling steps after it together;
 * `undefined` when a time is missing, nothing was heated, or the process ends before it is cold.
 */
export function cooledInTime(steps: readonly StepReport[]): boolean | undefined {
  const heated = steps.findLastIndex(heats);
  if (heated < 0) return undefined;
  let minutes = 0;
  for (const {step, after} of steps.slice(heated + 1)) {
    if (!("cool" in step)) continue;
    if (step.minutes === undefined) return undefined;
    minutes += step.minutes;
    if (after <= COOLING.temperature) return minutes <= COOLING.minutes;
  }
  return minutes > COOLING.minutes ? false : undefined;
}

function isTreated({treated}: Pot["contents"][number]): boolean {
  return treated;
}

function eggNotes(pot: Pot, temperature: number): string[] {
  const egg = pot.contents.some(
    ({ingredient}) => ingredient.allergens?.includes("eggs") || ingredient.composition.eggFat,
  );
  if (!egg) return [];
  if (temperature > CURDLES) return [`Above ${CURDLES} °C egg curdles: stir, and keep below.`];
  return temperature >= WARM ? ["Egg thickens from about 62 °C: stir without stopping."] : [];
}

/**
 * `Pasteurised: meets the UK (79.4 °C, 15 s) and US (79.4 °C, 25 s) rules.` Each pair once, the rules by country; those of a state
 * where its country's own are not met.
 */
export function metWords(pairs: readonly HeatPair[]): string {
  const whole = new Set(pairs.filter(({state}) => state === undefined).map(({country}) => country));
  const said = pairs.filter(({country, state}) => state === undefined || !whole.has(country));
  const rules = [...new Set(said.map(({country, state}) => state ?? country))].map((place) => {
    const own = said.filter(({country, state}) => (state ?? country) === place);
    return `${place} (${[...new Set(own.map(pairWords))].join("; ")})`;
  });
  return `Pasteurised: meets the ${rules.join(" and ")} ${said.length > 1 ? "rules" : "rule"}.`;
}

/** Sentence on a heat that meets no pair for ice-cream mix. */
function notMet(temperature: number, seconds: number): string {
  const dairy = DAIRY_PAIRS.filter((pair) => heldAt(pair, temperature, seconds).met);
  return dairy.length
    ? `Not enough by the rules for ice-cream mix; it meets the EU’s for dairy products (${dairy.map(pairWords).join("; ")}).`
    : "Not enough by itself to pasteurise.";
}

function pairWords({temperature, seconds}: HeatPair): string {
  return `${temperature.toFixed(1)} °C, ${duration(seconds)}`;
}

function duration(seconds: number): string {
  const unit = unitOfTime(seconds);
  return unit === "s" ? `${Number(seconds.toFixed(2))} s` : `${Number((seconds / 60).toFixed(1))} min`;
}

/** The unit in which a time is said: seconds below two minutes. */
export function unitOfTime(seconds: number): "s" | "min" {
  return seconds < 120 ? "s" : "min";
}

/** Whether a step heats, not only pours or cools. */
export function heats({step}: Pick<StepReport, "step">): boolean {
  return "heat" in step;
}

function nameOf(item: Item): string {
  return typeof item === "string" ? item : item.name;
}

function names(items: readonly Item[]): string {
  const listed = items.map((item) =>
    typeof item === "string" ? item : `${weight(item.grams)} g ${item.name}`,
  );
  return listed.length > 1 ? `${listed.slice(0, -1).join(", ")} and ${listed.at(-1)}` : listed.join();
}

function weight(grams: number): string {
  return grams >= 100 ? grams.toFixed(0) : String(Number(grams.toFixed(1)));
}
