import "fake-indexeddb/auto";
import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {kitchenOf} from "../../notebooks/kit/keep/kitchen.ts";
import {changeOwn, parseOwn, readOwn} from "../../notebooks/kit/keep/own-ingredients.ts";
import {
  changeShelf,
  parseLine,
  perKilogram,
  readShelf,
  type ShelfLine,
} from "../../notebooks/kit/keep/shelf.ts";
import {keeping} from "../../notebooks/kit/keep/database.ts";
import {wayBack} from "../../notebooks/kit/words/address-format.ts";
import {isDay} from "../../notebooks/kit/words/day.ts";
import {nameFinder} from "../../notebooks/kit/words/find-names.ts";
import {amountIn, paidIn} from "../../notebooks/kit/words/pack-price.ts";
import {boxesOf, lineFrom} from "../../notebooks/kit/shelf/line-from.ts";
import {ownCsv, ownFrom} from "../../notebooks/kit/shelf/own-csv.ts";
import {shelfCsv, shelfFrom} from "../../notebooks/kit/shelf/shelf-csv.ts";
import {heapsOf, shelfSentence} from "../../notebooks/kit/shelf/words.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";

const pantry = includedPantry();
const milk = findIngredient(pantry, "whole milk");
const TODAY = "2026-11-26";
const line = (name: string, more: Partial<ShelfLine> = {}): ShelfLine => ({name, ...more});
const paid = (money: number, pack: string, grams: number, on = TODAY) => ({money, pack, grams, on});
const value = <T>(attempt: {readonly value: T} | {readonly mistake: string}): T => {
  if ("mistake" in attempt) throw new Error(attempt.mistake);
  return attempt.value;
};

describe("a price as a cook writes it", () => {
  // USDA SR28, NDB 01077: a cup (236.588 ml) of whole milk weighs 244 g; 1.031 g/ml times 1000 ml.
  test("is for a pack in any unit that the library reads", async () => {
    expect(perKilogram({on: TODAY, pack: "", ...value(await paidIn("2.40 for 1 l", milk))})).toBeCloseTo(
      2.4 / 1.031,
      2,
    );
    expect(value(await paidIn("£1.10 per litre", milk))).toMatchObject({money: 1.1, text: "1 litre"});
    expect(value(await paidIn("1,20/kg", milk))).toMatchObject({money: 1.2, text: "1 kg", grams: 1000});
    expect(value(await paidIn("1.20", milk))).toMatchObject({money: 1.2, grams: 1000});
    expect(value(await paidIn("4.20 for 2 lb", milk)).grams).toBeCloseTo(907.2, 1);
    // An egg yolk of the table weighs 17 g.
    const yolk = findIngredient(pantry, "egg yolk");
    expect(value(await paidIn("3.60 for 12", yolk))).toMatchObject({text: "12", grams: 12 * yolk.unit!});
  });

  test("is refused with its value and the next step where it is none", async () => {
    for (const typed of [
      "abc",
      "",
      "2.40 for",
      "for 1 l",
      "-3",
      "2.40 for 1 parsec",
      "1e9",
      "9".repeat(200),
    ]) {
      const read = await paidIn(typed, milk);
      expect(read, typed).toHaveProperty("mistake");
      expect((read as {mistake: string}).mistake).toContain("2.40 for 1 l");
    }
    const read = await paidIn("3 for 1 tin", findIngredient(pantry, "honey"));
    expect(read).toHaveProperty("mistake");
    expect(await amountIn("a lot", milk)).toMatchObject({mistake: expect.stringContaining("it is “a lot”")});
    expect(await amountIn("20 %", milk)).toHaveProperty("mistake");
    expect(value(await amountIn("2 x 250 g", milk))).toMatchObject({grams: 500});
  });
});

describe("a line from its boxes", () => {
  test("sets price, amount and date in one go, and keeps what was not touched", async () => {
    const {line: made, words} = value(
      await lineFrom(
        {paid: "2.40 for 1 l", there: "3 l", best: "2026-12-01", out: false},
        line("whole milk"),
        milk,
        TODAY,
      ),
    );
    expect(made).toMatchObject({
      price: {money: 2.4, pack: "1 l", on: TODAY},
      have: {text: "3 l"},
      best: "2026-12-01",
    });
    expect(words).toBe(
      "whole milk: costs 2.40 for 1 l, that is 2.33 per kg, set today, 3 l there, best before 1 December 2026, in 5 days.",
    );
    const later = value(await lineFrom({...boxesOf(made), out: true}, made, milk, "2027-01-01"));
    expect(later.line).toEqual({...made, out: true});
    expect(later.words).toBe("whole milk: out of stock.");
    const emptied = value(await lineFrom({paid: "", there: "", best: "", out: false}, made, milk, TODAY));
    expect(emptied.line).toEqual({name: "whole milk"});
    // Without an ingredient of that name nothing is lost.
    expect(value(await lineFrom({...boxesOf(made), paid: "9"}, made, undefined, TODAY)).line).toEqual(made);
    expect(await lineFrom({...boxesOf(made), best: "2026-02-30"}, made, milk, TODAY)).toMatchObject({
      mistake: expect.stringContaining("it is “2026-02-30”"),
    });
  });
});

describe("what the browser kept is hostile", () => {
  const noise = fc.oneof(
    fc.anything(),
    fc.constant("2026-11-26"),
    fc.constant(-1),
    fc.constant(NaN),
    fc.string(),
  );
  const lineLike = fc.record(
    {
      name: fc.oneof(noise, fc.constant("whole milk")),
      price: fc.oneof(noise, fc.record({money: noise, pack: noise, grams: noise, on: noise})),
      have: fc.oneof(noise, fc.record({text: noise, grams: noise})),
      out: noise,
      best: noise,
    },
    {requiredKeys: []},
  );

  test("whatever it is, a line is none or one that every page can reckon with", () => {
    // A kitchen of all the ingredients takes its time: the first dozen will do.
    let kitchens = 0;
    fc.assert(
      fc.property(fc.oneof(noise, lineLike), (kept) => {
        const read = parseLine(kept);
        if (!read) return;
        expect(parseLine(structuredClone(read))).toEqual(read);
        expect(read.price === undefined || perKilogram(read.price) >= 0).toBe(true);
        expect(read.best === undefined || isDay(read.best)).toBe(true);
        if (kitchens++ > 12) return;
        const kitchen = kitchenOf({lines: [read], own: []});
        for (const {price, stock} of kitchen.stocked.ingredients) {
          expect(price === undefined || Number.isFinite(price)).toBe(true);
          expect(stock === undefined || stock >= 0).toBe(true);
        }
      }),
      {numRuns: 200, seed: 1},
    );
  });

  test("an own ingredient that makes no sense is left out, and breaks nothing", () => {
    fc.assert(
      fc.property(fc.oneof(noise, fc.record({name: noise, label: noise, composition: noise})), (kept) => {
        const read = parseOwn(kept);
        if (read) kitchenOf({lines: [], own: [read]});
      }),
      {numRuns: 300, seed: 2},
    );
    expect(
      parseOwn({name: "x", label: {class: "nut", fat: 620, carbohydrate: 1, sugars: 1, protein: 1, salt: 0}}),
    ).toBeUndefined();
  });

  test("a way back leads to a page beside this one, and nowhere else", () => {
    expect(wayBack("./read-a-recipe.html#recipe=x")).toBe("./read-a-recipe.html#recipe=x");
    for (const text of [
      "javascript:alert(1)",
      "//evil.example/a.html#",
      "https://a.example/#",
      "./../x.html",
      undefined,
      "",
    ])
      expect(wayBack(text), text).toBeUndefined();
  });
});

describe("the kitchen", () => {
  const label = {class: "nut", fat: 62, carbohydrate: 9.5, sugars: 4.5, protein: 14, salt: 0.01} as const;
  const own = parseOwn({name: "our paste", label, allergens: ["nuts"], price: 3})!;
  const lines = [
    line("whole milk", {price: paid(2.4, "1 l", 1031), have: {text: "3 l", grams: 3093}}),
    line("sucrose", {out: true}),
    line("our paste", {price: paid(22, "1 kg", 1000)}),
    line("nobody knows this", {price: paid(1, "1 kg", 1000)}),
    line("cream 45 %", {price: paid(5, "1 kg", 1000)}),
  ];
  const prices = readPricesCsv("name,price_per_kg,stock_g\nwhole milk,9,100\nsugar,1.1,5000\n");
  const kitchen = kitchenOf({lines, own: [own], prices});
  const of = (name: string) => findIngredient(kitchen.pantry, name);

  test("has the cook's prices before the page's, and own ingredients", () => {
    expect(of("whole milk").price).toBeCloseTo(2.4 / 1.031, 6);
    expect(of("sugar").price).toBe(1.1);
    expect(of("our paste")).toMatchObject({price: 22, allergens: ["nuts"]});
    expect(of("cream 45 %").price).toBe(5);
    expect([...kitchen.priced].sort()).toEqual(["cream 45 %", "our paste", "whole milk"]);
    expect(kitchen.packs["whole milk"]).toEqual({price: 2.4, grams: 1031, stock: 3093});
  });

  test("of two own ingredients whose names differ only in case, the last one kept holds", () => {
    const twice = [own, parseOwn({name: "Our Paste", label: {...label, fat: 50, carbohydrate: 20}})!];
    expect(findIngredient(kitchenOf({lines: [], own: twice}).pantry, "our paste").composition.otherFat).toBe(
      50,
    );
  });

  test("buys more where it may, and has what there is", () => {
    expect(of("whole milk").stock).toBeUndefined();
    expect(findIngredient(kitchen.stocked, "whole milk").stock).toBe(3093);
    expect(findIngredient(kitchen.stocked, "sugar").stock).toBe(0);
    expect(kitchen.owned.map(({name}) => name).sort()).toEqual([
      "cream 45 %",
      "our paste",
      "water",
      "whole milk",
    ]);
  });

  test("what is written is read by another tab, is taken back, but not over a later change", async () => {
    const undo = await changeShelf(new Map([["whole milk", () => lines[0]]]));
    expect(await readShelf()).toEqual([lines[0]]);
    await undo();
    expect(await readShelf()).toEqual([]);
    const undoFirst = await changeShelf(new Map([["whole milk", () => lines[0]]]));
    await changeShelf(new Map([["whole milk", (present) => ({...present, out: true as const})]]));
    await undoFirst();
    expect(await readShelf()).toEqual([{...lines[0], out: true}]);
    await changeOwn(new Map([["our paste", own.entry]]));
    await (await keeping()).drawer("ingredients").change("junk", () => ({name: "junk"}));
    expect((await readOwn()).map(({ingredient}) => ingredient.name)).toEqual(["our paste"]);
  });
});

describe("the heaps of the shelf", () => {
  test("are the soonest first, past ones said, what is out last", () => {
    const some = [
      line("z", {best: "2026-11-30"}),
      line("a"),
      line("y", {best: "2026-11-20"}),
      line("b", {out: true, best: "2026-11-01"}),
      line("x", {best: "2027-11-30", price: paid(1, "1 kg", 1000)}),
    ];
    const {first, there, out} = heapsOf(some, TODAY);
    expect([first, there, out].map((heap) => heap.map(({name}) => name))).toEqual([
      ["y", "z"],
      ["x", "a"],
      ["b"],
    ]);
    expect(shelfSentence(some, TODAY)).toBe(
      "5 things on your shelf, 1 of them at your price; 1 out of stock; 1 past its date",
    );
  });
});

describe("files", () => {
  const shelf: ShelfLine[] = [
    line("whole milk", {price: paid(2.4, "1 l", 1031), have: {text: "3 l", grams: 3093}, best: "2026-12-24"}),
    line("sucrose", {
      out: true,
      price: paid(1.1, "1 kg", 1000, "2026-01-01"),
      have: {text: "25 kg", grams: 25000},
    }),
    line("salt"),
  ];
  const into = (text: string, present: readonly ShelfLine[] = shelf) =>
    shelfFrom(text, "my-shelf.csv", {present, pantry, today: TODAY});

  test("a saved shelf is a price list to the library, and comes back whole", () => {
    const text = shelfCsv(shelf);
    expect(readPricesCsv(text)).toMatchObject([
      {name: "whole milk", price: expect.closeTo(2.4 / 1.031, 6), stock: 3093},
      {name: "sucrose", price: 1.1, stock: 0},
      {name: "salt"},
    ]);
    const back = [...into(text, []).lines.values()];
    const weights = (lines: readonly ShelfLine[]) => lines.map(({price}) => Math.round(price?.grams ?? 0));
    expect(weights(back)).toEqual(weights(shelf));
    const apart = (lines: readonly ShelfLine[]) =>
      lines.map((one) => ({...one, price: {...one.price, grams: 0}}));
    expect(apart(back)).toEqual(apart(shelf));
    expect(into(text)).toMatchObject({changes: [], unknown: [], same: 3});
  });

  test("a list merges: what it does not say stays, what changes is said, what nobody knows is kept", () => {
    const {lines, changes, unknown, same} = into(
      "name,price per kg,stock kg\nMILK,1.05,\nsugar,1.1,2\nmoon paste,9,1\n",
    );
    expect(lines.get("whole milk")).toEqual({...shelf[0], price: paid(1.05, "1 kg", 1000)});
    expect(lines.get("sucrose")).toEqual({
      ...line("sucrose", {price: shelf[1]!.price!}),
      have: {text: "2000 g", grams: 2000},
    });
    expect(lines.get("moon paste")).toMatchObject({price: {money: 9}});
    expect(changes).toEqual([
      "whole milk: 2.40 for 1 l is now 1.05 for 1 kg.",
      "sucrose: 25 kg is now 2000 g, there again.",
      "moon paste: no price is now 9.00 for 1 kg, unknown amount is now 1000 g.",
    ]);
    expect([unknown, same]).toEqual([["moon paste"], 0]);
    expect(() => into("name,price\nmilk,-1\n")).toThrow(/price/);
  });

  test("own ingredients go out with the columns of the label, and come back as labels", () => {
    const entries = [
      {
        name: "our paste",
        label: {class: "nut", fat: 62, carbohydrate: 9.5, sugars: 4.5, protein: 14, salt: 0.01, fibre: 8},
        allergens: ["nuts"],
        aliases: ["our paste (hazelnuts)"],
        density: 1.1,
      },
      {name: "our syrup", composition: {water: 30, glucoseSyrupSolids: 70, dextroseEquivalent: 42}},
    ].map((entry) => parseOwn(entry)!);
    const text = ownCsv(entries);
    expect(readPantryCsv(text)).toMatchObject(
      entries.map(({ingredient: {name, composition}}) => ({name, composition})),
    );
    expect(ownFrom(text, "own.csv")).toMatchObject([
      {name: "our paste", label: entries[0]!.entry.label, density: 1.1, aliases: ["our paste (hazelnuts)"]},
      {name: "our syrup", composition: {water: 30, dextroseEquivalent: 42}},
    ]);
  });
});

describe("looking for an ingredient", () => {
  const find = nameFinder(pantry);
  const names = (words: string) => find(words).found.map(({ingredient}) => ingredient.name);

  test("by its own name first, by another one, by a part, with a slip, by its number", () => {
    expect(names("milk")[0]).toBe("whole milk");
    expect(find("caster").found[0]).toMatchObject({
      ingredient: {name: "sucrose"},
      also: expect.stringContaining("caster"),
    });
    expect(names("powder skim")).toContain("skimmed milk powder");
    expect(find("hazlenut")).toMatchObject({near: true});
    expect(names("hazlenuts")[0]).toBe("hazelnuts");
    expect(names("suger")[0]).toBe("sucrose");
    expect(names("dubble cream")).toContain("cream 48 %");
    expect(names("dextrsoe")).toContain("dextrose monohydrate");
    expect(find("cream 45 %").numbered?.name).toBe("cream 45 %");
    expect(find("xyzzy")).toEqual({found: [], near: true});
    expect(find("  ")).toEqual({found: [], near: false});
  });

  test("whatever is typed, it answers", () => {
    fc.assert(
      fc.property(fc.string({maxLength: 60}), (typed) => find(typed).found.length >= 0),
      {numRuns: 60, seed: 3},
    );
  });
});
