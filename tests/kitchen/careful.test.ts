import {describe, expect, test} from "vitest";
import {recipeSheet} from "../../lib/command/recipe-sheet.ts";
import {baseProcess} from "../../lib/kitchen/cooking/base-process.ts";
import {cautionsFor} from "../../lib/kitchen/safety/cautions.ts";
import {knownCost} from "../../lib/kitchen/product/cost.ts";
import {countWords} from "../../lib/kitchen/size/counted.ts";
import {followProcess} from "../../lib/kitchen/cooking/follow-process.ts";
import {allergenWords, NUT_UNKNOWN, usAllergenWords} from "../../lib/kitchen/label/allergen-words.ts";
import {labelGaps} from "../../lib/kitchen/label/label-gaps.ts";
import {ingredientList, quidPercent} from "../../lib/kitchen/label/label.ts";
import {customaryName} from "../../lib/kitchen/label/label-names.ts";
import {madeSheet} from "../../lib/kitchen/day/made-sheet.ts";
import {checkHold} from "../../lib/kitchen/cooking/pasteurisation.ts";
import {metWords} from "../../lib/kitchen/cooking/process-steps.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {productFacts} from "../../lib/kitchen/label/product-facts.ts";
import {checkStandard, STANDARD_FORCE} from "../../lib/kitchen/label/standards.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import type {RecipeLine} from "../../lib/pantry/recipe.ts";
import {demoPantry, realPantry} from "../support/pantry.ts";

/** Lines of a recipe by names of the shelf. */
function linesOf(grams: Readonly<Record<string, number>>): RecipeLine[] {
  return Object.entries(grams).map(([name, g]) => ({
    ingredient: findIngredient(demoPantry, name, name),
    grams: g,
  }));
}
const productOf = (grams: Readonly<Record<string, number>>) =>
  makeProduct("ice cream", [baseComponent({name: "base", lines: linesOf(grams)})]);

/** Names that a process heats, and names that it stirs in when cold. */
function heatedOf(lines: readonly RecipeLine[], making: Partial<Parameters<typeof baseProcess>[1]> = {}) {
  const {steps} = baseProcess(lines, {way: "pot", ...making});
  return {
    heated: steps.flatMap((step) => ("heat" in step ? step.heat : [])),
    cold: steps.flatMap((step) => ("pour" in step ? step.pour : [])),
  };
}

describe("what goes in cold (common practice, no source)", () => {
  const custard = {"whole milk": 500, "whole egg": 100, "caster sugar": 120};
  const flavours = {rum: 30, "vanilla extract": 5, raspberries: 200};

  test("spirits, extracts and raw fruit do unless asked otherwise; what is cooked already does not", () => {
    const {heated, cold} = heatedOf(linesOf({...custard, ...flavours, "pumpkin purée": 100}));
    expect(heated).toEqual(["whole milk", "pumpkin purée", "whole egg", "sucrose"]);
    expect(cold).toEqual(["spirit 40 % vol", "vanilla extract", "raspberry"]);
  });

  test("fruit can be heated, and each ingredient by any of its names; alcohol only by its name", () => {
    const lines = linesOf({...custard, ...flavours});
    expect(heatedOf(lines, {fruit: "heated"}).cold).toEqual(["spirit 40 % vol", "vanilla extract"]);
    expect(heatedOf(lines, {heated: ["rum"]}).cold).toEqual(["vanilla extract", "raspberry"]);
    expect(heatedOf(lines, {late: ["sugar"]}).cold).toContain("sucrose");
    expect(() => heatedOf(lines, {late: ["gin tonic"]})).toThrow("late: not in the recipe");
    expect(() => heatedOf(lines, {late: ["rum"], heated: ["rum"]})).toThrow("heated: late as well");
  });

  test("an ingredient of one's own that holds alcohol does too, whatever its group", () => {
    const own: Ingredient = {name: "house bitters", composition: {water: 70, alcohol: 30}};
    expect(heatedOf([...linesOf(custard), {ingredient: own, grams: 20}]).cold).toEqual(["house bitters"]);
  });

  test("where nothing is heated nothing waits, and fruit alone is heated as it always was", () => {
    expect(baseProcess(linesOf({...custard, ...flavours}), {way: "cold"}).steps).toHaveLength(2);
    expect(heatedOf(linesOf({raspberries: 500})).heated).toEqual(["raspberry"]);
  });

  test("a custard without egg is heated in one pot, and its default heat makes sense", () => {
    const recipe = {name: "white base", lines: linesOf({"whole milk": 600, "double cream": 250, sugar: 120})};
    const report = followProcess(recipe, baseProcess(recipe.lines, {way: "custard"}));
    expect(report.steps.map(({after}) => after)).toEqual([82, 4]);
    expect(report.untreated).toEqual([]);
  });

  test("raw fruit that goes in cold is pointed out, spirits are not", () => {
    const lines = linesOf({...custard, ...flavours});
    const recipe = {name: "base", lines};
    const report = followProcess(recipe, baseProcess(lines, {way: "custard"}));
    expect(report.steps.at(-2)!.text).toBe(
      "Stir spirit 40 % vol, vanilla extract and raspberry into the cold mix",
    );
    const cautions = cautionsFor(makeProduct("x", [baseComponent(recipe)]), report);
    expect(cautions.find(({topic}) => topic === "unheated")?.text).toMatch(/^raspberry: not heated\./);
    expect(cautions.some(({topic}) => topic === "egg")).toBe(false);
  });
});

describe("to buy pasteurised", () => {
  const caution = (grams: Readonly<Record<string, number>>) => {
    const lines = Object.entries(grams).map(([name, g]) => ({
      ingredient: findIngredient(realPantry, name, name),
      grams: g,
    }));
    const cautions = cautionsFor(makeProduct("x", [baseComponent({name: "base", lines})]));
    return cautions.find(({topic}) => topic === "milk")?.text;
  };

  // Chocolate, biscuits, powders and tinned milk are heated as they are made (from memory).
  test("is said of milk, cream and cheese alone, not of what declares milk", () => {
    const others = {
      "dark chocolate 70-85 %": 80,
      "white chocolate": 30,
      shortbread: 40,
      "skimmed milk powder": 30,
      "butter oil": 10,
      "condensed milk": 50,
      "cream liqueur": 20,
      lactose: 5,
    };
    expect(caution(others)).toBeUndefined();
    expect(caution({...others, "whole milk": 500, "cream 36 %": 100, mascarpone: 50})).toBe(
      "whole milk, cream 36 %, mascarpone: use only what was pasteurised when bought, or heat the mix to a published pair.",
    );
  });

  test("is said of an ingredient of no group that declares milk", () => {
    const own: Ingredient = {
      name: "farm milk",
      composition: {water: 88, milkFat: 4, milkProtein: 3.5, lactose: 4.5},
      allergens: ["milk"],
    };
    const cautions = cautionsFor(
      makeProduct("x", [baseComponent({name: "base", lines: [{ingredient: own, grams: 500}]})]),
    );
    expect(cautions.find(({topic}) => topic === "milk")?.text).toMatch(/^farm milk: use only/);
  });
});

describe("the pairs in words", () => {
  // SI 1995/1086 (UK): 79.4 °C for 15 s; 21 CFR 135.3 (US): 175 °F (79.4 °C) for 25 s.
  test("each country's rules once, with temperature and time", () => {
    const met = checkHold(82, 30).filter((pair) => pair.met);
    expect(metWords(met)).toBe("Pasteurised: meets the UK (79.4 °C, 15 s) and US (79.4 °C, 25 s) rules.");
    expect(metWords(met.slice(0, 1))).toBe("Pasteurised: meets the UK (79.4 °C, 15 s) rule.");
  });
});

describe("one builder of sheets", () => {
  const grams = {"whole milk": 600, "double cream": 200, "whole egg": 150, sugar: 150, "lemon juice": 10};
  test("rests and hardens, on the page's terms and the command's alike", () => {
    const recipe = {name: "ice cream", lines: linesOf(grams)};
    const command = recipeSheet(recipe, {});
    const page = madeSheet(
      makeProduct("ice cream", [baseComponent(recipe)]),
      {tubs: 4, tubMillilitres: 500, overrun: 30},
      {
        overrun: 30,
        tubMillilitres: 500,
        draw: -6,
        machine: {fillLimit: 1500},
        making: {way: "custard", cool: 3},
      },
    );
    for (const [sheet, cool] of [
      [command, 4],
      [page, 3],
    ] as const) {
      const texts = sheet.steps.map(({text}) => text);
      expect(texts).toContain(`Let it rest covered at ${cool} °C for 4 to 12 hours`);
      expect(texts.at(-1)).toBe("Leave it there until the core is at -15 °C");
    }
    expect(page.steps.map(({text}) => text)).toContain("Churn in 2 equal runs, draw at about -6 °C");
  });

  test("eggs are counted, at their own mass and in halves; the juice of a lemon is not", () => {
    const {lines} = recipeSheet({name: "ice cream", lines: linesOf(grams)}, {}).sections[0]!;
    const measures = Object.fromEntries(lines.map(({ingredient, measure}) => [ingredient, measure]));
    expect(measures["whole egg"]).toBe("3 × 50 g");
    expect(measures["lemon juice"]).toBeUndefined();
    expect([countWords(25, 50), countWords(130, 50), countWords(20, 50), countWords(9, 48)]).toEqual([
      "0.5 × 50 g",
      "about 2.5 × 50 g",
      "about 0.5 × 50 g",
      undefined,
    ]);
  });
});

describe("cautions by what a product holds", () => {
  const about = (grams: Readonly<Record<string, number>>) =>
    Object.fromEntries(cautionsFor(productOf(grams)).map(({topic, text}) => [topic, text]));

  // Regulation (EU) No 1169/2011, Annex III, point 2.4: foods with more than 10 % added polyols.
  test("polyols above 10 % that were added, quoted as the law has it", () => {
    const {polyols, crystals} = about({"whole milk": 860, erythritol: 140});
    expect(polyols).toContain("“excessive consumption may produce laxative effects”");
    // M. E. Moriano and C. Alamprese 2017: ice cream with erythritol for sugar was the hardest of all.
    expect(crystals).toMatch(/14 % erythritol .* hard and sandy/);
    expect(about({"whole milk": 900, xylitol: 100})["polyols"]).toBeUndefined();
    expect(about({"whole milk": 890, xylitol: 110})["polyols"]).toContain("11 %");
    expect(about({"whole milk": 890, xylitol: 110})["crystals"]).toBeUndefined();
    expect(about({"whole milk": 995, erythritol: 5})["crystals"]).toBeUndefined();
  });

  // A novel food there, not on the Union list of Regulation (EU) 2017/2470 when last known: from memory.
  test("allulose, which may not be sold in the European Union, and no other sweetener", () => {
    const laws = (sweetener: string) =>
      cautionsFor(productOf({"whole milk": 900, [sweetener]: 100})).filter(({topic}) => topic === "law");
    expect(laws("allulose").map(({text}) => text)).toEqual([
      expect.stringMatching(/^Holds allulose, .*European Union.* ask your authority before you sell it/),
      expect.stringContaining("Follow your local code"),
    ]);
    expect(laws("trehalose")).toHaveLength(1);
  });

  test("the sorbitol of fruit is its own", () => {
    const prune: Ingredient = {name: "prune", group: "fruit", composition: {water: 80, sorbitol: 20}};
    const product = makeProduct("prune ice", [
      baseComponent({name: "base", lines: [{ingredient: prune, grams: 1000}]}),
    ]);
    expect(cautionsFor(product).some(({topic}) => topic === "polyols")).toBe(false);
  });

  // 21 CFR 172.840: at most 0.1 % polysorbate 80 in frozen desserts.
  test("doses beyond custom, each with its limit", () => {
    const {doses} = about({"whole milk": 997, "polysorbate 80": 3});
    expect(doses).toMatch(
      /^base goes beyond custom\. .*polysorbate 80: 0\.3 %, customary are at most 0\.1 %/i,
    );
    expect(about({"whole milk": 850, sugar: 150})["doses"]).toBeUndefined();
    // Salted caramel takes about 0.5 % (common practice, no source): whoever writes it down asks for it.
    expect(about({"whole milk": 845.3, sugar: 150, salt: 4.7})["doses"]).toBeUndefined();
    expect(about({"whole milk": 844, sugar: 150, salt: 6})["doses"]).toMatch(
      /salt: 0\.6 %, .* at most 0\.5 %/,
    );
  });

  test("alcohol above 0.5 % of the volume; a teaspoon of vanilla in a litre is none", () => {
    expect(about({"whole milk": 850, sugar: 150, "vanilla extract": 4.4})["alcohol"]).toBeUndefined();
    expect(about({"whole milk": 850, sugar: 150, rum: 50})["alcohol"]).toMatch(/^Holds 1\.[56] % alcohol/);
  });
});

describe("reserved names", () => {
  const failed = (standard: Parameters<typeof checkStandard>[0], grams: Readonly<Record<string, number>>) =>
    checkStandard(standard, productFacts(productOf(grams), 50))
      .filter(({met}) => !met)
      .map(({rule}) => rule);
  const dairy = {"whole milk": 400, "double cream": 150, "skimmed milk powder": 60, sugar: 120};

  // SI 1996/1499, Schedule 8: no fat but milk's, or what comes by reason of egg, flavouring, emulsifier or stabiliser.
  test("the fat of fruit and nuts fails no dairy name; coconut oil does", () => {
    expect(failed("UK dairy ice cream", {...dairy, raspberries: 300})).toEqual([]);
    expect(failed("UK dairy ice cream", {...dairy, "roasted hazelnuts": 80})).toEqual([]);
    expect(failed("UK dairy ice cream", {...dairy, "coconut oil": 20})).toEqual([
      "fat that is not milk's, eggs' or a flavour's",
    ]);
  });

  // SI 2014/1855, regulation 13 and Schedule 6, revoked the UK's; 21 CFR part 135 is in force.
  test("are told apart as law and custom", () => {
    expect(STANDARD_FORCE["UK ice cream"]).toBe("custom");
    expect(STANDARD_FORCE["UK dairy ice cream"]).toBe("custom");
    expect(STANDARD_FORCE["US ice cream"]).toBe("law");
    expect(checkStandard("UK ice cream", productFacts(productOf(dairy), 50))[0]!.source).toContain("revoked");
  });

  // 21 CFR 135.110(a)(2): with bulky flavours the remainder holds at least 10 % milk fat and 20 % milk solids in all.
  test("with fruit the rest of US ice cream needs 20 % milk solids, not the scale for what has none", () => {
    const rich = {"whole milk": 300, "double cream": 240, "skimmed milk powder": 45, sugar: 150};
    expect(failed("US ice cream", {...rich, raspberries: 180})).toEqual([]);
  });
});

describe("a label's words", () => {
  test("what the name promises may be called as the recipe may", () => {
    const product = productOf({"whole milk": 850, sugar: 100, rum: 50});
    expect(quidPercent(product, "rum")).toBeCloseTo(5, 9);
    const text = ingredientList(product, ["rum"])
      .map((piece) => piece.text)
      .join("");
    // The strength is left out: beside the percentage of what the name promises it would be a second one.
    expect(text).toContain("spirit 5.0 %");
    expect(() => quidPercent(product, "mango")).toThrow("not in the product");
  });

  // Regulation (EU) No 1169/2011, Annex II, point 8, and Article 21; 21 U.S.C. 321(qq) and 343(w).
  test("nuts go by their kind, or the kind is asked for; chestnut, coconut and pine nut are none", () => {
    const nutty = {
      "roasted hazelnuts": 50,
      "macadamia nuts": 50,
      pistachios: 50,
      chestnuts: 50,
      "coconut milk": 50,
    };
    expect(allergenWords(productOf(nutty))).toEqual(["hazelnuts", "macadamia nuts", "pistachio nuts"]);
    const of = (name: string, allergens: Ingredient["allergens"]) =>
      makeProduct("x", [
        baseComponent({
          name: "base",
          lines: [
            {ingredient: {name, composition: {otherFat: 100}, ...(allergens && {allergens})}, grams: 1},
          ],
        }),
      ]);
    for (const [name, kind] of [
      ["Queensland nut", "macadamia nuts"],
      ["filbert paste", "hazelnuts"],
      ["cob nuts", "hazelnuts"],
      ["Brazil nut", "Brazil nuts"],
      ["pecans", "pecan nuts"],
    ] as const)
      expect(allergenWords(of(name, ["nuts"]))).toEqual([kind]);
    const paste = of("house paste", ["nuts"]);
    expect(allergenWords(paste)).toEqual([NUT_UNKNOWN]);
    expect(labelGaps(paste)).toEqual([`house paste: ${NUT_UNKNOWN}`]);
    expect(allergenWords(paste, {"house paste": {name: "almond paste"}})).toEqual(["almonds"]);
    expect(labelGaps(paste, {"house paste": {name: "almond paste"}})).toEqual([]);
    expect(usAllergenWords(of("pine nuts", undefined))).toEqual(["pine nuts"]);
    expect(allergenWords(of("pine nuts", undefined))).toEqual([]);
  });

  test("the nine of the United States, wheat of the cereals alone, sesame among them", () => {
    const all = {
      "whole milk": 1,
      "egg yolk": 1,
      "graham crackers": 1,
      "oat drink": 1,
      "soya drink": 1,
      peanuts: 1,
      tahini: 1,
      walnuts: 1,
      "white wine": 1,
    };
    expect(usAllergenWords(productOf(all))).toEqual([
      "wheat",
      "eggs",
      "peanuts",
      "soybeans",
      "milk",
      "walnuts",
      "sesame",
    ]);
  });

  // Annex II, point 12: above 10 mg of sulphur dioxide per kg of the food as sold.
  test("sulphites count by the finished food", () => {
    const wine = (sulphites: number, grams: number) => {
      const ingredient = {...findIngredient(demoPantry, "white wine", "test"), properties: {sulphites}};
      const lines = [{ingredient, grams}, ...linesOf({"whole milk": 1000 - grams})];
      return makeProduct("x", [baseComponent({name: "base", lines})]);
    };
    // 20 mg per 100 g of wine: 5 % of it are 10 mg/kg, 6 % are 12.
    expect(allergenWords(wine(20, 50))).toEqual(["milk"]);
    expect(allergenWords(wine(20, 60))).toEqual(["milk", "sulphites"]);
    expect(
      ingredientList(wine(20, 50))
        .map(({text}) => text)
        .join(""),
    ).not.toContain("sulphites");
    expect(allergenWords(productOf({"whole milk": 950, "white wine": 50}))).toContain("sulphites");
  });

  // Annex VII, Parts B and C.
  test("customary names, additives by their class, what prints alike together", () => {
    const text = (
      ...more: [names?: Parameters<typeof ingredientList>[2], options?: Parameters<typeof ingredientList>[3]]
    ) =>
      ingredientList(
        productOf({
          "whole milk": 600,
          "cream 40 %": 100,
          "double cream": 60,
          sugar: 110,
          "dextrose monohydrate": 50,
          "glucose syrup 42 DE": 30,
          water: 30,
          "locust bean gum": 3,
          "soya lecithin": 2,
          "citric acid": 1,
          erythritol: 14,
        }),
        [],
        ...more,
      )
        .map(({text, emphasised}) => (emphasised ? `*${text}*` : text))
        .join("");
    expect(text()).toBe(
      "whole *milk*, cream (*milk*), sugar, dextrose, glucose syrup, water, sweetener (erythritol), stabiliser (locust bean gum), emulsifier (*soya* lecithins), acid (citric acid)",
    );
    expect(text({}, {style: "E numbers"})).toContain(
      "stabiliser (E 410), emulsifier (E 322 of *soya*), acid (E 330)",
    );
    expect(text({}, {style: "US"})).toContain("erythritol, locust bean gum, *soya* lecithins, citric acid");
    expect(text({"cream 48 %": {name: "double cream"}})).toContain("cream (*milk*), double cream (*milk*)");
    // Annex VII, Part A, point 1: 3 % added water may be left out, 6 % may not.
    expect(text({}, {leaveOutWater: true})).not.toContain("water");
    const wet = productOf({"whole milk": 940, water: 60});
    expect(
      ingredientList(wet, [], {}, {leaveOutWater: true})
        .map((piece) => piece.text)
        .join(""),
    ).toContain("water");
    expect(customaryName("dark chocolate 60-69 %")).toBe("dark chocolate");
    expect(customaryName("dark chocolate over 70 %")).toBe("dark chocolate");
    // Every additive of the shelf is known by its class.
    const bare = realPantry.ingredients.filter(
      ({name, group = ""}) =>
        ["stabiliser", "emulsifier"].includes(group) &&
        !/\(.+\)/.test(customaryName(name)) &&
        !/blend|gelatine|seed gums/.test(name),
    );
    expect(bare.map(({name}) => name)).toEqual([]);
  });

  // Annex II, points 1, 6 and 7: exempt are wheat glucose syrup, dextrose, maltodextrin, refined soya oil and lactitol.
  test("what Annex II exempts is never declared unasked", () => {
    const exempt = {
      "glucose syrup 42 DE": 1,
      "dextrose monohydrate": 1,
      "maltodextrin 18 DE": 1,
      "dried glucose syrup 38 DE": 1,
      lactitol: 1,
    };
    expect(allergenWords(productOf(exempt))).toEqual([]);
    expect(allergenWords(productOf({"soya lecithin": 1}))).toEqual(["soya"]);
  });

  // Annex VII, Part E.
  test("a compound ingredient asks for its own list until the cook gives it", () => {
    const product = productOf({"whole milk": 900, "milk chocolate": 100});
    expect(labelGaps(product)).toEqual(["milk chocolate: copy its own list of ingredients from its pack"]);
    const names = {"milk chocolate": {contains: "sugar, cocoa butter, milk powder, cocoa mass"}};
    expect(labelGaps(product, names)).toEqual([]);
    expect(
      ingredientList(product, [], names)
        .map((piece) => piece.text)
        .join(""),
    ).toContain("milk chocolate (sugar, cocoa butter, milk powder, cocoa mass)");
  });

  // Regulation (EU) No 1169/2011, Annex II, point 1: the cereal's own name.
  test("gluten goes by its cereal, or the cereal is asked for", () => {
    expect(allergenWords(productOf({"oat drink": 900, "graham crackers": 100}))).toEqual(["oats", "wheat"]);
    const biscuit: Ingredient = {name: "biscuit", composition: {starch: 100}, allergens: ["gluten", "milk"]};
    const product = makeProduct("x", [
      baseComponent({name: "base", lines: [{ingredient: biscuit, grams: 1}]}),
    ]);
    expect(allergenWords(product)).toEqual(["gluten: say which cereal, wheat, rye, barley or oats", "milk"]);
    expect(
      ingredientList(product)
        .map((piece) => piece.text)
        .join(""),
    ).toContain("say which cereal");
  });
});

describe("costs with a gap", () => {
  test("what has a price is added up, what has none is named once", () => {
    const milk: Ingredient = {name: "milk", composition: {water: 100}, price: 1};
    const secret: Ingredient = {name: "secret", composition: {water: 100}};
    const lines = [
      {ingredient: milk, grams: 500},
      {ingredient: secret, grams: 5},
      {ingredient: secret, grams: 5},
    ];
    const {cost, unpriced} = knownCost(lines);
    expect(cost.total).toBeCloseTo(0.5, 12);
    expect(unpriced).toEqual(["secret"]);
    expect(knownCost(lines, {secret: {grams: 100, price: 10}}).cost.total).toBeCloseTo(1.5, 12);
  });
});
