import {describe, expect, test} from "vitest";
import {inventedPrices, inventedWords} from "../../notebooks/kit/words/price-origin.ts";

describe("prices that nobody typed", () => {
  const used = [
    {name: "milk", price: 1.05},
    {name: "sugar", price: 1.1},
    {name: "milk", price: 1.05},
    {name: "salt"},
  ];

  test("are invented, each named once; one's own and unknown ones are not", () => {
    expect(inventedPrices(used, new Set())).toEqual(["milk", "sugar"]);
    expect(inventedPrices(used, new Set(["milk"]))).toEqual(["sugar"]);
    expect(
      inventedPrices(
        used,
        new Map([
          ["milk", 1],
          ["sugar", 2],
        ]),
      ),
    ).toEqual([]);
  });

  test("are said in the sentence of the sum: none, some by name, many by number, all", () => {
    expect(inventedWords([], 3)).toBe("");
    expect(inventedWords(["milk"], 3)).toBe("at invented prices of milk");
    expect(inventedWords(["milk", "sugar", "salt"], 4)).toBe("at invented prices of milk, sugar and salt");
    expect(inventedWords(["a", "b", "c", "d"], 5)).toBe("at invented prices of 4 of 5 ingredients");
    expect(inventedWords(["a", "b"], 2)).toBe("at invented prices, none of them yours");
  });
});
