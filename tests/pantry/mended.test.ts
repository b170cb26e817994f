import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {readCsv} from "../../lib/io/csv/csv.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {nutrientOf} from "../../lib/pantry/nutrients.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {quantityOf} from "../../lib/pantry/quantities.ts";
import {within} from "../support/within.ts";

const find = (name: string) => findIngredient(includedPantry(), name);
const notes = new Map(
  readCsv(readFileSync(new URL("../../datasets/ingredients.csv", import.meta.url), "utf8")).rows.map(
    ({cells}) => [cells.get("name"), cells.get("note") ?? ""],
  ),
);

describe("salt on the label is 2.5 x the table's sodium (Regulation (EU) 1169/2011, Annex I), wherever it stands", () => {
  test.each([
    // g salt per 100 g, from the sodium of USDA SR28 by NDB number, or of CoFID 2021.
    ["sweet whey powder", 2.7, "01115"],
    ["acid whey powder", 2.42, "01113"],
    ["gelatine", 0.49, "19177"],
    ["black treacle", 0.45, "CoFID 17-826"],
    ["buttermilk", 0.475, "01088"],
    ["tahini", 0.2875, "12166"],
    ["agar", 0.255, "11663"],
    ["marshmallows", 0.2, "19116"],
    ["cream liqueur 17 % vol", 0.23, "14415"],
    ["sweet potato", 0.1375, "11507"],
    ["molasses", 0.0925, "19304"],
    ["sweetened coconut cream", 0.09, "12116"],
    ["desiccated coconut", 0.0925, "12108"],
    ["instant coffee", 0.0925, "14214"],
    ["instant skimmed milk powder", 1.3725, "01092"],
    ["jam", 0.08, "19297"],
    ["fresh mint", 0.0775, "02064"],
    ["cream 19 %", 0.18, "01050"],
    ["skimmed milk powder", 1.3375, "01091"],
    ["brown sugar", 0.07, "19334"],
    ["passion fruit", 0.07, "09231"],
    ["half-and-half", 0.1525, "01049"],
    ["cream cheese", 0.785, "01017"],
    ["salted butter", 1.6075, "01001"],
    ["cocoa mass", 0.06, "19078"],
    ["dark chocolate 45-59 %", 0.06, "19902"],
    ["cocoa powder 14 %", 0.0525, "19165"],
    // By its formula 39.34 % sodium, so 98.3 g.
    ["salt", 98.3, "NaCl"],
  ] as const)("%s: %d g (%s)", (name, salt, _source) => {
    within(nutrientOf(find(name), "saltEquivalent")!, salt, 0.006 + 0.004 * salt, name);
  });
});

describe("energy counts dextrins, fructans and gelatine's protein", () => {
  test.each([
    // kcal per 100 g as the tables print them: USDA SR28, FDC 2257046.
    ["rice drink", 47],
    ["oat drink", 48],
    ["marshmallows", 318],
    ["molasses", 290],
    ["agave syrup", 310],
    ["maple syrup", 260],
    ["gelatine", 335],
    ["soya drink", 54],
  ] as const)("%s: %d kcal", (name, printed) => {
    within(nutrientOf(find(name), "kilocalories")!, printed, 0.05 * printed + 1.5, name);
  });

  test("gelatine is protein on the label, and still a stabiliser (USDA SR28, 19177: 85.6 g)", () => {
    const {composition} = find("gelatine");
    within(quantityOf(composition, "protein"), 85.6, 0.001, "protein");
    within(quantityOf(composition, "stabiliser"), 85.6, 0.001, "stabiliser");
    expect(nutrientOf(find("gelatine"), "dietaryFibre")).toBe(0);
  });
});

describe("organic acids of fruit are kept in full", () => {
  test.each([
    // g per 100 g: CIQUAL 2020, FDC 2025 (citric and malic), CoFID 2021 (the same).
    ["strawberry", 0.898],
    ["raspberry", 1.794],
    ["blackcurrant", 2.63],
    ["peach", 0.7],
    ["apricot", 0.47],
    ["plum", 1.27],
    ["mango", 0.17],
    ["pineapple", 0.95],
    ["passion fruit", 3],
    ["rhubarb", 1.9],
    ["lemon juice", 4.8],
    ["lime juice", 5],
    ["cocoa powder 21 %", 2.4],
    ["lactose-free milk", 0.18],
  ] as const)("%s: %d g", (name, acids) => {
    within(find(name).composition.organicAcids, acids, 0.001, name);
  });

  // From memory: 0.4 to 0.6 % lactic acid in acid whey, of 6.6 % solids; the table prints it within the carbohydrate.
  test("acid whey is sour, liquid and dried", () => {
    for (const [name, least, most] of [
      ["acid whey, liquid", 0.4, 0.6],
      ["acid whey powder", 5, 9],
    ] as const) {
      const {composition} = find(name);
      expect(composition.organicAcids, name).toBeGreaterThanOrEqual(least);
      expect(composition.organicAcids, name).toBeLessThanOrEqual(most);
    }
    // USDA SR28, 01112: 5.12 g carbohydrate.
    const {lactose = 0, organicAcids = 0} = find("acid whey, liquid").composition;
    within(lactose + organicAcids, 5.12, 0.011, "lactose and acid");
  });

  test("those that no table has are those of the shelf, none lost", () => {
    for (const [name, acids] of [
      ["blackberry", 1],
      ["redcurrant", 2.3],
      ["lychee", 0.3],
      ["sour cherry", 1.8],
    ] as const)
      within(find(name).composition.organicAcids, acids, 0.001, name);
  });
});

describe("liqueurs have the alcohol of their strength (ethanol 0.7893 g/ml at 20 °C, CRC Handbook)", () => {
  test.each([
    ["coffee liqueur 26 % vol", 26.5],
    ["coffee liqueur 31 % vol", 31],
    ["cream liqueur 17 % vol", 17],
    ["mint liqueur 36 % vol", 36],
  ] as const)("%s", (name, strength) => {
    const {composition, density} = find(name);
    within(((composition.alcohol ?? 0) * density!) / 0.7893, strength, 0.6, name);
  });
});

describe("a name means what a cook buys under it", () => {
  test.each([
    // g of fat per 100 g: CoFID 2021 14-875, 12-551, 12-555, 12-112; CIQUAL 2020 18100; what 10/12 says.
    ["marzipan", "fat", 12.7],
    ["soft cheese", "fat", 24.4],
    ["greek-style yogurt", "fat", 10.2],
    ["half cream", "fat", 13.3],
    ["cocoa powder 20/22", "fat", 20.6],
    ["cocoa powder 10/12", "fat", 11],
    ["canned coconut cream", "fat", 22],
  ] as const)("%s: %s %d g", (name, quantity, grams) => {
    within(quantityOf(find(name).composition, quantity), grams, 0.01, name);
  });

  test.each([
    ["damson", "damson"],
    ["nectarine", "nectarine"],
    ["bilberries", "bilberry"],
    ["conference pear", "conference pear"],
    ["strawberry jam", "strawberry jam"],
    ["muscovado", "muscovado sugar"],
    ["whitecurrants", "whitecurrant"],
    ["almond butter", "almond butter"],
    ["brandy", "brandy 40 % vol"],
  ])("%s is %s", (typed, name) => {
    expect(find(typed).name).toBe(name);
  });

  test("what may be two things is asked for, and what is another plant is unknown", () => {
    expect(() => find("cocoa powder")).toThrow(/say which/);
    expect(() => find("coconut cream")).toThrow(/say which/);
    expect(() => find("yam")).toThrow(/unknown/);
  });
});

describe("a sweetener is as sweet as itself, not as what it freezes like", () => {
  // Of 100 g of its dry matter against 100 g of sucrose.
  test.each([
    // PubMed Central article PMC10346066, table 2: 0.4; its makers: up to 0.5 (from memory).
    ["isomaltulose", 40, 50],
    // From memory: 0.92.
    ["tagatose", 90, 94],
    // PMC10346066, table 2: 0.4, of a powder with its sugars.
    ["oligofructose", 38, 43],
    // The same table: 0.1.
    ["polydextrose", 8, 15],
    ["resistant dextrin", 8, 15],
    // From memory: a tenth, by the sugars in it.
    ["inulin", 8, 13],
    // PubMed Central article PMC5756564, table 1; Varzakas et al. (2012), table 2.1.
    ["maltitol", 50, 90],
    ["lactitol", 30, 40],
    ["mannitol", 40, 70],
    // PMC10346066, table 2.
    ["isomalt", 50, 50],
    ["erythritol", 60, 80],
    // From memory.
    ["maltitol syrup", 60, 75],
    ["trehalose", 40, 50],
    ["allulose", 65, 75],
  ])("%s: %d to %d", (name, least, most) => {
    const {composition} = find(name);
    const sweetness = (100 * quantityOf(composition, "sweetness")) / (100 - (composition.water ?? 0));
    expect(sweetness).toBeGreaterThanOrEqual(least - 0.01);
    expect(sweetness).toBeLessThanOrEqual(most + 0.01);
  });

  test("no note of the shelf lets one part stand for a sweeter one", () => {
    const standIns = [...notes].filter(([, note]) => /\bstands? for it\b/.test(note)).map(([name]) => name);
    for (const name of ["isomaltulose", "tagatose", "oligofructose"]) expect(standIns).not.toContain(name);
  });
});

describe("what stays as a table has it says so beside it", () => {
  test.each([
    ["ricotta", /elsewhere/],
    ["cream 36 %", /newer analysis/],
    ["cream 19 %", /added salts/],
    ["banana", /ripe/],
    ["apricot", /Brix/],
    ["fig", /Brix/],
    ["passion fruit", /Brix/],
    ["passion fruit juice", /Brix/],
    ["avocado", /Hass/],
    ["raisins", /66 to 69/],
    ["half-and-half", /fatty acids/],
    ["whole milk", /by difference/],
    ["soya lecithin", /crude/],
    ["marshmallows", /not vegetarian/],
    ["buttermilk", /salted/],
  ])("%s", (name, says) => {
    expect(notes.get(name)).toMatch(says);
  });

  test("milk jam has the lactose of its protein, honey no galactose, ripe banana its sugars (CIQUAL 13005, CoFID 14-318: 15.6 to 18 g)", () => {
    within(find("dulce de leche").composition.lactose, 9.7, 0.001, "lactose");
    expect(find("honey").composition.galactose).toBeUndefined();
    within(quantityOf(find("ripe banana").composition, "sugars"), 16.8, 1.2, "sugars");
    within(find("instant coffee").composition.fibre, 19, 0.001, "CIQUAL 18005");
    within(find("chestnuts").composition.fibre, 7.45, 0.001, "CIQUAL 15024");
    within(nutrientOf(find("chocolate hazelnut spread"), "saturates")!, 9.18, 0.01, "CIQUAL 31032");
  });
});

describe("a slip in a composition is named", () => {
  test("a lost decimal point, figures of a portion", () => {
    expect(() => readComposition({water: 88, milkFat: 35, msnf: 8.5})).toThrow(
      /milkFat missing \(35, 3\.5\)/,
    );
    expect(() => readComposition({water: 44, milkFat: 2, msnf: 4})).toThrow(/portion/);
    expect(() => readComposition({water: 88, milkFat: 8, msnf: 8.5})).toThrow(/; give every part/);
  });
});
