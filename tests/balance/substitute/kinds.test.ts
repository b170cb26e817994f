import {describe, expect, test} from "vitest";
import {INGREDIENT_TRAITS, traitIn} from "../../../lib/balance/substitute/ingredient-traits.ts";
import {stillTastes, tasteAlike} from "../../../lib/balance/substitute/same-flavour.ts";
import {substitute} from "../../../lib/balance/substitute/substitute.ts";
import type {Alternative} from "../../../lib/balance/substitute/substitution-types.ts";
import {findIngredient} from "../../../lib/pantry/pantry.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {kindOf} from "../../support/kinds.ts";
import {realPantry} from "../../support/pantry.ts";
import {within} from "../../support/within.ts";

const real = (names: readonly string[]) => names.map((name) => findIngredient(realPantry, name));
const recipeOf = (grams: Readonly<Record<string, number>>): Recipe => ({
  name: "invented",
  lines: Object.entries(grams).map(([name, mass]) => ({
    ingredient: findIngredient(realPantry, name),
    grams: mass,
  })),
});
const gelato = (more: Readonly<Record<string, number>>) =>
  recipeOf({
    "whole milk": 620,
    "cream 36 %": 150,
    "skimmed milk powder": 40,
    sucrose: 130,
    "dextrose monohydrate": 40,
    ...more,
  });
const sorbet = recipeOf({
  water: 420,
  strawberry: 350,
  sucrose: 180,
  "dextrose monohydrate": 48,
  "guar gum": 2,
});

/** The best way without an ingredient where the shelf has one other, and water. */
const bestWith = (recipe: Recipe, without: string, ...names: string[]) =>
  substitute(recipe, {without, from: real([...names, "water"])}).alternatives[0]!;

/** What is noticed of a way, by more than a last digit. */
const noticed = ({changes}: Alternative) =>
  changes.filter(({change}) => Math.abs(change) >= 0.005).map(({what}) => what);

const changeOf = ({changes}: Alternative, wanted: string) =>
  changes.find(({what}) => what === wanted)!.change;

describe("what a composition does not tell is noticed too (common practice, no source)", () => {
  test("every included ingredient is of its kind", () => {
    for (const ingredient of realPantry.ingredients)
      for (const what of INGREDIENT_TRAITS.filter((one) => one !== "fruit"))
        within(traitIn(ingredient, what), kindOf(what, ingredient), 1e-12, `${what} of ${ingredient.name}`);
  });

  test("dried fruit counts as what it was, jam and fresh fruit as they are", () => {
    const fruit = (name: string) => traitIn(findIngredient(realPantry, name), "fruit");
    expect([fruit("strawberry"), fruit("kiwi"), fruit("jam"), fruit("whole milk")]).toEqual([
      100, 100, 100, 0,
    ]);
    // Ten times as strong, near enough; apricots lose four fifths (from memory).
    expect(fruit("freeze-dried strawberry powder")).toBeGreaterThan(600);
    within(fruit("dried apricots"), 500, 100, "dried apricots");
  });

  test("a gum of the same kind takes another's place unnoticed, one that sets or hardly thickens does not", () => {
    const gum = gelato({"locust bean gum": 2});
    for (const name of ["guar gum", "tara gum", "xanthan gum"])
      expect(noticed(bestWith(gum, "locust bean gum", name)), name).toEqual([]);
    for (const name of ["sodium alginate", "pectin", "gum arabic"])
      expect(noticed(bestWith(gum, "locust bean gum", name)), name).toContain("thickeningGum");
    expect(noticed(bestWith(gelato({agar: 4}), "agar", "gelatine"))).toContain("gelatine");
    const [one, other] = ["gellan gum", "guar gum"];
    expect(bestWith(gelato({"stabiliser blend": 4}), "stabiliser blend", one, other).by).toEqual([other]);
  });

  test("an emulsifier that keeps water in fat does not stand in for lecithin", () => {
    const recipe = gelato({"soya lecithin": 2});
    expect(noticed(bestWith(recipe, "soya lecithin", "mono- and diglycerides"))).toEqual([]);
    const {by} = bestWith(recipe, "soya lecithin", "polyglycerol polyricinoleate");
    expect(by).not.toContain("polyglycerol polyricinoleate");
  });

  test("sour whey and whey protein are no milk", () => {
    const from = real(["acid whey, liquid", "whey protein isolate 90 %", "water"]);
    const {alternatives} = substitute(gelato({"guar gum": 2}), {without: "whole milk", from});
    const whey = alternatives.filter(({by}) => by.includes("acid whey, liquid"));
    expect(whey.length).toBeGreaterThan(0);
    for (const way of whey) {
      expect(changeOf(way, "organicAcids")).toBeGreaterThan(0.1);
      // Four fifths of the protein of 600 g of milk are casein (from memory): 1.6 g in 100 g; some cream may make up for it.
      expect(changeOf(way, "casein")).toBeLessThan(-1);
    }
  });

  test("half of the fruit is not as good as all of it", () => {
    const best = bestWith(sorbet, "strawberry", "kiwi");
    within(best.amounts.find(({ingredient}) => ingredient === "kiwi")?.after, 350, 1, "kiwi");
    within(changeOf(best, "fruit"), 0, 0.1, "fruit");
  });

  test("of two fruits the one that tastes of what is out comes first", () => {
    const alike = ["frozen strawberries", "freeze-dried strawberry powder"] as const;
    for (const name of alike) {
      const [best] = substitute(sorbet, {
        without: "strawberry",
        from: real([name, "kiwi", "star fruit", "rhubarb", "raspberry", "water"]),
      }).alternatives;
      expect(best!.by, name).toContain(name);
      expect(best!.flavours.lost, name).toEqual([]);
    }
    const flavour = (one: string, other: string) =>
      tasteAlike(findIngredient(realPantry, one), findIngredient(realPantry, other));
    for (const [one, other] of [
      ["strawberry", "strawberry jam"],
      ["roasted hazelnuts", "hazelnut praline 50 %"],
      ["dark chocolate 60-69 %", "milk chocolate"],
      ["vanilla pod", "vanilla extract"],
      ["peach", "white peach"],
    ] as const)
      expect(flavour(one, other), `${one}, ${other}`).toBe(true);
    for (const [one, other] of [
      ["passion fruit", "dragon fruit"],
      ["almond paste", "pistachio paste, sweetened"],
      ["macadamia nuts", "pine nuts"],
      ["coffee liqueur 26 % vol", "mint liqueur 36 % vol"],
      ["rose water", "orange blossom water"],
    ] as const)
      expect(flavour(one, other), `${one}, ${other}`).toBe(false);
  });

  test("a trace of the same fruit does not make up for it, half as much does (our own choice)", () => {
    const mango = recipeOf({mango: 600, water: 200, sucrose: 150, "lime juice": 30});
    const names = ["ataulfo mango", "deglet noor dates", "canned mandarins in juice", "water"];
    const {alternatives} = substitute(mango, {without: "mango", from: real(names)});
    const left = ({recipe: {lines}}: Alternative) =>
      lines.find(({ingredient}) => ingredient.name === "ataulfo mango")?.grams ?? 0;
    for (const one of alternatives) expect(one.flavours.lost).toEqual(left(one) < 300 ? ["mango"] : []);
    expect(left(alternatives[0]!)).toBeGreaterThanOrEqual(300);
    const kept = (one: string, grams: number, other: string, left: number) =>
      stillTastes(
        {ingredient: findIngredient(realPantry, one), grams},
        recipeOf({[other]: left, kiwi: 500}).lines,
      );
    // Dried it counts as what it was; of what is strong a little does.
    expect(kept("strawberry", 350, "freeze-dried strawberry powder", 30)).toBe(true);
    expect(kept("strawberry", 350, "freeze-dried strawberry powder", 10)).toBe(false);
    expect(kept("roasted hazelnuts", 100, "blanched hazelnuts", 20)).toBe(false);
    expect(kept("vanilla extract", 10, "vanilla pod", 2)).toBe(true);
    expect(kept("mango", 600, "mango", 5)).toBe(true);
  });

  test("isomaltulose and tagatose for sugar: less sweet, and told so", () => {
    for (const name of ["isomaltulose", "tagatose"])
      expect(changeOf(bestWith(sorbet, "sucrose", name), "sweetness"), name).toBeLessThan(-2);
  });
});
