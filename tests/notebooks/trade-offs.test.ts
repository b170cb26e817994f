import {readFileSync} from "node:fs";
import * as fc from "fast-check";
import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {costMap} from "../../lib/balance/trade-off/cost-map.ts";
import {equivalents} from "../../lib/balance/substitute/equivalents.ts";
import {isFlavour} from "../../lib/pantry/flavour-groups.ts";
import {substitute} from "../../lib/balance/substitute/substitute.ts";
import type {SubstituteOptions, Substitution} from "../../lib/balance/substitute/substitution-types.ts";
import {sweep} from "../../lib/balance/trade-off/sweep.ts";
import {tradeOff} from "../../lib/balance/trade-off/trade-off.ts";
import {
  type BriefInput,
  findIngredient,
  pantryOf,
  readBrief,
  type Recipe,
  recipeComposition,
  stockedPantry,
} from "../../lib/index.ts";
import {nutritionLabel, nutritionOf} from "../../lib/label.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen.ts";
import {readPantryCsv, readPricesCsv, readRecipeJson, recipeCsv, recipeJson} from "../../lib/files.ts";
import {scoopTemperature} from "../../lib/freezing.ts";
import {decimal, degrees, grams} from "../../lib/core/format.ts";
import {likelyName, nameChecks, nameTargets} from "../../notebooks/kit/replace/legal-names.ts";
import {loadRecipe, type Source} from "../../notebooks/kit/words/load-recipe.ts";
import {withOwnPrices} from "../../notebooks/kit/words/price-origin.ts";
import {rangeOf} from "../../notebooks/kit/trade-offs/sweep-range.ts";
import {loadBrief} from "../../notebooks/kit/trade-offs/brief.ts";
import {briefSource, hostileAddress, recipeSource} from "../support/hostile-notebook.ts";
import {leave, type Opened, resize, sharedBrowser, visit} from "../support/visit.ts";

const {address} = inject("site");
const data = (name: string) => readFileSync(`datasets/${name}`, "utf8");
const pantry = stockedPantry(
  pantryOf(readPantryCsv(data("ingredients.csv"))),
  readPricesCsv(data("demo/prices.csv")),
);
const stocked = pantry.ingredients.filter(({stock}) => stock !== undefined);
const GRID = {columns: 40, rows: 30};

let browser: Browser;

beforeAll(async () => {
  browser = await sharedBrowser(new URL(address).origin, "long searches");
});

/** Opens a notebook with the network cut off. */
function open(name: string, hash = ""): Promise<Opened> {
  return visit(browser, `${address}${name}.html${hash}`, new URL(address).origin);
}

/** The rows of a table by their headings, first line only: the texts of the cells. Read at one moment: pages redraw. */
function tableOf(page: Page, name: string): Promise<Record<string, string[]>> {
  return page.evaluate<Record<string, string[]>>(`Object.fromEntries(
    [...(document.querySelector('table[aria-label="${name}"]')?.querySelectorAll("tbody tr, tfoot tr") ?? [])].map((row) => [
      row.querySelector("th").innerText.split(/[\\n,]/)[0],
      [...row.querySelectorAll("td")].map((cell) => cell.innerText.trim()),
    ]),
  )`);
}

/** A file as a cook chooses it. */
function file(name: string, text: string) {
  return {name, mimeType: "application/octet-stream", buffer: Buffer.from(text)};
}

const HOSTILE = `<img src=x onerror=alert(1)>`;

describe("replace an ingredient", () => {
  const PAGE = "replace-an-ingredient";

  const demoRecipe = (name: string) => readRecipeJson(data(`demo/recipe-${name}.json`), pantry);

  /** What the library says of a question as the page asks it. */
  function expected(
    recipe: Recipe,
    options: Omit<SubstituteOptions, "from" | "keep"> & Partial<SubstituteOptions>,
  ) {
    const legal = likelyName(recipe, 30);
    const keep = recipe.lines
      .filter(({ingredient}) => isFlavour(ingredient) && ingredient.name !== options.without)
      .map(({ingredient}) => ingredient.name);
    return substitute(recipe, {
      from: stocked,
      keep,
      freezer: -14,
      ...(legal && {legalName: nameTargets(legal, recipe)}),
      ...options,
    });
  }

  /** Waits until the sheet to weigh from is that of the nth way. */
  async function expectWeighed(page: Page, {alternatives}: Substitution, n = 0): Promise<void> {
    const wanted = Object.fromEntries(
      alternatives[n]!.amounts.map(({ingredient, before, after}) => [
        ingredient,
        [before > 0 ? grams(before) : "–", after > 0.005 ? grams(after) : "–"],
      ]),
    );
    await expect
      .poll(async () => {
        const shown = await tableOf(page, "What to weigh");
        return Object.fromEntries(Object.keys(wanted).map((name) => [name, shown[name]?.slice(0, 2)]));
      })
      .toEqual(wanted);
    await expect.poll(() => page.locator(".way").count()).toBe(alternatives.length);
  }

  describe("from its first recipe to one of the cook's own, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(PAGE));
    });

    afterAll(() => leave(page));

    test("opens with a recipe that lacks a sugar, and shows the library's ways", async () => {
      const found = expected(await demoRecipe("pear-and-ginger"), {without: "dextrose monohydrate"});
      await expectWeighed(page, found);
      expect(await page.locator(".verdict h2").innerText()).toContain("dextrose monohydrate");
    });

    test("like for like: the library's equivalents", async () => {
      await page.getByLabel("100 g of").selectOption("sucrose");
      await page.getByLabel("at the same").selectOption("freezing");
      const [x, y] = ["sucrose", "dextrose monohydrate"].map((name) => findIngredient(pantry, name, name));
      const found = equivalents(x!, y!, {freezer: -14}).find(({equalIn}) => equalIn === "freezing")!;
      const shown = (await tableOf(page, "Like for like"))[y!.name]!;
      expect(shown[0]).toBe(grams(found.grams));
      expect(shown[1]).toBe(`${found.water > 0 ? "+" : "−"}${decimal(Math.abs(found.water), 1)}`);
    });

    test("a CSV file of one's own is read, kept in the address, and saved again", async () => {
      const csv =
        "ingredient,g\nwhole milk,600\ncream 40 %,150\nsucrose,120\nhoney,40\nskimmed milk powder,40\n";
      await page.getByLabel("Or load your own, JSON or CSV").setInputFiles(file("my milk ice.csv", csv));
      const recipe = {
        name: "my milk ice",
        // The page's own slider, saved with the recipe.
        overrun: 30,
        lines: csv
          .trim()
          .split("\n")
          .slice(1)
          .map((row) => {
            const [name, g] = row.split(",") as [string, string];
            return {ingredient: findIngredient(pantry, name, name), grams: Number(g)};
          }),
      };
      const found = expected(recipe, {without: "honey"});
      await expectWeighed(page, found);
      // No price in it is the cook's: the invented ones of the page stay there.
      const saved = withOwnPrices(found.alternatives[0]!.recipe, new Set());
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", {name: "Save the recipe, JSON"}).click(),
      ]);
      expect(download.suggestedFilename()).toBe("my-milk-ice.json");
      expect(readFileSync(await download.path(), "utf8")).toBe(recipeJson(saved));
      const [table] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", {name: "Save the recipe, CSV"}).click(),
      ]);
      expect(readFileSync(await table.path(), "utf8")).toBe(recipeCsv(saved));
      await expect.poll(() => page.url()).toContain("recipe=own");
      await page.reload({waitUntil: "networkidle"});
      await expectWeighed(page, found);
    });

    test("a recipe that says how airy it is brings the slider there, and is answered with that air", async () => {
      const text = JSON.stringify({
        name: "Airy",
        overrun: 80,
        ingredients: [
          {name: "whole milk", grams: 620},
          {name: "cream 40 %", grams: 180},
          {name: "sucrose", grams: 120},
          {name: "honey", grams: 40},
          {name: "skimmed milk powder", grams: 40},
        ],
      });
      await page.getByLabel("Or load your own, JSON or CSV").setInputFiles(file("airy.json", text));
      const box = page.getByRole("spinbutton", {name: "Overrun, %"});
      await expect.poll(() => box.inputValue()).toBe("80");
      await expectWeighed(page, expected(await readRecipeJson(text, pantry), {without: "honey"}));
    });

    test("a hostile recipe is text; a broken one says what and where", async () => {
      const input = page.getByLabel("Or load your own, JSON or CSV");
      const hostile = {
        name: HOSTILE,
        ingredients: [
          {name: HOSTILE, grams: 60, composition: {sucrose: 100}},
          {name: "whole milk", grams: 700},
          {name: "cream 40 %", grams: 150},
          {name: "</script><script>alert(2)</script>", grams: 60, composition: {dextrose: 90, water: 10}},
        ],
      };
      await input.setInputFiles(file(`${HOSTILE}.json`.replaceAll("/", ""), JSON.stringify(hostile)));
      await expect.poll(async () => Object.keys(await tableOf(page, "What to weigh"))).toContain(HOSTILE);
      expect(await page.locator("main img").count()).toBe(0);
      await input.setInputFiles(file("broken.json", '{"name": "x",\n "ingredients": [}'));
      await expect.poll(() => page.locator(".verdict").innerText()).toContain("broken.json, line 2");
      await input.setInputFiles(file("broken.csv", "ingredient,g\nwhole milk,500\nsucrose,lots\n"));
      await expect.poll(() => page.locator(".verdict").innerText()).toContain("broken.csv, row 3, g");
      await input.setInputFiles(file("odd.csv", "ingredient,g\nwhole mlk,500\n"));
      await expect.poll(() => page.locator(".verdict").innerText()).toContain("whole milk");
    });

    test("nothing went wrong on the way", () => {
      expect(trouble).toEqual([]);
    });
  });

  describe("a recipe of the address, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(PAGE, "#recipe=hazelnut&out=cream+40+%25"));
    });

    afterAll(() => leave(page));

    test("another way is chosen by a click; what is different is the library's, and the address keeps it", async () => {
      const found = expected(await demoRecipe("hazelnut"), {without: "cream 40 %"});
      await expectWeighed(page, found);
      await page.locator(".way").nth(2).click();
      const chosen = found.alternatives[2]!;
      await expectWeighed(page, found, 2);
      const [fat] = chosen.changes.filter(({what}) => what === "protein");
      const shown = await tableOf(page, "What is different");
      expect(shown.protein?.slice(0, 2)).toEqual([decimal(fat!.before, 2), decimal(fat!.after, 2)]);
      const scoops = [found.before, chosen.recipe].map(
        (one) => scoopTemperature(recipeComposition(one)).temperature!,
      );
      expect(shown["scoop temperature"]?.slice(0, 2)).toEqual(scoops.map((value) => degrees(value)));
      await expect.poll(() => page.url()).toContain("take=");
      await page.reload({waitUntil: "networkidle"});
      await expectWeighed(page, found, 2);
    });

    test("what is left counts, moved by key", async () => {
      const recipe = await demoRecipe("hazelnut");
      await page.locator(".way").nth(0).click();
      await expectWeighed(page, expected(recipe, {without: "cream 40 %"}));
      const thumb = page.getByRole("slider", {name: "Still there, g"});
      // Most of the way at once: each step is answered with all ways anew.
      await page.getByRole("spinbutton", {name: "Still there, g"}).fill("37");
      await thumb.focus();
      for (let i = 0; i < 3; i++) await thumb.press("ArrowRight");
      const found = expected(recipe, {without: "cream 40 %", left: 40});
      await expectWeighed(page, found);
    });

    test("nothing went wrong on the way", () => {
      expect(trouble).toEqual([]);
    });
  });

  test("the sentence of each way and the sheet to weigh from say the same, what is taken out too", async () => {
    // For cream the first ways only add: the tables hold a dozen others. For milk powder they take out as well.
    const {page} = await open(PAGE, "#recipe=pear&out=skimmed+milk+powder&shelf=all");
    await expect.poll(() => page.locator(".way").count()).toBeGreaterThan(4);
    const SAID_ELSEWHERE = ["skimmed milk powder", "cost of the batch"];
    const ways = page.locator(".way");
    let both = 0;
    // The first few, and the first that takes out as well as adds.
    const mixed = (await ways.locator("strong").allTextContents()).findIndex((said) =>
      /take out.*; add/i.test(said),
    );
    expect(mixed).toBeGreaterThanOrEqual(0);
    for (const n of new Set([0, 1, 2, 3, 4, mixed])) {
      const fold = ways.nth(n).locator("xpath=ancestor::details[not(@open)]/summary");
      if ((await fold.count()) > 0) await fold.click();
      await ways.nth(n).click();
      await expect.poll(() => ways.nth(n).getAttribute("aria-pressed")).toBe("true");
      const said = (await ways.nth(n).locator("strong").innerText()).replaceAll("\u00a0", " ");
      const [out = "", more = ""] = [/take out ([^;]*)/i.exec(said)?.[1], /add ([^;]*)/i.exec(said)?.[1]];
      // Every change that the sheet shows, as the sentence should have it.
      const moves = async () =>
        Object.entries(await tableOf(page, "What to weigh"))
          .filter(([name, [, , change]]) => !SAID_ELSEWHERE.includes(name) && change !== "–")
          .map(([name, [before, after, change]]) => {
            const added = change!.startsWith("+");
            const all = !added && after === "–" ? "all " : "";
            return `${added ? "add" : "out"} ${all}${change!.slice(1)} g ${added && before !== "–" ? "more " : ""}${name}`;
          })
          .sort();
      const list = (verb: string, words: string) =>
        words ? words.split(/, | and /).map((one) => `${verb} ${one}`) : [];
      await expect.poll(moves).toEqual([...list("out", out), ...list("add", more)].sort());
      if (out && more) both++;
    }
    expect(both).toBeGreaterThan(0);
    await leave(page);
  });

  test("a new allergen and a lost name are called out", async () => {
    const recipe = await demoRecipe("oat-drink-vanilla");
    const found = expected(recipe, {without: "coconut oil"});
    const n = found.alternatives.findIndex(({newAllergens}) => newAllergens.length > 0);
    expect(n).toBeGreaterThanOrEqual(0);
    const {page} = await open(PAGE, "#recipe=oat&out=coconut+oil");
    await expectWeighed(page, found, 0);
    await page.locator(".way").nth(n).click();
    await expect
      .poll(() => page.getByRole("alert").allInnerTexts())
      .toEqual([expect.stringContaining(`New allergen: ${found.alternatives[n]!.newAllergens[0]}`)]);

    const name = "UK ice cream";
    await page.locator("label", {hasText: "Sold as"}).locator("select").selectOption(name);
    const named = expected(recipe, {without: "coconut oil", legalName: nameTargets(name, recipe)});
    const broken = named.alternatives.filter((one) => nameChecks(name, one.recipe, 30).some(({met}) => !met));
    expect(broken.length).toBeGreaterThan(0);
    await expect
      .poll(() => page.locator(".way", {hasText: `Below custom for ${name}`}).count())
      .toBe(broken.length);
    await leave(page);
  });
});

describe("explore trade-offs", () => {
  const PAGE = "explore-trade-offs";
  const AXES = {x: "scoopTemperature", y: "sweetness"} as const;

  const demoBrief = (name: string) => {
    const {pantry: _, prices: __, ...brief} = JSON.parse(data(`demo/${name}-base.json`)) as BriefInput;
    return brief;
  };
  const pear = demoBrief("pear-and-ginger");
  const frontOf = (brief: BriefInput, axes: Parameters<typeof tradeOff>[1]) => {
    const front = tradeOff(readBrief(brief, pantry), axes);
    if (front.status !== "front") throw new Error(front.reason);
    return front;
  };
  const corners = (page: Page) => page.locator(".trade-chart .front circle");

  /** The little recipe beside the chart. */
  function cardOf(page: Page): Promise<Record<string, string>> {
    return page.evaluate<Record<string, string>>(
      `Object.fromEntries([...document.querySelectorAll(".card dl > div")].map((row) => [...row.children].map((cell) => cell.innerText)))`,
    );
  }

  describe("from its first line to a brief of the cook's own, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(PAGE));
    });

    afterAll(() => leave(page));

    test("opens with the library's front, at the mix where it bends", async () => {
      const front = frontOf(pear, AXES);
      await expect.poll(() => corners(page).count()).toBe(front.points.length);
      const [first, last] = [front.points[0]!, front.points.at(-1)!];
      const says = (await page.locator(".verdict").innerText()).replaceAll("\u00a0", " ");
      for (const {x, y} of [first, last]) {
        expect(says).toContain(degrees(x));
        expect(says).toContain(decimal(y, 1));
      }
      const card = await cardOf(page);
      const shown = front.points.find(
        ({x, y}) => degrees(x) === card["scoop temperature"] && decimal(y, 1) === card.sweetness,
      );
      expect(shown).toBeDefined();
      const pears = shown!.mix.amounts.find(({ingredient}) => ingredient === "pear")!;
      expect(card.pear).toBe(decimal(pears.grams, 0));
    });

    test("one number swept shows where something takes over, as the library has it", async () => {
      await page.getByLabel("Vary").selectOption("targets.sweetness.max");
      await page.getByLabel("from", {exact: true}).fill("13");
      await page.getByLabel("to", {exact: true}).fill("19");
      const values = Array.from({length: 61}, (_, i) => 13 + (6 * i) / 60);
      const points = sweep(pear, "targets.sweetness.max", values, {pantry});
      const wanted = points
        .filter(({changed, solution}) => changed && solution.status === "optimal")
        .map(({value, solution}) => [
          decimal(value, 2),
          decimal((1000 * (solution as {cost: number}).cost) / pear.batch!, 2),
        ]);
      expect(wanted.length).toBeGreaterThan(1);
      await expect
        .poll(() =>
          page.evaluate<string[][]>(
            `[...document.querySelectorAll('table[aria-label="Where something takes over"] tbody tr')].map((row) => [...row.children].slice(0, 2).map((cell) => cell.innerText))`,
          ),
        )
        .toEqual(wanted);
    });

    test("four kept mixes fit a phone", async () => {
      await resize(page, {width: 390, height: 844});
      const track = page.getByRole("slider", {name: "Along the bold line"});
      await track.focus();
      await track.press("Home");
      for (let i = 0; i < 4; i++) {
        await track.press("Enter");
        await track.press("ArrowRight");
        await track.press("ArrowRight");
      }
      await expect.poll(() => page.getByRole("button", {name: /^Drop/}).count()).toBe(4);
      await expect.poll(async () => (await tableOf(page, "What comes out")).fat?.length).toBe(5);
      expect(await page.evaluate<number>("document.documentElement.scrollWidth")).toBe(390);
      await resize(page, {width: 1280, height: 900});
      for (let left = 3; left >= 0; left--) {
        await page.getByRole("button", {name: "Drop A"}).press("Enter");
        await expect.poll(() => page.getByRole("button", {name: /^Drop/}).count()).toBe(left);
      }
    });

    test("a long run shows how far it is, stops at a press, and goes on", async () => {
      await expect.poll(() => page.locator(".trade-chart .cost rect").count()).toBeGreaterThan(100);
      // The map's own run: that of the other limits, further down, may be as long.
      const run = page.locator(".run").first();
      const session = await page.context().newCDPSession(page);
      try {
        await session.send("Emulation.setCPUThrottlingRate", {rate: 8});
        await page.locator("label", {hasText: /^Up/}).locator("select").selectOption("fat");
        // A run may end just before the key, and the next one begin: that one is stopped.
        const stop = run.getByRole("button", {name: "Stop"});
        await expect
          .poll(async () => {
            await stop.press("Enter", {timeout: 1000}).catch(() => undefined);
            return run.innerText();
          })
          .toContain("Stopped");
      } finally {
        await session.send("Emulation.setCPUThrottlingRate", {rate: 1});
        await session.detach();
      }
      await run.getByRole("button", {name: "Go on"}).click();
      await expect.poll(() => page.locator(".run:visible").count()).toBe(0);
      await expect.poll(() => page.locator(".trade-chart .cost rect").count()).toBeGreaterThan(100);
      // A press that comes when all is done changes nothing.
      await page.evaluate(`document.querySelector(".run button").click()`);
      expect(await page.locator(".trade-chart .cost rect").count()).toBeGreaterThan(100);
      expect(trouble).toEqual([]);
    });

    test("a recipe of one's own becomes a wish; hostile and broken files do no harm", async () => {
      const input = page.getByLabel("Or load your own, JSON or CSV");
      const csv =
        "ingredient,g\nwhole milk,600\ncream 40 %,150\nsucrose,120\ndextrose monohydrate,40\nskimmed milk powder,40\n";
      await input.setInputFiles(file("mine.csv", csv));
      await expect
        .poll(async () => Object.keys(await tableOf(page, "What to weigh, g")))
        .toSatisfy((names: string[]) => names.includes("skimmed milk powder") && !names.includes("pear"));
      const hostile = {
        name: HOSTILE,
        batch: 1000,
        ingredients: [
          {name: HOSTILE, composition: {sucrose: 100}, price: 1},
          {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1},
          {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 5},
        ],
        targets: {fat: {min: 5, max: 12}, sugars: {min: 10, max: 20}},
      };
      await input.setInputFiles(file("hostile.json", JSON.stringify(hostile)));
      await expect.poll(async () => Object.keys(await cardOf(page))).toContain(HOSTILE);
      expect(await page.locator("main img").count()).toBe(0);
      await input.setInputFiles(file("bad.json", JSON.stringify({...hostile, targets: {fatt: {min: 1}}})));
      await expect.poll(() => page.locator(".verdict").innerText()).toContain("fatt");
      await input.setInputFiles(file("bad.json", "[1,"));
      await expect.poll(() => page.locator(".verdict").innerText()).toContain("bad.json, line 1");
    });

    test("nothing went wrong on the way", () => {
      expect(trouble).toEqual([]);
    });
  });

  describe("two axes of the address, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(PAGE, "#x=cost&y=sweetness"));
    });

    afterAll(() => leave(page));

    test("keys walk along the line and keep mixes; side by side are the library's numbers, and the address keeps them", async () => {
      const front = frontOf(pear, {x: "cost", y: "sweetness"});
      await expect.poll(() => corners(page).count()).toBe(front.points.length);
      const track = page.getByRole("slider", {name: "Along the bold line"});
      await track.focus();
      await track.press("Home");
      await track.press("Enter");
      await track.press("End");
      await page.getByRole("button", {name: "Keep this one"}).click();
      const mixes = [front.points.at(-1)!, front.points[0]!, front.points.at(-1)!].map(({mix}) => mix);
      const wanted = async () => {
        await expect
          .poll(async () => {
            const [weighed, out, fed] = [
              await tableOf(page, "What to weigh, g"),
              await tableOf(page, "What comes out"),
              await tableOf(page, "Nutrition in 100 g"),
            ];
            return [
              weighed["cost per kg"],
              weighed.sucrose,
              out.sweetness,
              out["scoop temperature"],
              fed.protein,
            ];
          })
          .toEqual([
            mixes.map(({cost}) => decimal((1000 * cost!) / pear.batch!, 2)),
            mixes.map(({amounts}) => {
              const {grams: g, percent} = amounts.find(({ingredient}) => ingredient === "sucrose")!;
              return percent > 1e-4 ? grams(g) : "–";
            }),
            mixes.map(({shares}) => decimal(shares.sweetness!, 1)),
            mixes.map(({scoop}) => degrees(scoop.temperature!)),
            mixes.map(({amounts}) => {
              const lines = amounts.map(({ingredient, grams: g}) => ({
                ingredient: findIngredient(pantry, ingredient, ""),
                grams: g,
              }));
              const product = makeProduct("x", [baseComponent({name: "x", lines})]);
              return nutritionLabel(nutritionOf(product))
                .find(({name}) => name === "protein")!
                .text!.replace(" g", "");
            }),
          ]);
      };
      await wanted();
      await expect.poll(() => page.url()).toContain("kept=");
      await page.reload({waitUntil: "networkidle"});
      await wanted();
      await page.getByRole("button", {name: "Drop A"}).click();
      await expect.poll(async () => (await tableOf(page, "What to weigh, g"))["in all"]?.length).toBe(2);
    });

    test("a corner keeps its mix at Enter, and the key goes on from there", async () => {
      await page.getByRole("button", {name: "Drop A"}).click();
      await expect.poll(() => page.getByRole("button", {name: /^Drop/}).count()).toBe(0);
      await corners(page).first().focus();
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByRole("button", {name: "Drop A"}).count()).toBe(1);
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByRole("button", {name: "Drop B"}).count()).toBe(1);
    });

    test("a limit moved by key moves the line", async () => {
      await page.getByText("What should it be?", {exact: true}).click();
      const box = page.getByRole("spinbutton", {name: "Fat, at least, %", exact: true});
      await box.fill("9");
      const front = frontOf(
        {...pear, targets: {...pear.targets, fat: {min: 9, max: 10}}},
        {x: "cost", y: "sweetness"},
      );
      await expect
        .poll(async () => (await page.locator(".verdict .says").innerText()).replaceAll("\u00a0", " "))
        .toContain(
          `Cost ${decimal(front.points[0]!.x, 2)} per kg, sweetness ${decimal(front.points[0]!.y, 1)}`,
        );
    });

    test("nothing went wrong on the way", () => {
      expect(trouble).toEqual([]);
    });
  });

  test("the mouse finds the library's cheapest mix at a place of the map", async () => {
    const {page} = await open(PAGE, "#x=sugars&y=fat");
    const brief = readBrief(pear, pantry);
    const map = costMap(brief, {x: "sugars", y: "fat"}, GRID);
    if (map.status !== "map") throw new Error(map.reason);
    await expect.poll(() => page.locator(".trade-chart .cost rect").count()).toBeGreaterThan(100);
    // Two ticks of each axis say where a value lies.
    const scale = await page.evaluate<number[][]>(`(() => {
      const {left, top} = document.querySelector(".trade-chart").getBoundingClientRect();
      return ["x", "y"].map((axis) => [...document.querySelectorAll('.trade-chart [data-mark="' + axis + '-axis tick label"] text')]
        .flatMap((text) => {
          const [, x, y] = /translate\\(([\\d.]+),([\\d.]+)\\)/.exec(text.getAttribute("transform"));
          return [Number(text.textContent), axis === "x" ? Number(x) + left : Number(y) + top];
        }));
    })()`);
    const at = (axis: number, value: number) => {
      const [v0, p0, v1, p1] = scale[axis] as [number, number, number, number];
      return p0 + ((value - v0) / (v1 - v0)) * (p1 - p0);
    };
    const [row, column] = [18, 12];
    const cell = map.cells[row]![column]!;
    await page.locator(".trade-chart").scrollIntoViewIfNeeded();
    const moved = await page.evaluate<number>("scrollY");
    await page.mouse.move(at(0, map.x[column]!), at(1, map.y[row]!) - moved);
    await expect.poll(async () => (await cardOf(page)).cost).toBe(`${decimal(cell.cost, 2)} per kg`);
    await page.mouse.click(at(0, map.x[column]!), at(1, map.y[row]!) - moved);
    const sugar = cell.amounts.find(({ingredient}) => ingredient === "sucrose")!;
    await expect
      .poll(async () => (await tableOf(page, "What to weigh, g")).sucrose)
      .toEqual([grams(sugar.grams), grams(sugar.grams)]);
    await leave(page);
  });

  test("a property of the brief's own is weighed like any other", async () => {
    const {page} = await open(PAGE, "#brief=oat&x=CO2&y=cost");
    const front = frontOf(demoBrief("oat-drink-vanilla"), {x: "CO2", y: "cost"});
    await expect.poll(() => corners(page).count()).toBe(front.points.length);
    expect(await page.locator(".verdict h2").innerText()).toContain(decimal(front.points[0]!.x, 0));
    await leave(page);
  });

  test("a limit is never offered a range past the other limit of its target", () => {
    const fat = {path: "targets.fat.max", unit: "%", value: 9};
    expect(rangeOf({...fat, other: {min: 8.5}})).toEqual([8.5, 10.35]);
    expect(rangeOf({...fat, other: {min: 2}})).toEqual([7.65, 10.35]);
    expect(rangeOf({...fat, path: "targets.fat.min", other: {max: 9.2}})).toEqual([7.65, 9.2]);
    // Met exactly: both limits in one place.
    expect(rangeOf({...fat, other: {min: 9}})).toEqual([9, 10.35]);
    expect(rangeOf({...fat, unit: "°C", value: -0.5})).toEqual([-1.5, -0.1]);
  });

  test("an address that makes no sense opens the page all the same", async () => {
    const {page, trouble} = await open(
      PAGE,
      "#brief=none&x=constructor&y=%3Cb%3E&at=9999,9999&kept=1,2,3&kept=NaN&sweep=__proto__&sweepRange=a&sweepRange=b",
    );
    await expect.poll(() => corners(page).count()).toBeGreaterThan(1);
    expect(trouble).toEqual([]);
    await leave(page);
  });
});

describe("hostile files and addresses", () => {
  /** A property may bear the name of what every object has; each ingredient once more in a second line. */
  const named = {
    file: "constructor.json",
    text: JSON.stringify({
      ingredients: ["whole milk", "cream 40 %", "sucrose"].map((name) => ({
        name,
        properties: {constructor: 1},
      })),
      targets: {fat: {min: 5, max: 12}, sugars: {min: 10, max: 20}},
    }),
  };
  const twice = {
    file: "twice.csv",
    text: "ingredient,g\nwhole milk,500\nsucrose,60\ncream 40 %,150\nsucrose,60\n",
  };
  const loadTheBrief = (source: Source) =>
    loadBrief(source, {pantry, foods: pantry, priced: new Set<string>()});
  const PAGES = [
    {page: "replace-an-ingredient", source: recipeSource, load: loadRecipe, first: [twice]},
    {page: "explore-trade-offs", source: briefSource, load: loadTheBrief, first: [named, twice]},
  ];

  test.each(PAGES)(
    "drawn at random, $page takes them or says what is wrong, and still answers",
    async ({page: name, source, load, first}) => {
      const drawn = [...first, ...fc.sample(source, {seed: 3, numRuns: 9})];
      const hash = fc.sample(hostileAddress, {seed: 5, numRuns: 8}).join("&").slice(0, 20_000);
      const {page, trouble} = await open(name, `#x=constructor&${hash}`);
      const input = page.getByLabel("Or load your own, JSON or CSV");
      const verdict = async () => (await page.locator(".verdict").first().innerText()).replace(/\s+/g, " ");
      let refused = 0;
      for (const {file: called, text} of drawn) {
        const sent = file(called, text);
        await input.setInputFiles(sent);
        await expect
          .poll(() =>
            page.evaluate<string>("document.querySelector('select option[value=own]')?.textContent"),
          )
          .toBe(called);
        // As the page decodes it: without a mark in front, and with one sign for whatever is no character.
        const read = await load({file: called, text: new TextDecoder().decode(sent.buffer)}, pantry);
        const mistake = "mistake" in read ? read.mistake : "";
        if (mistake) refused++;
        await expect.poll(verdict).toContain(mistake.replace(/\s+/g, " "));
        expect(trouble, text).toEqual([]);
      }
      expect(refused).toBeGreaterThan(3);
      expect(refused).toBeLessThan(drawn.length - 2);
      expect(await page.locator("main img, main a[href^=javascript]").count()).toBe(0);

      await page.locator("select", {has: page.locator("option[value=hazelnut]")}).selectOption("hazelnut");
      await page.getByRole("slider", {name: "Freezer, °C"}).press("ArrowRight");
      await expect.poll(() => page.url()).toContain("freezer=-13.5");
      await expect.poll(verdict).not.toContain("Please correct");
      expect(trouble).toEqual([]);
      await leave(page);
    },
  );
});
