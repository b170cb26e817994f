import {describe, expect, test} from "vitest";
import {commandOf} from "../../lib/command/arguments.ts";
import {utf8Text} from "../../lib/io/text/utf8.ts";
import {library} from "../support/library.ts";
import {realPantry} from "../support/pantry.ts";

const written = {
  ingredients: [
    {name: "whole milk", price: 1},
    {name: "sucrose", price: 1},
  ],
  targets: {sugars: {min: 14, max: 16}},
};
const brief = library.readBrief(written, realPantry);
const answer = library.balance(written, {pantry: realPantry});
if (answer.status !== "optimal") throw new Error("no answer");
const {amounts} = answer;
const grams = amounts.map((amount) => amount.grams);

describe("amounts are taken as an answer holds them, or as numbers in the brief's order", () => {
  test("reliability", () => {
    const asHeld = library.reliability(brief, amounts, {weighing: 1}, {batches: 50});
    expect(asHeld.all).toBeGreaterThan(0);
    expect(library.reliability(brief, grams, {parts: new Map(), weighing: 1}, {batches: 50})).toEqual(asHeld);
  });

  test("weighable", () => {
    expect(library.weighable(brief, amounts)).toEqual(library.weighable(brief, grams));
  });

  test("recipeOf", () => {
    expect(library.recipeOf(brief, amounts)).toEqual(library.recipeOf(brief, grams));
    expect(library.recipeOf(brief, amounts.toReversed())).toEqual(library.recipeOf(brief, grams));
  });
});

/** A call as plain JavaScript makes it: nothing checks its types. */
const loosely = library as unknown as Record<string, (...args: readonly unknown[]) => unknown>;
const milk = library.findIngredient(realPantry, "whole milk");
const tub = {shape: "box", length: 20, width: 16, height: 10};
const milkRecipe = {name: "milk ice", lines: [{ingredient: milk, grams: 1000}]};
const milkIce = library.makeProduct("milk ice", [library.baseComponent(milkRecipe)]);
const [declared, facts] = [library.euPanel(milkIce), library.usPanel(milkIce)];
const syrup = {water: 70, glucoseSyrupSolids: 30};
const half = {name: "half", composition: {water: 40, sucrose: 10}};
const paste = {name: "our paste", composition: {otherFat: 60, otherProtein: 40}};
const allergic = {...paste, allergens: ["milk", "Nuts"]};

test.each<[name: string, args: readonly unknown[], says: RegExp]>([
  ["findIngredient", [realPantry, "mlik"], /^name: unknown ingredient \(got "mlik"\); add it to the pantry/],
  ["quantityOf", [milk.composition, "fatt"], /^quantity: unknown quantity \(got "fatt"\); did you mean fat/],
  [
    "quantityOf",
    [{water: NaN}, "fat"],
    /^composition\.water: not a finite number \(got NaN\); give a number from 0/,
  ],
  ["quantityOf", [{water: "12"}, "fat"], /^composition\.water: not a finite number \(got "12"\)/],
  ["ice", [{water: "12"}, -18], /^composition\.water: not a finite number/],
  [
    "mixComposition",
    [
      [
        {composition: milk.composition, grams: -1},
        {composition: milk.composition, grams: 1},
      ],
    ],
    /^portions\[0\]\.grams: out of range \(got -1\)/,
  ],
  [
    "hardeningTime",
    [milk.composition, tub, {draw: -18, core: -5, airTemperature: -25}],
    /^core: warmer than the mix as it is drawn, which is at -18 °C \(got -5\); give the colder temperature/,
  ],
  ["reliability", [brief, amounts, {weihing: 1}], /^spread: unknown key "weihing"; did you mean weighing/],
  ["reliability", [brief, [1], {weighing: 1}], /^amounts: not one mass for each/],
  ["recipeOf", [brief, [{ingredient: "sucrse", grams: 1}]], /^amounts\[0\]\.ingredient: unknown ingredient/],
  ["recipeOf", [brief, [amounts[0], amounts[0]]], /^amounts\[1\]\.ingredient: named twice/],
  ["freezingCurve", [milk.composition, {frm: -5}], /^range: unknown key "frm"; did you mean from/],
  [
    "pantryOf",
    [[allergic]],
    /^our paste: allergens\[1\]: unknown allergen \(got "Nuts"\); did you mean nuts or peanuts\?/,
  ],
  [
    "recipeMass",
    [{name: "mix", lines: [{ingredient: allergic, grams: 100}]}],
    /^our paste: allergens\[1\]: unknown allergen/,
  ],
  ["equivalents", [milk, allergic], /^our paste: allergens\[1\]: unknown allergen/],
  [
    "substitute",
    [milkRecipe, {without: "whole milk", from: [milk, allergic]}],
    /^our paste: allergens\[1\]: unknown allergen/,
  ],
  ["suggestChanges", [milkRecipe, {from: [half]}], /^half: composition: the parts do not sum to 100 g/],
  ["equivalentsTable", [[milk, half]], /^half: composition: the parts do not sum to 100 g/],
  ["pantryJson", [[allergic]], /^our paste: allergens\[1\]: unknown allergen/],
  ...(
    [
      ["ice", [syrup, -10]],
      ["heldWater", [syrup, -10]],
      ["initialFreezingPoint", [syrup]],
      ["quantityOf", [syrup, "sweetness"]],
      ["pantryOf", [[{name: "syrup", composition: syrup}]]],
    ] as const
  ).map(
    ([name, args]) =>
      [
        name,
        args,
        /composition\.dextroseEquivalent: missing for glucose-syrup solids; give the DE from the syrup's label, e\.g\. 42$/,
      ] as [string, readonly unknown[], RegExp],
  ),
  [
    "pantryOf",
    [[half]],
    /^half: composition: the parts do not sum to 100 g \(got 50\); are the figures for a portion\? If not, give every part/,
  ],
  ["recipeMass", [{name: "mix", lines: [{ingredient: half, grams: 1}]}], /^half: composition: the parts do/],
  ["pantryOf", [[{...half, composition: {watr: 100}}]], /^half: composition: not a composition/],
  ["pantryOf", [[{...milk, aliases: "milk"}]], /^whole milk: aliases: not a list of texts \(got "milk"\)/],
  ["pantryOf", [[{...milk, aliases: [3]}]], /^whole milk: aliases\[0\]: not a text \(got 3\)/],
  ["pantryOf", [[{...milk, portions: "cup"}]], /^whole milk: portions: not an object by name \(got "cup"\)/],
  ["pantryOf", [[{...milk, portions: {cup: "244"}}]], /^whole milk: portions\.cup: not a finite number/],
  [
    "pantryOf",
    [[{...milk, portions: {cup: 0}}]],
    /^whole milk: portions\.cup: out of range \(got 0\); give a number above 0/,
  ],
  ["pantryOf", [[{...milk, properties: {co2: "310"}}]], /^whole milk: properties\.co2: not a finite number/],
  ["ingredientList", [milkIce, [], {"whole milk": null}], /^names\.whole milk: not an object .*\(got null\)/],
  ["ingredientList", [milkIce, [], {"whole milk": {nam: "x"}}], /^names\.whole milk: unknown key "nam"; did/],
  ["allergenWords", [milkIce, {"whole milk": {name: 5}}], /^names\.whole milk\.name: not a text \(got 5\)/],
  [
    "linearPanel",
    [{...declared, per100: [null]}],
    /^panel\.per100\[0\]: .*; make it with euPanel\(product\)$/,
  ],
  [
    "linearPanel",
    [{...declared, portion: {grams: 60, lines: [3]}}],
    /^panel\.portion: .* make it with euPanel/,
  ],
  ["euPanelHtml", [{...declared, per100: [null]}, "Milk"], /^panel\.per100\[0\]: .* make it with euPanel/],
  ["usPanelHtml", [{...facts, nutrients: [null]}, "Milk"], /^panel\.nutrients\[0\]: .* make it with usPanel/],
  ["heldBy", ["glucoseSyrupSolids", -10], /^dextroseEquivalent: missing for glucose-syrup solids/],
  ["sucroseEquivalenceCurve", [library.equivalenceMix(milk.composition), -1], /^step: out of range/],
])("%s refuses in words %#", (name, args, says) => {
  expect(() => loosely[name]!(...args)).toThrow(library.InputError);
  expect(() => loosely[name]!(...args)).toThrow(says);
});

describe("what the command reads and writes", () => {
  test.each(["recipe", "csv", "markdown", "html", "svg"])("--%s wants the name of a file", (option) => {
    for (const name of ["-", ""])
      expect(() => commandOf("balance", {[option]: name})).toThrow(/not the name of a file .* name a file/);
    expect(commandOf("balance", {[option]: "file"})).toBe("balance");
  });

  test("a file that is not UTF-8 is named by line, with what to do", () => {
    // "crème" in ISO 8859-1: the letter è is the byte E8.
    const bytes = Uint8Array.from([..."name,water\ncr"].map((c) => c.charCodeAt(0)).concat(0xe8, 0x6d, 0x65));
    expect(() => utf8Text(bytes, "own.csv")).toThrow(
      /^own\.csv, line 2: not UTF-8 text; save the file as UTF-8/,
    );
    expect(utf8Text(new TextEncoder().encode("crème"), "own.csv")).toBe("crème");
  });
});

test("a name without any pantry to find it in: the next step is to give one", () => {
  const named = {ingredients: ["whole milk"], targets: {fat: {max: 3}}};
  const says =
    /^brief: ingredients\[0\]: unknown ingredient \(got "whole milk"\); no pantry is given to find it in: give \{pantry: includedPantry\(\)\} as options, /;
  expect(() => library.balance(named)).toThrow(says);
  expect(() => library.sweep(named, "targets.fat.max", [3])).toThrow(says);
  expect(() => library.tradeOff(named, {x: "cost", y: "fat"})).toThrow(says);
  const empty = {pantry: library.pantryOf([])};
  expect(() => library.balance(named, empty)).toThrow(
    /; add it to the pantry, or give its composition or label/,
  );
});

describe("paths of files in a brief are refused where passing over them would change the answer", () => {
  const unpriced = {...written, ingredients: ["whole milk", "sucrose"]};

  test("a price list that nobody read: nothing would be minimised", () => {
    expect(() => library.balance({...unpriced, prices: "prices.csv"}, {pantry: realPantry})).toThrow(
      /^brief: prices: a path, and no file is read here \(got "prices\.csv"\); /,
    );
  });

  test("a pantry that nobody read", () => {
    const own = {ingredients: [{name: "syrup", composition: {water: 30, sucrose: 70}}]};
    expect(() => library.balance({...own, pantry: "pantry.csv"})).toThrow(
      /^brief: pantry: a path, and no file/,
    );
  });

  test("a brief of the command passes where its files were read", () => {
    const named = {...written, prices: "prices.csv", pantry: "pantry.csv"};
    expect(library.balance(named, {pantry: realPantry})).toEqual(answer);
  });
});
