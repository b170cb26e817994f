import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import * as z from "zod/mini";
import {InputError, printable, show} from "../../lib/core/errors.ts";
import {folded, nearestNames} from "../../lib/core/nearest.ts";
import {finite} from "../../lib/core/numbers.ts";
import {seededRandom} from "../../lib/core/random.ts";
import {rootBetween} from "../../lib/core/roots.ts";
import {parse} from "../../lib/core/schema.ts";
import {inUnit, kitchenUnit, readMeasure} from "../../lib/core/units.ts";
import {within} from "../support/within.ts";

describe("a value shown in an error", () => {
  const cyclic: {self?: unknown} = {};
  cyclic.self = cyclic;

  test.each<[string, unknown, string]>([
    ["a text stands in quotes", "12", '"12"'],
    ["a number does not", 12, "12"],
    ["NaN is not mistaken for null", NaN, "NaN"],
    ["a number too long for a number", 12345678901234567890n, "12345678901234567890"],
    ["nothing at all", undefined, "undefined"],
    ["a symbol", Symbol("fat"), "Symbol(fat)"],
    ["a function keeps its code to itself", () => "secret", "a function"],
    ["an object with its content", {fat: [1, 2]}, '{"fat":[1,2]}'],
    ["an object that contains itself", cyclic, "an object that is not plain data"],
    ["line breaks of all kinds become one space", "a\u2028\u2029\u0085b", '"a b"'],
  ])("%s", (_what, value, shown) => {
    expect(show(value)).toBe(shown);
  });

  test("is whole up to 80 characters, beyond that begins alike and ends in a mark, and cuts no character in half", () => {
    expect(show("x".repeat(78))).toBe(`"${"x".repeat(78)}"`);
    expect(show("x".repeat(79))).toMatch(/^"x{70,78}…$/);
    for (const start of ["", "x"]) expect(show(start + "🍐".repeat(99))).toMatch(/^"x?(🍐)+…$/u);
  });

  test("control characters of a terminal are taken out of every part of the message", () => {
    expect(printable("red\u001b\u001b[31m")).toBe("red [31m");
    const {message} = new InputError("pla\rce", "prob\nlem", "val\u009bue", "adv\u0007ice");
    expect(message).toBe('pla ce: prob lem (got "val ue"); adv ice');
  });
});

describe("the seeded source of numbers", () => {
  /** Mulberry32 as published (T. Ettinger, 2017, public domain, C with unsigned 32-bit integers), in BigInt. */
  function* mulberry32(seed: number): Generator<number, never> {
    const low32 = (n: bigint) => BigInt.asUintN(32, n);
    for (let x = low32(BigInt(seed)); ;) {
      x = low32(x + 0x6d2b79f5n);
      let z = low32((x ^ (x >> 15n)) * (x | 1n));
      z ^= low32(z + (z ^ (z >> 7n)) * (z | 61n));
      yield Number(z ^ (z >> 14n)) / 2 ** 32;
    }
  }

  test.each([0, 1, -1, 20_260_101, 2 ** 31, 2 ** 32 + 7])("from seed %d is the published one", (seed) => {
    const [random, published] = [seededRandom(seed), mulberry32(seed)];
    for (let i = 0; i < 500; i++) expect(random()).toBe(published.next().value);
  });

  test("fills the range evenly, and a number tells nothing of the next", () => {
    const random = seededRandom(5);
    const [draws, side] = [40_000, 10];
    const pairs = Array.from({length: side ** 2}, () => 0);
    const digit = () => Math.floor(random() * side);
    for (let i = 0; i < draws; i++) pairs[digit() * side + digit()]!++;
    const even = draws / side ** 2;
    const chiSquare = pairs.reduce((total, count) => total + (count - even) ** 2 / even, 0);
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4: of chi-square with 99 degrees of freedom, 0.1 % lie below
    // 61.137 and 0.1 % above 148.230.
    expect(chiSquare).toBeGreaterThan(61.137);
    expect(chiSquare).toBeLessThan(148.23);
  });
});

describe("input against a schema", () => {
  const refused = (schema: z.ZodMiniType, input: unknown): InputError => {
    try {
      parse(schema, input, "mix", []);
    } catch (error) {
      if (error instanceof InputError) return error;
    }
    throw new Error("was not refused as a mistake of the caller");
  };
  const nested = (levels: number): unknown => (levels === 0 ? null : [nested(levels - 1)]);

  test("may nest 32 levels deep and hold 200 000 values, the list itself being one, and no more", () => {
    expect(parse(z.unknown(), nested(32), "mix", [])).toEqual(nested(32));
    expect(refused(z.unknown(), nested(33)).message).toMatch(/^mix(\[0\]){32}: nested more than 32 levels/);
    const values = Array.from({length: 199_999}, () => 0);
    expect(parse(z.unknown(), values, "mix", [])).toHaveLength(199_999);
    expect(refused(z.unknown(), [...values, 0]).message).toMatch(/^mix\[199999\]: .* 200000 values/);
  });

  test.each<[string, z.ZodMiniType]>([
    ["an object {…}", z.object({})],
    ["an object {…}", z.record(z.string(), z.number())],
    ["a list […]", z.array(z.number())],
    ["a text", z.string()],
    ["a finite number", z.number()],
    ["true or false", z.boolean()],
    ["date", z.date()],
    ["a finite number or a text", z.union([z.number(), z.string()])],
  ])("%s is asked for in these words, where missing and where something else stands", (words, schema) => {
    const mix = z.object({fat: schema});
    expect(refused(mix, {})).toMatchObject({place: "mix.fat", value: undefined, advice: `give ${words}`});
    expect(refused(mix, {fat: null})).toMatchObject({place: "mix.fat", value: null, advice: `give ${words}`});
  });

  const whole = z.number().check(z.refine(Number.isInteger, "give whole eggs"));
  test.each<[string, unknown, z.ZodMiniType]>([
    ["give a number at least 0", -1, z.number().check(z.gte(0))],
    ["give a number at most 2", 3, z.number().check(z.lte(2))],
    ["give a number above 2", 2, z.number().check(z.gt(2))],
    ["give a number below 2", 2, z.number().check(z.lt(2))],
    ["give a text with a length at least 1", "", z.string().check(z.minLength(1))],
    ["give a list with a length at most 1", [1, 2], z.array(z.number()).check(z.maxLength(1))],
    ["use cone, tub", "cup", z.enum(["cone", "tub"])],
    ["give whole eggs", 1.5, whole],
    ["use cone, tub", "cup", z.union([z.number(), z.enum(["cone", "tub"])])],
  ])("%s is the next step, named with the place and the value %j", (advice, value, schema) => {
    expect(refused(z.array(schema), [value])).toMatchObject({place: "mix[0]", value, advice});
  });

  test("of several kinds, the mistake inside the one meant is named", () => {
    const either = z.union([z.number(), z.object({fat: z.number()})]);
    expect(refused(either, {fat: "much"})).toMatchObject({place: "mix.fat", value: "much"});
  });

  test.each([{}, {base: null}, {base: "pear"}])("%o has no value at a place that it lacks", (input) => {
    const never = z.refine(() => false, {error: "name the base", path: ["base", "length"]});
    const {message} = refused(z.looseObject({}).check(never), input);
    expect(message).toBe("mix.base.length: not understood; name the base");
  });
});

describe("names like a mistyped one", () => {
  test("are at most three, or as many as asked for, the best first and equals by the alphabet", () => {
    const names = ["milk d", "milk b", "milk a", "milk c"];
    expect(nearestNames("milk x", names)).toEqual(["milk a", "milk b", "milk c"]);
    expect(nearestNames("milk x", names.toSorted())).toEqual(["milk a", "milk b", "milk c"]);
    expect(nearestNames("milk d", names, 2)).toEqual(["milk d", "milk a"]);
  });

  test("contain the typed words, if these are of three letters or more, or differ in less than half", () => {
    expect(nearestNames("oil", ["coconut oil, refined"])).toEqual(["coconut oil, refined"]);
    expect(nearestNames("oi", ["coconut oil, refined"])).toEqual([]);
    expect(nearestNames("figs", ["eggs", "fig"])).toEqual(["fig"]);
    expect(nearestNames("CRÈME, 35 %", ["creme 35%"])).toEqual(["creme 35%"]);
    expect(folded("  Crème—fraîche 35  % ")).toBe("creme fraiche 35%");
    // Of a long text the first 200 characters are compared, so that it costs little.
    const name = "pear ".repeat(40).trim();
    expect(nearestNames(`${name} ${"and so on ".repeat(99)}`, [name])).toEqual([name]);
  });

  test("are compared without the blanks around them, so a plain name is what it is between two blanks", () => {
    const names = fc.string({
      unit: fc.constantFrom("a", "z", "A", "é", "\u0301", "5", "%", ".", "+", " ", ",", "½"),
      maxLength: 8,
    });
    fc.assert(
      fc.property(names, (name) => {
        expect(folded(name)).toBe(folded(` ${name} `));
      }),
      {seed: 11, numRuns: 2000},
    );
    for (const name of ["a 5 %", "5 %", "a  b", "a %", " a", "% a", "a +", "cream 45 % +"])
      expect(folded(name)).toBe(folded(` ${name} `));
  });
});

test.each([
  [{}, "", /give a number$/],
  [{}, "g", /give a number in g$/],
  [{min: 0}, "g", /give a number of at least 0 g$/],
  [{max: 5}, "", /give a number of at most 5$/],
  [{min: 0, max: 5}, "°C", /give a number from 0 to 5 °C$/],
])("a number within %o in '%s' is asked for with its limits and its unit", (limits, unit, asked) => {
  expect(() => finite("5", "mix", limits, unit)).toThrow(asked);
});

describe("kitchen measures as cooks write them", () => {
  test.each([
    ["12 1/2 eggs", 12.5],
    ["1  1/2 eggs", 1.5],
    ["1 / 2 eggs", 0.5],
    ["3/16 eggs", 0.1875],
    ["2,25 eggs", 2.25],
    ["\t3\u00a0eggs\n", 3],
  ])("%j", async (text, count) => {
    expect(await readMeasure(text, "line 1")).toEqual({kind: "count", count, of: "eggs"});
  });

  test("a unit of two words may have a wide gap, a text 100 characters, and no size is below 0", async () => {
    await expect(inUnit({grams: -1}, "kg")).rejects.toThrow(/^grams: out of range .* at least 0 g$/);
    expect(kitchenUnit("Fl.  oz.")).toBe(kitchenUnit("fluid ounce"));
    expect(await readMeasure(`3 ${"e".repeat(98)}`, "line 1")).toMatchObject({kind: "count", count: 3});
    await expect(readMeasure(`3 ${"e".repeat(99)}`, "line 1")).rejects.toThrow("not a kitchen measure");
  });

  test.each(["1/2 3 cups", "1 2 3/4 cups", "1/2½ cup"])("%s is refused, not read in part", async (text) => {
    await expect(readMeasure(text, "line 1")).rejects.toThrow(/^line 1: not a kitchen measure/);
  });
});

describe("the root between two points", () => {
  /** The points at which the function is taken after the two ends, and the root found. */
  function visited(f: (x: number) => number, low: number, high: number, tolerance: number) {
    const points: number[] = [];
    const root = rootBetween((x) => (points.push(x), f(x)), low, high, tolerance);
    return {points: points.slice(2), root};
  }

  // By hand after Oliveira & Takahashi (2020), section 2, on [0, 1] with kappa1 = 0.2, kappa2 = 2, n0 = 1, and a tolerance
  // of 2^-11: where a straight line crosses 0, moved inwards by 0.2, but not across the middle.
  test.each([
    ["from the left", -0.1, 0.9, 0.3],
    ["from the right", -0.9, 0.1, 0.7],
    ["near the middle", -0.4, 0.6, 0.5],
  ])("takes the published first step %s", (_where, atLow, atHigh, first) => {
    const f = (x: number) => (x === 0 ? atLow : x === 1 ? atHigh : x - 0.55);
    within(visited(f, 0, 1, 2 ** -11).points[0], first, 1e-12, "first point");
  });

  test("gains no less in two steps than bisection in one: a straight line far off is held to the middle", () => {
    // After 0.3 the bracket is [0.3, 1]; what the method may still spend puts the next point at 0.65 - 0.15.
    const f = (x: number) => (x === 0 ? -0.1 : x < 0.9 ? -0.001 : 0.9);
    const {points} = visited(f, 0, 1, 2 ** -11);
    within(points[0], 0.3, 1e-12, "first point");
    within(points[1], 0.5, 1e-12, "second point");
  });

  test("takes the same points for a function in another unit, upside down or from right to left", () => {
    const curve = (x: number) => x ** 3 - 2 * x - 5;
    const {points} = visited(curve, 2, 3, 1e-9);
    for (const scale of [2 ** 40, 2 ** -600, -1])
      expect(visited((x) => scale * curve(x), 2, 3, 1e-9).points).toEqual(points);
    expect(visited((x) => curve(-x), -3, -2, 1e-9).points).toEqual(points.map((x) => -x));
  });

  test("is not lost where the function is tiny, and not found where two tiny values have one sign", () => {
    within(visited((x) => 1e-300 * (x - 1), 0, 5, 1e-9).root, 1, 1e-9, "root");
    expect(rootBetween((x) => 1e-300 * (x + 1), 0, 5)).toBeUndefined();
  });

  test("stops where the function is 0, and where the bracket is as narrow as asked", () => {
    expect(visited((x) => x - 0.5, 0, 1, 1e-9)).toEqual({points: [0.5], root: 0.5});
    expect(visited((x) => x - 0.2, 0, 1, 0.5)).toEqual({points: [], root: 0.5});
    // x^2 is 2 at no floating-point number: only the width of the bracket can end this, long before bisection's 10 steps.
    const {points, root} = visited((x) => x * x - 2, 1, 2, 2 ** -11);
    within(root, Math.SQRT2, 2 ** -11, "root");
    expect(points.length).toBeLessThan(8);
  });

  // Chebyshev polynomial T5 = 16 x^5 - 20 x^3 + 5 x with roots cos((2k - 1) pi / 10): NIST Digital Library of Mathematical
  // Functions, table 18.3.1 and section 18.5.
  test.each([1, 2, 3, 4, 5])("finds root %d of a Chebyshev polynomial within the tolerance", (k) => {
    const t5 = (x: number) => 16 * x ** 5 - 20 * x ** 3 + 5 * x;
    const at = (fifths: number) => Math.cos((fifths * Math.PI) / 5);
    const {root, points} = visited(t5, at(k + 0.1), at(k - 0.9), 1e-12);
    within(root, at(k - 0.5), 2e-12, "root");
    expect(points.length).toBeLessThanOrEqual(Math.ceil(Math.log2(1 / 2e-12)) + 1);
  });
});
