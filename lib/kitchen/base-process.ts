import type {Ingredient} from "../pantry/ingredient.ts";
import type {RecipeLine} from "../pantry/recipe.ts";
import {expectLines} from "../pantry/recipe.ts";
import type {Process, ProcessStep} from "./process.ts";

/** Ways of making a base, as a cook says them. */
export const WAYS_OF_MAKING = {
  custard: "a cooked custard",
  scald: "scalded milk poured over yolks",
  pot: "heated and held in one pot",
  cold: "stirred together cold",
} as const;

/** How a base is made. Temperatures and times are common practice, no source; what they meet is checked against published pairs. */
export interface Making {
  readonly way: keyof typeof WAYS_OF_MAKING;
  /** To what the milk is brought before it is poured, °C; 90 by default. */
  readonly scald?: number;
  /** To what the mix is heated, °C; 82 by default. */
  readonly to?: number;
  /** How long it is held there, s; 30 by default. */
  readonly hold?: number;
  /** Whether fruit, juice and flavourings are heated too, or go in after cooling; heated by default. */
  readonly fruit?: "heated" | "late";
  /** To what it is cooled, °C; 4 by default. */
  readonly cool?: number;
  /** How long cooling takes, minutes, where that is known. */
  readonly minutes?: number;
}

/** Groups of the shelf that go into the milk pan. */
const PAN = new Set(["dairy", "plant drink", "coconut", "fat", "basic"]);
/** Groups that keep their flavour when they go in late. */
const LATE = new Set(["fruit", "juice", "flavour", "alcohol"]);

/** The steps of a way of making a base, over its own ingredients, for `followProcess`. */
export function baseProcess(
  lines: readonly RecipeLine[],
  {way, scald = 90, to = 82, hold = 30, fruit = "heated", cool = 4, minutes}: Making,
): Process {
  expectLines(lines);
  const late = fruit === "late" ? lines.filter(({ingredient}) => isLate(ingredient)) : [];
  const early = lines.filter((line) => !late.includes(line));
  const pan = early.filter(({ingredient: {group = ""}}) => PAN.has(group) || LATE.has(group));
  const bowl = early.filter((line) => !pan.includes(line));
  const [hot, cold, added] = [pan, bowl, late].map((some) => some.map(({ingredient}) => ingredient.name));
  const heatedName = pan.some(({ingredient: {group}}) => group === "dairy") ? "hot milk" : "hot liquid";
  const poured: ProcessStep[] =
    pan.length && bowl.length
      ? [{pour: [way === "cold" ? hot! : [heatedName]].flat(), onto: cold!, into: "mix"}]
      : [];
  const everything = poured.length ? ["mix"] : [...hot!, ...cold!];
  const heated: Record<Making["way"], ProcessStep[]> = {
    custard: [
      ...(poured.length ? [{heat: hot!, to: scald, into: heatedName}, ...poured] : []),
      {heat: everything, to, holdSeconds: hold, into: "mix"},
    ],
    scald: poured.length
      ? [{heat: hot!, to: scald, into: heatedName}, ...poured]
      : [{heat: everything, to: scald, into: "mix"}],
    pot: [{heat: [...hot!, ...cold!], to, holdSeconds: hold, into: "mix"}],
    cold: poured,
  };
  return {
    steps: [
      ...heated[way],
      {
        cool: way === "cold" && !poured.length ? everything : ["mix"],
        to: cool,
        into: "mix",
        ...(minutes !== undefined && {minutes}),
      },
      ...(added!.length
        ? [
            {pour: added!, onto: ["mix"], into: "whole mix"},
            {cool: ["whole mix"], to: cool},
          ]
        : []),
    ],
  };
}

function isLate({group = ""}: Ingredient): boolean {
  return LATE.has(group);
}
