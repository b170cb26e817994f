import {describe, expect, test} from "vitest";
import {agrees, claimsOf, examples} from "../support/examples.ts";

test("every public function has an example that claims something", () => {
  expect(examples.length).toBeGreaterThan(125);
  expect(examples.filter(({code}) => !code.includes("// => ")).map(({name}) => name)).toEqual([]);
});

test.each(examples)("the example of $name comes to what it says", async ({code}) => {
  const claims = await claimsOf(code);
  expect(claims.length).toBe(code.split("// => ").length - 1);
  const wrong = claims.filter(({value, written}) => !agrees(value, written));
  expect(wrong).toEqual([]);
});

describe("what is claimed is compared as far as it is written", () => {
  test.each<[unknown, string]>([
    [2.54, "2.5"],
    [-0.04, "0"],
    ["a", '"a"'],
    [undefined, "undefined"],
    [false, "false"],
    [[1.04, {a: 2, b: 3}], "[1.0, {a: 2}]"],
  ])("%j is %s", (value, written) => {
    expect(agrees(value, written)).toBe(true);
  });

  test.each<[unknown, string]>([
    [2.56, "2.5"],
    ["2.5", "2.5"],
    ["true", "true"],
    [null, "undefined"],
    [[1, 2], "[1]"],
    [{a: 1}, "{a: 2}"],
    [{}, "{a: 1}"],
    [1, "one"],
  ])("%j is not %s", (value, written) => {
    expect(agrees(value, written)).toBe(false);
  });

  test("of code as it runs, over several lines too", async () => {
    expect(await claimsOf('const a = 1;\n[\n  a,\n]; // => [1]\nawait a; // => 2\na; // "no claim"')).toEqual(
      expect.arrayContaining([
        {written: "[1]", value: [1]},
        {written: "2", value: 1},
      ]),
    );
  });
});
