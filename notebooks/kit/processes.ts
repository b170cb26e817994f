import type {Process, ProcessStep} from "../../lib/kitchen/process.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import type {RecipeLine} from "../../lib/pantry/recipe.ts";

/** Ways of making a base, as a cook says them. */
export const WAYS = {
  custard: "a cooked custard",
  scald: "scalded milk poured over yolks",
  pot: "heated and held in one pot",
  cold: "stirred together cold",
} as const;

/** What a way of making the base depends on. */
export interface Heating {
  readonly way: keyof typeof WAYS;
  /** To what the milk is brought before it is poured, °C. */
  readonly scald: number;
  /** To what the mix is heated, °C. */
  readonly to: number;
  /** How long it is held there, s. */
  readonly hold: number;
  /** Whether fruit, juice and flavourings go in after cooling. */
  readonly fruit: "heated" | "late";
  /** To what it is cooled, °C. */
  readonly cool: number;
}

/** Groups of the shelf that go into the milk pan. */
const PAN = new Set(["dairy", "plant drink", "coconut", "fat", "basic"]);
/** Groups that keep their flavour when they go in late. */
const LATE = new Set(["fruit", "juice", "flavour", "alcohol"]);

/** The steps of a way of making a base, over its own ingredients. `minutes` is how long cooling takes, where that is known. */
export function processFor(lines: readonly RecipeLine[], heating: Heating, minutes?: number): Process {
  const {way, scald, to, hold, fruit, cool} = heating;
  const late = fruit === "late" ? lines.filter(({ingredient}) => isLate(ingredient)) : [];
  const early = lines.filter((line) => !late.includes(line));
  const pan = early.filter(({ingredient: {group = ""}}) => PAN.has(group) || LATE.has(group));
  const bowl = early.filter((line) => !pan.includes(line));
  const [hot, cold, added] = [pan, bowl, late].map((some) => some.map(({ingredient}) => ingredient.name));
  const poured: ProcessStep[] =
    pan.length && bowl.length
      ? [{pour: [way === "cold" ? hot! : ["hot milk"]].flat(), onto: cold!, into: "mix"}]
      : [];
  const everything = poured.length ? ["mix"] : [...hot!, ...cold!];
  const heated: Record<Heating["way"], ProcessStep[]> = {
    custard: [
      ...(poured.length ? [{heat: hot!, to: scald, into: "hot milk"}, ...poured] : []),
      {heat: everything, to, holdSeconds: hold, into: "mix"},
    ],
    scald: poured.length
      ? [{heat: hot!, to: scald, into: "hot milk"}, ...poured]
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
