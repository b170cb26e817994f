import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {recipeOf} from "../../lib/balance/mix/recipe-of.ts";
import {withInferred} from "../../lib/pantry/inferred.ts";
import {fromLabel} from "../../lib/pantry/from-label.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {ownIngredient} from "../../lib/pantry/own-ingredient.ts";
import {PARTS} from "../../lib/pantry/parts.ts";
import {recipeComposition} from "../../lib/pantry/recipe.ts";
import {LABELLED_FOODS} from "../support/labels.ts";
import {realPantry} from "../support/pantry.ts";
import {within} from "../support/within.ts";

const bare = ({name, composition}: Ingredient): Ingredient => ({name, composition});
/** g per 100 g: no published food, but plain figures. */
const label = {fat: 52, carbohydrate: 18, sugars: 7.5, protein: 21, salt: 0.02};

describe("what is evident of an ingredient that says nothing but its figures", () => {
  test("is milk and eggs where the composition has them, and never where the pack would not say so", () => {
    let [milk, eggs] = [0, 0];
    for (const ingredient of realPantry.ingredients) {
      const {allergens = []} = withInferred(bare(ingredient));
      // What is declared in the pantry was read from the foods' own descriptions and the packs of their kind.
      for (const allergen of allergens)
        expect(ingredient.allergens, `${ingredient.name} has ${allergen}`).toContain(allergen);
      // Chocolates may hold milk that their composition does not show; nothing of the dairy hides it.
      expect(allergens.includes("milk") || ingredient.group !== "dairy", ingredient.name).toBe(true);
      if (allergens.includes("milk")) milk++;
      if (allergens.includes("eggs")) eggs++;
    }
    expect(milk).toBeGreaterThan(45);
    expect(eggs).toBeGreaterThan(3);
  });

  test("of a label is what nearly every pack of the class declares: the published foods of each class do", () => {
    for (const {ingredient, ingredientClass} of LABELLED_FOODS) {
      const {group, allergens = []} = withInferred(bare(ingredient), ingredientClass);
      // Peanuts and sesame are read as nuts: their own allergens take the place of what the class says.
      const declared = [...(ingredient.allergens ?? []), ...(ingredientClass === "nut" ? allergens : [])];
      expect(declared, ingredient.name).toEqual(expect.arrayContaining([...allergens]));
      expect(group, ingredient.name).toBeDefined();
    }
  });

  test("puts milk and cream into the pan and makes yolk an egg: the group of the pantry", () => {
    const named = (name: string) => realPantry.ingredients.find((ingredient) => ingredient.name === name)!;
    for (const name of ["whole milk", "cream 40 %", "skimmed milk powder"])
      expect(withInferred(bare(named(name))).group, name).toBe("dairy");
    expect(withInferred(bare(named("egg yolk"))).group).toBe("egg");
    expect(withInferred(bare(named("sucrose"))).group).toBeUndefined();
    expect(withInferred({name: "lactose", composition: {lactose: 100}})).toMatchObject({allergens: ["milk"]});
  });

  test("comes along into a brief, and from its answer into the recipe", () => {
    // As the doc comment of fromLabel spreads it.
    const paste = {...fromLabel({name: "paste", ...label}, "nut").ingredient, price: 22};
    const input: BriefInput = {
      name: "nut",
      ingredients: ["whole milk", "sucrose", paste],
      targets: {fat: {min: 9}, sugars: {min: 14}},
      minimise: "fat",
    };
    const brief = readBrief(input, realPantry);
    expect(brief.ingredients[2]?.ingredient).toEqual(paste);
    const answer = balance(input, {pantry: realPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    const recipe = recipeOf(brief, answer.amounts);
    expect(recipe.name).toBe("nut");
    expect(recipe.lines.map(({ingredient}) => ingredient.name)).toEqual(["whole milk", "sucrose", "paste"]);
    const composition = recipeComposition(recipe);
    for (const part of PARTS) within(composition[part] ?? 0, answer.composition[part] ?? 0, 1e-9, part);
    const milkOnly = answer.amounts.map((amount, j) => ({...amount, grams: j === 0 ? 5 : 0}));
    expect(recipeOf(brief, milkOnly).lines).toHaveLength(1);
  });

  test("goes beside what is declared where it is certain, and gives way where it is not", () => {
    const paste = (allergens?: Ingredient["allergens"]) =>
      ownIngredient({name: "paste", label: {class: "nut", ...label}, allergens}, "brief")!.allergens;
    expect(paste()).toEqual(["nuts"]);
    expect(paste(["peanuts"])).toEqual(["peanuts"]);
    const dairy = ownIngredient(
      {
        name: "cream",
        label: {...label, class: "dairy", protein: 2, sugars: 3, carbohydrate: 3},
        allergens: ["soya"],
      },
      "brief",
    );
    expect(dairy?.allergens).toEqual(["soya", "milk"]);
    expect(fromLabel({name: "paste", ...label}, "nut").ingredient).toMatchObject({
      group: "nut",
      allergens: ["nuts"],
    });
    // Oats are a cereal of Annex II, point 1; a drink of rice is free.
    const drink = (name: string) =>
      fromLabel({name, fat: 1, carbohydrate: 9, sugars: 5, protein: 0.5, salt: 0.1}, "oat or rice drink");
    expect(drink("oat drink").ingredient.allergens).toEqual(["gluten"]);
    expect(drink("barista drink").ingredient.allergens).toEqual(["gluten"]);
    expect(drink("rice drink").ingredient.allergens ?? []).toEqual([]);
    const dairyOf = (group: string) =>
      withInferred({name: "milk", composition: {water: 88, milkFat: 4, milkProtein: 8}, group});
    expect(dairyOf("drinks").group).toBe("drinks");
  });
});
