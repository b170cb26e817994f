import {array, assert, constantFrom, integer, property, record, string} from "fast-check";
import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {stickerLayout} from "../../lib/io/document/sticker-layout.ts";
import {stickerHtml, stickerSvg} from "../../lib/io/document/sticker-out.ts";
import {textWidth, X_HEIGHT} from "../../lib/io/text/letter-widths.ts";
import {stickerOf} from "../../lib/kitchen/label/sticker.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {realPantry} from "../support/pantry.ts";

const lines = Object.entries({
  "whole milk": 600,
  "cream 40 %": 150,
  sucrose: 150,
  "roasted hazelnuts": 100,
}).map(([name, grams]) => ({ingredient: findIngredient(realPantry, name), grams}));
const product = makeProduct("Hazelnut ice cream", [baseComponent({name: "base", lines})]);
const given = {
  quantity: {millilitres: 500},
  made: "2026-09-01",
  bestBefore: "2027-02-28",
  lot: "260901",
  maker: "Orchard farm shop (invented), Anytown",
  named: ["roasted hazelnuts"],
} as const;
const said = (pieces: readonly {text: string; emphasised: boolean}[]) =>
  pieces.map(({text, emphasised}) => (emphasised ? `*${text}*` : text)).join("");

describe("the words of a sticker", () => {
  // Regulation (EU) No 1169/2011, Articles 9, 18, 21, 22, 23 and 24.
  test("name, list with allergens and percentage, storage, dates, lot, quantity, maker", () => {
    const sticker = stickerOf(product, given);
    expect(sticker.paragraphs.map(said)).toEqual([
      "*Ingredients: *whole *milk*, cream (*milk*), sugar, roasted *hazelnuts* 10 %.",
      "Keep frozen at −18 °C or below.",
    ]);
    expect(sticker.foot.map(said)).toEqual([
      "Best before *28 February 2027*",
      "Made 1 September 2026 · L260901",
      "Orchard farm shop (invented), Anytown",
    ]);
    expect([sticker.quantity, sticker.lacking]).toEqual(["500 ml", []]);
    expect(stickerOf(product).lacking).toEqual([
      "net quantity",
      "best before",
      "lot",
      "name and address of the maker or seller",
    ]);
    expect(stickerOf(product, {sold: "direct"}).lacking).toEqual([]);
    expect(stickerOf(product, {quantity: {grams: 1250}}).quantity).toBe("1.25 kg");
  });
  test("in the United States “Contains”, fluid ounces, and no class names", () => {
    const sticker = stickerOf(product, {...given, law: "US"});
    expect(sticker.paragraphs.map(said)[1]).toBe("*Contains milk, hazelnuts.*");
    // 500 / 29.5735 = 16.9.
    expect(sticker.quantity).toBe("16.9 fl oz (500 mL)");
  });
  // Annex VII, Part C and Part A, point 1.
  test("additives by their number and little added water left out, where the cook wants it so", () => {
    const more = [
      ...lines,
      ...[
        ["water", 30],
        ["guar gum", 3],
      ].map(([name, grams]) => ({
        ingredient: findIngredient(realPantry, String(name)),
        grams: Number(grams),
      })),
    ];
    const wet = makeProduct("Ice", [baseComponent({name: "b", lines: more})]);
    expect(said(stickerOf(wet).paragraphs[0]!)).toMatch(/, water, stabiliser \(guar gum\)\.$/);
    const short = said(stickerOf(wet, {eNumbers: true, leaveOutWater: true}).paragraphs[0]!);
    expect(short).toMatch(/, stabiliser \(E 412\)\.$/);
    expect(short).not.toContain("water");
  });
  test("sweeteners stand beside the name, laxative effects below the list", () => {
    const sweet = [...lines, {ingredient: findIngredient(realPantry, "erythritol"), grams: 150}];
    const sticker = stickerOf(makeProduct("Ice", [baseComponent({name: "b", lines: sweet})]));
    expect(sticker.paragraphs.map(said)[0]).toBe("with sugar(s) and sweetener(s)");
    expect(sticker.paragraphs.map(said)[2]).toBe("Excessive consumption may produce laxative effects.");
  });
  test.each([
    [
      {made: "2026-09-01", bestBefore: "2026-08-31"},
      'options.bestBefore: before the day of making (got "2026-08-31"); give a day from 2026-09-01 on',
    ],
    [
      {made: "1 Sept 2026"},
      'options.made: no date (got "1 Sept 2026"); write year, month and day, e.g. 2027-03-31',
    ],
    [{bestBefore: "2027-02-29"}, 'options.bestBefore: no day of the calendar (got "2027-02-29")'],
    [{quantity: {millilitres: 0}}, "options.quantity.millilitres: out of range (got 0)"],
    [
      {quantity: {grams: 300}, portion: 301},
      "options.portion: more than the tub holds (got 301); give at most 300 g",
    ],
    [{law: "FR" as "EU"}, "options.law: unknown law"],
    [{maker: "x".repeat(301)}, "options.maker: longer than 300 letters"],
    [{named: ["mango"]}, "not in the product"],
  ])("%j is refused in words", (options, words) => {
    expect(() => stickerOf(product, options)).toThrow(words);
  });
  test("a nut that nothing names is asked for by name", () => {
    const paste: Ingredient = {name: "house paste", composition: {otherFat: 100}, allergens: ["nuts"]};
    const nutty = makeProduct("Nut ice", [
      baseComponent({name: "b", lines: [...lines, {ingredient: paste, grams: 50}]}),
    ]);
    expect(() => stickerOf(nutty)).toThrow(
      /^house paste: a label must name the kind; nuts: say which, .*names: \{"house paste"/,
    );
    expect(() => stickerOf(nutty, {names: {"house paste": {name: "almond paste"}}})).not.toThrow();
    expect(() => stickerOf(nutty, {names: {"house paste": {name: "almond paste"}}, nutrition: true})).toThrow(
      "nutrition: not known of house paste",
    );
  });
  test("a leap day is a day", () => {
    expect(() => stickerOf(product, {bestBefore: "2028-02-29"})).not.toThrow();
  });
});

describe("the layout of a sticker", () => {
  // Article 13(2) and (3): small letters of 1.2 mm, 0.9 mm where the pack's largest surface is below 80 cm².
  test.each([
    [90, 60, false, 1.2],
    [60, 60, false, 1.2],
    [50, 45, false, 1.2],
    [50, 30, true, 0.9],
  ])("%d x %d mm keeps the least height of letters", (width, height, smallPack, least) => {
    const {size} = stickerLayout(stickerOf(product, given), {width, height, smallPack});
    expect(size * X_HEIGHT).toBeGreaterThanOrEqual(least);
  });
  test("what does not fit is refused with a size that does", () => {
    const sticker = stickerOf(product, {...given, nutrition: true, words: "Made on the farm. ".repeat(10)});
    let message = "";
    try {
      stickerSvg(sticker, {width: 50, height: 40});
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      ({message} = error);
    }
    expect(message).toMatch(
      /^sticker: too small for its words in letters of 1\.2 mm \(got "50 x 40 mm"\); take at least 50 x \d+ mm, or \d+ x \d+ mm, or shorten the words$/,
    );
    for (const [, width, height] of message.matchAll(/(\d+) x (\d+) mm(?=, or)/g))
      expect(() => stickerSvg(sticker, {width: Number(width), height: Number(height)})).not.toThrow();
  });
  test.each([
    [{width: 0, height: 40}, "size.width: out of range (got 0)"],
    [{width: 40, height: 301}, "size.height: out of range (got 301)"],
  ])("%j is no size", (size, words) => {
    expect(() => stickerSvg(stickerOf(product), size)).toThrow(words);
  });
  test("nutrition stands in a table where there is room, else in a line (Article 34(2))", () => {
    const sticker = stickerOf(product, {...given, nutrition: true, portion: 80});
    const placed = (width: number, height: number) =>
      stickerLayout(sticker, {width, height}).lines.map(({runs}) => runs.map(({text}) => text).join(""));
    expect(placed(100, 90)).toContain("of which sugars");
    expect(placed(100, 52).join(" ").replaceAll("\u00a0", " ")).toContain("Nutrition per 100 g: energy");
  });
  // Adobe's metrics of Helvetica (from memory): M 833, i 222, bold M 833, i 278.
  test("letters have the widths of the face", () => {
    expect([textWidth("Mi", false), textWidth("Mi", true)]).toEqual([1.055, 1.111]);
    expect(textWidth("é", false)).toBe(textWidth("e", false));
  });
  test("no line leaves the sticker, none covers another, whatever the words", () => {
    const word = string({unit: "grapheme", minLength: 1, maxLength: 40});
    assert(
      property(
        record({
          title: string({unit: "grapheme", minLength: 1, maxLength: 60}),
          names: array(word, {minLength: 1, maxLength: 12}),
          maker: string({maxLength: 80}),
          width: integer({min: 20, max: 150}),
          height: integer({min: 20, max: 150}),
          millilitres: constantFrom(5, 500, 12_000),
        }),
        ({title, names, maker, width, height, millilitres}) => {
          const odd = names.map((name, i) => ({
            ingredient: {...lines[0]!.ingredient, name: `${name}${i}`},
            grams: 10,
          }));
          const whole = makeProduct(title, [baseComponent({name: "b", lines: odd})]);
          const sticker = stickerOf(whole, {...given, named: [], maker, quantity: {millilitres}});
          try {
            const {lines: placed, margin} = stickerLayout(sticker, {width, height});
            for (const line of placed) {
              expect(line.x + line.width).toBeLessThanOrEqual(width - margin + 1e-6);
              expect(line.y + 0.24 * line.size).toBeLessThanOrEqual(height - margin + 1e-6);
              expect(line.x).toBeGreaterThanOrEqual(margin - 1e-6);
            }
            for (const one of placed)
              for (const other of placed) {
                if (one === other || Math.abs(one.y - other.y) >= 0.7 * Math.min(one.size, other.size))
                  continue;
                const apart = one.x + one.width <= other.x + 1e-6 || other.x + other.width <= one.x + 1e-6;
                expect(apart, `${one.runs[0]?.text} | ${other.runs[0]?.text}`).toBe(true);
              }
          } catch (error) {
            if (!(error instanceof InputError)) throw error;
          }
        },
      ),
      {numRuns: 300, seed: 7},
    );
  });
  test("markup in a name is text", () => {
    const evil = makeProduct('<script>alert("x")</script> & co', [baseComponent({name: "b", lines})]);
    for (const made of [stickerSvg, stickerHtml]) {
      const text = made(stickerOf(evil, {maker: "<b onload=x>"}), {width: 90, height: 60});
      expect(text).not.toContain("<script");
      expect(text).not.toContain("<b onload");
      expect(text).toContain("&lt;script&gt;");
    }
  });
});
