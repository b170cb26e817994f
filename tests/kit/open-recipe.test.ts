import "fake-indexeddb/auto";
import * as fc from "fast-check";
import {IDBFactory} from "fake-indexeddb";
import {afterEach, beforeEach, describe, expect, test, vi} from "vitest";
import {type Keeping, openKeeping} from "../../notebooks/kit/keep/database.ts";
import {titleOf} from "../../notebooks/kit/keep/kept-recipe.ts";
import {type OpenRecipe, openRecipeIn} from "../../notebooks/kit/keep/open-recipe.ts";
import {bookIn, type RecipeBook} from "../../notebooks/kit/keep/recipes.ts";
import {stepsFrom} from "../../notebooks/kit/keep/steps.ts";
import {isAnother} from "../../notebooks/kit/keep/versions.ts";

/** A browser's storage as a page sees it: the values are its own keys (HTML Standard, 12.2). */
function storage(): Storage {
  const methods = {
    getItem(key: string): unknown {
      return Object.hasOwn(this, key) ? this[key as never] : null;
    },
    setItem(key: string, value: string): void {
      Object.defineProperty(this, key, {value, enumerable: true, configurable: true});
    },
    removeItem(key: string): void {
      Reflect.deleteProperty(this, key);
    },
  };
  return Object.create(methods) as Storage;
}

let count = 0;
let keeping: Keeping;
let book: RecipeBook;
let open: OpenRecipe;

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  vi.stubGlobal("sessionStorage", storage());
  vi.stubGlobal("localStorage", storage());
  keeping = await openKeeping(`open ${++count}`);
  book = bookIn(keeping);
  open = await openRecipeIn(book);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const MILK = "Milk ice\n500 g whole milk\n100 g sugar";
const texts = async () => (await book.list()).recipes.map(({text}) => text).sort();
const laterPage = () => openRecipeIn(bookIn(keeping));

describe("the open recipe", () => {
  test("nothing is kept until there is something to keep; then within a second, and the next page has it", async () => {
    expect(open.now).toBeUndefined();
    expect(open.standing).toEqual({is: "none"});
    open.edit({text: MILK}, "typed");
    expect(await texts()).toEqual([]);
    open.begin({text: MILK, freezer: -14});
    expect(open.standing).toEqual({is: "keeping"});
    expect(open.now).toMatchObject({name: "Milk ice", text: MILK, freezer: -14});
    open.edit({text: `${MILK}.`}, "typed");
    await new Promise((resolve) => setTimeout(resolve, 900));
    expect(open.standing).toEqual({is: "kept"});
    expect((await laterPage()).now).toEqual({...open.now, text: `${MILK}.`});
    expect((await book.list()).recipes).toMatchObject([{revision: 1, earlier: []}]);
    // The name follows the title until the cook gives another.
    open.edit({text: `Winter ${MILK}`}, "typed");
    expect(open.now!.name).toBe("Winter Milk ice");
    open.edit({name: "Ice of January"}, "pressed");
    open.edit({text: MILK}, "typed");
    expect(open.now!.name).toBe("Ice of January");
  });

  test("each press, and each pause in typing, is a step back; the next page of the tab knows them", async () => {
    open.begin({text: MILK});
    for (const text of [`${MILK}\n1`, `${MILK}\n1 `, `${MILK}\n1 g`, `${MILK}\n1 g salt`])
      open.edit({text}, "typed");
    open.edit({freezer: -12}, "pressed");
    open.edit({text: `${MILK}\n2 g salt`}, "pressed");
    open.undo();
    expect(open.now).toMatchObject({text: `${MILK}\n1 g salt`, freezer: -12});
    open.undo();
    expect(open.now!.freezer).toBeUndefined();
    open.leave();
    await open.flush();
    const next = await laterPage();
    next.undo();
    expect(next.now!.text).toBe(MILK);
    expect(next.canUndo).toBe(false);
    next.undo();
    for (let i = 0; i < 4; i++) next.redo();
    expect(next.now).toMatchObject({text: `${MILK}\n2 g salt`, freezer: -12});
    expect(next.canRedo).toBe(false);
    next.undo();
    next.edit({text: `${MILK}\n3 g salt`}, "typed");
    expect(next.canRedo).toBe(false);
  });

  test("what had not been written when the page was left is taken up by the next page", async () => {
    open.begin({text: MILK});
    await open.flush();
    const {id} = open.now!;
    open.edit({text: `${MILK}.`}, "typed");
    open.leave();
    // The page is gone before it could write.
    expect(await texts()).toEqual([MILK]);
    expect((await laterPage()).now).toMatchObject({id, text: `${MILK}.`});
    expect(Object.keys(localStorage)).toEqual([]);
    expect(await texts()).toEqual([`${MILK}.`]);
    // One that was never in the book too, and rubbish in its place does no harm.
    open.begin({text: "Lemon\n500 g water"});
    open.leave();
    localStorage.setItem("mixwright unsaved x", '{"id": "__proto__", "revision": 1}');
    localStorage.setItem("mixwright unsaved y", "no JSON");
    expect((await laterPage()).now).toMatchObject({name: "Lemon"});
    expect(Object.keys(localStorage)).toEqual([]);
  });

  test("a whole other recipe pasted over it is a new one, and the old stays", async () => {
    open.begin({text: MILK});
    await open.flush();
    open.edit({text: "Lemon ice\n500 g water\n150 g caster sugar"}, "typed");
    expect(open.now!.name).toBe("Lemon ice");
    expect(open.word).toBe("“Lemon ice” is kept as a new recipe; “Milk ice” stays in the book as it was.");
    await open.flush();
    expect((await book.list()).recipes.map(({name}) => name).sort()).toEqual(["Lemon ice", "Milk ice"]);
    // Emptied, or changed line by line, it is the same.
    expect(isAnother(MILK, "")).toBe(false);
    expect(isAnother(MILK, MILK.replace("Milk", "Cream").replace("whole", "skimmed"))).toBe(false);
  });

  test("another tab’s change is taken over where nothing waits here, and both are kept where something does", async () => {
    open.begin({text: MILK});
    await open.flush();
    const told = vi.fn<() => void>();
    const other = await openRecipeIn(bookIn(await openKeeping(`open ${count}`)));
    other.follow(told);
    open.edit({text: `${MILK}\n1 g salt`}, "typed");
    await open.flush();
    await vi.waitFor(() => expect(other.now!.text).toContain("1 g salt"));
    expect(told).toHaveBeenCalled();
    open.edit({text: `${MILK}\n2 g salt`}, "typed");
    other.edit({text: `${MILK}\n3 g salt`}, "typed");
    await open.flush();
    await other.flush();
    expect(other.word).toBe(
      "“Milk ice” was changed in another tab at the same time. What you have here is kept as “Milk ice (this tab’s)”.",
    );
    expect(await texts()).toEqual([`${MILK}\n2 g salt`, `${MILK}\n3 g salt`]);
    other.edit({text: `${MILK}\n4 g salt`}, "typed");
    await other.flush();
    expect((await book.list()).recipes.map(({name}) => name).sort()).toEqual([
      "Milk ice",
      "Milk ice (this tab’s)",
    ]);
    // Deleted there, it is no longer open here.
    await book.remove(other.now!.id);
    await vi.waitFor(() => expect(other.now).toBeUndefined());
    expect(other.word).toContain("It can be brought back in the book.");
  });

  test("a full storage is told, and what was typed is written once there is room", async () => {
    let full = true;
    const refusing: Keeping = {
      ...keeping,
      drawer: (name) => {
        const drawer = keeping.drawer(name);
        return {
          ...drawer,
          change: (key, next) =>
            full ? Promise.reject(new Error("The browser's storage is full.")) : drawer.change(key, next),
        };
      },
    };
    const here = await openRecipeIn(bookIn(refusing));
    here.begin({text: MILK});
    await here.flush();
    expect(here.standing).toEqual({is: "not kept", why: "The browser's storage is full."});
    here.edit({text: `${MILK}.`}, "typed");
    await here.flush();
    expect(here.now!.text).toBe(`${MILK}.`);
    full = false;
    here.edit({text: `${MILK}..`}, "typed");
    await here.flush();
    expect(here.standing).toEqual({is: "kept"});
    expect(await texts()).toEqual([`${MILK}..`]);
  });
});

describe("reading back", () => {
  test("steps that are none are no steps", () => {
    expect(stepsFrom(undefined)).toEqual({past: [], future: []});
    expect(stepsFrom('{"past": [{"name": "a", "text": 3}], "future": []}')).toEqual({past: [], future: []});
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        const {past, future} = stepsFrom(text);
        for (const one of [...past, ...future]) expect(typeof one.text).toBe("string");
      }),
      {numRuns: 200, seed: 3},
    );
  });

  test.each([
    ["Milk ice\n500 g milk", "Milk ice"],
    ["# Milk ice #\n", "Milk ice"],
    ["500 g milk\nsugar", undefined],
    ['{\n"name": "x"}', undefined],
    ["ingredient,g\nwhole milk,500", undefined],
    ["Pear, with ginger\n500 g milk", "Pear, with ginger"],
    ["Ingredients:\n500 g milk", undefined],
    ["", undefined],
  ])("the title of %j is %j", (text, title) => {
    expect(titleOf(text)).toBe(title);
  });
});
