import {describe, expect, test} from "vitest";
import {readPricesCsv} from "../../lib/files.ts";
import {recipeJson} from "../../lib/io/json/recipe-json.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {kitchenOf} from "../../notebooks/kit/keep/kitchen.ts";
import {loadBrief} from "../../notebooks/kit/trade-offs/brief.ts";
import {inventedPrices, inventedWords, withOwnPrices} from "../../notebooks/kit/words/price-origin.ts";

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

describe("a recipe or brief in a file", () => {
  // A page's prices are invented, but for the one that the cook has set: sugar at 1.30 for a kilogram.
  const kitchen = kitchenOf({
    lines: [{name: "sucrose", price: {money: 1.3, pack: "1 kg", grams: 1000, on: "2026-07-01"}}],
    own: [],
    prices: readPricesCsv("name,price per kg\nwhole milk,1\ncream 40 %,4\nsucrose,2\n"),
  });
  const milk = findIngredient(kitchen.pantry, "whole milk");
  const lines = [
    {ingredient: milk, grams: 600},
    {ingredient: {...findIngredient(kitchen.pantry, "cream 40 %"), price: 5}, grams: 200},
    {ingredient: findIngredient(kitchen.pantry, "sucrose"), grams: 150},
  ];
  const saved = withOwnPrices({name: "milk ice", lines}, new Set(["cream 40 %", "sucrose"]));

  test("a recipe that is saved has no invented price", () => {
    expect(milk.price).toBe(1);
    expect(saved.lines.map(({ingredient: {price}}) => price)).toEqual([undefined, 5, 1.3]);
  });

  const priced = async (file: string, text: string) => {
    const read = await loadBrief({file, text}, kitchen);
    if ("mistake" in read) throw new Error(read.mistake);
    return read.value.ingredients.flatMap((entry) =>
      typeof entry === "string" || entry.price === undefined ? [] : [[entry.name, entry.price]],
    );
  };
  const recipe = (...ingredients: object[]) => JSON.stringify({name: "ice", ingredients});

  test("a recipe has the prices that it says and the shelf's, all or none: an invented one never", async () => {
    const csv = "ingredient,g\nwhole milk,600\ncream 40 %,200\nsucrose,150\n";
    expect(await priced("recipe.csv", csv)).toEqual([]);
    expect(await priced("saved.json", recipeJson(saved))).toEqual([]);
    const [dear, free] = [
      {name: "whole milk", grams: 600, price: 1.2},
      {name: "sucrose", grams: 150},
    ];
    expect(await priced("recipe.json", recipe(dear, free))).toEqual([
      ["whole milk", 1.2],
      ["sucrose", 1.3],
    ]);
    expect(await priced("recipe.json", recipe(dear, free, {name: "cream 40 %", grams: 200}))).toEqual([]);
  });

  test("a brief says itself which prices are its own", async () => {
    const ingredients = ["whole milk", {name: "cream 40 %", price: 5}];
    const brief = JSON.stringify({ingredients, targets: {fat: {max: 12}}});
    expect(await priced("brief.json", brief)).toEqual([["cream 40 %", 5]]);
  });
});
