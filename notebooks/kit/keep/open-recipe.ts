import {type Autosaved, autosaved} from "./autosave.ts";
import {
  contentOf,
  type KeptRecipe,
  LONGEST_TEXT,
  oneName,
  type RecipeContent,
  sameContent,
  titleOf,
  UNNAMED,
} from "./kept-recipe.ts";
import {newId, OPEN, type NewRecipe, type RecipeBook, recipeBook} from "./recipes.ts";
import {NO_STEPS, stepBack, stepForward, stepFrom, type Steps, stepsFrom, stepsText} from "./steps.ts";
import {tabMemory} from "../words/tab-memory.ts";
import {setAside, takeUp, unwritten} from "./unsaved.ts";
import {type How, isAnother} from "./versions.ts";

/** State of the open recipe. */
export type Standing =
  | {readonly is: "none"}
  | {readonly is: "keeping"}
  | {readonly is: "kept"}
  /** Why, in a sentence with the next step. */
  | {readonly is: "not kept"; readonly why: string};

/**
 * The recipe that is open in this tab: it goes along from page to page, and keeps itself in the book within a second of each change.
 * A text that a page shows instead (a demonstration, that of a link) is its visitor, and gets into the book by `begin` alone.
 */
export interface OpenRecipe {
  /** As it stands in this tab; undefined where none is open. */
  readonly now: (RecipeContent & {readonly id: string}) | undefined;
  /** The same with its versions, as a file would have it. */
  readonly whole: KeptRecipe | undefined;
  readonly standing: Standing;
  /** News that the cook did not make here, in a sentence. */
  readonly word: string | undefined;
  /** Recipe of a link, where this page shows it in place of the open one. */
  readonly visitor: NewRecipe | undefined;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Tells that this page shows something else; undefined when it no longer does. */
  show(visitor: NewRecipe | undefined): void;
  /** Puts a new recipe into the book and opens it. */
  begin(recipe: NewRecipe): void;
  /** Changes it; a text typed or pasted in which no line of the old is left is a new recipe. */
  edit(change: Partial<RecipeContent>, how: How): void;
  /** Opens another recipe of the book; none with `undefined`. */
  open(id: string | undefined): Promise<void>;
  undo(): void;
  redo(): void;
  /** Writes what waits, now. */
  flush(): Promise<void>;
  /** Sets aside what waits, and the steps, because the page is being left. */
  leave(): void;
  /** Looks whether another tab has changed it. */
  reload(): Promise<void>;
  /** Calls back after each change of any of these; returns what ends it. */
  follow(listener: () => void): () => void;
}

/** Typing that pauses so long is a step of its own, ms. */
const PAUSE = 1000;

/** The open recipe over a book. */
export async function openRecipeIn(book: RecipeBook): Promise<OpenRecipe> {
  const listeners = new Set<() => void>();
  const tell = () => listeners.forEach((listener) => listener());
  let word: string | undefined;
  let visitor: NewRecipe | undefined;
  let held: Autosaved | undefined;
  let steps: Steps = NO_STEPS;
  let stepped = 0;

  const hold = (recipe: KeptRecipe | undefined) => {
    held = recipe && watched(recipe);
    steps = recipe ? stepsFrom(tabMemory.get(stepsKey(recipe.id))) : NO_STEPS;
    stepped = 0;
  };
  const watched = (recipe: KeptRecipe) => {
    const mine = autosaved(book, recipe, {
      tell: () => {
        if (held === mine && mine.gone) {
          word = `“${mine.now.name}” was deleted in another tab. It can be brought back in the book.`;
          hold(undefined);
          void book.setOpen(undefined);
        }
        tell();
      },
      beside: (theirs, own) => {
        word = `“${theirs.name}” was changed in another tab at the same time. What you have here is kept as “${own.name}”.`;
        if (held === mine) void book.setOpen(own.id);
      },
    });
    return mine;
  };
  const put = (content: RecipeContent, how: How) => {
    held!.put(content, how);
    tell();
  };
  const step = (taken: {to: RecipeContent; steps: Steps} | undefined) => {
    if (!taken) return;
    ({steps} = taken);
    stepped = 0;
    word = undefined;
    put(taken.to, "typed");
  };
  /** Lets go of the open recipe: what waits is written, or set aside where the browser refuses. */
  const letGo = async () => {
    const old = held;
    if (!old) return;
    tabMemory.set(stepsKey(old.kept.id), stepsText(steps));
    await old.flush();
    if (old.unsaved) setAside(old.unsaved);
  };
  /** Whether a text is longer than any recipe: it is not kept, and that is said. */
  const tooLong = ({length}: string) => {
    if (length <= LONGEST_TEXT) return false;
    word = `This text has more than ${LONGEST_TEXT} characters: it is no recipe, and is not kept.`;
    tell();
    return true;
  };
  const begin = (recipe: NewRecipe) => {
    if (tooLong(recipe.text)) return;
    const content = contentOf({...recipe, name: recipe.name ?? titleOf(recipe.text) ?? ""});
    void letGo();
    visitor = undefined;
    word = undefined;
    const id = newId();
    hold(unwritten(id));
    void book.setOpen(id);
    put(content, "typed");
  };

  await takeUp(book);
  // Where the browser does not answer, the page goes on without.
  hold(await book.open().catch(() => undefined));
  book.follow(({ids}) => {
    if (held && (!ids.length || ids.includes(held.kept.id))) void held.reload();
  });

  return {
    get now() {
      return held && {id: held.kept.id, ...contentOf(held.now)};
    },
    get whole() {
      return held && {...held.kept, ...contentOf(held.now), revision: Math.max(1, held.kept.revision)};
    },
    get standing(): Standing {
      if (!held) return {is: "none"};
      const why = held.trouble ?? book.trouble;
      if (why !== undefined) return {is: "not kept", why};
      return {is: held.unsaved ? "keeping" : "kept"};
    },
    get word() {
      return word;
    },
    get visitor() {
      return visitor;
    },
    get canUndo() {
      return steps.past.length > 0;
    },
    get canRedo() {
      return steps.future.length > 0;
    },
    show(shown) {
      visitor = shown && {...shown, ...(shown.name !== undefined && {name: oneName(shown.name)})};
      tell();
    },
    begin,
    edit(change, how) {
      if (!held || tooLong(change.text ?? "")) return;
      const before = contentOf(held.now);
      const after = contentOf({...before, ...named(before, change.text), ...change});
      if (sameContent(before, after)) return;
      if (how === "typed" && isAnother(before.text, after.text)) {
        begin({...after, name: titleOf(after.text) ?? "", notes: ""});
        word = `“${contentOf(held.now).name}” is kept as a new recipe; “${before.name}” stays in the book as it was.`;
        tell();
        return;
      }
      const at = Date.now();
      if (how === "pressed" || at - stepped > PAUSE) steps = stepFrom(steps, before);
      else steps = {past: steps.past, future: []};
      stepped = how === "pressed" ? 0 : at;
      word = undefined;
      put(after, how);
    },
    async open(id) {
      await letGo();
      visitor = undefined;
      word = undefined;
      await book.setOpen(id);
      hold(await book.open());
      tell();
    },
    undo: () => held && step(stepBack(steps, contentOf(held.now))),
    redo: () => held && step(stepForward(steps, contentOf(held.now))),
    flush: async () => held?.flush(),
    leave() {
      if (!held) return;
      if (held.unsaved) setAside(held.unsaved);
      tabMemory.set(stepsKey(held.kept.id), stepsText(steps));
    },
    reload: async () => held?.reload(),
    follow(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** The name follows the title of the text, as long as nobody has given another. */
function named(before: RecipeContent, text: string | undefined): Partial<RecipeContent> {
  const title = text === undefined ? undefined : titleOf(text);
  const follows = before.name === UNNAMED || before.name === oneName(titleOf(before.text) ?? "");
  return title !== undefined && follows ? {name: title} : {};
}

function stepsKey(id: string): string {
  return `steps ${id}`;
}

let shared: Promise<OpenRecipe> | undefined;

/** The open recipe that every part of a page shares; it is written when the page is left or hidden. */
export function openRecipe(): Promise<OpenRecipe> {
  return (shared ??= recipeBook()
    .then(openRecipeIn)
    .then((open) => {
      let left: string | undefined;
      addEventListener("pagehide", () => {
        open.leave();
        left = open.standing.is === "keeping" ? "" : (open.now?.id ?? "");
      });
      // A page that Back brings out of the cache begins anew where the tab has gone on without it.
      addEventListener("pageshow", ({persisted}) => {
        if (persisted && left !== (tabMemory.get(OPEN) ?? "")) location.reload();
      });
      document.addEventListener("visibilitychange", () => {
        if (document.hidden) void open.flush();
        else void open.reload();
      });
      return open;
    }));
}
