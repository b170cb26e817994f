import {readFileSync} from "node:fs";
import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {
  baseComponent,
  cookDown,
  followProcess,
  makeProduct,
  planRipple,
  priceForMargin,
  type Process,
  type Product,
  productCost,
  productDensity,
  type RippleBrief,
  rippleComponent,
  rippleInBase,
  scaleProduct,
} from "../../lib/kitchen.ts";
import {ingredientList, nutritionLabel, nutritionOf} from "../../lib/label.ts";
import {type RecipeLine, recipeComposition, recipeMass} from "../../lib/index.ts";
import {decimal, degrees, grams} from "../../lib/core/format.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {demoPantry} from "../support/pantry.ts";
import {leave, type Opened, resize, sharedBrowser, visit} from "../support/visit.ts";

const {address} = inject("site");
let browser: Browser;

beforeAll(async () => {
  browser = await sharedBrowser(new URL(address).origin);
});

/** Opens one of the two notebooks with the network cut off. */
async function open(name: "plan-a-ripple" | "batch-day", state: Readonly<Record<string, string>> = {}) {
  const hash = new URLSearchParams(state).toString();
  const opened = await visit(browser, `${address}${name}.html${hash && `#${hash}`}`, new URL(address).origin);
  // The network can be quiet before the last cell has run.
  await opened.page.locator(".verdict").first().waitFor();
  await opened.page.locator(".minding").first().waitFor();
  return opened;
}

const lemma = (name: string) => findIngredient(demoPantry, name, name);

/** The demonstration's ripple as its file has it, for the library. */
const demo = JSON.parse(readFileSync("datasets/demo/plum-ripple.json", "utf8"));
function rippleWish(changes: Partial<RippleBrief> = {}): RippleBrief {
  return {
    name: "Ripple",
    ingredients: demo.ingredients.map((entry: string | {name: string; min: number; max: number}) => {
      const {name, ...limits} = typeof entry === "string" ? {name: entry} : entry;
      const fruit = name === "plum";
      return {
        ingredient: lemma(name),
        ...limits,
        fruit,
        ...(fruit && {sievedPercent: demo.sievedPercent}),
      };
    }),
    brix: demo.brix,
    hardPhase: {at: -14, ...demo.hardPhase},
    fruit: demo.fruit,
    sweetness: demo.sweetness,
    ...changes,
  };
}

/** Texts of a table's cells by the heading of the row. */
async function tableOf(page: Page, name: string): Promise<Record<string, string[]>> {
  // Each table is drawn by a cell of its own: the last may come late.
  await page.locator(`table[aria-label="${name}"]`).first().waitFor();
  const rows = await page.evaluate<
    [string, string[]][]
  >(`[...document.querySelectorAll('table[aria-label="${name}"] :is(tbody, tfoot) tr')]
    .filter((row) => row.querySelector("td"))
    .map((row) => [(row.querySelector("th").firstChild.textContent.trim() || row.querySelector("th").textContent.trim()), [...row.querySelectorAll("td")].map((cell) => cell.textContent.trim())])`);
  return Object.fromEntries(rows);
}

/** A recipe of the page's own text, one `123 g name` a line. */
async function typedRecipe(page: Page, label: RegExp): Promise<RecipeLine[]> {
  const text = await page.getByLabel(label).inputValue();
  return text.split("\n").map((line) => {
    const [, amount, name, price] = /^([\d.]+) g (.+?)(?: @ ([\d.]+))?$/.exec(line)!;
    return {ingredient: {...lemma(name!), ...(price && {price: Number(price)})}, grams: Number(amount)};
  });
}

/** The recipe in steps of a scale of 1 g, of 0.1 g below 20 g. */
function weighed(product: Product): Product {
  const components = product.components.map((component) => {
    const lines = component.recipe.lines.map((line) => {
      const step = line.grams < 20 ? 0.1 : 1;
      return {...line, grams: Math.round(line.grams / step) * step};
    });
    const recipe = {...component.recipe, lines};
    return {
      ...component,
      recipe,
      grams: (component.grams * recipeMass(recipe)) / recipeMass(component.recipe),
    };
  });
  const total = components.reduce((sum, component) => sum + component.grams, 0);
  return makeProduct(
    product.name,
    components.map((component) => ({...component, percent: (100 * component.grams) / total})),
  );
}

/** Pages of a PDF. */
const pagesOf = (pdf: Buffer) => pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length;

/** Text with plain blanks, whatever keeps numbers and units together on the page. */
const plain = (text: string) => text.replaceAll("\u00a0", " ");

const verdict = async (page: Page) => plain(await page.locator(".verdict").innerText());

describe("a cook's day in the demonstration", () => {
  let opened: Opened;
  let page: Page;

  beforeAll(async () => {
    opened = await open("plan-a-ripple");
    ({page} = opened);
  });

  afterAll(() => leave(page));

  test("the ripple opens with the demonstration, and shows the library's numbers", async () => {
    const plan = planRipple(rippleWish());
    if (plan.status !== "optimal") throw new Error(`the demonstration is ${plan.status}`);
    const pot = await tableOf(page, "What goes into the pot");
    for (const {ingredient, grams: g} of plan.recipe.lines) {
      expect(pot[ingredient.name]).toEqual([grams(g), decimal((g * ingredient.price!) / 1000, 2)]);
    }
    expect(pot["cooked ripple"]![0]).toBe(grams(plan.cooked.grams));
    const base = recipeComposition({name: "", lines: await typedRecipe(page, /^The base, one/)});
    const sides = rippleInBase(base, plan.cooked.composition, -14);
    const table = await tableOf(page, "Side by side");
    for (const [i, side] of [sides.ripple, sides.base].entries()) {
      expect(table["strength"]![i]).toBe(decimal(side.brix, 1));
      expect(table["freezing point"]![i]).toBe(degrees(side.freezingPoint!));
      expect(table["hard phase: ice and solid fat"]![i]).toBe(decimal(side.hardPhase, 1));
      expect(table["from the freezer"]![i]).toBe(side.verdict);
    }
    expect(await verdict(page)).toContain("water moves from the base into the ripple");
    // Least, most and price of an ingredient stand side by side.
    const tops = await page.evaluate<number[]>(
      `[...document.querySelectorAll(".chosen li:first-child input")].map((box) => Math.round(box.getBoundingClientRect().top))`,
    );
    expect(tops).toEqual([tops[0], tops[0], tops[0]]);
    expect(await page.locator('svg[aria-label^="Water that is ice"] g[data-mark="line"] path').count()).toBe(
      2,
    );
  });

  test("less sweetness by hand moves the pot, and the batch day takes the new ripple", async () => {
    await page.getByRole("spinbutton", {name: "Sweetness, at most, sucrose = 100"}).fill("43");
    const plan = planRipple(rippleWish({sweetness: {max: 43}}));
    if (plan.status !== "optimal") throw new Error(`the ripple is ${plan.status}`);
    const syrup = plan.recipe.lines.find(({ingredient}) => ingredient.name === "glucose syrup 42 DE")!;
    await expect
      .poll(async () => (await tableOf(page, "What goes into the pot"))["glucose syrup 42 DE"]?.[0])
      .toBe(grams(syrup.grams));
    expect(await page.getByRole("button", {name: "Copy a link"}).isVisible()).toBe(true);
    await page.getByRole("link", {name: "Take it to the batch day"}).click();
    await page.getByRole("heading", {name: "Batch day", level: 1}).waitFor();
    await page.locator(".leaf iframe").waitFor();
    const pot = await typedRecipe(page, /^What goes into the ripple/);
    expect(pot.map(({ingredient, grams: g}) => [ingredient.name, g])).toEqual(
      plan.recipe.lines.map(({ingredient, grams: g}) => [
        ingredient.name,
        Number(g.toFixed(g >= 100 ? 0 : 1)),
      ]),
    );
  });

  test("weights, heat, money, nutrition and label of the day are the library's", async () => {
    const [base, pot] = [
      await typedRecipe(page, /^The base, one/),
      await typedRecipe(page, /^What goes into the ripple/),
    ];
    const sauce = {name: "plum ripple", lines: pot};
    const cookedGrams = Number(await page.getByLabel("Weight of the cooked ripple, g").inputValue());
    const cooked = cookDown(sauce, {cookedGrams}, {sieved: [{ingredient: "plum", percent: 4}]});
    const whole = makeProduct("day", [
      baseComponent({name: "Base", lines: base}, 85),
      rippleComponent(sauce, 15, cooked),
    ]);
    const to = {tubs: 10, tubMillilitres: 500, overrun: 30, loss: 3};
    const product = weighed(scaleProduct(whole, to, {fillLimit: 1500}).product);
    const mass = product.components.reduce((sum, component) => sum + component.grams, 0);
    const scaled = scaleProduct(product, {grams: mass}, {fillLimit: 1500});
    expect(scaled.runs).toBe(3);

    // One name stands in base and ripple: their weights are compared in the order of the page.
    const cells = await page.evaluate<
      string[][]
    >(`[...document.querySelectorAll('table[aria-label="What to weigh, g"] :is(tbody, tfoot) tr')]
      .filter((row) => row.querySelector("td")).map((row) => [row.cells[0].textContent.trim(), row.cells[1].textContent.trim(), row.cells[2].textContent.trim()])`);
    const wanted = product.components.flatMap(({recipe, churned}) =>
      recipe.lines.map((line) => [
        line.ingredient.name,
        grams(line.grams),
        churned ? grams(line.grams / scaled.runs) : "",
      ]),
    );
    expect(cells.sort()).toEqual(wanted.sort());

    const cost = productCost(product, {
      grams: mass,
      overrun: 30,
      tubMillilitres: 500,
      portionMillilitres: 120,
    });
    expect(await tableOf(page, "What it costs")).toEqual(
      Object.fromEntries(
        (
          [
            ["a kilogram", cost.perKilogram],
            ["a litre", cost.perLitre],
            ["a tub of 500 ml", cost.perTub],
            ["a portion of 120 ml", cost.perPortion],
          ] as const
        ).map(([name, money]) => [
          name,
          [money, priceForMargin(money, 70), priceForMargin(money, 70, 20)].map((value) => decimal(value, 2)),
        ]),
      ),
    );

    const portion = nutritionLabel(nutritionOf(product, 120 * productDensity(product, 30)));
    expect(await tableOf(page, "Nutrition")).toEqual(
      Object.fromEntries(
        nutritionLabel(nutritionOf(product)).map(({name, text}, i) => [
          name,
          [text ?? "not known", portion[i]!.text ?? "not known"],
        ]),
      ),
    );

    const list = ingredientList(product, ["pear", "plum"]);
    const label = page.locator(".label-words").first();
    // Name and promise come along from the ripple's page.
    expect(await page.getByLabel(/^What the name promises/).inputValue()).toBe("pear, plum");
    expect(await page.getByLabel("Name", {exact: true}).inputValue()).toBe("pear plum ice cream");
    await page.getByLabel(/^What the name promises/).fill("pear");
    await page.getByLabel(/^What the name promises/).fill("pear, plum");
    await expect
      .poll(() => label.innerText())
      .toBe(`Ingredients: ${list.map(({text}) => text).join("")}.`.replaceAll("\u00a0", " "));
    expect(await label.locator("b.allergen").allInnerTexts()).toEqual(
      list.filter(({emphasised}) => emphasised).map(({text}) => text),
    );

    // The sticker is the label's list on a leaf of its own size, and follows its boxes.
    const stuck = () =>
      page
        .frameLocator("iframe.sticker")
        .locator("svg")
        .textContent()
        .then((text) => text ?? "");
    const flat = (text: string) => text.replaceAll(/\s+/g, "");
    await expect
      .poll(async () => flat(await stuck()))
      .toContain(flat(`Ingredients: ${list.map(({text}) => text).join("")}.`));
    expect(await page.frameLocator("iframe.sticker").locator("svg").getAttribute("viewBox")).toBe(
      "0 0 90 70",
    );
    await page.locator("summary", {hasText: "What goes on the sticker?"}).click();
    await page.getByLabel("Best before, as 2027-01-31; empty for none").fill("2027-03-31");
    await expect.poll(async () => flat(await stuck())).toContain("Bestbefore31March2027");
    await page.getByLabel("Best before, as 2027-01-31; empty for none").fill("");

    const names = (...groups: string[]) =>
      base
        .map(({ingredient}) => ingredient)
        .filter(({group}) => groups.includes(group!))
        .map(({name}) => name);
    // Raw fruit and flavourings go in cold unless the cook says otherwise.
    const [hot, late] = [names("dairy"), names("fruit", "flavour")];
    const process: Process = {
      steps: [
        {heat: hot, to: 90, into: "hot milk"},
        {
          pour: ["hot milk"],
          onto: base
            .map(({ingredient}) => ingredient.name)
            .filter((name) => !hot.includes(name) && !late.includes(name)),
          into: "mix",
        },
        {heat: ["mix"], to: 82, holdSeconds: 30, into: "mix"},
        {cool: ["mix"], to: 4, into: "mix"},
        {pour: late, onto: ["mix"], into: "whole mix"},
        {cool: ["whole mix"], to: 4},
      ],
    };
    const report = followProcess(product.components[0]!.recipe, process);
    const temperatures = await page.evaluate<string[][]>(
      `[...document.querySelectorAll('table[aria-label="Heating"] tbody tr')].map((row) => [row.cells[1].textContent, row.cells[2].textContent])`,
    );
    expect(temperatures).toEqual(
      report.steps.map(({before, after}) => [degrees(before, 0), degrees(after, 0)]),
    );
    expect(await verdict(page)).toContain("Pasteurised: meets the UK (79.4 °C, 15 s)");
  });

  test("the sheet holds the day, fits a phone, and the button prints it alone on one page of A4", async () => {
    const frame = page.frameLocator(".leaf iframe");
    const weights = await tableOf(page, "What to weigh, g");
    const text = plain(await frame.locator("body").innerText());
    for (const name of Object.keys(weights)) expect(text).toContain(name);
    expect(text).toContain(weights["whole milk"]![0]);
    expect(text).toContain("Follow your local code; this is not licensed advice.");
    expect(text).toContain("hot sugar");

    await resize(page, {width: 390, height: 844});
    await expect.poll(() => page.evaluate<number>("document.documentElement.scrollWidth")).toBe(390);
    await resize(page, {width: 1280, height: 900});
    // Another width draws the sheet anew, a moment later: it has settled once the same frame is there twice.
    await expect
      .poll(
        () =>
          page.evaluate<boolean>(
            `(() => { const frame = document.querySelector(".leaf iframe"); const same = frame?.seen === true; if (frame) frame.seen = true; return same; })()`,
          ),
        {interval: 500},
      )
      .toBe(true);

    await page.evaluate("window.print = () => (window.printed = true)");
    await page.getByRole("button", {name: "Print the sheet"}).click();
    expect(await page.evaluate("window.printed")).toBe(true);
    const pdf = await page.pdf({preferCSSPageSize: true});
    expect(pagesOf(pdf)).toBe(1);
    // A4 in points (ISO 216: 210 x 297 mm), as Chromium rounds it.
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/
      .exec(pdf.toString("latin1"))!
      .map(Number);
    expect(Math.abs(width! - 595.3)).toBeLessThan(1);
    expect(Math.abs(height! - 841.9)).toBeLessThan(1);
    // Nothing of the sheet is cut off, and nothing else is on the page.
    // Writing the PDF has ended the printing, so it begins anew.
    await page.getByRole("button", {name: "Print the sheet"}).click();
    await page.emulateMedia({media: "print"});
    expect(await page.locator("h1:visible, .verdict:visible, .sheet:visible").count()).toBe(0);
    const [needs, has] = await frame
      .locator("html")
      .evaluate((root) => [
        (root as unknown as {scrollHeight: number}).scrollHeight,
        (root as unknown as {clientHeight: number}).clientHeight,
      ]);
    expect(needs!).toBeLessThanOrEqual(has!);
    await page.emulateMedia({media: null});
    await page.evaluate("dispatchEvent(new Event('afterprint'))");
    expect(await page.locator(".verdict").isVisible()).toBe(true);
    // Printed from the browser's own menu, the whole day is on paper, the sheet last.
    expect(pagesOf(await page.pdf({preferCSSPageSize: true}))!).toBeGreaterThan(1);
  });

  test("the sheet is saved as page, Markdown and CSV", async () => {
    for (const [name, sign] of [
      ["a page", "<!doctype html>"],
      ["Markdown", "# pear plum ice cream"],
      ["a table (CSV)", "kind,section,text,grams"],
    ] as const) {
      const href = await page
        .getByRole("link", {name, exact: true})
        .evaluate((link) => (link as unknown as {href: string}).href);
      expect(
        await page.evaluate<string>(`fetch(${JSON.stringify(href)}).then((answer) => answer.text())`),
      ).toContain(sign);
    }
  });

  test("nothing went wrong on the way, and nothing reached for the network", () => {
    expect(opened.trouble).toEqual([]);
  });
});

describe("plan a ripple", () => {
  test("a ripple too strong to freeze bleeds, and the page says where the water goes", async () => {
    const {page, trouble} = await open("plan-a-ripple", {brix: "74..78", hardPhase: "..", sweetness: ".."});
    const text = await verdict(page);
    expect(text).toContain("bleeds");
    expect(text).toContain("it goes on drawing water from the base");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("what cannot be met is shown by its nearest ripple, with what it misses", async () => {
    const {page} = await open("plan-a-ripple", {brix: "30..35", hardPhase: "..20"});
    const text = await verdict(page);
    expect(text).toContain("No ripple meets all of this");
    expect(text).toMatch(/Missed/);
    await leave(page);
  });

  test("a soft ripple in a hard base is not said to let the spoon through", async () => {
    const {page, trouble} = await open("plan-a-ripple", {
      base: "900 g whole milk\n100 g sugar",
      freezer: "-18",
    });
    const told = plain(await page.locator(".verdict").first().innerText());
    expect(told).toMatch(
      /Spoon\s+At −18 °C it is [\d.]+ times as hard as ice cream that scoops, the base [\d.]+ times\. The spoon goes through the ripple, but the base is hard\./i,
    );
    expect(told).not.toContain("so the spoon goes through");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("boiled down to a weight, that weight comes out; the address keeps it", async () => {
    const {page} = await open("plan-a-ripple", {
      brix: "40..70",
      hardPhase: "..",
      sweetness: "..",
      fruit: "..",
    });
    await page.getByLabel("Boil it").selectOption({label: "down to a weight"});
    await page.getByLabel("Weight of the cooked ripple, g").fill("1400");
    const cooked = async () => (await tableOf(page, "What goes into the pot"))["cooked ripple"]?.[0];
    await expect.poll(cooked).toBe("1400");
    await expect.poll(() => page.url()).toContain("cooked=1400");
    await page.reload({waitUntil: "networkidle"});
    await expect.poll(cooked).toBe("1400");
    await leave(page);
  });

  test("an ingredient of the base that nobody knows is answered by name; the cautions stay, and the pot", async () => {
    const {page, trouble} = await open("plan-a-ripple", {base: "500 g whole mlk"});
    expect(await verdict(page)).toMatch(/whole mlk.*Did you mean .*milk/s);
    expect(await page.locator(".minding").innerText()).toContain("this is not licensed advice");
    expect(Object.keys(await tableOf(page, "What goes into the pot"))).toContain("plum");
    expect(trouble).toEqual([]);
    await leave(page);
  });
});

describe("batch day", () => {
  test("milk scalded and poured over yolks is told what it reaches, and that this is no published pair", async () => {
    const {page} = await open("batch-day", {way: "scald"});
    const text = await verdict(page);
    // Not the few degrees of the whole, once the pear is stirred in.
    expect(text).toMatch(/The mix gets to about [67]\d °C/);
    expect(text).toContain("Not enough by itself to pasteurise");
    expect(await page.locator(".minding").innerText()).toContain("Raw egg may carry salmonella");
    await leave(page);
  });

  test("rhubarb that is boiled first does not make a mix at 65 °C a pasteurised one", async () => {
    const base =
      "500 ml whole milk\n250 g cream 36 %\n5 egg yolks\n130 g sugar\n300 g rhubarb\n200 g greek yoghurt";
    const {page} = await open("batch-day", {way: "pot", to: "65", hold: "0", base});
    expect(await verdict(page)).toMatch(/The mix gets to about 65 °C\. Not enough by itself to pasteurise/);
    expect(await page.locator(".minding").innerText()).toMatch(
      /Whole milk, cream 36.% ?: use only what was pasteurised when bought/,
    );
    await leave(page);
  });

  describe("what cannot be", () => {
    let opened: Opened;
    beforeAll(async () => {
      opened = await open("batch-day");
    });
    afterAll(() => leave(opened?.page));

    test.each([
      ["a tub of 0 ml", "One tub holds, ml", "0", /One tub, ml: out of range \(it is 0\)/],
      [
        "an egg of 5 kg",
        "One egg yolk weighs, g",
        "5000",
        /egg yolk: unit: out of range \(it is 5000\).*3 to 250 g/s,
      ],
      [
        "a heat step below the mix's temperature",
        "Mix heated to, °C",
        "20",
        /Step 3 of the heating: a heat step below the mix's temperature, which is \d/,
      ],
      ["two and a half tubs", "Tubs, whole", "2.5", /Tubs: not a whole number/],
      ["an empty overrun", "Overrun, %", "", /Overrun, %: .*it is empty/],
      [
        "a word for an amount",
        "The base, one ingredient a line",
        "some whole milk",
        /some whole milk: how much whole milk\? No amount stands in the line/,
      ],
      [
        "a ripple that gains weight in the pot",
        "Weight of the cooked ripple, g",
        "9000",
        /Weight of the cooked ripple, g: .*\(it is 9000\)/,
      ],
    ])("%s is answered in words, and mended by hand", async (_, label, value, words) => {
      const {page, trouble} = opened;
      const box = page.getByLabel(label, {exact: true});
      const before = await box.inputValue();
      await box.fill(value);
      await expect.poll(() => verdict(page)).toMatch(words);
      expect(await page.locator(".minding").innerText()).toContain("this is not licensed advice");
      await expect.poll(() => page.locator(".leaf").count()).toBe(0);
      await box.fill(before);
      await expect.poll(() => verdict(page)).toContain("10 tubs of 500 ml");
      expect(trouble).toEqual([]);
    });
  });

  test("eggs are counted, spoons are read, and a pack says how many to open and what is left", async () => {
    const base = "500 g whole milk\n4 egg yolk\n2 tablespoons honey\n100 g sucrose @ 1.50 for 1000 g";
    const {page} = await open("batch-day", {
      base,
      share: "0",
      how: "grams",
      grams: "1000",
      unit: "egg yolk:20",
      named: "",
    });
    const honey = lemma("honey");
    const total = 500 + 4 * 20 + 2 * honey.portions!.tablespoon! + 100;
    const weights = await tableOf(page, "What to weigh, g");
    expect(Number(weights["egg yolk"]![0])).toBeCloseTo(Math.round(80_000 / total), 9);
    const spent = await tableOf(page, "Where the money goes");
    const sugar = Math.round(100_000 / total);
    expect(spent["sucrose"]).toEqual([
      grams(sugar),
      decimal((sugar * 1.5) / 1000, 2),
      "1",
      grams(1000 - sugar),
    ]);
    await leave(page);
  });

  test("eggs and yolks each weigh their own, spirits go in cold, and the sheet rests and hardens", async () => {
    const base = "500 g whole milk\n200 g double cream\n3 eggs\n2 egg yolks\n150 g caster sugar\n30 g rum";
    const {page, trouble} = await open("batch-day", {
      base,
      pot: "",
      share: "0",
      how: "grams",
      // 3 eggs of 50 g and 2 yolks of 17 g: the masses of the shelf.
      grams: String(500 + 200 + 150 + 34 + 150 + 30),
      named: "rum, mango",
    });
    expect(await page.getByLabel("One whole egg weighs, g").inputValue()).toBe("50");
    expect(await page.getByLabel("One egg yolk weighs, g").inputValue()).toBe("17");
    const weights = await tableOf(page, "What to weigh, g");
    expect(weights["whole egg"]).toEqual(["150", "3 × 50 g"]);
    expect(weights["egg yolk"]).toEqual(["34.0", "2 × 17 g"]);
    const steps = plain(await page.locator('table[aria-label="Heating"]').innerText());
    expect(steps).toMatch(/Stir spirit 40 % vol into the cold mix/);
    const leaf = plain(await page.frameLocator(".leaf iframe").locator("body").innerText());
    expect(leaf).toContain("Let it rest covered at 4 °C for 4 to 12 hours");
    expect(leaf).toMatch(/Leave it there until the core is at [-−]15 °C/);
    // The promise knows the recipe's names; what it does not hold stops nothing.
    await page.locator(".label-words").first().waitFor();
    const label = await page.locator(".label-words").allInnerTexts();
    expect(label.join(" ")).toMatch(/rum 2\.8 %/);
    expect(label.join(" ")).toContain("“mango”");
    await page.getByLabel("Heated all the same: names, with commas").fill("rum");
    await expect
      .poll(() => page.locator('table[aria-label="Heating"]').innerText())
      .not.toContain("into the cold mix");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("rhubarb is cooked first, yoghurt goes in cold and is to be bought pasteurised", async () => {
    const base = "500 g whole milk\n200 g cream 36 %\n200 g greek yoghurt\n200 g sugar\n300 g rhubarb";
    const {page, trouble} = await open("batch-day", {
      base,
      pot: "",
      share: "0",
      named: "",
      how: "grams",
      grams: "1400",
    });
    const steps = plain(await page.locator('table[aria-label="Heating"]').innerText());
    expect(steps).toMatch(
      /Heat rhubarb to 95 °C, hold 10 min.*Heat whole milk.*Stir greek yoghurt and the cooked fruit into the cold mix/s,
    );
    expect(steps).toContain("What goes in cold is not pasteurised by this heat");
    // 200 g of sugar are a cup.
    expect((await tableOf(page, "What to weigh, g"))["sucrose"]).toEqual(["200", "1 cup"]);
    const told = plain(await page.locator(".verdict").first().innerText());
    expect(told).toContain("greek yoghurt: stirred in cold, not pasteurised by this heat, so buy what was.");
    expect(told).not.toContain("rhubarb: stirred in cold");
    await page.getByLabel("Heated all the same: names, with commas").fill("rhubarb, greek yoghurt");
    await expect
      .poll(async () => plain(await page.locator('table[aria-label="Heating"]').innerText()))
      .not.toContain("into the cold mix");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  describe("a base typed line by line", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      const base = "500 g whole milk\n400 ml double cream\n100 g clotted cream\n120 g sugar\n20 g mlik powdr";
      ({page, trouble} = await open("batch-day", {base, pot: "", share: "0", named: ""}));
    });

    afterAll(() => leave(page));

    test("a gap costs only what depends on it: density, price, a name nobody knows", async () => {
      const text = await verdict(page);
      // 48 % fat and 4.7 % other solids by Goff's formula: 0.98 g a ml.
      expect(text).toMatch(/400 ml double cream: taken as 39[0-9] g, 0\.98 g a ml/);
      expect(text).toMatch(
        /20 g mlik powdr: no ingredient called “mlik powdr” is known here.*Did you mean .*milk powder/,
      );
      expect(text).not.toContain("JSON");
      expect(text).toContain("No price for clotted cream");
      expect(text).toContain("Pasteurised: meets the UK");
      expect(Object.keys(await tableOf(page, "What to weigh, g"))).toContain("cream 48 %");
      expect(Object.keys(await tableOf(page, "Where the money goes"))).toContain("whole milk");
      const safety = await page.locator(".minding").innerText();
      expect(safety).toContain("Safety");
      expect(safety).toContain("Contains milk");
      expect(safety).toContain("not understood");
      // Without one of its lines there is neither label nor sheet to work by.
      expect(await page.locator(".leaf").count()).toBe(0);
      expect(await page.locator(".label-words").count()).toBe(0);
      expect(trouble).toEqual([]);
    });

    test("a selling price at invented prices says so in its own sentence, until all are typed", async () => {
      await page.getByLabel(/^The base, one/).fill("500 g whole milk\n100 g sugar");
      await expect
        .poll(() => verdict(page))
        .toMatch(/A tub sells at [\d.]+ before tax .* %, at invented prices/);
      const slanted = page.locator('table[aria-label="What it costs"] .invented');
      await expect.poll(() => slanted.count()).toBeGreaterThan(0);
      await page.getByLabel(/^The base, one/).fill("500 g whole milk @ 1.05\n100 g sugar @ 1.10 for 1000 g");
      await expect.poll(() => verdict(page)).not.toContain("invented");
      await expect.poll(() => slanted.count()).toBe(0);
      expect(trouble).toEqual([]);
    });
  });
});

describe("a ripple with a gap", () => {
  test("without a fruit the page asks for one, in its own words", async () => {
    const {page, trouble} = await open("plan-a-ripple", {use: "500..@ sucrose"});
    await expect.poll(() => verdict(page)).toContain("Choose a fruit");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("without a size it asks for one, and for a price by name", async () => {
    const {page} = await open("plan-a-ripple", {use: "..@ plum"});
    expect(await verdict(page)).toContain("Give plum an “at least”, or boil it down to a weight");
    expect(await verdict(page)).not.toContain("`");
    await leave(page);
  });
});
