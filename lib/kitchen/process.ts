/**
 * Something that a step takes: the name of an ingredient or of an earlier step's result (all that is left of it), or so many
 * grams of an ingredient.
 */
export type Item = string | {readonly name: string; readonly grams: number};

/** Heats its items together, then holds them. */
export interface HeatStep {
  readonly heat: readonly Item[];
  /** °C, at least that of the items mixed less 3 °C (the reckoning's doubt), at most 200 (caramel); heat capacities are published to 150. */
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
  /** How long it takes, minutes; absent when not known. */
  readonly minutes?: number;
  readonly into?: string;
}

/** One step of making a mix. */
export type ProcessStep = HeatStep | PourStep | CoolStep;

/** How a mix is made. */
export interface Process {
  readonly steps: readonly ProcessStep[];
  /** °C of ingredients at the start, by name; otherwise 4 for the groups dairy and egg, 20 for the rest. */
  readonly start?: Readonly<Record<string, number>>;
}
