import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectList, expectRecord, expectShape} from "../../core/shape.ts";

/**
 * Item that a step takes: the name of an ingredient or of an earlier step's result (all that is left of it), or so many grams
 * of an ingredient.
 */
export type Item = string | {readonly name: string; readonly grams: number};

/** Heats its items together, then holds them. */
export interface HeatStep {
  readonly heat: readonly Item[];
  /** °C, at least the items' mixed temperature less 3 °C (its error), at most 200 (caramel); heat capacities are published up to 150. */
  readonly to: number;
  /** s at that temperature or above; 0 by default. */
  readonly holdSeconds?: number;
  /** Name of the result; the first item's name by default. */
  readonly into?: string;
}

/** Pours items onto others and mixes them: nothing heats them but each other. */
export interface PourStep {
  readonly pour: readonly Item[];
  readonly onto: readonly Item[];
  /** Name of the result. */
  readonly into: string;
}

/** Cools its items. */
export interface CoolStep {
  readonly cool: readonly Item[];
  /** °C, below that of the items. */
  readonly to: number;
  /** Duration, minutes; absent when not known. */
  readonly minutes?: number;
  readonly into?: string;
}

/** One step of making a mix. */
export type ProcessStep = HeatStep | PourStep | CoolStep;

/** Way in which a mix is made. */
export interface Process {
  readonly steps: readonly ProcessStep[];
  /** °C of ingredients at the start, by name; otherwise 4 for the groups dairy and egg, 20 for the rest. */
  readonly start?: Readonly<Record<string, number>>;
}

/** Refuses anything but a process: steps that neither heat, pour nor cool, or items of another shape. */
export function expectProcess(value: Process): void {
  const advice = "give {steps: [{heat, to}, {pour, onto, into}, {cool, to}]}, e.g. from baseProcess";
  expectShape(value, {steps: "list"}, "process", advice);
  expectList(value.steps, {}, "steps", advice);
  for (const [i, step] of value.steps.entries()) {
    const lists: unknown[] =
      "heat" in step ? [step.heat] : "pour" in step ? [step.pour, step.onto] : [(step as CoolStep).cool];
    for (const items of lists) {
      if (!Array.isArray(items))
        throw new InputError(`steps[${i}]`, "not a step", step, advice, {code: "wrong type"});
      for (const item of items) if (typeof item !== "string") expectItem(item, `steps[${i}]`);
    }
  }
  if (value.start === undefined) return;
  expectRecord(value.start, "start", "give °C by the ingredient's name");
  for (const [name, at] of Object.entries(value.start))
    finite(at, `start.${name}`, {min: -40, max: 200}, "°C");
}

function expectItem(item: Exclude<Item, string>, place: string): void {
  expectShape(item, {name: "text", grams: "number"}, "item", "give a name, or {name, grams}");
  finite(item.grams, `${place}: ${item.name}`, {min: 0}, "g");
}
