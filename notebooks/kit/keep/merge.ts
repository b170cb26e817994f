import {
  type EarlierVersion,
  type KeptRecipe,
  MOST_READ,
  nextRevision,
  oneName,
  type RecipeContent,
  sameContent,
} from "./kept-recipe.ts";
import {asEarlier} from "./versions.ts";

/** Union of a book and a file. */
export interface Merged {
  /** Recipes to write, by id; those of the book that stay as they are are not among them. */
  readonly write: ReadonlyMap<string, KeptRecipe>;
  /** Names of recipes that the book did not have. */
  readonly added: readonly string[];
  /** Names of recipes of which the file had a newer text; the book's own is an earlier version now. */
  readonly newer: readonly string[];
  /** Names of recipes of which the file had an older text that the book did not know; it is an earlier version now. */
  readonly older: readonly string[];
  /** Names under which a different recipe of the same name, or of the same age, is kept beside the book's own. */
  readonly beside: readonly string[];
  /** Names of recipes that the book had already. */
  readonly same: readonly string[];
  /** Those of them that are among the deleted ones here. */
  readonly deleted: readonly string[];
}

/**
 * Recipes of a file taken into a book. Nothing of the book is lost: of the same recipe the newer text wins and the other becomes an
 * earlier version, and whatever cannot be told apart by age, or only has the name of another, is kept beside it. What was deleted in
 * the file is no reason to delete it here.
 *
 * @param id makes an id that is not taken yet
 */
export function mergeBooks(
  book: readonly KeptRecipe[],
  file: readonly KeptRecipe[],
  id: () => string,
): Merged {
  const all = new Map(book.map((one) => [one.id, one]));
  const write = new Map<string, KeptRecipe>();
  const told = {added: [], newer: [], older: [], beside: [], same: [], deleted: []} as Record<
    Exclude<keyof Merged, "write">,
    string[]
  >;
  // By content, so that a thousand recipes are not each held beside a thousand.
  const known = new Map<string, KeptRecipe[]>();
  const know = (recipe: KeptRecipe) =>
    known.set(contentKey(recipe), [...(known.get(contentKey(recipe)) ?? []), recipe]);
  book.forEach(know);
  const names = new Set(book.flatMap(({name, deleted}) => (deleted === undefined ? [name] : [])));
  const twinOf = (recipe: RecipeContent) =>
    [recipe.name, besideName(recipe.name)]
      .flatMap((name) => known.get(contentKey({...recipe, name})) ?? [])
      .find((one) => all.get(one.id) === one);
  const put = (recipe: KeptRecipe) => {
    all.set(recipe.id, recipe);
    write.set(recipe.id, recipe);
    know(recipe);
    names.add(recipe.name);
  };
  const putBeside = (recipe: KeptRecipe, key: string) => {
    const name = besideName(recipe.name);
    put({...recipe, id: key, name});
    told.beside.push(name);
  };
  // What is newer in the file comes first, what is new to the book last: each is then held beside what the others have become.
  const rank = ({id: key, revision}: KeptRecipe) => {
    const ours = all.get(key);
    return ours ? (revision > ours.revision ? 0 : 1) : 2;
  };
  const ranked = file.map((one) => [rank(one), one] as const).sort(([a], [b]) => a - b);
  for (const [, {deleted: _deleted, ...theirs}] of ranked) {
    const ours = all.get(theirs.id);
    const twin = twinOf(theirs);
    if (!ours && twin) tellSame(twin, told);
    else if (!ours) {
      if (names.has(theirs.name)) putBeside(theirs, theirs.id);
      else {
        put(theirs);
        told.added.push(theirs.name);
      }
    } else if (alike(ours, theirs)) {
      tellSame(ours, told);
      const earlier = versions(ours.earlier, theirs.earlier);
      if (earlier.length > ours.earlier.length) put({...ours, earlier});
    } else if (theirs.revision > ours.revision) {
      put({...theirs, earlier: versions([asEarlier(ours), ...ours.earlier], theirs.earlier)});
      told.newer.push(theirs.name);
    } else if (ours.earlier.some((version) => sameContent(version, theirs)) || twin) tellSame(ours, told);
    else if (theirs.revision === ours.revision)
      putBeside({...theirs, revision: nextRevision(theirs.revision)}, id());
    else {
      put({...ours, earlier: versions(ours.earlier, [asEarlier(theirs), ...theirs.earlier])});
      told.older.push(ours.name);
    }
  }
  return {write, ...told};
}

function tellSame({name, deleted}: KeptRecipe, told: Record<"same" | "deleted", string[]>): void {
  told.same.push(name);
  if (deleted !== undefined) told.deleted.push(name);
}

/** Whether two recipes differ in nothing but a name that an import has given. */
function alike(a: RecipeContent, b: RecipeContent): boolean {
  return sameContent(a, b) || sameContent(a, {...b, name: besideName(b.name)});
}

function contentKey({name, text, notes, freezer, overrun}: RecipeContent): string {
  return JSON.stringify([name, text, notes, freezer, overrun]);
}

function besideName(name: string): string {
  return oneName(`${[...name].slice(0, 65).join("")} (imported)`);
}

/** The versions of both, the latest first: all of the book's own, and as many of the others as there is room for. */
function versions(own: readonly EarlierVersion[], others: readonly EarlierVersion[]): EarlierVersion[] {
  const fresh = others.filter((other) => !own.some((one) => sameContent(one, other)));
  return [...own, ...fresh].slice(0, MOST_READ).sort((a, b) => Date.parse(b.changed) - Date.parse(a.changed));
}
