import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {withValueAt} from "../../lib/balance/brief/brief-path.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {pricesOf} from "../../lib/balance/explain/prices.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {substitute} from "../../lib/balance/substitute/substitute.ts";
import {changesBetween, isNothing} from "../../lib/balance/mix/changes-between.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {within} from "../support/within.ts";

// Parts of the balance that larger tests reach only here and there, each by figures that can be worked in the head.

const nothing = pantryOf([]);
const water = {name: "water", composition: {water: 100}, price: 0};
const fatty = {name: "fatty", composition: {otherFat: 10, water: 90}, price: 1};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1};

function best(input: BriefInput) {
  const answer = balance(input);
  if (answer.status !== "optimal") throw new Error(answer.status);
  return answer;
}

describe("what is different from one mix to the next", () => {
  const amount = (ingredient: string, percent: number) => ({ingredient, percent, grams: 10 * percent});
  const limit = (target: string, bound: "min" | "max") => ({
    of: "target" as const,
    path: `targets.${target}`,
    target,
    on: {kind: "measure" as const, key: target, subject: {kind: "property" as const, property: target}},
    bound,
    limit: 1,
  });

  test("is what comes in and goes out, begins and ceases to bind", () => {
    const before = {
      amounts: [amount("milk", 90), amount("sugar", 10), amount("honey", 0)],
      binding: [limit("fat", "min"), limit("sugars", "max")],
    };
    const after = {
      amounts: [amount("milk", 90), amount("sugar", 1e-9), amount("honey", 10)],
      binding: [limit("fat", "max"), limit("sugars", "max")],
    };
    const changed = changesBetween(before, after);
    expect(changed).toEqual({
      enters: ["honey"],
      leaves: ["sugar"],
      binds: [limit("fat", "max")],
      frees: [limit("fat", "min")],
    });
    expect(isNothing(changed)).toBe(false);
    expect(changesBetween(before, before)).toEqual({enters: [], leaves: [], binds: [], frees: []});
    expect(isNothing(changesBetween(before, before))).toBe(true);
    // One for another is a difference, too.
    expect(isNothing({enters: ["honey"], leaves: ["sugar"], binds: [], frees: []})).toBe(false);
  });
});

describe("a number in another place of a brief", () => {
  const brief: BriefInput = {ingredients: ["water", sugar], targets: {fat: {min: 1}}};

  test("is put where the path leads, and nothing else moves", () => {
    expect(withValueAt(brief, "targets.fat.max", 9).targets).toEqual({fat: {min: 1, max: 9}});
    expect(withValueAt(brief, "targets.sugars.min", 9).targets).toEqual({fat: {min: 1}, sugars: {min: 9}});
    expect(withValueAt(brief, "ingredients[water].max", 9).ingredients).toEqual([
      {name: "water", max: 9},
      sugar,
    ]);
    expect(withValueAt(brief, "ingredients[1].price", 9).ingredients).toEqual([
      "water",
      {...sugar, price: 9},
    ]);
    expect(brief.ingredients[0]).toBe("water");
  });

  test.each([
    "ingredients.1.price",
    "ingredients[1].price",
    "ingredients[ 1 ].price",
    "ingredients[milk 3.5 %].price",
    "ingredients[ Milk 3.5 % ].price",
    'ingredients["milk 3.5 %"].price',
    'ingredients[ "milk 3.5 %" ].price',
  ])("finds an ingredient by its place or its name, full stop and all: %s", (path) => {
    const two = ["water", "milk 3.5 %"];
    expect(withValueAt({ingredients: two}, path, 9).ingredients).toEqual([
      "water",
      {name: "milk 3.5 %", price: 9},
    ]);
  });

  test("finds one of many by its place, and one that is called by a number by its name", () => {
    const many = Array.from({length: 12}, (_, j) => ({name: `sugar ${j}`}));
    const priced = withValueAt({ingredients: many}, "ingredients[11].price", 9).ingredients;
    expect(priced).toEqual([...many.slice(0, 11), {name: "sugar 11", price: 9}]);
    const numbered = withValueAt({ingredients: [{name: "1"}, sugar]}, "ingredients[1].price", 9);
    expect(numbered.ingredients).toEqual([{name: "1", price: 9}, sugar]);
  });

  test.each([
    "targets",
    "targets.fat",
    "ingredients",
    "ingredients[1]",
    "batch",
    "batch.max",
    "name.fat.max",
    "",
  ])("is refused at %j", (path) => {
    expect(() => withValueAt(brief, path, 1)).toThrow("not a place in a brief");
  });

  test.each<[string, RegExp]>([
    ["ingredients[sugr].price", /the brief has no "sugr" there .*did you mean sugar/],
    ["ingredients[2].price", /the brief has no "2" there .*a name from the brief or a number from 0 to 1$/],
    ["ingredients[-1].price", /the brief has no "-1" there/],
    ["targets.fat.min.max", /nothing can stand below 1 .*shorten the path/],
  ])("is refused at %j, with what to do", (path, says) => {
    expect(() => withValueAt(brief, path, 1)).toThrow(says);
  });
});

describe("amounts in steps", () => {
  const inSteps = (more: object) =>
    best({batch: 1000, ingredients: [{...sugar, step: 50, ...more}, water], targets: {}, maximise: "sugars"});

  test("are whole multiples within the limits: up from the least, down from the most, and no more than the batch", () => {
    expect(inSteps({max: 149}).amounts[0]?.grams).toBeCloseTo(100, 9);
    expect(inSteps({max: 150}).amounts[0]?.grams).toBeCloseTo(150, 9);
    expect(inSteps({max: 5000}).amounts[0]?.grams).toBeCloseTo(1000, 9);
    const least = best({
      batch: 1000,
      ingredients: [{...sugar, step: 50, min: 95}, water],
      targets: {},
      minimise: "sugars",
    });
    expect(least.amounts[0]?.grams).toBeCloseTo(100, 9);
    // 3 x 0.1 is a little more than 0.3 to a computer: still three steps.
    const fine = best({
      batch: 1,
      ingredients: [{...sugar, step: 0.1, min: 0.3}, water],
      targets: {},
      minimise: "sugars",
    });
    expect(fine.amounts[0]?.grams).toBeCloseTo(0.3, 9);
  });

  test("have no prices, and say so", () => {
    const brief = readBrief(
      {ingredients: [{...sugar, step: 50}, water], targets: {sugars: {min: 9}}},
      nothing,
    );
    expect(() => pricesOf(brief)).toThrow("a mix in whole steps has no prices");
    const packed = {ingredients: [{...sugar, pack: 500}, water], targets: {sugars: {min: 9}}};
    expect(() => pricesOf(readBrief({...packed, wholePacks: true}, nothing))).toThrow(
      /leave out .*wholePacks/,
    );
    const smooth = readBrief({ingredients: [sugar, water], targets: {sugars: {min: 9}}}, nothing);
    expect(pricesOf(smooth).limits.map(({target}) => target)).toEqual(["sugars"]);
  });

  test("at most so many ingredients are used", () => {
    const three = [sugar, water, fatty];
    const targets = {fat: {min: 1}, sugars: {min: 10, max: 12}};
    expect(best({ingredients: three, targets, minimise: "fat"}).amounts.every(({grams}) => grams > 0)).toBe(
      true,
    );
    const two = best({ingredients: three, targets, minimise: "fat", maxIngredients: 2});
    expect(two.amounts.filter(({grams}) => grams > 1e-6).map(({ingredient}) => ingredient)).toEqual([
      "sugar",
      "fatty",
    ]);
  });
});

describe("amounts that a scale can show", () => {
  /** Of the steps of 100 g within reach none but a third comes near: 3.33 % of fat. */
  const weighed = (fat: {min: number; max: number}) => {
    const brief = readBrief({batch: 1000, ingredients: [fatty, water], targets: {fat}}, nothing);
    const share = (fat.min + fat.max) / 2 / 10;
    return weighable(brief, [1000 * share, 1000 * (1 - share)], {scale: 100});
  };

  test("say which target they miss on which side, and what they come to", () => {
    const [below] = weighed({min: 3.36, max: 3.37}).missed;
    expect(below).toMatchObject({target: "fat", bound: "min", limit: 3.36});
    within(below?.value, 10 / 3, 1e-9, "below the least");
    const [above] = weighed({min: 3.29, max: 3.3}).missed;
    expect(above).toMatchObject({target: "fat", bound: "max", limit: 3.3});
    within(above?.value, 10 / 3, 1e-9, "above the most");
    expect(weighed({min: 3.3, max: 3.4}).missed).toEqual([]);
  });
});

describe("a recipe to stay near", () => {
  test("is kept as it is where it meets the brief, and moves as little as it must where it does not", () => {
    // All of one price: a candidate may cost no more than 15 % above the best.
    const ingredients = [water, sugar, fatty].map((ingredient) => ({...ingredient, price: 1}));
    const near = {water: 500, sugar: 150, fatty: 350};
    const closest = (targets: BriefInput["targets"]) => {
      const answer = best({ingredients, targets, near, minimise: "cost"});
      // A candidate that is the best mix itself is not listed again.
      const found = answer.candidates.find(({name}) => name.startsWith("closest")) ?? answer;
      return found.amounts.map(({grams}) => grams);
    };
    const kept = closest({sugars: {min: 10}, fat: {min: 2}});
    for (const [j, grams] of [500, 150, 350].entries()) within(kept[j], grams, 1e-6, ingredients[j]!.name);
    // 20 % of sugar: 50 g more, and as much less of the rest, of which fat allows only water.
    const moved = closest({sugars: {min: 20}, fat: {min: 3.5}});
    for (const [j, grams] of [450, 200, 350].entries()) within(moved[j], grams, 1e-6, ingredients[j]!.name);
  });
});

test("the mix closest to a recipe costs no more than 15 % above the cheapest", () => {
  const answer = best({
    ingredients: [water, sugar, fatty],
    targets: {sugars: {min: 10}},
    near: {water: 500, sugar: 150, fatty: 350},
  });
  const closest = answer.candidates.find(({name}) => name.startsWith("closest"))!;
  // All that costs something costs 1 per kg: 100 g of sugar alone, and then 15 g more of sugar or fat towards the recipe.
  within(answer.cost! / answer.batch, 0.1 / 1000, 1e-9, "cheapest");
  within(closest.cost! / closest.batch, 0.115 / 1000, 1e-9, "closest");
});

describe("what may stand in", () => {
  const milk: Ingredient = {
    name: "milk",
    composition: {water: 88, milkFat: 4, milkProtein: 3, lactose: 5},
    group: "dairy",
  };
  const sucrose: Ingredient = {name: "sucrose", composition: {sucrose: 100}, group: "sugar"};
  const dextrose: Ingredient = {name: "dextrose", composition: {dextrose: 100}, group: "sugar"};
  const almonds: Ingredient = {
    name: "almonds",
    composition: {otherFat: 50, otherProtein: 25, sucrose: 25},
    group: "nut",
  };
  const hazelnuts: Ingredient = {...almonds, name: "hazelnuts"};
  const recipe = {
    name: "nut",
    lines: [
      {ingredient: milk, grams: 700},
      {ingredient: sucrose, grams: 150},
      {ingredient: sucrose, grams: 10},
      {ingredient: hazelnuts, grams: 140},
      {ingredient: dextrose, grams: 0},
    ],
  };
  const taken = (without: string, from: readonly Ingredient[]) =>
    new Set(substitute(recipe, {without, from}).alternatives.flatMap(({by}) => by));

  test("is no flavour in another's place, but one of its own kind", () => {
    expect(taken("sucrose", [almonds, dextrose]).has("almonds")).toBe(false);
    expect(taken("sucrose", [almonds, dextrose]).has("dextrose")).toBe(true);
    expect(taken("hazelnuts", [almonds, dextrose]).has("almonds")).toBe(true);
  });

  test("is in stock: none of what there is nothing of, and no more than there is", () => {
    expect(taken("sucrose", [{...dextrose, stock: 0}]).has("dextrose")).toBe(false);
    // So little leaves the mix harder in the freezer than it was: that is told where there is no better way.
    const {alternatives} = substitute(recipe, {without: "sucrose", from: [{...dextrose, stock: 30}]});
    const most = Math.max(
      ...alternatives.flatMap(({amounts}) =>
        amounts.filter(({ingredient}) => ingredient === "dextrose").map(({after}) => after),
      ),
    );
    within(most, 30, 1e-6, "dextrose, g");
  });

  test("starts from the recipe's own amounts, one line for each ingredient, nothing for none", () => {
    const {before} = substitute(recipe, {without: "hazelnuts", from: [almonds], batch: 2000});
    expect(before.lines.map(({ingredient, grams}) => [ingredient.name, grams])).toEqual([
      ["milk", 1400],
      ["sucrose", 320],
      ["hazelnuts", 280],
    ]);
    const empty = {name: "empty", lines: [{ingredient: milk, grams: 0}]};
    expect(() => substitute(empty, {without: "milk", from: [almonds]})).toThrow("has no mass");
    expect(() => substitute(recipe, {without: "milk", from: [almonds], batch: 0})).toThrow("batch: nothing");
    expect(() => substitute(recipe, {without: "milk", from: [almonds], batch: -5})).toThrow("out of range");
  });
});

describe("what a brief says of an ingredient", () => {
  const milk: Ingredient = {
    name: "milk",
    composition: {water: 88, milkFat: 4, milkProtein: 3, lactose: 5},
    allergens: ["milk"],
    nutrients: {sodium: 40, calcium: 120},
    properties: {co2: 130},
  };
  const read = (entry: BriefInput["ingredients"][number]) =>
    readBrief({ingredients: [entry]}, pantryOf([milk])).ingredients[0]!.ingredient;

  test("goes before what the pantry says, key by key, and the rest stays", () => {
    expect(read("milk")).toEqual(milk);
    expect(read({name: "milk", price: 2})).toEqual({...milk, price: 2});
    expect(read({name: "milk", allergens: ["milk", "nuts"]}).allergens).toEqual(["milk", "nuts"]);
    expect(read({name: "milk", nutrients: {calcium: 300}}).nutrients).toEqual({sodium: 40, calcium: 300});
    expect(read({name: "milk", properties: {protein: 3}}).properties).toEqual({co2: 130, protein: 3});
  });

  test("of one's own does not hide the allergens that are evident from what is in it", () => {
    const own = {name: "nut milk", composition: {water: 88, milkFat: 4, milkProtein: 3, lactose: 5}};
    expect(read({...own, allergens: ["nuts"]}).allergens).toEqual(["milk", "nuts"]);
  });
});

test("an amount may be the whole batch, in grams or per cent", () => {
  for (const least of [1000, "100 %"]) {
    const all = best({ingredients: [{...sugar, min: least}, water], targets: {}});
    within(all.amounts[0]?.grams, 1000, 1e-9, "sugar, g");
  }
});

test("what is not used needs no price for a mix to have its cost", () => {
  const {price: _price, ...unpriced} = fatty;
  const all = [sugar, water, unpriced];
  within(best({ingredients: all, targets: {sugars: {equal: 10}}, minimise: "fat"}).cost, 0.1, 1e-9, "money");
  expect(best({ingredients: all, targets: {fat: {equal: 5}}, minimise: "sugars"}).cost).toBeUndefined();
});

test("a brief is called as it says, or a mix", () => {
  expect(readBrief({ingredients: [sugar]}, nothing).name).toBe("mix");
  expect(readBrief({name: "pear", ingredients: [sugar]}, nothing).name).toBe("pear");
  expect(() => balance({ingredients: [sugar]}, {place: 5 as never})).toThrow(/^place: /);
});
