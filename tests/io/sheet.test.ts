import Papa from "papaparse";
import {describe, expect, test} from "vitest";
import {batchSheetCsv} from "../../lib/io/document/batch-sheet-csv.ts";
import {batchSheetHtml} from "../../lib/io/document/batch-sheet-html.ts";
import {batchSheetMarkdown} from "../../lib/io/document/batch-sheet-markdown.ts";
import {csvText, escapeHtml, escapeMarkdown} from "../../lib/io/text/escape.ts";
import {batchSheet, scaleProcess} from "../../lib/kitchen/day/batch-sheet.ts";
import {cautionsFor} from "../../lib/kitchen/safety/cautions.ts";
import {cookDown} from "../../lib/kitchen/cooking/cook.ts";
import {followProcess} from "../../lib/kitchen/cooking/follow-process.ts";
import {mixDensity} from "../../lib/kitchen/size/density.ts";
import type {Process} from "../../lib/kitchen/cooking/process.ts";
import {
  baseComponent,
  makeProduct,
  productDensity,
  rippleComponent,
} from "../../lib/kitchen/product/product.ts";
import {scaleProduct} from "../../lib/kitchen/product/scale-product.ts";
import {coolingMinutes, timePlan, usefulPower} from "../../lib/kitchen/day/time-plan.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {milk, sugar, yolk} from "../support/custard.ts";

/** The rows of a CSV text, as a reader other than ours has them. */
const rowsOf = (csv: string) => Papa.parse<Record<string, string>>(csv, {header: true}).data;

const cream: Ingredient = {
  name: "double cream",
  group: "dairy",
  allergens: ["milk"],
  composition: {water: 46, milkFat: 48, milkProtein: 2, lactose: 3, milkSalts: 1},
};
const plum: Ingredient = {name: "plums", composition: {water: 88, dextrose: 6, fructose: 4, fibre: 2}};
const base = {
  name: "custard base",
  lines: [
    {ingredient: sugar, grams: 170},
    {ingredient: milk, grams: 550},
    {ingredient: cream, grams: 200},
    {ingredient: yolk, grams: 80},
  ],
};
const sauce = {
  name: "plum ripple",
  lines: [
    {ingredient: plum, grams: 1000},
    {ingredient: sugar, grams: 600},
  ],
};
const process: Process = {
  steps: [
    {heat: [{name: "whole milk", grams: 500}, "double cream"], to: 92, into: "hot milk"},
    {pour: ["hot milk"], onto: ["egg yolk", "sugar"], into: "custard"},
    {heat: ["custard"], to: 82, holdSeconds: 30},
    {cool: ["custard"], to: 40},
    {pour: ["whole milk"], onto: ["custard"], into: "mix"},
    {cool: ["mix"], to: 4, minutes: 60},
  ],
};
const ripple = rippleComponent(sauce, 15, cookDown(sauce, {brix: 60}));
const product = makeProduct("plum ripple ice cream", [baseComponent(base, 85), ripple]);
const to = {tubs: 10, tubMillilitres: 500, overrun: 35};
const options = {
  process,
  machine: {fillLimit: 1200},
  overrun: 35,
  named: ["plums"],
  measures: {sugar: {unit: "cups", grams: 200}},
};
const sheet = batchSheet(product, to, options);

describe("scaling a product", () => {
  test("tubs are filled with base and ripple in their shares", () => {
    const scaled = scaleProduct(product, to);
    expect(scaled.grams).toBeCloseTo(5000 * productDensity(product, 35), 6);
    const [mix, fruit] = scaled.product.components;
    expect(mix!.grams / fruit!.grams).toBeCloseTo(85 / 15, 9);
    expect(mix!.recipe.lines.reduce((sum, line) => sum + line.grams, 0)).toBeCloseTo(mix!.grams, 6);
    // The ripple's ingredients weigh more than the ripple: water boils off.
    const factor = fruit!.recipe.lines[0]!.grams / 1000;
    expect(fruit!.grams).toBeCloseTo(ripple.grams * factor, 6);
    expect(scaleProduct(product, {grams: 2000}).mixGrams).toBeCloseTo(1700, 9);
    // A boiled-down base is scaled by what it yields, not by what goes into the pot.
    const cooked = makeProduct("sorbet", [{...ripple, percent: 100, churned: true}]);
    const sorbet = scaleProduct(cooked, {mixMillilitres: 1000}, {fillLimit: 500});
    expect(sorbet.grams).toBeCloseTo(1000 * mixDensity(ripple.composition), 6);
    expect(sorbet.baseFactor).toBeCloseTo(sorbet.grams / ripple.grams, 9);
    expect(sorbet.runs).toBe(2);
    expect(scaleProduct(product, {runs: 3, machine: {fillLimit: 1500}}).mixMillilitres).toBeCloseTo(4500, 6);
    expect(() => scaleProduct(product, {...to, tubMillilitres: 0})).toThrow(
      "tubMillilitres: out of range (got 0)",
    );
    expect(() => scaleProduct(product, {...to, tubs: 1.5})).toThrow("tubs: not a whole number");
  });
});

describe("the sheet's data", () => {
  test("ingredients stand in working order, scaled, split into runs", () => {
    const [first, second] = sheet.sections;
    expect(first!.lines.map((line) => line.ingredient)).toEqual([
      "whole milk",
      "double cream",
      "egg yolk",
      "sugar",
    ]);
    expect(first!.lines[0]!.gramsPerRun! * sheet.runs).toBeCloseTo(first!.lines[0]!.grams, 9);
    expect(sheet.runs).toBeGreaterThan(1);
    expect(second!.lines.every((line) => line.gramsPerRun === undefined)).toBe(true);
    const [, , yolks, sugars] = first!.lines;
    expect(yolks!.measure).toBe(`${(yolks!.grams / 17).toFixed(0)} × 17 g`);
    expect(sugars!.measure).toBe(`${(sugars!.grams / 200).toFixed(1)} cups`);
    expect(sheet.allergens).toEqual(["eggs", "milk"]);
  });
  test("a measure stands in the singular for one", () => {
    const counted = (grams: number, unit: string) => {
      const made = makeProduct("syrup", [
        baseComponent({name: "syrup", lines: [{ingredient: sugar, grams}]}),
      ]);
      const measures = {[sugar.name]: {unit, grams: 200}};
      return batchSheet(made, {grams}, {measures}).sections[0]!.lines[0]!.measure;
    };
    expect([200, 300, 400].map((grams) => counted(grams, "cups"))).toEqual(["1 cup", "1.5 cups", "2 cups"]);
    expect([200, 400].map((grams) => counted(grams, "tablespoon"))).toEqual([
      "1 tablespoon",
      "2 tablespoons",
    ]);
    expect(counted(200, "ml")).toBe("1 ml");
  });
  test("whole units are counted without decimals, parts of one with", () => {
    const egg = {name: "egg", composition: {water: 100}, unit: 50};
    const counted = (grams: number) => {
      const lines = [{ingredient: egg, grams}];
      const made = makeProduct("eggs", [baseComponent({name: "eggs", lines})]);
      return batchSheet(made, {grams}).sections[0]!.lines[0]!.measure;
    };
    expect([counted(400), counted(125)]).toEqual(["8 × 50 g", "2.5 × 50 g"]);
  });
  test("the machine's runs are said where there is a machine, however it was given", () => {
    const labels = (made: typeof sheet) => made.figures.map(({label}) => label);
    expect(labels(sheet)).toContain("Machine");
    expect(labels(batchSheet(product, {runs: 2, machine: {fillLimit: 1200}}))).toContain("Machine");
    expect(labels(batchSheet(product, {grams: 1000}))).not.toContain("Machine");
  });
  test("the log asks for the hold in the unit in which the step says it", () => {
    const held = (holdSeconds: number) => {
      const steps = [{heat: base.lines.map(({ingredient}) => ingredient.name), to: 82, holdSeconds}];
      const {steps: said, log} = batchSheet(product, {grams: 1000}, {process: {steps}});
      return [/hold (.*)$/.exec(said[0]!.text)![1], log.find(({label}) => label === "Held there for")!.unit];
    };
    expect([held(30), held(600)]).toEqual([
      ["30 s", "s"],
      ["10 min", "min"],
    ]);
  });
  test("the process is scaled with it, temperatures stay", () => {
    const factor = scaleProduct(product, to).baseFactor;
    const text = sheet.steps[0]!.text;
    expect(text).toContain(`${(500 * factor).toFixed(0)} g whole milk and double cream`);
    expect(text).toContain("92 °C");
    expect(sheet.steps).toHaveLength(6);
    expect(scaleProcess(process, 2).steps[0]).toMatchObject({heat: [{grams: 1000}, "double cream"]});
  });
});

describe("cautions", () => {
  const topics = (heated?: Process) =>
    cautionsFor(product, heated && followProcess(base, heated)).map((caution) => caution.topic);
  test("egg and milk unless heated to a published pair; hot sugar, allergens, cooling and the law always", () => {
    expect(topics()).toEqual(["egg", "milk", "hot sugar", "allergens", "cooling", "law"]);
    // Milk added after the heating has been through nothing.
    expect(topics(process)).toEqual(["milk", "hot sugar", "allergens", "cooling", "law"]);
    expect(cautionsFor(product).at(-1)?.text).toBe("Follow your local code; this is not licensed advice.");
    expect(sheet.cautions.map((caution) => caution.topic)).toContain("law");
  });
});

describe("the time plan", () => {
  const composition = baseComponent(base).composition;
  const day = {
    composition,
    gramsPerRun: 1000,
    runs: 2,
    chill: {from: 80, to: 4, watts: 800},
    churn: {from: 4, draw: -6, watts: 200},
    tub: {shape: "box", length: 18, width: 12, height: 8},
    overrun: 35,
    freezer: {temperature: -25, airSpeed: 1},
    room: 20,
  } as const;
  test("energy over power; a timed run gives the power back", () => {
    const minutes = coolingMinutes(composition, {grams: 1000, from: 4, to: -6, watts: 200});
    expect(usefulPower({composition, grams: 1000, from: 4, draw: -6, minutes})).toBeCloseTo(200, 9);
    expect(coolingMinutes(composition, {grams: 2000, from: 4, to: -6, watts: 400})).toBeCloseTo(minutes, 9);
    // Water: 1 kg by 10 K at 4.19 kJ/(kg K) with 419 W takes 100 s.
    expect(coolingMinutes({water: 100}, {grams: 1000, from: 30, to: 20, watts: 418}) * 60).toBeCloseTo(
      100,
      0,
    );
    const plan = timePlan(day);
    expect(plan.stages.map((stage) => stage.stage)).toEqual(["chill", "churn", "harden", "temper"]);
    expect(plan.stages[1]!.minutes).toBeCloseTo(2 * minutes, 9);
    expect(plan.minutesUntilHard).toBeCloseTo(
      plan.stages.slice(0, 3).reduce((sum, stage) => sum + stage.minutes!, 0),
      9,
    );
    const same = timePlan({
      ...day,
      churn: {from: 4, draw: -6, lastRun: {composition, grams: 500, from: 4, draw: -6, minutes: 10}},
    });
    expect(same.stages[1]!.minutes).toBeCloseTo(2 * 20, 6);
  });

  test("what goes in cold is not chilled with what was heated", () => {
    const chilled = (grams?: number) =>
      timePlan({...day, chill: {...day.chill, ...(grams !== undefined && {grams})}}).stages[0]!.minutes!;
    expect(chilled(1500)).toBeCloseTo(0.75 * chilled(), 9);
    expect(() => chilled(0)).toThrow(/grams/);
  });

  // Common practice, no source: an hour; by a former UK rule, heated again above −2.2 °C, and held at 7.2 °C or below.
  test("nobody is sent to wait for what takes longer than a tub should stand", () => {
    const temper = (mix: Composition, height: number, room: number) =>
      timePlan({...day, composition: mix, freezer: {temperature: -18}, tub: {...day.tub, height}, room})
        .stages[3]!.text;
    const [usual, poor, poorer] = [
      {water: 68, sucrose: 32},
      {water: 80, sucrose: 20},
      {water: 93, sucrose: 7},
    ];
    expect(temper(usual, 6, 20)).toMatch(/^Temper at 20 °C until it is at −1\d\.\d °C: about \d+ minutes\.$/);
    const hard = "It is hard from the freezer, and";
    const hour = "an hour at 20 °C, as long as a tub should stand, does not soften it";
    expect(temper(poor, 8, 20)).toBe(`${hard} ${hour}: change the recipe.`);
    expect(temper({water: 70, sucrose: 30}, 20, 20)).toMatch(
      new RegExp(`^${hard} ${hour}: serve it from a cabinet at −1\\d\\.\\d °C, or change the recipe\\.$`),
    );
    // A refrigerator takes longer, and keeps the surface cold.
    expect(temper(usual, 20, 4)).toMatch(/^Temper at 4 °C until it is at −1\d\.\d °C: about \d\.\d hours\.$/);
    expect(temper(poorer, 6, 4)).toBe(
      `${hard} its surface is above −2.2 °C before it softens at 4 °C: change the recipe.`,
    );
  });
  test("what cannot be says so", () => {
    const warm = timePlan({...day, freezer: {temperature: -18, core: -20}});
    expect(warm.minutesUntilHard).toBeUndefined();
    expect(warm.stages[2]!.text).toContain("does not reach -20 °C");
    expect(() => timePlan({...day, churn: {from: 4, draw: -6, watts: 0}})).toThrow(
      "watts: out of range (got 0)",
    );
    expect(() => timePlan({...day, churn: {from: 4, draw: 8, watts: 200}})).toThrow(
      "warmer than the mix, which is at 4 °C",
    );
  });
});

describe("printed", () => {
  const nasty = `<img src=x onerror=alert(1)>"'&|*_\`[x](javascript:1)`;
  const hostile = (name: string) => {
    const lines = base.lines.map((line, i) =>
      i === 0 ? {...line, ingredient: {...line.ingredient, name}} : line,
    );
    const recipe = {name: "base", lines};
    return batchSheet(
      makeProduct(name, [baseComponent(recipe)]),
      {grams: 1000},
      {furtherSteps: [name], measures: {[name]: {unit: name, grams: 1}}},
    );
  };
  test("HTML: every ingredient, step and caution is there; a name cannot start markup", () => {
    const html = batchSheetHtml(sheet);
    for (const line of sheet.sections.flatMap((section) => section.lines))
      expect(html).toContain(line.ingredient);
    expect(html.match(/type="checkbox"/g)).toHaveLength(4 + 2 + sheet.steps.length);
    for (const caution of sheet.cautions) {
      expect(html.replaceAll("&nbsp;", " ")).toContain(escapeHtml(caution.text));
    }
    expect(html).toContain("<polyline points=");
    expect(html).not.toMatch(/<script|undefined|NaN/);
    const bad = batchSheetHtml(hostile(nasty));
    expect(bad).not.toContain("<img");
    expect(bad).toContain("&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;|");
  });
  test("Markdown: tables, task lists, nothing live in a name", () => {
    const text = batchSheetMarkdown(sheet);
    expect(text).toContain("| whole milk |");
    expect(text.match(/^\d+\. \[ \] /gm)).toHaveLength(sheet.steps.length);
    expect(text).toContain("double cream (**milk**)");
    expect(text).not.toMatch(/undefined|NaN/);
    const bad = batchSheetMarkdown(hostile(nasty));
    expect(bad).not.toContain("<img");
    expect(bad).not.toMatch(/(?<!\\)\[x/);
    expect(bad).toContain("\\|\\*\\_\\`\\[x\\]");
    expect(escapeMarkdown("# x\n- y")).toBe("\\# x - y");
    expect(escapeMarkdown("1. x")).toBe("1\\. x");
    expect(escapeMarkdown("- x")).toBe("\\- x");
    expect(escapeMarkdown("---")).toBe("\\---");
    expect(escapeMarkdown("-2.3 °C")).toBe("-2.3 °C");
    expect(escapeMarkdown("milk 3.5 % - fresh")).toBe("milk 3.5 % - fresh");
  });
  test("CSV round-trips through another reader, and no cell is a formula", () => {
    const rows = rowsOf(batchSheetCsv(sheet));
    const milkRow = rows.find((row) => row["text"] === "whole milk");
    expect(Number(milkRow?.["grams"])).toBeCloseTo(sheet.sections[0]!.lines[0]!.grams, 2);
    expect(rows.filter((row) => row["kind"] === "step").map((row) => row["text"])).toEqual(
      sheet.steps.map((step) => step.text),
    );
    // The signs that OWASP names under "CSV Injection", bare, after blanks, before a line break, and full-width.
    const formulae = ["=1+1", "+1", "-1+2", "@SUM(1)", "\t=1", " =1", "=1\nx", "\n=1", "＝1", "\r=1"];
    const written = rowsOf(
      csvText(
        ["a", "b"],
        formulae.map((formula) => [formula, -5]),
      ),
    );
    expect(written.map((cells) => cells["a"])).toEqual(formulae.map((formula) => `'${formula}`));
    expect(written.every((cells) => cells["b"] === "-5")).toBe(true);
    expect(batchSheetCsv(hostile("=cmd|' /C calc'!A0"))).not.toMatch(/(^|,|"|\n)=/);
  });
});
