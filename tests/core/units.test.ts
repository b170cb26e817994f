import {describe, expect, test} from "vitest";
import {inUnit, readMeasure} from "../../lib/core/units.ts";

describe("kitchen measures", () => {
  // NIST Handbook 44 (2023), Appendix C: cup 236.588 mL, fluid ounce 29.573 mL, gallon 3.785412 L, ounce 28.34952 g,
  // pound 453.59237 g. The metric spoons of 5 and 15 ml are common practice, no source.
  test.each([
    ["1 cup", "volume", 236.588],
    ["1 fl oz", "volume", 29.573],
    ["1 Fl. Oz.", "volume", 29.573],
    ["1 gallon", "volume", 3785.412],
    ["1 tsp", "volume", 5],
    ["2 tablespoons", "volume", 30],
    ["1 oz", "mass", 28.34952],
    ["1 lb", "mass", 453.59237],
    ["1 1/2 cups", "volume", 354.882],
    ["1½ cups", "volume", 354.882],
    ["1/2 cup", "volume", 118.294],
    ["½cup", "volume", 118.294],
    ["⅛ tsp", "volume", 0.625],
    ["2,5 kg", "mass", 2500],
    ["11/4 lb", "mass", 1247.379],
    ["250 ml", "volume", 250],
    ["1 l", "volume", 1000],
  ])("%s is %s %d", async (text, kind, size) => {
    const measure = await readMeasure(text, "line 1");
    expect(measure.kind).toBe(kind);
    expect(
      measure.kind === "mass" ? measure.grams : measure.kind === "volume" ? measure.millilitres : NaN,
    ).toBeCloseTo(size, 2);
  });

  test("a word that is no unit is a count", async () => {
    expect(await readMeasure("3 eggs", "x")).toEqual({kind: "count", count: 3, of: "eggs"});
    expect(await readMeasure("3", "x")).toEqual({kind: "count", count: 3, of: ""});
  });

  test.each([
    "",
    "cup",
    "-1 cup",
    "0 ml",
    "1/0 cup",
    "1 2 3 cups",
    "1e5 g",
    "NaN g",
    "g 5",
    "2 cups 3 ml",
    "1,000 g",
    `${"9".repeat(400)} g`,
  ])("%s is refused", async (text) => {
    await expect(readMeasure(text, "line 1")).rejects.toThrow(/^line 1: not a kitchen measure/);
  });

  test("and back", async () => {
    expect(await inUnit({millilitres: 473.176}, "cups")).toBeCloseTo(2, 4);
    expect(await inUnit({grams: 907.18474}, "pounds")).toBeCloseTo(2, 9);
    await expect(inUnit({grams: 1}, "cups")).rejects.toThrow(
      '"cups" is no unit of mass; give a unit of mass',
    );
    await expect(inUnit({grams: 1}, "punds")).rejects.toThrow("did you mean pounds");
    await expect(inUnit({millilitres: -1}, "cup")).rejects.toThrow("millilitres: out of range");
  });
});
