import {type KeptRecipe, type RecipeContent, sameContent} from "./kept-recipe.ts";
import type {RecipeBook} from "./recipes.ts";
import {forgetAside, type Unsaved} from "./unsaved.ts";
import type {How} from "./versions.ts";

/** A recipe that keeps itself while it is changed. */
export interface Autosaved {
  /** As it is in the book, as far as this tab knows. */
  readonly kept: KeptRecipe;
  /** As it stands here. */
  readonly now: RecipeContent;
  /** Change that is not in the book yet. */
  readonly unsaved: Unsaved | undefined;
  /** Why it is not, in words, where the browser refused. */
  readonly trouble: string | undefined;
  put(content: RecipeContent, how: How): void;
  /** Writes what waits, now. */
  flush(): Promise<void>;
  /** Takes over what another tab, or another part of this page, has made of it, unless something waits here. */
  reload(): Promise<void>;
  /** Whether another tab has deleted it. */
  readonly gone: boolean;
}

/** Longest wait of a change for the next one, ms: with the writing, well under a second. */
const SOON = 300;

/** When a refused write is tried again, ms. */
const AGAIN = 5000;

interface AutosaveOptions {
  /** Called when anything of it has changed but by `put`. */
  readonly tell: () => void;
  /** Called where another tab had changed the recipe meanwhile: both are kept. */
  readonly beside: (theirs: KeptRecipe, own: KeptRecipe) => void;
}

/** A recipe that is written to the book soon after each change, one write at a time. */
export function autosaved(book: RecipeBook, from: KeptRecipe, {tell, beside}: AutosaveOptions): Autosaved {
  let kept = from;
  let waiting: {readonly content: RecipeContent; readonly how: How}[] = [];
  let writing: Promise<void> | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let trouble: string | undefined;
  let gone = false;

  const write = async () => {
    for (let next = waiting[0]; next; next = waiting[0]) {
      try {
        const {id} = kept;
        const saved = await book.save(kept, next.content, next.how);
        waiting = waiting.slice(1);
        kept = saved.recipe;
        trouble = undefined;
        forgetAside(id);
        if (saved.beside) {
          const {name} = kept;
          waiting = waiting.map(({content, how}) => ({content: {...content, name}, how}));
          beside(saved.beside, kept);
        }
      } catch (error) {
        trouble = error instanceof Error ? error.message : String(error);
        timer = setTimeout(() => void flush(), AGAIN);
        break;
      }
    }
    writing = undefined;
    tell();
  };
  const flush = () => {
    clearTimeout(timer);
    timer = undefined;
    return writing ?? (waiting.length ? (writing = write()) : Promise.resolve());
  };
  return {
    get kept() {
      return kept;
    },
    get now() {
      return waiting.at(-1)?.content ?? kept;
    },
    get trouble() {
      return trouble;
    },
    get gone() {
      return gone;
    },
    get unsaved() {
      const last = waiting.at(-1);
      return last && {id: kept.id, revision: kept.revision, content: last.content};
    },
    put(content, how) {
      const last = waiting.at(-1);
      // One that is being written, or that a press made, stays; typing goes on from the last typing.
      const joins = last?.how === "typed" && how === "typed" && !(writing && waiting.length === 1);
      waiting = [...(joins ? waiting.slice(0, -1) : waiting), {content, how}];
      if (trouble !== undefined) clearTimeout(timer);
      if (trouble !== undefined || !timer) timer = setTimeout(() => void flush(), SOON);
    },
    flush,
    async reload() {
      if (waiting.length) return;
      let read: KeptRecipe | undefined;
      try {
        read = await book.get(kept.id);
      } catch {
        // The browser does not answer: what stands here stays.
        return;
      }
      if (waiting.length || (read && read.revision < kept.revision)) return;
      const was = kept;
      gone = read === undefined || read.deleted !== undefined;
      if (read) kept = read;
      if (gone || !sameContent(was, kept)) tell();
    },
  };
}
