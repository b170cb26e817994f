import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, test} from "vitest";
import {usPanelHtml} from "../../lib/io/document/panel-html.ts";
import {stickerHtml} from "../../lib/io/document/sticker-out.ts";
import {stickerOf} from "../../lib/kitchen/label/sticker.ts";
import {usPanel} from "../../lib/kitchen/label/us-panel.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {launchBrowser} from "../support/browser.ts";
import {realPantry} from "../support/pantry.ts";

const names = [
  "whole milk",
  "cream 40 %",
  "skimmed milk powder",
  "egg yolk",
  "sucrose",
  "dextrose monohydrate",
  "pear",
  "locust bean gum",
];
const lines = names.map((name, i) => ({ingredient: findIngredient(realPantry, name), grams: 100 - 12 * i}));
const product = makeProduct("Pear and crème fraîche ice cream – orchard’s best", [
  baseComponent({name: "base", lines}),
]);
const given = {
  quantity: {millilitres: 500},
  made: "2026-09-01",
  bestBefore: "2027-02-28",
  lot: "260901",
  maker: "Orchard farm shop (invented), Mill Lane 1, Anytown",
} as const;

describe("a sticker in Chromium", () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await launchBrowser();
    page = await browser.newPage();
  });
  afterAll(() => browser.close());

  test.each([
    [90, 60, false],
    [60, 70, false],
    [50, 60, false],
    [105, 74, true],
    [45, 45, true],
  ])(
    "%d x %d mm prints on one page of that size, all within it, no line over another",
    async (width, height, small) => {
      const sticker = stickerOf(product, {...given, nutrition: width > 100, named: ["pear"]});
      await page.setContent(stickerHtml(sticker, {width, height, smallPack: small}));
      const pdf = (await page.pdf({preferCSSPageSize: true})).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      const [, wide, high] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!.map(Number);
      // Points of 1/72 inch, as Chromium rounds them.
      expect(Math.abs(wide! - (width * 72) / 25.4)).toBeLessThan(1);
      expect(Math.abs(high! - (height * 72) / 25.4)).toBeLessThan(1);
      const boxes: {x: number; y: number; right: number; bottom: number; size: number}[] =
        await page.evaluate(
          `[...document.querySelectorAll("text")].map((text) => {
        const {x, y, width, height} = text.getBBox();
        return {x, y, right: x + width, bottom: y + height, size: parseFloat(getComputedStyle(text).fontSize)};
      })`,
        );
      expect(boxes.length).toBeGreaterThan(5);
      for (const {x, y, right, bottom} of boxes) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(width);
        expect(bottom).toBeLessThanOrEqual(height);
      }
      // Small letters as the machine's face draws them: 1.2 mm, or 0.9 mm on a small pack.
      const least: number = await page.evaluate(`(() => {
      const brush = document.createElement("canvas").getContext("2d");
      const text = document.querySelectorAll("text")[1];
      brush.font = "1000px " + getComputedStyle(text).fontFamily;
      const drawn = brush.measureText("x").actualBoundingBoxAscent / 1000;
      return Math.min(...[...document.querySelectorAll("text")].map((one) => parseFloat(one.getAttribute("font-size")) * Math.max(drawn, 0.519)));
    })()`);
      expect(least).toBeGreaterThanOrEqual(small ? 0.9 : 1.2);
    },
  );

  test("Nutrition Facts prints on one page, its lines in the order of 21 CFR 101.9(c)", async () => {
    await page.setContent(usPanelHtml(usPanel(product, {container: 500}), "Pear"));
    const pdf = (await page.pdf()).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    const heads: string[] = await page.evaluate(
      `[...document.querySelectorAll("th[scope=row]")].map((one) => one.innerText)`,
    );
    const order = [
      "Calories",
      "Total Fat",
      "Saturated Fat",
      "Trans Fat",
      "Cholesterol",
      "Sodium",
      "Total Carbohydrate",
      "Dietary Fiber",
      "Total Sugars",
      "Added Sugars",
      "Protein",
      "Vitamin D",
      "Calcium",
      "Iron",
      "Potassium",
    ];
    expect(heads).toHaveLength(order.length);
    order.forEach((name, i) => expect(heads[i]).toContain(name));
  });
});
