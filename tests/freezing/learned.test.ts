import {describe, expect, test} from "vitest";
import {calibrate, type FirmnessReport} from "../../lib/freezing/calibrate.ts";
import {firmness, firmnessReference} from "../../lib/freezing/firmness.ts";
import type {Learned} from "../../lib/freezing/learned.ts";
import {PUBLISHED_HARD_MIXES, scoopTemperature, verdictAt} from "../../lib/freezing/scoop.ts";
import {temperatureAfter, temperingTime} from "../../lib/freezing/tub.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

const [mix] = PUBLISHED_HARD_MIXES.map(({composition}) => composition) as [Composition];
const overrun = 100;
const said = (temperature: number, found: FirmnessReport["found"]): FirmnessReport => ({
  composition: mix,
  temperature,
  overrun,
  found,
});
const width = (log: readonly FirmnessReport[]) =>
  scoopTemperature(mix, {overrun, learned: calibrate(log)}).error!;

describe("what a kitchen's reports teach", () => {
  test("nothing without reports: the reference and the band stay as they are", () => {
    const learned = calibrate([]);
    expect(scoopTemperature(mix, {overrun, learned})).toEqual(scoopTemperature(mix, {overrun}));
  });

  test("three that agree move the scoop temperature towards them, and narrow the band", () => {
    const before = scoopTemperature(mix, {overrun}).temperature!;
    const harder = [said(-18, "right"), said(-17, "right"), said(-18, "right")];
    const after = scoopTemperature(mix, {overrun, learned: calibrate(harder)}).temperature!;
    expect(after).toBeLessThan(before - 1.5);
    expect(after).toBeGreaterThan(-18.5);
    const softer = [said(-13, "too hard"), said(-14, "too hard"), said(-12, "too hard")];
    expect(scoopTemperature(mix, {overrun, learned: calibrate(softer)}).temperature!).toBeGreaterThan(
      before + 1.5,
    );
    const agreeing = [said(before, "right"), said(before - 1, "right"), said(before + 1, "right")];
    within(
      scoopTemperature(mix, {overrun, learned: calibrate(agreeing)}).temperature,
      before,
      0.5,
      "as the book",
    );
    expect(width(agreeing)).toBeLessThan(width([]));
  });

  test("ten narrow it more than three, and a verdict follows them", () => {
    const right = Array.from({length: 10}, () => said(-18, "right"));
    expect(calibrate(right).narrowing).toBeLessThan(calibrate(right.slice(0, 3)).narrowing);
    expect(verdictAt(mix, -18, {overrun})).not.toBe("scoops");
    expect(verdictAt(mix, -18, {overrun, learned: calibrate(right)})).toBe("scoops");
  });

  test("one that contradicts the others widens it", () => {
    const three = [said(-18, "right"), said(-17, "right"), said(-18, "right")];
    const contradicted = [...three, said(-10, "too hard")];
    expect(width(contradicted)).toBeGreaterThan(width(three));
    expect(calibrate(contradicted).scatter).toBeGreaterThan(calibrate(three).scatter);
  });

  test("is the posterior of Bayes's rule: the same in either order, and a shift between prior and what was said", () => {
    const [one, other] = [said(-18, "right"), said(-11, "too soft")];
    within(calibrate([one, other]).shift, calibrate([other, one]).shift, 1e-9, "order");
    const {shift} = calibrate([one]);
    expect(shift).toBeGreaterThan(0);
    expect(shift).toBeLessThan(firmness(mix, -18) - firmnessReference(overrun));
  });

  test("takes minutes on the counter by the temperature that they bring the tub to", () => {
    const tub = {shape: "box", length: 16, width: 11, height: 6} as const;
    const counter = {airTemperature: 20, overrun};
    within(temperatureAfter(mix, tub, {freezer: -18, minutes: 0, ...counter}), -18, 1e-6, "at once");
    // The other way round: after its tempering time a tub is at its scoop temperature.
    const ready = temperingTime(mix, tub, {freezer: -18, ...counter})!;
    const after = temperatureAfter(mix, tub, {freezer: -18, minutes: ready.minutes, ...counter});
    within(after, scoopTemperature(mix, {overrun}).temperature!, 0.0005, "when it scoops");
    expect(temperatureAfter(mix, tub, {freezer: -18, minutes: ready.minutes / 2, ...counter})).toBeLessThan(
      after,
    );
  });

  test("refuses words and temperatures that it does not know", () => {
    expect(() => calibrate([{...said(-18, "right"), found: "fine" as never}])).toThrow("reports[0].found");
    expect(() => calibrate([said(-50, "right")])).toThrow("reports[0].temperature");
  });

  test("a lesson with a number that a brief would refuse is refused in words", () => {
    const lesson = calibrate([said(-18, "right")]);
    const asked = (wrong: Partial<Learned>) => () => verdictAt(mix, -18, {learned: {...lesson, ...wrong}});
    expect(asked({shift: NaN})).toThrow("learned.shift: not a finite number (got NaN)");
    expect(asked({narrowing: Infinity})).toThrow("learned.narrowing: not a finite number");
    expect(asked({narrowing: -1})).toThrow(
      "learned.narrowing: out of range (got -1); give a number from 0 to 10",
    );
    expect(asked({scatter: 0})).toThrow("learned.scatter: out of range (got 0); give a number above 0");
    expect(asked({scatter: NaN})).toThrow("learned.scatter: not a finite number");
    expect(asked({reports: -1})).toThrow("learned.reports: out of range");
    expect(() => scoopTemperature(mix, {learned: {...lesson, shift: NaN}})).toThrow("learned.shift");
  });
});
