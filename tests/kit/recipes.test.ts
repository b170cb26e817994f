import "fake-indexeddb/auto";
import * as fc from "fast-check";
import {IDBFactory} from "fake-indexeddb";
import {beforeEach, describe, expect, test} from "vitest";
import {type Keeping, openKeeping} from "../../notebooks/kit/keep/database.ts";
import {type KeptRecipe, readKept} from "../../notebooks/kit/keep/kept-recipe.ts";
import {withChanged} from "../../notebooks/kit/keep/recipe-list.ts";
import {bookIn, type RecipeBook} from "../../notebooks/kit/keep/recipes.ts";
import {MOST_EARLIER} from "../../notebooks/kit/keep/versions.ts";
import {InputError} from "../../lib/core/errors.ts";

const DAY = 24 * 3600 * 1000;
const BEGIN = Date.parse("2026-03-01T08:00:00Z");
let name = 0;
let time = BEGIN;
let keeping: Keeping;
let book: RecipeBook;

/** Another tab over the same storage. */
const anotherTab = async () => bookIn(await openKeeping(`book ${name}`), {now: () => time});

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  time = BEGIN;
  keeping = await openKeeping(`book ${++name}`);
  book = bookIn(keeping, {now: () => time});
});

const MILK = "Milk ice\n500 g whole milk\n100 g sugar";
const names = (recipes: readonly KeptRecipe[]) => recipes.map((one) => one.name);

describe("the book", () => {
  test("keeps what is added, lists the latest changed first, and finds one by its id", async () => {
    const milk = await book.add({name: "Milk ice", text: MILK, freezer: -14, overrun: 40});
    time += 1000;
    const lemon = await book.add({text: "500 g water\n150 g sugar"});
    expect(lemon).toMatchObject({
      name: "My recipe",
      notes: "",
      revision: 1,
      earlier: [],
      changed: "2026-03-01T08:00:01.000Z",
    });
    expect((await book.list()).recipes).toEqual([lemon, milk]);
    time += 1000;
    await book.alter(milk.id, () => ({name: "Milk ice, winter"}));
    expect(names((await book.list()).recipes)).toEqual(["Milk ice, winter", "My recipe"]);
    expect(await book.get(lemon.id)).toEqual(lemon);
    expect(await book.get("__proto__")).toBeUndefined();
    expect(await (await anotherTab()).get(lemon.id)).toEqual(lemon);
    // A list is brought up to date by what has changed alone.
    const before = await book.list();
    time += 1000;
    await book.remove(milk.id);
    await book.alter(lemon.id, () => ({notes: "sharp"}));
    const changed = await Promise.all([milk.id, lemon.id].map(book.get));
    expect(
      withChanged(
        before,
        changed.filter((one) => one !== undefined),
      ),
    ).toEqual(await book.list());
  });

  test("keeps a version where the text had rested, a press changed it or most of it went; not each key", async () => {
    const {id, ...first} = await book.add({name: "Milk ice", text: MILK});
    let now = (await book.get(id))!;
    const type = async (text: string, ms: number) => {
      time += ms;
      now = (await book.save(now, {...now, text}, "typed")).recipe;
    };
    await type(`${MILK}.`, 1000);
    await type(`${MILK}..`, 1000);
    expect(now.earlier).toEqual([]);
    expect(now.revision).toBe(3);
    await type(`${MILK}...`, 3 * 60_000);
    expect(now.earlier.map(({text}) => text)).toEqual([`${MILK}..`]);
    await type("", 1000);
    expect(now.earlier.map(({text}) => text)).toEqual([`${MILK}...`, `${MILK}..`]);
    time += 1000;
    const restored = await book.alter(id, () => ({text: first.text}));
    expect(restored!.earlier.map(({text}) => text)).toEqual(["", `${MILK}...`, `${MILK}..`]);
    // What changes nothing is no change.
    expect(await book.alter(id, () => ({}))).toEqual(restored);
    // There is an end, and no version twice.
    for (let i = 0; i < MOST_EARLIER + 5; i++) await book.alter(id, () => ({text: `${i} g sugar`}));
    await book.alter(id, () => ({text: "34 g sugar"}));
    expect((await book.get(id))!.earlier).toHaveLength(MOST_EARLIER);
  });

  test("a deleted recipe comes back for 30 days, then it is gone", async () => {
    const {id} = await book.add({name: "Milk ice", text: MILK});
    await book.setOpen(id);
    await book.remove(id);
    expect(await book.open()).toBeUndefined();
    const {recipes, deleted} = await book.list();
    expect([names(recipes), names(deleted)]).toEqual([[], ["Milk ice"]]);
    await book.bringBack(id);
    expect(names((await book.list()).recipes)).toEqual(["Milk ice"]);
    await book.remove(id);
    time += 30 * DAY;
    expect(names((await book.list()).deleted)).toEqual(["Milk ice"]);
    time += 1000;
    expect((await book.list()).deleted).toEqual([]);
    expect(await book.get(id)).toBeUndefined();
  });

  test("says by name what it cannot read, shows the others, and leaves it until it is taken out", async () => {
    const good = await book.add({name: "Milk ice", text: MILK});
    const drawer = keeping.drawer("recipes");
    const broken = {...good, id: "broken-one", name: "Plum\u202e <b>sorbet</b>", freezer: "cold"};
    await drawer.change("broken-one", () => broken);
    await drawer.change("another-key", () => good);
    const list = await book.list();
    expect(list.recipes).toEqual([good]);
    expect(list.broken).toEqual([
      {key: "another-key", name: "Milk ice", why: "it is kept under the name of another", value: good},
      {
        key: "broken-one",
        name: "Plum <b>sorbet</b>",
        why: 'Plum <b>sorbet</b>.freezer: not a finite number (got "cold"); give a finite number',
        value: broken,
      },
    ]);
    // Nothing writes over it.
    await book.remove("broken-one");
    const {recipe} = await book.save({...good, id: "broken-one"}, {...good, text: "1 g salt"}, "typed");
    expect(recipe.id).not.toBe("broken-one");
    expect(await drawer.get("broken-one")).toEqual(broken);
    await book.dropBroken("broken-one");
    await book.dropBroken(good.id);
    expect((await book.list()).broken.map(({key}) => key)).toEqual(["another-key"]);
    expect(await book.get(good.id)).toEqual(good);
  });

  test("refuses a text too long before anything is written", async () => {
    await expect(book.add({text: "x".repeat(200_001)})).rejects.toThrow(
      'recipe: too long (got "200001 characters"); give at most 200000',
    );
    expect((await book.list()).recipes).toEqual([]);
  });
});

describe("two tabs", () => {
  test("that change one recipe at the same time keep both, and the later says what it became", async () => {
    const there = await anotherTab();
    const base = await book.add({name: "Milk ice", text: MILK});
    const saved = await Promise.all([
      book.save(base, {...base, text: `${MILK}\n1 g salt`}, "typed"),
      there.save(base, {...base, text: `${MILK}\n2 g salt`}, "typed"),
    ]);
    expect(saved.filter(({beside}) => beside)).toHaveLength(1);
    const {recipes} = await book.list();
    expect(recipes.map(({text}) => text.slice(-8)).sort()).toEqual(["1 g salt", "2 g salt"]);
    expect(names(recipes).sort()).toEqual(["Milk ice", "Milk ice (this tab’s)"]);
    // The same change in both is one.
    const [one] = recipes;
    const same = {...one!, text: "3 g salt"};
    await Promise.all([book.save(one!, same, "typed"), there.save(one!, same, "typed")]);
    expect((await book.list()).recipes).toHaveLength(2);
  });

  test("a recipe that another tab deleted is kept as it is here", async () => {
    const base = await book.add({name: "Milk ice", text: MILK});
    await (await anotherTab()).remove(base.id);
    const {recipe, beside} = await book.save(base, {...base, text: "1 g salt"}, "typed");
    expect(beside?.deleted).toBeDefined();
    expect(recipe.text).toBe("1 g salt");
    expect(await book.get(base.id)).toMatchObject({text: MILK});
    // Deleted for good: it is there again.
    time += 31 * DAY;
    await book.list();
    expect((await book.save(base, {...base, text: "2 g salt"}, "typed")).recipe.id).toBe(base.id);
  });

  test("a refused write leaves the book as it was", async () => {
    const base = await book.add({name: "Milk ice", text: MILK});
    const refused: Keeping = {
      ...keeping,
      drawer: (drawer) => ({
        ...keeping.drawer(drawer),
        change: () => Promise.reject(new Error("The browser’s storage is full")),
      }),
    };
    await expect(bookIn(refused).save(base, {...base, text: "1 g salt"}, "typed")).rejects.toThrow("full");
    await bookIn(refused).setOpen(base.id);
    expect(await book.get(base.id)).toEqual(base);
  });
});

describe("what is read is checked", () => {
  const kept: KeptRecipe = {
    id: "0123456789abcdef",
    name: "Milk ice",
    text: MILK,
    notes: "",
    changed: "2026-03-01T08:00:00Z",
    revision: 3,
    earlier: [],
  };

  test.each<[string, object, string]>([
    ["a name", {name: 3}, "file.name: not a text (got 3); give a text"],
    [
      "an id",
      {id: "__proto__"},
      'file.id: not understood (got "__proto__"); give 8 to 64 small letters, figures or hyphens',
    ],
    ["a freezer", {freezer: 4}, "file.freezer: out of range (got 4); give a number at most 0"],
    ["a revision", {revision: 1.5}, "file.revision: not understood (got 1.5); give a whole number"],
    [
      "a day",
      {changed: "2026-13-41T08:00:00Z"},
      'file.changed: not understood (got "2026-13-41T08:00:00Z"); give a day and an hour that exist',
    ],
    ["versions", {earlier: Array.from({length: 61}, () => kept)}, "file.earlier: out of range"],
  ])("%s", (_, wrong, message) => {
    expect(() => readKept({...kept, ...wrong}, "file")).toThrow(message);
  });

  test("a name is one line that hides and turns nothing; what is not known is left out", () => {
    const read = readKept({...kept, name: " a\u202eb\n\u0000c ", constructor: 1, more: {}}, "file");
    expect(read).toEqual({...kept, name: "a b c"});
  });

  test("whatever is in the storage, the list comes, and holds only recipes", async () => {
    const strange = fc.oneof(
      fc.anything({withDate: true, withMap: true, withBigInt: true, withSparseArray: true}),
      fc.record(
        {
          id: fc.oneof(fc.constant("0123456789abcdef"), fc.anything()),
          name: fc.oneof(fc.string({unit: "binary"}), fc.anything()),
          text: fc.oneof(fc.string({unit: "binary"}), fc.anything()),
          notes: fc.anything(),
          freezer: fc.oneof(fc.double(), fc.anything()),
          overrun: fc.oneof(fc.double(), fc.anything()),
          changed: fc.oneof(fc.constant("2026-03-01T08:00:00Z"), fc.string()),
          revision: fc.oneof(fc.integer(), fc.double()),
          earlier: fc.oneof(fc.array(fc.anything()), fc.constant([])),
          deleted: fc.anything(),
        },
        {requiredKeys: []},
      ),
    );
    await fc.assert(
      fc.asyncProperty(strange, async (value) => {
        const {drawer, ...rest} = keeping;
        const hostile = bookIn({
          ...rest,
          drawer: (which) => ({
            ...drawer(which),
            all: () => Promise.resolve(new Map([["0123456789abcdef", value]])),
          }),
        });
        const {recipes, deleted, broken} = await hostile.list();
        expect(recipes.length + deleted.length + broken.length).toBeLessThanOrEqual(1);
        for (const one of recipes) {
          expect(readKept(structuredClone(one), "again")).toEqual(one);
          expect(one.name).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
        }
        for (const one of broken) expect(one.why + one.name).not.toMatch(/[\p{Cc}\u202a-\u202e]/u);
      }),
      {numRuns: 40, seed: 11},
    );
  });

  test("an error is the caller's to mend", () => {
    expect(() => readKept(null, "file")).toThrow(InputError);
  });
});
