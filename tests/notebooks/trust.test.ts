import {readFileSync} from "node:fs";
import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {figureText, nameOf} from "../../notebooks/kit/trust/figures.ts";
import {degrees} from "../../lib/core/format.ts";
import {leave, type Opened, resize, sharedBrowser, visit} from "../support/visit.ts";
import {parseTable} from "../../datasets/published/parse-tables.ts";
import {readTables} from "../../datasets/published/read-tables.ts";
import {holds, type ValidationRow} from "../../datasets/published/row.ts";
import {validationRows} from "../../datasets/published/rows.ts";

const {address} = inject("site");
const rows = validationRows(readTables());
let browser: Browser;

beforeAll(async () => {
  browser = await sharedBrowser(new URL(address).origin);
});

/** Opens the page with the network cut off. */
function open(hash = "", serve: Readonly<Record<string, string>> = {}): Promise<Opened> {
  return visit(browser, `${address}how-far-to-trust-it.html${hash}`, new URL(address).origin, {serve});
}

/** The texts of each row of the folded tables, the last of which says whether it lies inside. */
function shown(page: Page): Promise<string[][]> {
  return page.evaluate<string[][]>(
    `[...document.querySelectorAll(".source tbody tr")].map((row) => [...row.cells].map((cell) => cell.textContent.trim()))`,
  );
}

/** The same row from the library. */
function expected(row: ValidationRow): string[] {
  const numbers = [row.published, row.computed, row.difference, row.tolerance];
  return [
    `${nameOf(row)}${row.unit && `, ${row.unit}`}`,
    ...numbers.map((value) => figureText(value, row)),
    holds(row) ? "inside" : "outside",
  ];
}

const sorted = (table: readonly (readonly string[])[]) => table.map((cells) => cells.join(" | ")).sort();

describe("how far to trust it, one visit", () => {
  let page: Page;
  let trouble: string[];

  beforeAll(async () => {
    ({page, trouble} = await open());
  });

  afterAll(() => leave(page));

  test("shows every figure of the validation as the library has it", async () => {
    const table = await shown(page);
    expect(sorted(table)).toEqual(sorted(rows.map(expected)));
    expect(await page.locator(".verdict h2").first().innerText()).toContain(`${rows.length} figures`);
  });

  test("groups the figures by source, each named in full", async () => {
    const titles = await page.locator(".source summary > span").allInnerTexts();
    expect(titles.length).toBe(new Set(rows.map(({source}) => source)).size);
    expect(titles).toContain("R. A. Robinson, R. H. Stokes: Electrolyte Solutions, 2nd edition (1959)");
  });

  test("draws the residuals of every solute that has figures, and one mark for each", async () => {
    const solutions = rows.filter(({group, series}) => group === "solutions" && series !== undefined);
    for (const solute of new Set(solutions.map(({series}) => series!))) {
      const points = solutions.filter(({series}) => series === solute).length;
      const chart = page.locator(`svg[aria-label^="${solute}: computed less published"]`);
      expect(await chart.locator('g[data-mark="dot"] path, g[data-mark="dot"] circle').count(), solute).toBe(
        points,
      );
    }
  });

  test("a figure is found by words, and the address keeps them", async () => {
    const search = page.getByLabel("Find a figure");
    await search.focus();
    await page.keyboard.type("Maltose Norrish");
    const wanted = rows.filter(({what}) => /maltose.*Norrish/.test(what)).map((row) => expected(row)[0]!);
    expect(wanted.length).toBeGreaterThan(0);
    const names = page.locator(".source tbody tr:visible th");
    await expect.poll(() => names.allInnerTexts()).toEqual(wanted);
    expect(await page.getByRole("status").innerText()).toBe(`${wanted.length} of ${rows.length} figures`);
    await expect.poll(() => page.url()).toContain("find=Maltose+Norrish");
    await page.reload({waitUntil: "networkidle"});
    await expect.poll(() => names.allInnerTexts()).toEqual(wanted);
    await search.fill("no such thing");
    await expect.poll(() => page.getByRole("status").innerText()).toBe("No figure goes by that name.");
  });

  test("fits a phone with every row unfolded, and the rows stay rows", async () => {
    await page.getByLabel("Find a figure").fill("");
    await resize(page, {width: 390, height: 844});
    await page.getByRole("button", {name: "Unfold all"}).click();
    await expect.poll(() => page.locator(".source tbody tr:visible").count()).toBe(rows.length);
    expect(await page.evaluate<number>("document.documentElement.scrollWidth")).toBe(390);
    const robinson = page.getByRole("table", {name: /^R\. A\. Robinson/});
    const own = rows.filter(({source}) => source === "robinson-stokes-1959");
    expect(await robinson.getByRole("rowheader").count()).toBe(own.length);
  });

  test("nothing went wrong on the way", () => {
    expect(trouble).toEqual([]);
  });
});

describe("how far to trust it", () => {
  test("a figure that the model misses is shown as outside, in the table and above it", async () => {
    const text = readFileSync("datasets/freezing_points.csv", "utf8");
    const wrong = text.replace("sucrose,342.296,2,-0.11,", "sucrose,342.296,2,-0.51,");
    const missed = validationRows({...readTables(), freezing_points: parseTable(wrong)}).filter(
      (row) => !holds(row),
    );
    const names = missed.map(nameOf);
    expect(names).toContain("freezing point of sucrose 2 %");
    const {page, trouble} = await open("", {"assets/freezing_points": wrong});
    const cells = await shown(page);
    expect(cells.filter((row) => row.at(-1) === "outside")).toEqual(missed.map(expected));
    expect(cells.length).toBe(rows.length);
    const verdict = page.locator(".verdict").first();
    expect(await verdict.getByRole("heading").innerText()).toContain(`${missed.length} outside`);
    for (const name of names) expect(await verdict.innerText()).toContain(name);
    expect(await page.locator(".source summary .outside").innerText()).toContain(`${missed.length} of`);
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("a mix follows its sliders, from the address too: sand, glass and what a method leaves out", async () => {
    const {page, trouble} = await open("#msnf=15&alcohol=3");
    const bench = page.locator(".bench");
    await expect.poll(() => bench.innerText()).toContain("lactose is likely to turn to sand");
    expect(await bench.innerText()).toContain("The method knows nothing of alcohol");
    await page.getByRole("spinbutton", {name: "Milk solids-not-fat"}).fill("8");
    await expect.poll(() => bench.innerText()).toContain("lactose stays dissolved");
    const milk = readTables().milk_freezing_point.map((row) =>
      degrees(Number(row.freezing_point_C), 2).replace(" ", "\u00a0"),
    );
    for (const point of milk) expect(await bench.innerText()).toContain(point);
    expect(trouble).toEqual([]);
    await leave(page);
  });
});
