import {spawnSync} from "node:child_process";
import {readFileSync} from "node:fs";
import {pathToFileURL} from "node:url";
import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {
  balance,
  type BriefInput,
  pantryOf,
  readBrief,
  reliability,
  stockedPantry,
  weighable,
} from "../../lib/index.ts";
import {readPantryCsv, readPricesCsv} from "../../lib/files.ts";
import {decimal, degrees, grams} from "../../lib/core/format.ts";
import {leave, type Opened, sharedBrowser, visit, type Visiting} from "../support/visit.ts";

const DESIGN = "design-a-flavour.html";

const demo = JSON.parse(readFileSync("datasets/demo/pear-base.json", "utf8")) as BriefInput;
const shelf = readFileSync("datasets/ingredients.csv", "utf8");
const prices = readFileSync("datasets/demo/prices.csv", "utf8");
const pantry = stockedPantry(pantryOf(readPantryCsv(shelf)), readPricesCsv(prices));

const site = inject("site");
const {origin} = new URL(site.address);
let browser: Browser;

beforeAll(async () => {
  browser = await sharedBrowser(origin);
});

/** How a page is opened: its address after the name, and what else is served to it. */
interface Visit extends Visiting {
  readonly hash?: string;
}

/** Opens a notebook of the site with the network cut off. */
function open(name: string, {hash = "", ...how}: Visit = {}): Promise<Opened> {
  return visit(browser, `${site.address}${name}${hash}`, origin, how);
}

/** A table of the page, by its name: the texts of each row's cells under the row's heading. Read at one moment. */
async function tableOf(page: Page, name: string): Promise<Map<string, string[]>> {
  const rows = await page.evaluate<[string, string[]][]>(`
    [...(document.querySelector('table[aria-label="${name}"]')?.querySelectorAll("tbody tr, tfoot tr") ?? [])].map((row) => [
      row.querySelector("th").innerText.split(/[\\n,]/)[0],
      [...row.querySelectorAll("td")].map((cell) => cell.innerText),
    ])`);
  return new Map(rows);
}

/** The same brief through the library, as the page should show it. */
function expected(targets: BriefInput["targets"]) {
  const answer = balance({...demo, targets: {...demo.targets, ...targets}}, {pantry});
  if (answer.status !== "optimal") throw new Error(`the demonstration is ${answer.status}`);
  const mixes = [answer, ...answer.candidates];
  return {
    answer,
    weights: answer.amounts.map(
      ({ingredient}, i) =>
        [
          ingredient,
          mixes.map((mix) => (mix.amounts[i]!.percent > 1e-4 ? grams(mix.amounts[i]!.grams) : "–")),
        ] as const,
    ),
    mixes,
  };
}

/** Waits until every number of the weighing sheet and the main ones of the other table are the library's. */
async function expectShown(page: Page, targets: BriefInput["targets"]): Promise<void> {
  const {weights, mixes} = expected(targets);
  const wanted = {
    ...Object.fromEntries(weights.filter(([, cells]) => cells.some((cell) => cell !== "–"))),
    "cost of the batch": mixes.map(({cost}) => decimal(cost!, 2)),
    fat: mixes.map(({shares}) => decimal(shares.fat!, 1)),
    sweetness: mixes.map(({shares}) => decimal(shares.sweetness!, 1)),
    "freezing point": mixes.map(({freezing}) => degrees(freezing.initialFreezingPoint!, 2)),
    "scoop temperature": mixes.map(({scoop}) => degrees(scoop.temperature!)),
  };
  await expect
    .poll(async () => {
      const shown = new Map([
        ...(await tableOf(page, "What to weigh, g")),
        ...(await tableOf(page, "What comes out")),
      ]);
      return Object.fromEntries(Object.keys(wanted).map((row) => [row, shown.get(row)]));
    })
    .toEqual(wanted);
}

const firstCurve = (page: Page) =>
  page.locator('svg[aria-label^="Water that is ice"] g[data-mark="line"] path').first().getAttribute("d");

test("npm start prints the balanced demonstration, finds a free port and says where the notebooks are", async () => {
  const {answer} = expected({});
  expect(site.printed).toContain(demo.name);
  expect(site.printed).toContain(`cost ${decimal(answer.cost!, 2)}`);
  expect(site.address).not.toContain(":4173/");
  expect((await fetch(site.address)).status).toBe(200);
});

test("a notebook written as one file opens from the disk; one that does not exist is named", async () => {
  const pages = (name: string) =>
    spawnSync(process.execPath, ["--import", "tsx", "notebooks/kit/site/pages.ts", name], {
      env: {...process.env, NODE_ENV: "production"},
      encoding: "utf8",
    });
  expect(pages("design")).toMatchObject({
    status: 1,
    stderr: expect.stringMatching(/no notebook “design”.* batch-day, .*design-a-flavour/),
  });
  const run = pages("design-a-flavour");
  expect(run.status, run.stderr).toBe(0);
  const {page, trouble} = await visit(
    browser,
    pathToFileURL(`dist/notebooks-pages/notebooks/${DESIGN}`).href,
    origin,
  );
  await expectShown(page, {});
  expect(trouble).toEqual([]);
  await leave(page);
}, 120_000);

test("design a flavour also shows what to weigh and count, and how often the targets hold in a kitchen that is off", async () => {
  const {page, trouble} = await open(DESIGN, {hash: "#scale-off=3&fat-off=1"});
  const brief = readBrief(demo, pantry);
  const mix = balance(demo, {pantry});
  if (mix.status !== "optimal") throw new Error(mix.status);
  const exact = mix.amounts.map((amount) => amount.grams);
  await page.getByText("The cheapest mix for the scale").scrollIntoViewIfNeeded();
  await expect.poll(async () => (await tableOf(page, "Amounts for the scale")).size).toBe(11);
  const shown = await tableOf(page, "Amounts for the scale");
  const {amounts, counts} = weighable(brief, exact);
  for (const {ingredient, grams: mass} of amounts) {
    expect(shown.get(ingredient)?.[1]?.replace(/\s/g, "")).toBe(String(mass));
  }
  expect(shown.get("egg yolk")?.[2]).toBe(String(counts["egg yolk"]));
  await page.getByText("How often it turns out").scrollIntoViewIfNeeded();
  const dairy = ["whole milk", "cream 40 %"];
  const spread = {parts: new Map(dairy.map((name) => [name, {milkFat: 1}])), weighing: 3};
  const {targets} = reliability(brief, exact, spread, {batches: 400});
  await expect
    .poll(async () =>
      [...(await tableOf(page, "How often each target holds")).values()].map(([held]) => held).sort(),
    )
    .toEqual(targets.map(({holds}) => `${decimal(100 * holds, 0)} %`).sort());
  expect(trouble).toEqual([]);
  await leave(page);
}, 60_000);

describe("design a flavour, one visit", () => {
  let page: Page;
  let trouble: string[];

  beforeAll(async () => {
    ({page, trouble} = await open(DESIGN));
  });

  afterAll(() => leave(page));

  test("opens with the demonstration, and shows the library's numbers", async () => {
    await expectShown(page, {});
  });

  test("at invented prices, and says so", async () => {
    expect(await page.locator(".verdict").innerText()).toContain("at invented prices, none of them yours");
    expect(await page.locator(".verdict h2 .invented").innerText()).toContain("per kg");
  });

  test("the search leaves only what goes by that name, whichever name it is, whole or in part", async () => {
    await page.getByText("What may go in? 10 chosen").click();
    await page.getByText(/^Choose from the \d+ ingredients/).click();
    const search = page.getByLabel("Find an ingredient");
    const found = async (typed: string) => {
      await search.fill(typed);
      return page.locator(".finder label:visible span").allInnerTexts();
    };
    expect(await found("double cream")).toEqual([
      "cream 48 % double cream",
      "jersey cream 48 % jersey double cream",
      "plant double cream 36 %",
    ]);
    expect(await found("caster")).toEqual(["sucrose caster sugar"]);
    expect(await found("vodka")).toEqual(["spirit 40 % vol vodka"]);
    expect(await found("vodca")).toContain("spirit 40 % vol vodka");
    expect(await found("raspberries")).toEqual([
      "raspberry raspberries",
      "frozen raspberries",
      "freeze-dried raspberry powder freeze-dried raspberries",
    ]);
    expect(await found("aspbe")).toEqual([
      "raspberry",
      "jam raspberry jam",
      "frozen raspberries",
      "freeze-dried raspberry powder",
    ]);
    expect(await page.getByText("Take cream 45 %").isVisible()).toBe(false);
    expect(await found("cream 45%")).toEqual([]);
    expect(await page.getByText("Take cream 45 %, reckoned from its number").isVisible()).toBe(true);
    expect(await found("no such thing")).toEqual([]);
    expect(await page.locator(".finder .none").isVisible()).toBe(true);
    expect((await found("")).length).toBeGreaterThan(200);
  });

  test("an ingredient is found and added by key, and taken out again", async () => {
    const search = page.getByLabel("Find an ingredient");
    await search.fill("GLUCOSE  syrup 42");
    await search.press("Enter");
    const price = page.getByLabel("glucose syrup 42 DE, price, per kg");
    await price.fill("0.01");
    await expect
      .poll(async () => (await tableOf(page, "What to weigh, g")).has("glucose syrup 42 DE"))
      .toBe(true);
    await page.getByRole("button", {name: "Remove glucose syrup 42 DE"}).click();
    await expectShown(page, {});
  });

  test("one tick holds an ingredient where it is, and lets it go", async () => {
    const least = page.getByLabel("whole milk, at least, %");
    await page.getByLabel("Lock whole milk as it is").check();
    const held = await least.inputValue();
    expect(Number(held)).toBeGreaterThan(10);
    expect(await page.getByLabel("whole milk, at most, %").inputValue()).toBe(held);
    await page.getByLabel("Lock whole milk as it is").uncheck();
    expect(await least.inputValue()).toBe("");
  });

  test("an emptied box asks for nothing", async () => {
    const box = page.getByRole("spinbutton", {name: "Sweetness, at most, sucrose = 100"});
    const before = await box.inputValue();
    await box.fill("");
    const {sweetness: _, ...others} = demo.targets!;
    const answer = balance({...demo, targets: others}, {pantry});
    if (answer.status !== "optimal") throw new Error("expected a mix");
    await expect
      .poll(async () => (await tableOf(page, "What comes out")).get("sweetness")?.[0])
      .toBe(decimal(answer.shares.sweetness!, 1));
    await box.fill(before);
    await expectShown(page, {});
  });

  test("a slider moved by key moves the curve and the numbers, and the address keeps it", async () => {
    const before = await firstCurve(page);
    const thumb = page.getByRole("slider", {name: "Total solids, at least, %"});
    await thumb.focus();
    for (let i = 0; i < 10; i++) await thumb.press("ArrowRight");
    const moved = {totalSolids: {min: 40, max: 42}};
    await expectShown(page, moved);
    const after = await firstCurve(page);
    expect(after).not.toBe(before);
    await expect.poll(() => decodeURIComponent(page.url())).toContain("totalSolids=40..42");
    await page.reload({waitUntil: "networkidle"});
    await expectShown(page, moved);
    expect(await firstCurve(page)).toBe(after);
  });

  test("another batch is the same mix: limits are percentages, and grams only where the cook says so", async () => {
    const batch = page.getByRole("spinbutton", {name: "Batch, g"});
    const shown = async () => {
      const table = await tableOf(page, "What to weigh, g");
      const first = (name: string) => Number(table.get(name)?.[0]?.replace(/\s/g, ""));
      return {
        all: first("in all"),
        perKg: table.get("cost per kg"),
        pear: first("pear"),
        milk: first("whole milk"),
      };
    };
    await expect.poll(async () => (await shown()).all).toBe(5000);
    const at5 = await shown();
    for (const grams of [1000, 2500, 10_000]) {
      await batch.fill(String(grams));
      await expect.poll(async () => (await shown()).all).toBe(grams);
      const {perKg, pear, milk} = await shown();
      expect(perKg).toEqual(at5.perKg);
      expect((100 * pear) / grams).toBeCloseTo((100 * at5.pear) / 5000, 1);
      expect(Math.abs(milk / grams - at5.milk / 5000)).toBeLessThan(0.001);
    }
    await page.getByText("What may go in? 10 chosen").click();
    // One switch for all of them, there and back.
    const limits = page.getByLabel("Limits in");
    await limits.selectOption("g");
    expect(await page.getByLabel("pear, at least, g").inputValue()).toBe("2000");
    expect(await page.getByLabel("fresh ginger, at most, g").inputValue()).toBe("60");
    await batch.fill("9000");
    await expect.poll(async () => (await shown()).all).toBe(9000);
    expect((await shown()).pear).toBe(2000);
    await expect.poll(() => page.url()).toContain("batch=9000");
    expect(decodeURIComponent(page.url())).toContain("2000..3000@+pear");
    expect(decodeURIComponent(page.url())).toContain("60..60@+fresh+ginger");
    await page.reload({waitUntil: "networkidle"});
    await expect.poll(async () => (await shown()).pear).toBe(2000);
    await page.getByText("What may go in? 10 chosen").click();
    expect(await limits.inputValue()).toBe("g");
    await limits.selectOption("%");
    expect(await page.getByLabel("pear, at least, %").inputValue()).toBe("22.2222");
    await limits.selectOption("g");
    expect(await page.getByLabel("pear, at least, g").inputValue()).toBe("2000");
  });

  test("nothing went wrong on the way", () => {
    expect(trouble).toEqual([]);
  });
});

describe("design a flavour", () => {
  test("an address from before, with limits in grams, keeps its meaning", async () => {
    const uses = demo.ingredients.map((entry) =>
      typeof entry === "string" ? `..@ ${entry}` : `${entry.min ?? ""}..${entry.max ?? ""}@ ${entry.name}`,
    );
    const {page} = await open(DESIGN, {
      hash: `#batch=8000&${uses.map((use) => `use=${encodeURIComponent(use)}`).join("&")}`,
    });
    await page.getByText("What may go in? 10 chosen").click();
    expect(await page.getByLabel("pear, at least, g").inputValue()).toBe("1000");
    expect(await page.getByLabel("Limits in").inputValue()).toBe("g");
    await expect.poll(async () => (await tableOf(page, "What to weigh, g")).get("pear")?.[0]).toBe("1000");
    await leave(page);
  });

  test("a brief that no mix meets is explained, and its least change applied at a press", async () => {
    const impossible = {fat: {min: 20, max: 22}, totalSolids: {min: 30, max: 31}};
    const answer = balance({...demo, targets: {...demo.targets, ...impossible}}, {pantry});
    if (answer.status !== "infeasible") throw new Error("expected a conflict");
    const {page} = await open(DESIGN, {hash: "#fat=20..22&totalSolids=30..31"});
    expect(await page.locator(".verdict .conflict li").count()).toBe(answer.conflict.targets.length);
    expect(answer.conflict.targets.length).toBeGreaterThan(0);
    await page.getByRole("button", {name: "Make this change"}).click();
    await expect.poll(() => page.locator(".verdict h2").innerText()).toContain("The cheapest mix costs");
    await leave(page);
  });

  test("a single limit out of reach has no other to meet", async () => {
    const {page} = await open(DESIGN, {hash: "#fat=60.."});
    expect(await page.locator(".verdict .conflict li").count()).toBe(1);
    const words = (await page.locator(".verdict").innerText()).replaceAll(/\s+/g, " ");
    expect(words).toContain("The least change that makes it possible:");
    await leave(page);
  });

  test("the change that is listed is the change that is made, on ingredients too, and after it there is a mix", async () => {
    const lifted = [
      "fat",
      "msnf",
      "totalSolids",
      "sugars",
      "glucose",
      "sweetness",
      "eggYolkSolids",
      "freezingPoint",
      "scoopTemperature",
    ];
    const uses = ["50..%@ whole milk", "..@ cream 40 %", "60..%@ pear", "10..12%@ sucrose"];
    const {page, trouble} = await open(DESIGN, {
      hash: `#${[...lifted.map((key) => `${key}=..`), ...uses.map((use) => `use=${encodeURIComponent(use)}`)].join("&")}`,
    });
    expect(await page.locator(".verdict h2").innerText()).toContain("No mix");
    const listed = await page.locator(".verdict div li").allInnerTexts();
    expect(listed.length).toBeGreaterThan(0);
    await page.getByRole("button", {name: "Make this change"}).click();
    await expect.poll(() => page.locator(".verdict h2").innerText()).toContain("The cheapest mix costs");
    await page.getByText("What may go in? 4 chosen").click();
    for (const text of listed) {
      const [, name, side, value] = /^(.+?) (at least|at most) ([\d.]+)\s% instead of/.exec(
        text.replace(/\s+/g, " "),
      )!;
      expect(await page.getByLabel(`${name}, ${side}, %`).inputValue()).toBe(String(Number(value)));
    }
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("money at prices that are all one's own says nothing of invented ones", async () => {
    const uses = demo.ingredients.map((entry) => `..@2 ${typeof entry === "string" ? entry : entry.name}`);
    const {page: own} = await open(DESIGN, {
      hash: `#${uses.map((use) => `use=${encodeURIComponent(use)}`).join("&")}`,
    });
    expect(await own.locator(".verdict h2").innerText()).toContain("2.00 per kg");
    expect(await own.locator(".invented").count()).toBe(0);
    await leave(own);
  });

  test("a mix that is no dessert is told as such before all else, and one with alcohol to whom it is not to be given", async () => {
    const lifted = Object.keys(demo.targets ?? {}).map((key) => `${key}=..`);
    const uses = ["80..80%@1 water", "18..18%@1 vodka", "..@ whole milk"];
    const hash = `#${[...lifted, ...uses.map((use) => `use=${encodeURIComponent(use)}`)].join("&")}`;
    const {page, trouble} = await open(DESIGN, {hash});
    const verdict = page.locator(".verdict").first();
    expect(await verdict.locator(".alarm").allInnerTexts()).toContainEqual(
      expect.stringMatching(/^A drink, not a dessert/),
    );
    expect(await verdict.innerText()).toContain("keep it from children");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("customary limits hold, can be raised, and an amount beyond them is kept and cautioned", async () => {
    const entries = demo.ingredients.map((entry) =>
      typeof entry === "string" ? `..@ ${entry}` : `${entry.min ?? ""}..${entry.max ?? ""}@ ${entry.name}`,
    );
    const hash = `#${[...entries, "1..1%@1 salt"].map((use) => `use=${encodeURIComponent(use)}`).join("&")}`;
    const {page, trouble} = await open(DESIGN, {hash});
    expect(await page.locator(".verdict").innerText()).toMatch(/More salt than is customary: 1\.00 %/);
    // Some limits in grams and one in per cent: each stays what it says, and the switch says so.
    const limits = page.getByLabel("Limits in");
    expect(await limits.locator("option:checked").textContent()).toBe("% and grams, as each says");
    await page.getByText("Customary limits all in force").click();
    await page.getByLabel("Customary: salt, at most, %").fill("1.5");
    await expect.poll(() => page.locator(".verdict").innerText()).not.toContain("than is customary");
    await expect.poll(() => decodeURIComponent(page.url())).toContain("dose=salt:1.5");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("a mistake in the brief is said, not thrown", async () => {
    const {page, trouble} = await open(DESIGN, {hash: "#use=1..%40+pear&use=..%40+mlk"});
    expect(await page.locator(".verdict").innerText()).toContain("mlk");
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("a hostile name is a name, in the brief and in the address", async () => {
    const hostile = `<img src=x onerror=alert(1)>`;
    const ingredients = [...demo.ingredients, {name: hostile, composition: {sucrose: 100}}];
    const others = demo.ingredients.map((entry) =>
      typeof entry === "string" ? `..@ ${entry}` : `${entry.min ?? ""}..${entry.max ?? ""}@ ${entry.name}`,
    );
    const uses = [...others, `100..@0.5 ${hostile}`].map((use) => `use=${encodeURIComponent(use)}`);
    const {page, trouble} = await open(DESIGN, {
      hash: `#${uses.join("&")}`,
      serve: {"assets/pear-base": JSON.stringify({...demo, ingredients})},
    });
    // It has no price on the shelf, and the page says so by its name.
    await expect.poll(() => page.locator(".verdict").innerText()).toContain(hostile);
    expect(await page.locator(".chosen").first().textContent()).toContain(hostile);
    expect(await page.locator("main img").count()).toBe(0);
    expect(trouble).toEqual([]);
    await leave(page);
  });
});
