import "fake-indexeddb/auto";
import * as fc from "fast-check";
import {IDBFactory} from "fake-indexeddb";
import {beforeEach, describe, expect, test} from "vitest";
import {mergedWords} from "../../notebooks/kit/book/merged-words.ts";
import {renamed} from "../../notebooks/kit/book/rename.ts";
import {summaryOf} from "../../notebooks/kit/book/summary.ts";
import {bookText, readBookFile} from "../../notebooks/kit/keep/book-file.ts";
import {openKeeping} from "../../notebooks/kit/keep/database.ts";
import {type KeptRecipe, sameContent} from "../../notebooks/kit/keep/kept-recipe.ts";
import {type Merged, mergeBooks} from "../../notebooks/kit/keep/merge.ts";
import {bookIn, type RecipeBook} from "../../notebooks/kit/keep/recipes.ts";
import {includedPantry} from "../../lib/pantry/included.ts";

const WRITTEN = new Date("2026-03-01T08:00:00Z");
const MILK: KeptRecipe = {
  id: "milk-ice-0",
  name: "Milk ice",
  text: "Milk ice\n500 g whole milk\n100 g sugar",
  notes: "The one of the fair.",
  freezer: -14,
  overrun: 40,
  changed: "2026-02-01T08:00:00Z",
  revision: 4,
  earlier: [{name: "Milk ice", text: "500 g whole milk", notes: "", changed: "2026-01-01T08:00:00Z"}],
};
let count = 0;
const anId = () => `fresh-${String(++count).padStart(4, "0")}`;
const merge = (book: readonly KeptRecipe[], file: readonly KeptRecipe[]) => mergeBooks(book, file, anId);
/** The book after an import. */
const after = (book: readonly KeptRecipe[], {write}: Merged) => [
  ...new Map([...book.map((one) => [one.id, one] as const), ...write]).values(),
];

describe("the file", () => {
  test("gives back what went in", () => {
    const other = {...MILK, id: "other-one", deleted: "2026-02-02T08:00:00Z"};
    expect(readBookFile(bookText([MILK, other], WRITTEN), "a.json")).toEqual({
      recipes: [MILK, other],
      mistakes: [],
    });
  });

  test.each([
    ["", "a.json, line 1, column 1: not valid JSON"],
    ["{", "a.json, line 1, column 2: not valid JSON"],
    ["[]", "a.json: no file of recipes; choose a file that “Save all as a file” wrote"],
    ['{"format": "brief", "recipes": []}', 'a.json: no file of recipes (got "brief"); choose a file'],
    ['{"format": "mixwright recipes", "recipes": {}}', "a.json: no file of recipes"],
    [
      `{"format": "mixwright recipes", "recipes": [${Array.from({length: 5001}, () => "1").join(",")}]}`,
      "a.json, recipes: too many (got 5001); give at most 5000 at once",
    ],
  ])("%.60j is refused by place, value and next step", (text, message) => {
    expect(() => readBookFile(text, "a.json")).toThrow(message);
  });

  test("one broken recipe is named, and stops no other", () => {
    const {recipes, mistakes} = readBookFile(
      bookText([MILK, {...MILK, name: "Plum", revision: -1}, {...MILK, id: "third-one"}], WRITTEN),
      "a.json",
    );
    expect(recipes.map(({id}) => id)).toEqual(["milk-ice-0", "third-one"]);
    expect(mistakes.map(({message}) => message)).toEqual([
      "a.json, recipe 2 (Plum).revision: out of range (got -1); give a number at least 1",
    ]);
  });
});

describe("a file taken into a book", () => {
  const newer = {...MILK, text: `${MILK.text}\n1 g salt`, revision: 5, changed: "2026-02-03T08:00:00Z"};
  const atOdds = {...MILK, text: `${MILK.text}\n2 g salt`};

  test("a newer text wins, and what was there is an earlier version; an older one becomes one", () => {
    const [won] = after([MILK], merge([MILK], [newer]));
    expect(won).toMatchObject({text: newer.text, revision: 5});
    expect(won!.earlier.map(({text}) => text)).toEqual([MILK.text, "500 g whole milk"]);
    const [kept] = after([newer], merge([newer], [MILK]));
    expect(kept).toMatchObject({text: newer.text, revision: 5});
    expect(kept!.earlier.map(({text}) => text)).toEqual([MILK.text, "500 g whole milk"]);
  });

  test("texts of the same age, and another recipe of the same name, are both kept", () => {
    const both = after([MILK], merge([MILK], [atOdds]));
    expect(both.map(({name, text}) => [name, text])).toEqual([
      ["Milk ice", MILK.text],
      ["Milk ice (imported)", atOdds.text],
    ]);
    expect(after([MILK], merge([MILK], [{...newer, id: "another-1"}])).map(({name}) => name)).toEqual([
      "Milk ice",
      "Milk ice (imported)",
    ]);
    expect(mergedWords(merge([MILK], [atOdds]))).toBe(
      "“Milk ice (imported)” is kept beside yours of that name.",
    );
  });

  test("nothing is deleted by it, nor brought back", () => {
    const gone = {...newer, deleted: "2026-02-04T08:00:00Z"};
    expect(after([MILK], merge([MILK], [gone]))).toMatchObject([{text: newer.text}]);
    expect(after([MILK], merge([MILK], [gone]))[0]!.deleted).toBeUndefined();
    const deleted = {...MILK, deleted: "2026-02-04T08:00:00Z"};
    const told = merge([deleted], [MILK]);
    expect(after([deleted], told)).toEqual([deleted]);
    expect(mergedWords(told)).toBe(
      "“Milk ice” was there already. “Milk ice” is among the deleted ones, where it can be brought back.",
    );
  });

  test("whatever the two are, all texts of the book are there afterwards, and a second time changes nothing", () => {
    const content = {
      name: fc.constantFrom("Milk", "Lemon"),
      text: fc.constantFrom("a", "b", "c", "d"),
      notes: fc.constantFrom("", "n"),
      changed: fc.constantFrom("2026-01-01T08:00:00Z", "2026-01-02T08:00:00Z"),
    };
    const recipes = fc.uniqueArray(
      fc.record({
        ...content,
        id: fc.constantFrom("one-0000", "two-0000", "six-0000"),
        revision: fc.integer({min: 1, max: 3}),
        earlier: fc.array(fc.record(content), {maxLength: 2}),
      }),
      {selector: ({id}) => id, maxLength: 3},
    );
    fc.assert(
      fc.property(recipes, recipes, (book, file) => {
        const merged = after(book, merge(book, file));
        const all = merged.flatMap((one) => [one, ...one.earlier]);
        for (const one of [...book, ...book.flatMap(({earlier}) => earlier)])
          expect(all.some((other) => sameContent(one, other))).toBe(true);
        for (const {text, notes} of file)
          expect(all.some((other) => other.text === text && other.notes === notes)).toBe(true);
        for (const {id} of book) expect(merged.some((one) => one.id === id)).toBe(true);
        expect(after(merged, merge(merged, file))).toEqual(merged);
      }),
      {numRuns: 400, seed: 5},
    );
  });
});

describe("a book over the browser’s storage", () => {
  let book: RecipeBook;
  beforeEach(async () => {
    globalThis.indexedDB = new IDBFactory();
    book = bookIn(await openKeeping(`file ${++count}`));
  });

  test("takes a thousand recipes in at once, lists and searches them", async () => {
    const thousand = Array.from({length: 1000}, (_, i) => ({
      ...MILK,
      id: `number-${i}`,
      name: `Ice ${i}`,
      notes: `${i}`,
    }));
    const {added} = await book.takeIn(readBookFile(bookText(thousand, WRITTEN), "a.json").recipes);
    expect(added).toHaveLength(1000);
    const {recipes} = await book.list();
    expect(recipes).toHaveLength(1000);
    expect((await book.takeIn(thousand)).same).toHaveLength(1000);
  });
});

describe("a recipe of the list", () => {
  const pantry = includedPantry();

  test("has one sentence: its kind, its scoop temperature, its freezer; and says what is left out", async () => {
    const sentence = await summaryOf(MILK, pantry);
    expect(sentence).toMatch(
      /^[A-Z][a-z ]+: scoops at −\d+\.\d °C; at −14 °C it (?:scoops|is firm|is hard|is soft)\.$/,
    );
    expect(await summaryOf({...MILK, text: `${MILK.text}\n3 g xyzzy`}, pantry)).toBe(
      `${sentence} One line is left out until you answer.`,
    );
    expect(await summaryOf({...MILK, text: "900 g whole milk\n100 g sugar", freezer: -18}, pantry)).toMatch(
      /; at −18 °C it is hard, and an hour on the counter, as long as a tub should stand, does not soften it\.$/,
    );
    expect(await summaryOf({...MILK, text: " "}, pantry)).toBe("Nothing is written in it yet.");
    expect(await summaryOf({...MILK, text: "xyzzy"}, pantry)).toBe("Nothing in it is understood yet.");
    expect(await summaryOf({...MILK, text: "{"}, pantry)).toBe(
      "It cannot be read as a recipe: open it to see why.",
    );
  });

  test("takes its title along when it is renamed, unless that would be an ingredient", async () => {
    expect(await renamed(MILK, " Winter\nice ", pantry)).toEqual({
      name: "Winter ice",
      text: MILK.text.replace("Milk ice", "Winter ice"),
    });
    expect(await renamed(MILK, "Raspberry", pantry)).toEqual({name: "Raspberry", text: MILK.text});
    expect(await renamed({...MILK, name: "Other"}, "Winter ice", pantry)).toEqual({
      name: "Winter ice",
      text: MILK.text,
    });
  });
});
