import {lusolve} from "mathjs";
import {sum} from "../../lib/core/numbers.ts";
import {rootBetween} from "../../lib/core/roots.ts";
import {insoluble} from "../../lib/freezing/insoluble.ts";
import {solidFat} from "../../lib/freezing/solid-fat.ts";
import {type Anchor, ratioPairs, termsAt} from "./firmness-anchors.ts";
import {readTable} from "./read-table.ts";

/** Parameters in the order of the fit. `slope` is fitted as its logarithm. */
export const NAMES = ["level", "fat", "insoluble", "air", "stiffening", "slope"] as const;
export type Values = Readonly<Record<(typeof NAMES)[number], number>>;

const START: Values = {level: 46, fat: 0.5, insoluble: 1, air: 8, stiffening: 1, slope: 0.12};

/** Temperature at which the stiffening of the syrup counts as none, °C: the middle of dipping. */
const MIDDLE = -13;

/** Forms of the index that are compared: which parameters are free, the others being those of `fixed`. */
export const FORMS: readonly {readonly name: string; readonly free: readonly (typeof NAMES)[number][]; readonly fixed: Partial<Values>}[] = [
  {name: "ice and solid fat", free: ["level", "slope"], fixed: {fat: 1, insoluble: 0, air: 0, stiffening: 0}},
  {name: "ice and air", free: ["level", "air", "slope"], fixed: {fat: 0, insoluble: 0, stiffening: 0}},
  {name: "without stiffening", free: ["level", "fat", "insoluble", "air", "slope"], fixed: {stiffening: 0}},
  {name: "whole", free: NAMES, fixed: {}},
];

interface Fact {
  readonly value: number;
  readonly error: number;
}

const facts = new Map(
  readTable("firmness_facts.csv").map((row): [string, Fact] => [
    row.what!,
    {value: Number(row.value), error: Number(row.error)},
  ]),
);
export const fact = (what: string) => facts.get(what)!;

/** Temperature at which the hardness of the sweetener trials is compared, °C: the papers do not say. */
const TRIAL = -12;
const pairs = ratioPairs().map(({what, harder, softer}) => ({
  ...fact(what),
  difference: termsAt(harder, TRIAL).map((d, i) => d - termsAt(softer, TRIAL)[i]!) as [number, number, number],
}));

/** The index of an anchor. */
function indexOf(anchor: Anchor, values: Values, temperature: number): number {
  return (
    anchor.ice(temperature) +
    values.fat * solidFat(anchor.composition, temperature) +
    values.insoluble * insoluble(anchor.composition) +
    values.stiffening * (MIDDLE - temperature)
  );
}

/** The index at which an anchor would scoop. */
function levelOf({overrun}: Anchor, {level, air}: Values): number {
  return level + air * Math.log((1 + overrun / 100) / 1.3);
}

/** Temperature at which an anchor is predicted to have its hardness, °C. */
export function predicted(anchor: Anchor, values: Values): number {
  const wanted = levelOf(anchor, values) + anchor.hardness / values.slope;
  return rootBetween((t) => indexOf(anchor, values, t) - wanted, -40, -0.1, 1e-6) ?? -40;
}

/** Differences from the anchors and facts, each over its error. */
function residuals(anchors: readonly Anchor[], values: Values, free: readonly string[]): number[] {
  const {slope} = values;
  const known = (what: string, computed: number) => (computed - fact(what).value) / fact(what).error;
  return [
    ...anchors.map((anchor) => {
      const {temperature, error, hardness} = anchor;
      // A soft serve is known by how soft it is at its draw, within 25 % of the logarithm besides.
      const steep = (indexOf(anchor, values, temperature - 0.1) - indexOf(anchor, values, temperature + 0.1)) / 0.2;
      const off = indexOf(anchor, values, temperature) - levelOf(anchor, values) - hardness / slope;
      return off / Math.hypot(steep * error, hardness / 4 / slope);
    }),
    ...pairs.map(({value, error, difference: [ice, fat, solids]}) =>
      (slope * (ice + values.fat * fat + values.insoluble * solids) - value) / error,
    ),
    ...(free.includes("air") ? [known("foam", values.air * slope)] : []),
    ...(free.includes("stiffening") ? [known("serum", values.stiffening * slope)] : []),
    ...(free.includes("fat") ? [known("fat weight", values.fat)] : []),
    ...(free.includes("insoluble") ? [known("insoluble weight", values.insoluble)] : []),
  ];
}

export const squares = (d: readonly number[]) => sum(d.map((x) => x * x));

export interface Fitted {
  readonly values: Values;
  /** Covariance in the order of the free parameters, of ln slope for `slope`. */
  readonly covariance: number[][];
  readonly squares: number;
}

export function fit(anchors: readonly Anchor[], {free, fixed}: (typeof FORMS)[number]): Fitted {
  let values: Values = {...START, ...fixed};
  const moved = (from: Values, step: readonly number[]): Values => {
    const to = {...from};
    free.forEach((name, i) => {
      to[name] = name === "slope" ? from.slope * Math.exp(step[i]!) : from[name] + step[i]!;
    });
    return to;
  };
  let normal: number[][] = [];
  for (let round = 0; round < 12; round++) {
    const here = residuals(anchors, values, free);
    const slopes = free.map((_, i) => {
      const there = residuals(anchors, moved(values, free.map((_, j) => (i === j ? 1e-4 : 0))), free);
      return there.map((d, k) => (d - here[k]!) / 1e-4);
    });
    const product = (a: readonly number[], b: readonly number[]) => sum(a.map((d, k) => d * b[k]!));
    normal = slopes.map((a) => slopes.map((b) => product(a, b)));
    const step = (lusolve(normal, slopes.map((a) => -product(a, here))) as number[][]).map((d) => d[0]!);
    let share = 1;
    while (share > 1e-3 && squares(residuals(anchors, moved(values, step.map((d) => d * share)), free)) > squares(here)) share /= 2;
    values = moved(values, step.map((d) => d * share));
  }
  const covariance = free.map((_, i) => (lusolve(normal, free.map((_, j) => (i === j ? 1 : 0))) as number[][]).map((d) => d[0]!));
  return {values, covariance, squares: squares(residuals(anchors, values, free))};
}

