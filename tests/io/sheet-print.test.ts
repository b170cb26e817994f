import chromium from "@sparticuz/chromium";
import {type Browser, chromium as playwright, type Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, test} from "vitest";
import {batchSheetHtml} from "../../lib/io/document/batch-sheet-html.ts";
import {batchSheet, type BatchSheet} from "../../lib/kitchen/day/batch-sheet.ts";
import {baseComponent, makeProduct, rippleComponent} from "../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";

/** A sheet of so many ingredients and steps, in base and ripple. */
function sheetOf(ingredients: number, steps: number): BatchSheet {
  const line = (i: number) => {
    const ingredient: Ingredient = {
      name: i % 3 ? `ingredient ${i}` : `ingredient ${i} with a long name`,
      composition: {water: 70, sucrose: 30},
      allergens: i % 4 ? [] : ["milk", "nuts"],
      unit: 20,
    };
    return {ingredient, grams: 100 + i};
  };
  const lines = Array.from({length: ingredients}, (_, i) => line(i));
  const split = Math.max(1, Math.floor(ingredients * 0.75));
  const parts = [baseComponent({name: "base", lines: lines.slice(0, split)}, ingredients > split ? 85 : 100)];
  if (ingredients > split) parts.push(rippleComponent({name: "ripple", lines: lines.slice(split)}, 15));
  const text = "Stir everything together until it is smooth, then leave it to stand in the cold";
  return batchSheet(
    makeProduct("orchard ice cream", parts),
    {grams: 5000},
    {
      machine: {fillLimit: 1500},
      overrun: 30,
      furtherSteps: Array.from({length: steps}, (_, i) => text.slice(0, 30 + ((i * 17) % 50))),
    },
  );
}

describe("one A4 page in Chromium", () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await playwright.launch({executablePath: await chromium.executablePath(), args: chromium.args});
    page = await browser.newPage();
  });
  afterAll(() => browser.close());

  test.each([
    [1, 0],
    [4, 6],
    [8, 12],
    [12, 20],
    [25, 8],
    [25, 20],
    [3, 25],
    [30, 25],
  ])("%d ingredients, %d steps", async (ingredients, steps) => {
    await page.emulateMedia({media: null});
    await page.setContent(batchSheetHtml(sheetOf(ingredients, steps)));
    const pdf = await page.pdf({preferCSSPageSize: true});
    const text = pdf.toString("latin1");
    expect(text.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    // A4 in points (ISO 216: 210 x 297 mm), as Chromium rounds it.
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(text)!.map(Number);
    expect(Math.abs(width! - 595.3)).toBeLessThan(1);
    expect(Math.abs(height! - 841.9)).toBeLessThan(1);
    await page.emulateMedia({media: "print"});
    await page.setViewportSize({width: Math.round((190 / 25.4) * 96), height: Math.round((277 / 25.4) * 96)});
    const overflow: number = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    const points: number = await page.evaluate("0.75 * parseFloat(getComputedStyle(document.body).fontSize)");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(points).toBeGreaterThanOrEqual(6);
  });
});
