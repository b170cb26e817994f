import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {namesAsModule} from "../../datasets/tools/tabulate.ts";
import {labelDuties} from "../../lib/kitchen/label/duties.ts";
import {LABEL_LAWS, WAYS_OF_SALE} from "../../lib/kitchen/label/label-law.ts";
import {namesElsewhere} from "../../lib/kitchen/label/names-elsewhere.ts";
import {labelStatements} from "../../lib/kitchen/label/statements.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {realPantry} from "../support/pantry.ts";

const productOf = (grams: Readonly<Record<string, number>>) => {
  const lines = Object.entries(grams).map(([name, g]) => ({
    ingredient: findIngredient(realPantry, name, name),
    grams: g,
  }));
  return makeProduct("ice", [baseComponent({name: "ice", lines})]);
};

describe("statements, Regulation (EU) No 1169/2011, Annex III", () => {
  const law = (
    grams: Readonly<Record<string, number>>,
    options: Parameters<typeof labelStatements>[1] = {},
  ) =>
    labelStatements(productOf(grams), options)
      .filter(({force}) => force === "law")
      .map(({text}) => text);
  test("sweeteners beside the name, with sugars where those were added; polyols above 10 %", () => {
    expect(law({"whole milk": 900, sucrose: 100})).toEqual([]);
    expect(law({"whole milk": 900, erythritol: 100})).toEqual(["with sweetener(s)"]);
    expect(law({"whole milk": 850, sucrose: 100, erythritol: 50})).toEqual([
      "with sugar(s) and sweetener(s)",
    ]);
    expect(law({"whole milk": 890, maltitol: 110})).toEqual([
      "with sweetener(s)",
      "excessive consumption may produce laxative effects",
    ]);
    // Glycerol is a humectant, but a polyol; the sorbitol of fruit is its own.
    expect(law({"whole milk": 950, glycerol: 50})).toEqual([]);
    expect(law({pear: 900, sucrose: 100})).toEqual([]);
    expect(law({"whole milk": 890, maltitol: 110}, {law: "GB"})).toHaveLength(2);
  });
  test("aspartame names phenylalanine", () => {
    const aspartame = {name: "aspartame", composition: {otherSolids: 100}};
    const lines = [
      {ingredient: findIngredient(realPantry, "whole milk"), grams: 999},
      {ingredient: aspartame, grams: 1},
    ];
    expect(
      labelStatements(makeProduct("ice", [baseComponent({name: "ice", lines})])).map(({text}) => text),
    ).toEqual(expect.arrayContaining(["with sweetener(s)", "contains a source of phenylalanine"]));
  });
  // 21 CFR 172.841(e): above 15 g of polydextrose in a serving.
  test("the United States ask for polydextrose by the serving; what is from memory is only offered", () => {
    const sweet = {"whole milk": 800, polydextrose: 200};
    expect(law(sweet, {law: "US", serving: 70})).toEqual([]);
    expect(law(sweet, {law: "US", serving: 90})).toHaveLength(1);
    expect(law({"whole milk": 800, sorbitol: 200}, {law: "US"})).toEqual([]);
    for (const of of LABEL_LAWS)
      for (const {force, read} of labelStatements(productOf({"whole milk": 700, sorbitol: 200, rum: 100}), {
        law: of,
      }))
        expect(force === "law" && read === "from memory").toBe(false);
  });
  test("what is no duty for ices is offered, not ordered", () => {
    const offered = labelStatements(productOf({"whole milk": 900, rum: 100})).filter(
      ({force}) => force === "offered",
    );
    expect(offered.map(({text}) => text)).toEqual(["Do not refreeze after defrosting", "Contains alcohol"]);
  });
});

describe("duties", () => {
  test("each has its rule and how that was read, in every law and way of sale", () => {
    for (const law of LABEL_LAWS)
      for (const sold of WAYS_OF_SALE) {
        const duties = labelDuties(law, sold);
        expect(duties.length).toBeGreaterThan(0);
        for (const {what, rule} of duties) expect(what && rule).toMatch(/\w/);
      }
  });
  // Articles 44(1) and Annex V, points 18 and 19.
  test("a scoop in the EU needs its allergens; a small maker's tub needs no declaration", () => {
    expect(labelDuties("EU", "loose").filter(({force}) => force === "law")).toHaveLength(1);
    expect(labelDuties("EU", "prepacked").find(({what}) => what.startsWith("nutrition"))?.force).toBe(
      "exempt",
    );
    // SI 2019/1218: name and list on what is packed where it is sold.
    expect(labelDuties("GB", "direct")[0]?.what).toContain("whole list of ingredients on the package");
  });
});

describe("names elsewhere", () => {
  test("the table is what the data file says", async () => {
    const module = readFileSync(new URL("../../lib/kitchen/label/names-table.ts", import.meta.url), "utf8");
    expect(await namesAsModule()).toBe(module);
  });
  const met = (country: string, grams: Readonly<Record<string, number>>, overrun = 30) =>
    namesElsewhere(productOf(grams), overrun)
      .filter((one) => one.country === country && one.met)
      .map(({name}) => name);
  // Leitsätze für Speiseeis as quoted: Fruchteis 20 % fruit (10 of sour), Sorbet 25 % (15), Wassereis below 3 % fat, 12 % dry matter.
  test("a strawberry ice in Germany by its fruit, a lemon ice by half as much", () => {
    expect(met("Germany", {strawberry: 240, water: 560, sucrose: 200})).toEqual(["Fruchteis", "Wassereis"]);
    expect(met("Germany", {strawberry: 260, water: 540, sucrose: 200})).toEqual([
      "Fruchteis",
      "Sorbet",
      "Wassereis",
    ]);
    expect(met("Germany", {"lemon juice": 150, water: 600, sucrose: 250})).toContain("Sorbet");
    expect(met("Germany", {"whole milk": 750, sucrose: 250})).toContain("Milcheis");
  });
  // Code of practice as quoted: crème glacée at least 5 % milk fat and 450 g/l.
  test("a light mix weighs too little for crème glacée", () => {
    const mix = {"whole milk": 700, "cream 40 %": 150, sucrose: 150};
    expect(met("France", mix, 60)).toContain("crème glacée");
    expect(met("France", mix, 150)).not.toContain("crème glacée");
    const [one] = namesElsewhere(productOf(mix), 150).filter(({name}) => name === "crème glacée");
    expect(one?.below[0]).toMatch(/^weight 4\d\d g\/l, at least 450$/);
    expect(one?.source).toContain("as quoted by others");
  });
});
