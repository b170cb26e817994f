import {InputError} from "../../../lib/core/errors.ts";
import {type Keeping, keeping} from "./database.ts";
import {
  contentOf,
  type KeptRecipe,
  nameOfBroken,
  nextRevision,
  oneName,
  readKept,
  type RecipeContent,
  sameContent,
} from "./kept-recipe.ts";
import {type Merged, mergeBooks} from "./merge.ts";
import {type BrokenRecipe, type RecipeList, sorted} from "./recipe-list.ts";
import {tabMemory} from "../words/tab-memory.ts";
import {changedRecipe, type How} from "./versions.ts";

/** Outcome of a change. */
export interface Saved {
  /** The recipe as it is kept: under an id of its own where another tab had changed it meanwhile. */
  readonly recipe: KeptRecipe;
  /** Version of the other tab, which stays; absent where there was none. */
  readonly beside?: KeptRecipe;
}

/** A recipe to be added: all but the text may be left out. */
export type NewRecipe = Partial<RecipeContent> & {readonly text: string};

/**
 * The recipe book of this browser. Each call reads what is there now, each change is one transaction, and no change overwrites one of
 * another tab. All that writes throws `Error` in words of the page where the browser refuses (its storage is full), and `InputError` for
 * a text of more than 200,000 characters.
 */
export interface RecipeBook {
  /** Why nothing outlasts this tab, in words; undefined where the browser keeps it. */
  readonly trouble: string | undefined;
  list(): Promise<RecipeList>;
  /** A recipe by its id, a deleted one too; undefined where there is none, or where it cannot be read. */
  get(id: string): Promise<KeptRecipe | undefined>;
  /** Adds a recipe, whatever else has its name, and gives it back with its id. */
  add(recipe: NewRecipe): Promise<KeptRecipe>;
  /**
   * Keeps a change of a recipe.
   *
   * @param base the recipe as it was when the change began: where the book has another by now, both are kept
   */
  save(base: KeptRecipe, content: RecipeContent, how: How): Promise<Saved>;
  /** Changes a recipe as it is now, by a press; undefined where it is gone. What it was is kept as an earlier version. */
  alter(id: string, change: (now: KeptRecipe) => Partial<RecipeContent>): Promise<KeptRecipe | undefined>;
  /** Puts a recipe among the deleted ones. */
  remove(id: string): Promise<void>;
  /** Brings a deleted one back. */
  bringBack(id: string): Promise<void>;
  /** Takes recipes of a file in, all in one transaction: see {@link mergeBooks}. */
  takeIn(recipes: readonly KeptRecipe[]): Promise<Merged>;
  /** Takes out for good what cannot be read. */
  dropBroken(key: string): Promise<void>;
  /** The open recipe of this tab; of the last tab that opened one where this one has not. */
  open(): Promise<KeptRecipe | undefined>;
  /** Makes a recipe the open one, which every page starts from; none with `undefined`. */
  setOpen(id: string | undefined): Promise<void>;
  /** Calls back after each change of a recipe, of this tab and of others; returns what ends it. */
  follow(
    listener: (changed: {readonly ids: readonly string[]; readonly elsewhere: boolean}) => void,
  ): () => void;
}

/** Time for which a deleted recipe can be brought back, ms. */
const KEPT_DELETED = 30 * 24 * 3600 * 1000;

/** Key of the open recipe's id: in the tab's memory, and in the drawer of settings. */
export const OPEN = "open recipe";

/** The book over a keeping; time and chance are told, for the tests. */
export function bookIn(keeping: Keeping, {now = Date.now, id = newId} = {}): RecipeBook {
  const drawer = keeping.drawer("recipes");
  const settings = keeping.drawer("settings");
  const read = (value: unknown, key: string) => {
    if (value === undefined) return undefined;
    try {
      const recipe = readKept(value, nameOfBroken(value, key));
      return recipe.id === key ? recipe : undefined;
    } catch (error) {
      if (error instanceof InputError) return undefined;
      throw error;
    }
  };
  /** One transaction over one recipe as it is now; what cannot be read is left alone. */
  const write = async (key: string, next: (present: KeptRecipe) => KeptRecipe | undefined) => {
    let after: KeptRecipe | undefined;
    await drawer.change(key, (value) => {
      const present = read(value, key);
      if (!present) return value;
      return (after = next(present));
    });
    return after;
  };
  const add = async (recipe: NewRecipe) => {
    const made: KeptRecipe = {
      ...contentOf(recipe),
      id: id(),
      changed: new Date(now()).toISOString(),
      revision: 1,
      earlier: [],
    };
    await drawer.change(made.id, () => made);
    return made;
  };
  const mark = (key: string, deleted: string | undefined) =>
    write(key, (present) => {
      const {deleted: before, ...rest} = present;
      if (before === deleted) return present;
      return {...rest, revision: nextRevision(rest.revision), ...(deleted !== undefined && {deleted})};
    });

  return {
    trouble: keeping.trouble,
    async list() {
      const recipes: KeptRecipe[] = [];
      const deleted: KeptRecipe[] = [];
      const broken: BrokenRecipe[] = [];
      const old = (recipe: KeptRecipe) => now() - Date.parse(recipe.deleted ?? "") > KEPT_DELETED;
      for (const [key, value] of await drawer.all()) {
        const recipe = read(value, key);
        if (!recipe) broken.push({key, name: nameOfBroken(value, key), why: whyBroken(value, key), value});
        else if (recipe.deleted === undefined) recipes.push(recipe);
        // Where the browser refuses, it goes another time.
        else if (old(recipe))
          await write(key, (present) => (old(present) ? undefined : present)).catch(() => undefined);
        else deleted.push(recipe);
      }
      return {...sorted(recipes, deleted), broken};
    },
    get: async (key) => read(await drawer.get(key), key),
    add,
    async save(base, content, how) {
      const wanted = contentOf(content);
      let beside: KeptRecipe | undefined;
      let kept = base;
      let foreign = false;
      await drawer.change(base.id, (value) => {
        const present = read(value, base.id);
        // Gone for good elsewhere: what this tab has is kept again. What cannot be read is left alone.
        if (!present) {
          foreign = value !== undefined;
          return foreign ? value : (kept = changedRecipe(base, wanted, how, now()));
        }
        if (present.revision === base.revision && present.deleted === undefined)
          return (kept = changedRecipe(present, wanted, how, now()));
        kept = present;
        if (present.deleted !== undefined || !sameContent(present, wanted)) beside = present;
        return present;
      });
      if (!beside && !foreign) return {recipe: kept};
      const copy = await add({...wanted, name: oneName(`${wanted.name.slice(0, 60)} (this tab’s)`)});
      return {recipe: copy, ...(beside && {beside})};
    },
    alter: (key, change) =>
      write(key, (present) =>
        changedRecipe(present, contentOf({...present, ...change(present)}), "pressed", now()),
      ),
    async remove(key) {
      await mark(key, new Date(now()).toISOString());
    },
    async bringBack(key) {
      await mark(key, undefined);
    },
    async takeIn(recipes) {
      let merged: Merged | undefined;
      await drawer.changeAll((all) => {
        const present = [...all].flatMap(([key, value]) => read(value, key) ?? []);
        // What cannot be read is written over by nothing.
        const taken = new Set([...all.keys()].filter((key) => !present.some((one) => one.id === key)));
        merged = mergeBooks(
          present,
          recipes.map((one) => (taken.has(one.id) ? {...one, id: id()} : one)),
          id,
        );
        return merged.write;
      });
      return merged!;
    },
    dropBroken: (key) => drawer.change(key, (value) => (read(value, key) ? value : undefined)),
    async open() {
      const key = tabMemory.get(OPEN) ?? (await settings.get(OPEN));
      if (typeof key !== "string" || key === "") return undefined;
      const recipe = read(await drawer.get(key), key);
      return recipe?.deleted === undefined ? recipe : undefined;
    },
    async setOpen(key = "") {
      tabMemory.set(OPEN, key);
      // This tab knows it in any case; another begins with what was open before.
      await settings.change(OPEN, () => key).catch(() => undefined);
    },
    follow: (listener) =>
      keeping.follow(({drawer: name, keys, elsewhere}) => {
        if (name === "recipes") listener({ids: keys, elsewhere});
      }),
  };
}

let shared: Promise<RecipeBook> | undefined;

/** The book that every part of a page shares. */
export function recipeBook(): Promise<RecipeBook> {
  return (shared ??= keeping().then((kept) => bookIn(kept)));
}

/** The drawer's own sentence on what it cannot read. */
function whyBroken(value: unknown, key: string): string {
  try {
    readKept(value, nameOfBroken(value, key));
    return "it is kept under the name of another";
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.message;
  }
}

/** 32 figures by chance: this works on a page without a secure origin too. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}
