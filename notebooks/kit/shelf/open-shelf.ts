import type {ShelfEntry} from "../../../lib/pantry/stocked.ts";
import {keeping} from "../keep/database.ts";
import {type Kitchen, kitchenOf} from "../keep/kitchen.ts";
import {changeOwn, type Own, type OwnEntry, readOwn} from "../keep/own-ingredients.ts";
import {changeShelf, readShelf, type ShelfEdits, type ShelfLine} from "../keep/shelf.ts";

/** The shelf as it stands now. */
export interface ShelfNow {
  readonly lines: readonly ShelfLine[];
  readonly own: readonly Own[];
  readonly kitchen: Kitchen;
}

/** A change in words, and the way to take it back. */
interface Done {
  readonly words: readonly string[];
  readonly undo: () => Promise<void>;
}

/** The shelf, open to be read and written. */
export interface OpenShelf {
  readonly now: ShelfNow;
  /** Why nothing outlasts this tab; undefined where the browser keeps it. */
  readonly trouble: string | undefined;
  /** The changes of this visit that can be taken back, the last one at the end. */
  readonly done: readonly Done[];
  /** Changes lines, and own ingredients where some are given; `words` say what. */
  change(
    words: readonly string[],
    edits: ShelfEdits,
    own?: ReadonlyMap<string, OwnEntry | undefined>,
  ): Promise<void>;
  /** Takes the last change back. */
  undo(): Promise<void>;
  /** Calls back after each change, of this tab and others. */
  follow(listener: () => void): void;
}

/** Opens the shelf; `prices` are the invented ones that the pages reckon with until the cook sets some. */
export async function openShelf(prices: readonly ShelfEntry[]): Promise<OpenShelf> {
  const kept = await keeping();
  const read = async (): Promise<ShelfNow> => {
    const [lines, own] = await Promise.all([readShelf(), readOwn()]);
    return {lines, own, kitchen: kitchenOf({lines, own, prices})};
  };
  let now = await read();
  const done: Done[] = [];
  const listeners: (() => void)[] = [];
  const tell = async () => {
    now = await read();
    for (const listener of listeners) listener();
  };
  kept.follow(({drawer, elsewhere}) => {
    if (elsewhere && (drawer === "shelf" || drawer === "ingredients")) void tell();
  });
  return {
    get now() {
      return now;
    },
    trouble: kept.trouble,
    done,
    async change(words, edits, own = new Map()) {
      const undoOwn = await changeOwn(own);
      const undoLines = await changeShelf(edits);
      done.push({
        words,
        undo: async () => {
          await undoLines();
          await undoOwn();
        },
      });
      await tell();
    },
    async undo() {
      await done.pop()?.undo();
      await tell();
    },
    follow(listener) {
      listeners.push(listener);
    },
  };
}
