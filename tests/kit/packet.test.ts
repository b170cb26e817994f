import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {parseOwn} from "../../notebooks/kit/keep/own-ingredients.ts";
import {type Packet, readPacket} from "../../notebooks/kit/shelf/packet.ts";
import {ALLERGEN_WORDS, CLASS_WORDS, FIGURE_WORDS} from "../../notebooks/kit/shelf/packet-choices.ts";
import type {PacketTyped} from "../../notebooks/kit/shelf/packet-form.ts";
import {packetWords} from "../../notebooks/kit/shelf/packet-words.ts";
import {entryOf, typedOf} from "../../notebooks/kit/shelf/packet-entry.ts";
import {INGREDIENT_CLASSES} from "../../lib/pantry/from-label.ts";
import {ALLERGENS} from "../../lib/pantry/ingredient.ts";
import {allergenWords} from "../../lib/kitchen/label/allergen-words.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";

const packet = (more: Partial<Packet>): Packet => ({
  name: "it",
  class: "dairy",
  law: "EU",
  per: "100 g",
  figures: {},
  ...more,
});
const typed = (more: Partial<PacketTyped>): PacketTyped => ({
  ...packet(more),
  chosen: true,
  allergens: [],
  kinds: [],
  paid: "",
  ...more,
});
// Whole milk, USDA SR28, NDB 01077, per 100 g: fat 3.25, carbohydrate 4.8, sugars 5.05, protein 3.15 g, sodium 43 mg, 61 kcal.
const MILK = {fat: 3.25, carbohydrate: 4.8, sugars: 4.8, protein: 3.15, salt: 0.11, kilocalories: 61};

describe("a packet of each law and size is the same food", () => {
  const water = (one: Packet) => readPacket(one).read?.ingredient.composition.water;
  const plain = water(packet({figures: MILK}))!;

  test("per 100 g", () => {
    // 88.13 g of water in the table.
    expect(plain).toBeCloseTo(88.13, 0);
    expect(readPacket(packet({figures: MILK})).slips).toEqual([]);
  });

  test("per portion of a cup of 244 g, with the sodium of a United States label and its fibre among the carbohydrate", () => {
    const figures = {
      portion: 244,
      fat: 7.93,
      carbohydrate: 11.71,
      sugars: 11.7,
      fibre: 0,
      protein: 7.69,
      sodium: 105,
      kilocalories: 149,
    };
    const read = readPacket(packet({law: "US", per: "portion", figures}));
    expect(read.slips).toEqual([]);
    expect(read.label).toMatchObject({fat: expect.closeTo(3.25, 2), salt: expect.closeTo(0.108, 2)});
    expect(read.read!.ingredient.composition.water).toBeCloseTo(plain, 0);
    const fibrous = readPacket(
      packet({
        class: "biscuit",
        law: "US",
        per: "portion",
        figures: {portion: 100, fat: 1, carbohydrate: 70, fibre: 10, sugars: 5, protein: 8, sodium: 400},
      }),
    );
    // 400 mg of sodium are 1 g of salt.
    expect(fibrous.label).toMatchObject({carbohydrate: 60, salt: 1, fibre: 10});
  });

  test("per 100 ml, the weight of a millilitre given or worked out", () => {
    const ml = Object.fromEntries(Object.entries(MILK).map(([key, value]) => [key, value * 1.031]));
    expect(water(packet({per: "100 ml", figures: {...ml, density: 1.031}}))).toBeCloseTo(plain, 3);
    const guessed = readPacket(packet({per: "100 ml", figures: ml}));
    expect(guessed.read!.ingredient.composition.water).toBeCloseTo(plain, 0);
    expect(guessed.taken[0]).toMatch(/^1 ml taken as 1\.0\d g/);
  });

  test("a spirit of 40 % vol has 33.4 g of alcohol in 100 g (USDA SR28, NDB 14037)", () => {
    const nothing = {fat: 0, carbohydrate: 0, sugars: 0, protein: 0, salt: 0};
    const of = (figures: Packet["figures"]) =>
      readPacket(packet({class: "spirit", figures: {...nothing, ...figures}})).label!.alcohol!;
    // 0.948 g/ml: international alcoholometric tables, from memory.
    expect(of({alcohol: 40, density: 0.948})).toBeCloseTo(33.3, 1);
    expect(Math.abs(of({alcohol: 40}) - 33.4)).toBeLessThan(1.5);
  });
});

describe("slips stand beside their figure, with both figures and the next step", () => {
  const slip = (figures: Packet["figures"], more: Partial<Packet> = {}) =>
    readPacket(packet({figures: {...MILK, ...figures}, ...more})).slips[0];

  test.each([
    ["a lost decimal point", {fat: 325}, "fat", /it is 325.*decimal point missing \(32\.5\)/],
    [
      "a part above its whole",
      {saturates: 19},
      "saturates",
      /fat of 3\.25 g \(it is 19\).*decimal point missing \(1\.9\)/,
    ],
    ["kJ for kcal", {kilocalories: 255}, "kilocalories", /about 61 kcal.*it is 255.*swapped/],
    ["energy per portion", {kilocalories: 149}, "kilocalories", /about 61 kcal.*it is 149.*portion/],
    [
      "both energies at odds",
      {kilocalories: 61, kilojoules: 61},
      "kilojoules",
      /61 kcal \(it is 61\).*255 kJ/,
    ],
    ["less than nothing", {protein: -1}, "protein", /−1.*0 or more/],
    ["water and solids at odds", {water: 50, solids: 30}, "solids", /30 g of solids and 50 g of water/],
    ["no such strength", {alcohol: 400}, "alcohol", /0 and 96 % vol/],
  ] as const)("%s", (_, figures, figure, words) => {
    const found = slip(figures)!;
    expect(found.figure).toBe(figure);
    expect(found.words).toMatch(words);
    expect(found.words).toMatch(/^\P{Ll}/u);
  });

  test("a portion lighter than what is in it", () => {
    expect(slip({portion: 2}, {per: "portion"})).toMatchObject({
      figure: "fat",
      words: expect.stringMatching(/3\.25 g in a portion of 2 g.*per 100 g/),
    });
  });

  test("what is not read off yet is asked for, and is no slip", () => {
    expect(readPacket(packet({per: "portion", figures: {fat: 1}}))).toMatchObject({
      missing: ["portion", "carbohydrate", "sugars", "protein", "salt"],
      slips: [],
    });
  });
});

describe("what it is taken for", () => {
  test("is said in sentences, with how sure that is", () => {
    const milk = packetWords(readPacket(packet({figures: MILK})).read!);
    expect(milk.taken).toMatch(/^In 100 g: 88 g water, 4\.8 g lactose, 3\.3 g milk fat, 3\.1 g milk protein/);
    expect(milk.sure).toBe("Sure");
    // Sucrose keeps as much water unfrozen as sucrose.
    const sugar = packetWords(
      readPacket(
        packet({class: "sugar", figures: {fat: 0, carbohydrate: 100, sugars: 100, protein: 0, salt: 0}}),
      ).read!,
    );
    expect(sugar.asSugar).toMatch(/^10[01] g of sugar$/);
    expect(sugar.sweet).toBe("As sweet as 100 g of sugar.");
    const fruit = packetWords(
      readPacket(
        packet({class: "fruit", figures: {fat: 0.2, carbohydrate: 12, sugars: 10, protein: 0.5, salt: 0}}),
      ).read!,
    );
    expect(fruit.guessed).toMatch(/fructose [\d.]+ ± [\d.]+/);
    expect(fruit.sure).not.toBe("Sure");
  });

  test("every class, allergen and figure has words", () => {
    expect(Object.keys(CLASS_WORDS)).toEqual(INGREDIENT_CLASSES);
    expect(Object.keys(ALLERGEN_WORDS)).toEqual([...ALLERGENS]);
    fc.assert(
      fc.property(
        fc.record({
          class: fc.constantFrom(...INGREDIENT_CLASSES),
          law: fc.constantFrom("EU" as const, "US" as const),
          per: fc.constantFrom("100 g" as const, "100 ml" as const, "portion" as const),
          figures: fc.record(
            Object.fromEntries(
              Object.keys(FIGURE_WORDS).map((figure) => [
                figure,
                fc.double({min: -1, max: 120, noNaN: true}),
              ]),
            ),
            {requiredKeys: []},
          ),
        }),
        (some) => {
          const {read, label, missing, slips} = readPacket(packet(some));
          expect(read !== undefined || missing.length > 0 || slips.length > 0).toBe(true);
          const words = read ? Object.values(packetWords(read)).join(" ") : "";
          expect(words).not.toMatch(/NaN|undefined/);
          expect(label === undefined || parseOwn({name: "it", label}) !== undefined).toBe(true);
        },
      ),
      {numRuns: 300, seed: 5},
    );
  });
});

describe("as it is kept", () => {
  const nuts = {
    class: "nut",
    figures: {fat: 62, carbohydrate: 9.5, sugars: 4.5, protein: 14, salt: 0.01},
  } as const;

  test("nuts and cereals by name reach the label, all of them", () => {
    const entry = entryOf(
      typed({
        ...nuts,
        name: "hazelnut spread",
        allergens: ["nuts", "gluten"],
        kinds: ["hazelnuts", "almonds", "oats"],
      }),
      "spread",
    );
    const {ingredient} = parseOwn(entry)!;
    const words = allergenWords(
      makeProduct("ice", [baseComponent({name: "ice", lines: [{ingredient, grams: 100}]})]),
    );
    // Regulation (EU) No 1169/2011, Annex II, points 1 and 8.
    expect(words).toEqual(["oats", "almonds", "hazelnuts"]);
    expect(ingredient.aliases).toContain("spread");
  });

  test("what the form does not ask of it stays when it is changed", () => {
    const before = {
      name: "x",
      unit: 30,
      portions: {bar: 30},
      aliases: ["ex", "x (hazelnuts)"],
      composition: {water: 100},
    };
    expect(
      entryOf(typed({...nuts, name: "y", allergens: ["nuts"], kinds: ["walnuts"]}), "", before),
    ).toMatchObject({
      name: "y",
      unit: 30,
      portions: {bar: 30},
      aliases: ["ex", "y (walnuts)"],
      label: {fat: 62},
    });
  });

  test("stands in the form again as it was read off: a serving, its sodium, its fibre in the carbohydrate", () => {
    const served = typed({
      class: "biscuit",
      name: "oat biscuit",
      law: "US",
      per: "portion",
      figures: {portion: 28, fat: 3, carbohydrate: 20, fibre: 2, sugars: 6, protein: 2, sodium: 110},
      allergens: ["gluten"],
      kinds: ["oats"],
    });
    const {entry, ingredient} = parseOwn(structuredClone(entryOf(served, "")))!;
    const {law, per, figures} = served;
    expect(typedOf(entry)).toMatchObject({law, per, figures, class: "biscuit", kinds: ["oats"]});
    expect(typedOf(entry).figures).toEqual(figures);
    // Kept once more, it is the same food: 18 g of carbohydrate without fibre in 28 g.
    const again = parseOwn(entryOf({...served, ...typedOf(entry)}, "", entry))!;
    expect(again.ingredient).toEqual(ingredient);
    expect(again.entry.label!.carbohydrate).toBeCloseTo((100 * 18) / 28, 3);
    // What has no packet, as from a file, or one that makes no sense, has its label per 100 g.
    for (const packet of [undefined, 7, {law: "EU"}, {law: "EU", per: "a cup", figures: {}}]) {
      const plain = parseOwn({...entry, packet})!;
      expect(plain.entry.packet).toBeUndefined();
      expect(typedOf(plain.entry).figures!.protein).toBeCloseTo(200 / 28, 3);
    }
    const odd = parseOwn({...entry, packet: {law, per, figures: {fat: "3", sugars: Infinity, protein: 2}}})!;
    expect(odd.entry.packet!.figures).toEqual({protein: 2});
  });

  test("is refused with the next step where it is not whole", () => {
    expect(entryOf(typed({...nuts, name: ""}), "")).toContain("no name");
    expect(entryOf(typed({...nuts, chosen: false}), "")).toContain("What is it like");
    expect(entryOf(typed({...nuts, name: "x", allergens: ["nuts"]}), "")).toContain("Which nuts");
    expect(entryOf(typed({...nuts, name: "x", figures: {fat: 1}}), "")).toContain(
      "carbohydrate, sugars, protein, salt",
    );
  });
});
