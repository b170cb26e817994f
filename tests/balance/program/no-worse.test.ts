import {expect, test} from "vitest";
import {noWorseThan} from "../../../lib/balance/program/no-worse.ts";
import {firmness, firmnessReference, unclippedFirmness} from "../../../lib/freezing/firmness.ts";
import {type Verdict, verdictAt, verdictBands} from "../../../lib/freezing/scoop.ts";
import type {Composition} from "../../../lib/pantry/parts.ts";
import {within} from "../../support/within.ts";

/** From the best to the worst on the soft side and on the hard side. */
const SOFT: readonly Verdict[] = ["scoops", "soft", "never hardens"];
const HARD: readonly Verdict[] = ["scoops", "firm", "hard"];

/** Milk and sugar, from hardly sweet to a syrup that is nowhere hard. */
const MIXES: readonly Composition[] = Array.from({length: 39}, (_, i) => ({
  water: 86 - 2.2 * i,
  milkProtein: 4,
  lactose: 5,
  otherFat: 5,
  dextrose: 2.2 * i,
}));

const air = {overrun: 60};
const tub = {...air, freezer: -15};
const reference = firmnessReference(60);
const tried = MIXES.map((composition) => ({
  composition,
  verdict: verdictAt(composition, -15, air),
  /** Above the reference, with the ice before it is cut off at 0 and after. */
  firm: new Map(
    [-15, -30].map((at) => [
      at,
      [unclippedFirmness(composition, at) - reference, firmness(composition, at) - reference] as const,
    ]),
  ),
}));

test("a mix that keeps the limits from another has no worse a verdict than that has", () => {
  for (const given of tried) {
    const limits = noWorseThan(given.composition, tub);
    const keeping = tried.filter(({firm}) =>
      limits.every(({subject, min = -Infinity, max = Infinity}) => {
        const [least, most] = firm.get(subject.kind === "firmness" ? subject.at : NaN)!;
        return least >= min - 1e-9 && most <= max + 1e-9;
      }),
    );
    expect(keeping, "the given mix itself").toContain(given);
    const worse = keeping.filter(({verdict}) =>
      [SOFT, HARD].some((side) => side.indexOf(verdict) > Math.max(0, side.indexOf(given.verdict))),
    );
    expect(worse, given.verdict).toEqual([]);
  }
  expect([...new Set(tried.map(({verdict}) => verdict))]).toHaveLength(5);
});

test("the limits are the ends of the verdict, or the mix's own firmness where that is softer", () => {
  const [, scoops, firm] = verdictBands(air);
  const limitsOf = (verdict: Verdict) => {
    const {composition, firm} = tried.find((mix) => mix.verdict === verdict)!;
    const [first, ...others] = noWorseThan(composition, tub);
    expect(first?.subject).toEqual({kind: "firmness", at: -15});
    return {first, others, own: firm.get(-15)![0]};
  };
  for (const [verdict, max] of [
    ["soft", scoops!.to],
    ["scoops", scoops!.to],
    ["firm", firm!.to],
  ] as const) {
    const {first, own} = limitsOf(verdict);
    within(first?.max, max - reference, 1e-9, `most for ${verdict}`);
    within(first?.min, Math.min(own, scoops!.from - reference), 1e-9, `least for ${verdict}`);
  }
  expect(limitsOf("hard").first).not.toHaveProperty("max");
  // What hardens somewhere above -30 °C is there harder than the reference; what never does has no such limit.
  for (const verdict of ["soft", "scoops", "firm", "hard"] as const) {
    const {others} = limitsOf(verdict);
    expect(others.map(({subject}) => subject)).toEqual([{kind: "firmness", at: -30}]);
    within(others[0]?.min, 1e-6, 1e-9, "least at -30 °C");
  }
  expect(limitsOf("never hardens").others).toEqual([]);
});

test("a mix that hardens by its crystals keeps its own limits", () => {
  // More erythritol than dissolves: counted as dissolved it would leave no ice even at -30 °C.
  const mix = {water: 45, erythritol: 55};
  expect(verdictAt(mix, -15, air)).toBe("hard");
  for (const {subject, min} of noWorseThan(mix, tub)) {
    const {at} = subject as {at: number};
    expect(unclippedFirmness(mix, at) - reference).toBeGreaterThanOrEqual(min!);
  }
});

test("a warm freezer counts as one just below 0 °C, any other to a tenth of a degree as it is printed", () => {
  const at = (freezer: number) => noWorseThan(MIXES[0]!, {...tub, freezer})[0]?.subject;
  expect([0, -0.04, -15.04].map(at)).toEqual([
    {kind: "firmness", at: -0.1},
    {kind: "firmness", at: -0.1},
    {kind: "firmness", at: -15},
  ]);
});
