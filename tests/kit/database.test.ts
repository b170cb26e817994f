import "fake-indexeddb/auto";
import {IDBFactory} from "fake-indexeddb";
import {beforeEach, describe, expect, test, vi} from "vitest";
import {openKeeping, type Written} from "../../notebooks/kit/keep/database.ts";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe("what the browser keeps (Indexed Database API 3.0, W3C)", () => {
  test("is read back by a tab that opens later", async () => {
    const first = await openKeeping("a");
    expect(first.trouble).toBeUndefined();
    await first.drawer("recipes").change("one", () => ({name: "custard"}));
    await first.drawer("shelf").putAll(
      new Map([
        ["milk", 1],
        ["sugar", 2],
      ]),
    );
    const second = await openKeeping("a");
    expect(await second.drawer("recipes").get("one")).toEqual({name: "custard"});
    expect(await second.drawer("shelf").all()).toEqual(
      new Map([
        ["milk", 1],
        ["sugar", 2],
      ]),
    );
    await second.drawer("recipes").change("one", () => undefined);
    expect(await first.drawer("recipes").all()).toEqual(new Map());
  });

  test("two tabs that add to one value lose neither", async () => {
    const tabs = [await openKeeping("b"), await openKeeping("b")];
    const add = (word: string) => (present: unknown) => [...((present as string[] | undefined) ?? []), word];
    await Promise.all(
      ["a", "b", "c", "d"].map((word, i) => tabs[i % 2]!.drawer("settings").change("list", add(word))),
    );
    expect([...((await tabs[0]!.drawer("settings").get("list")) as string[])].sort()).toEqual([
      "a",
      "b",
      "c",
      "d",
    ]);
  });

  test("is told to this tab and to others, until they no longer follow", async () => {
    const here = await openKeeping("c");
    const there = await openKeeping("c");
    const heard: Written[] = [];
    const heardThere: Written[] = [];
    const end = here.follow((written) => heard.push(written));
    there.follow((written) => heardThere.push(written));
    await here.drawer("recipes").change("x", () => 1);
    await vi.waitFor(() => expect(heardThere).toEqual([{drawer: "recipes", keys: ["x"], elsewhere: true}]));
    expect(heard).toEqual([{drawer: "recipes", keys: ["x"], elsewhere: false}]);
    end();
    await here.drawer("recipes").change("x", () => 2);
    expect(heard).toHaveLength(1);
  });

  test("a change that throws leaves the value as it was", async () => {
    const {drawer} = await openKeeping("d");
    await drawer("recipes").change("x", () => 1);
    await expect(
      drawer("recipes").change("x", () => {
        throw new RangeError("no");
      }),
    ).rejects.toThrow(RangeError);
    expect(await drawer("recipes").get("x")).toBe(1);
  });

  test("a value that cannot be stored is refused in words, and nothing is lost", async () => {
    const {drawer} = await openKeeping("e");
    await drawer("recipes").change("x", () => 1);
    await expect(drawer("recipes").change("x", () => () => 2)).rejects.toThrow(
      "The browser did not keep this (DataCloneError). Save your recipes as a file, then load the page anew.",
    );
    expect(await drawer("recipes").get("x")).toBe(1);
  });
});

describe("where the browser keeps nothing", () => {
  test("the memory of the tab stands in, and says so", async () => {
    globalThis.indexedDB = {
      open: () => {
        throw new DOMException("denied", "SecurityError");
      },
    } as unknown as IDBFactory;
    const {drawer, trouble} = await openKeeping("f");
    expect(trouble).toContain("save your recipes as a file");
    await drawer("recipes").change("x", () => ({a: 1}));
    expect(await drawer("recipes").get("x")).toEqual({a: 1});
    expect(await drawer("recipes").all()).toEqual(new Map([["x", {a: 1}]]));
  });
});
