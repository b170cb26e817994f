import {readFileSync} from "node:fs";
import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {type TypedOptions, readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import type {TypedLine} from "../../lib/io/typed/typed-line.ts";
import {realPantry} from "../support/pantry.ts";
import {within} from "../support/within.ts";

const corpus = readFileSync(new URL("typed-lines.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => line && !line.startsWith("#"))
  .map((line) => line.split(" => ") as [string, string]);

/** What becomes of one line, below another so that it is no title. */
async function lineOf(text: string, options: TypedOptions = {}) {
  const {lines} = await readTypedRecipe(`100 g water\n${text}`, realPantry, options);
  expect(lines).toHaveLength(2);
  return lines[1]!;
}

/** A line as the corpus writes it: `ingredient`, `?` or `-`. */
function outcome(line: TypedLine): string {
  if (line.status === "skipped") return "-";
  return "grams" in line ? line.ingredient.name : "?";
}

const gramsIn = (line: TypedLine) => ("grams" in line ? line.grams : Number.NaN);

describe("300 lines as cooks write them (invented)", () => {
  test("are there, each once", () => {
    expect(corpus.length).toBeGreaterThanOrEqual(300);
    expect(new Set(corpus.map(([text]) => text)).size).toBe(corpus.length);
  });

  test.each(corpus)("%s", async (text, wanted) => {
    const line = await lineOf(text);
    expect(line.text).toBe(text.trim().replace(/\s+/g, " "));
    const [name, grams] = wanted.split("; ");
    expect(outcome(line), JSON.stringify(line)).toBe(name);
    const [found, right] = grams === undefined ? [0, 0] : [gramsIn(line), Number(grams)];
    within(found, right, Math.max(0.01, 0.005 * right), text);
  });
});

describe("nothing is guessed in silence", () => {
  test.each([
    ["3 large eggs", /61\.2 g.*EU size large/],
    ["6 yolks", /one egg yolk taken as 17 g/],
    ["juice of 2 lemons", /one lemon taken as 48 g of juice/],
    ["1,250 g whole milk", /1,250 taken as 1250/],
    ["2-3 egg whites", /2-3 taken as 2\.5/],
    ["1 cup sugar", /US cup, 237 ml/],
    ["1 pint whole milk", /UK pint, 568 ml/],
    ["a pinch of salt", /0\.3 g/],
    ["500 g whoel milk", /whoel milk taken as whole milk/],
    ["100 g sugar or honey", /taken as sucrose/],
    ["frozen mango 500 g", /frozen mango taken as mango/],
    ["skimmed milk powder 40", /40 taken as grams/],
    ["400 ml double cream", /0\.98 g a ml/],
    ["3 egg yolks (60 g)", /^60 g taken as all 3 together$/],
    ["2 tins (400 g) coconut milk", /^400 g taken as one of the 2$/],
    ["2 tins coconut milk (400 g)", /^400 g taken as one of the 2$/],
  ])("%s says what was taken for granted", async (text, said) => {
    const line = await lineOf(text);
    expect(line.status).toBe("taken");
    expect("taken" in line ? line.taken.join("; ") : "").toMatch(said);
  });

  test.each(["6 blood oranges, juiced", "• 20 hazelnuts", "10 cherries (stoned)", "8 strawberries"])(
    "%s are pieces, which nobody weighed: their grams are asked for",
    async (text) => {
      expect(await lineOf(text)).toMatchObject({
        status: "how much",
        question: expect.stringMatching(/^what do \d+ of them weigh \(.+\)\? Type it in grams$/),
      });
    },
  );

  test.each([
    ["20 hazelnut paste", 20],
    ["strawberries 20", 20],
    ["40 hazelnuts", 40],
    ["20 g raspberries", 20],
  ])("%s are grams", async (text, grams) => {
    expect(await lineOf(text)).toMatchObject({grams});
  });

  test.each([
    [
      "150 g sugar + 30 g dextrose",
      /two ingredients in one line: write “30 g dextrose” on a line of its own/,
    ],
    ["2 mangoes (300 g)", /is 300 g one of them, or all 2\? Write “600 g mango” or “300 g mango”/],
    ["10 g ground coffee", /the drink, or what it is steeped from\?.*“100 ml brewed coffee”/],
    ["50 cl d'eau", /which d'eau: fruit brandy\?/],
    ["sugar: -120 g", /below 0\? Write it without the minus/],
    ["0 g sugar", /0 of it is nothing: leave the line out/],
  ])("%s is asked about", async (text, question) => {
    expect(await lineOf(text)).toMatchObject({question: expect.stringMatching(question)});
  });

  test("what may be several things is a choice, and what is unknown has the nearest", async () => {
    const cream = await lineOf("500 g cream");
    expect(cream).toMatchObject({status: "which", name: "cream"});
    expect("choices" in cream ? cream.choices : []).toContain("cream 36 %");
    expect(await lineOf("500 g cream (cream 36 %)")).toMatchObject({status: "understood", grams: 500});
    const slip = await lineOf("20 g mlik powdr");
    expect(slip.status).toBe("unknown");
    expect("near" in slip ? slip.near.join() : "").toContain("milk powder");
    const fluff = await lineOf("20 g marshmallow fluff");
    expect("near" in fluff ? fluff.near.join() : "").toContain("marshmallow");
    const petals = await lineOf("10 g rose petals");
    expect("near" in petals ? petals.near : []).toEqual(["rose water"]);
    // Custard apple and beetroot are as many letters away as chance would have it.
    for (const strange of ["2 star anise", "1 tsp unicorn dust", "3 sprigs of bergamot"])
      expect(await lineOf(strange)).toMatchObject({
        near: [],
        question: expect.stringMatching(/is known here\. Give it the name of something on the shelf$/),
      });
    // Where the amount stands in the name, a press on another name would take it away.
    expect(await lineOf("kreme fraiche 20 dollops")).toMatchObject({near: []});
    expect(await lineOf("salt to taste")).toMatchObject({status: "how much"});
  });
});

describe("a whole text", () => {
  test("has its title, its air and its ingredients; the method is skipped with a word", async () => {
    const text = `Chocolate custard
      Serves 6 - overrun below

      Ingredients
      500 ml milk
      6 yolks

      Method
      1. Heat 500 ml milk to 82 °C.
      200 g sugar is too much

      For the ripple:
      300 g raspberries
      overrun: 35 %`;
    const {recipe, lines} = await readTypedRecipe(text, realPantry);
    expect([recipe.name, recipe.overrun]).toEqual(["Chocolate custard", 35]);
    expect(recipe.lines.map(({ingredient}) => ingredient.name)).toEqual([
      "whole milk",
      "egg yolk",
      "raspberry",
    ]);
    expect(lines.map((line) => ("why" in line ? line.why : line.status))).toEqual(
      "heading total heading understood taken heading method method heading understood note".split(" "),
    );
    expect(lines.map(({line}) => line)).toEqual([1, 2, 4, 5, 6, 8, 9, 10, 12, 13, 14]);
  });

  test("may be called as an ingredient is, where its first line is marked as a heading", async () => {
    for (const title of ["# Chocolate", "Chocolate:"]) {
      const {recipe, lines} = await readTypedRecipe(`${title}\n100 g sugar`, realPantry);
      expect([recipe.name, lines[0]!.status]).toEqual(["Chocolate", "skipped"]);
    }
  });

  test("that begins with an ingredient has no title", async () => {
    const {recipe, lines} = await readTypedRecipe("some whole milk\n100 g sugar", realPantry);
    expect([recipe.name, lines[0]!.status]).toEqual(["recipe", "how much"]);
    expect(lines[0]).toMatchObject({question: expect.stringMatching(/name, put a colon behind it$/)});
  });

  test.each([
    ["CSV", 'name,g,price\nwhole milk,"1,250",1.10\n"cream 40 %",300,6.20\nsugar,180.5,1.2'],
    ["CSV with semicolons", "ingredient;g\nwhole milk;1250\ncream 40 %;300\nsugar;180,5"],
    ["a spreadsheet", "Ingredient\tAmount\tUnit\nWhole milk\t1.25\tkg\nCream 40 %\t300\tg\nSugar\t180,5\tg"],
    ["cells without a heading", "Whole milk\t1250\nCream 40 %\t300\nSugar\t180,5"],
    [
      "a table of Markdown",
      "| Ingredient | g | % |\n|---|---|---|\n| whole milk | 1250 | 72 |\n| cream 40 % | 300 | 17 |\n| sucrose | 180.5 | 10 |\n| in all | 1730.5 | 100 |",
    ],
    [
      "the command's own table",
      "  whole milk                          1250 g   72.23 %\n  cream 40 %                           300 g   17.34 %\n  sucrose                            180.5 g   10.43 %\n  in all                            1730.5 g  100.00 %",
    ],
    [
      "JSON",
      '{"name": "x", "ingredients": [{"name": "whole milk", "grams": 1250}, {"name": "cream 40 %", "grams": 300}, {"name": "sugar", "grams": 180.5}]}',
    ],
  ])("may be %s", async (_, text) => {
    const {recipe} = await readTypedRecipe(text, realPantry);
    expect(recipe.lines.map(({ingredient, grams}) => [ingredient.name, grams])).toEqual([
      ["whole milk", 1250],
      ["cream 40 %", 300],
      ["sucrose", 180.5],
    ]);
  });

  test("in percent stands for 1 kg, or for what the grams leave", async () => {
    const all = await readTypedRecipe("whole milk 75 %\nsugar 25 %", realPantry);
    expect(all.recipe.lines.map(({grams}) => grams)).toEqual([750, 250]);
    const some = await readTypedRecipe("900 g whole milk\nsugar 10 %", realPantry);
    expect(some.recipe.lines.map(({grams}) => grams)).toEqual([900, 100]);
    expect(some.lines[1]).toMatchObject({status: "taken", taken: ["10 % of 1000 g"]});
  });

  test("has prices per kg, per litre and per pack", async () => {
    const text = `600 g cream 40 % @ 6.20 for 1000 g
      3 eggs @ 2.40 for 12
      500 g sugar @ 1.10
      1 l whole milk @ £1.20 per litre`;
    const {lines, recipe} = await readTypedRecipe(text, realPantry);
    expect(lines[0]).toMatchObject({pack: {price: 6.2, grams: 1000}, price: 6.2});
    // Twelve of 50 g.
    expect(lines[1]).toMatchObject({pack: {price: 2.4, grams: 600}, price: 4});
    expect(lines[2]).toMatchObject({price: 1.1});
    within("price" in lines[3]! ? lines[3].price! : 0, 1.2 / 1.031, 1e-9, "per kg of milk of 1.031 g/ml");
    expect(recipe.lines.map(({ingredient}) => ingredient.price !== undefined)).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  test("knows US grades of eggs where they are asked for: 56.7 g in the shell, 90 % of it inside", async () => {
    within(gramsIn(await lineOf("2 large eggs", {eggs: "US"})), 2 * 51, 0.1, "two");
    within(gramsIn(await lineOf("2 large eggs")), 2 * 61.2, 0.1, "two of 63 to 73 g");
  });

  test("too long, too many lines, a line too long, or no text at all is said", async () => {
    await expect(readTypedRecipe("x".repeat(200_001), realPantry)).rejects.toThrow(/too long.*200001/);
    await expect(readTypedRecipe("1 g sugar\n".repeat(501), realPantry)).rejects.toThrow("too many lines");
    const {lines} = await readTypedRecipe(`1 g sugar\n${"*".repeat(100_000)}x`, realPantry);
    expect(lines[1]).toMatchObject({status: "unknown", question: expect.stringContaining("300 characters")});
    expect((await readTypedRecipe("  \n\n", realPantry)).lines).toEqual([]);
    await expect(readTypedRecipe('{"name": 1}', realPantry)).rejects.toThrow(InputError);
  });

  const piece = fc.oneof(
    fc.constantFrom(
      ..."1 2,5 ½ 1/0 - x ( ) [ ] @ % | ; , . : g ml kg tsp cup of tub egg milk sugar 250 € / to".split(" "),
    ),
    fc.string({unit: "binary", maxLength: 4}),
  );
  test("of anything: each line once, amounts above 0, questions short", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(piece, {maxLength: 12}), {maxLength: 4}), async (typed) => {
        const text = `0 water\n${typed.map((line) => line.join(" ")).join("\n")}`;
        const {lines, recipe} = await readTypedRecipe(text, realPantry);
        expect(new Set(lines.map(({line}) => line)).size).toBe(lines.length);
        for (const {grams} of recipe.lines) expect(grams > 0 && grams < Infinity).toBe(true);
        for (const line of lines)
          if ("question" in line && line.question.length > 600) throw new Error(line.question);
      }),
      {numRuns: 150, seed: 7},
    );
  });
});
