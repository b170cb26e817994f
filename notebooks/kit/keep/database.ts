import {type IDBPDatabase, openDB} from "idb";

// What a cook keeps stays in this browser, in IndexedDB. Whatever is read back is hostile until checked: another version of the
// page, an extension or a hand may have written it.

/** Drawers of the database: each holds values under keys. */
export const DRAWERS = ["recipes", "shelf", "ingredients", "settings"] as const;
export type DrawerName = (typeof DRAWERS)[number];

/** A change that this page or another tab has written. */
export interface Written {
  readonly drawer: DrawerName;
  /** Keys written or taken out; none named: everything. */
  readonly keys: readonly string[];
  /** Whether another tab wrote it. */
  readonly elsewhere: boolean;
}

/** One drawer. Every call that writes is one transaction: all of it is kept, or nothing. */
export interface Drawer {
  /** The value under a key, unchecked. */
  get(key: string): Promise<unknown>;
  /** All that is there, by key, unchecked. */
  all(): Promise<ReadonlyMap<string, unknown>>;
  /**
   * Writes what `next` makes of the present value; `undefined` takes the key out. No other tab writes between reading and writing, so that
   * `next` can see that it was not the last.
   *
   * @throws Error in words of the page where the browser refuses, e.g. because its storage is full; the value is then as before
   */
  change(key: string, next: (present: unknown) => unknown): Promise<void>;
  /** Writes many at once, e.g. of an imported file. */
  putAll(entries: ReadonlyMap<string, unknown>): Promise<void>;
  /** Writes what `next` makes of all that is there, in one transaction: no other tab writes between. */
  changeAll(next: (all: ReadonlyMap<string, unknown>) => ReadonlyMap<string, unknown>): Promise<void>;
}

/** Drawers of the database. */
export interface Keeping {
  drawer(name: DrawerName): Drawer;
  /** Why nothing outlasts this tab, in words; undefined where the browser keeps it. */
  readonly trouble: string | undefined;
  /** Calls back after each write, of this tab and others; returns what ends it. */
  follow(listener: (written: Written) => void): () => void;
}

const NAME = "mixwright";

/** Store of the browser; where it refuses, the memory of this tab, which says so. */
export async function openKeeping(name = NAME): Promise<Keeping> {
  const listeners = new Set<(written: Written) => void>();
  const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel(name) : undefined;
  const tell = (drawer: DrawerName, keys: readonly string[]) => {
    for (const listener of listeners) listener({drawer, keys, elsewhere: false});
    // A channel reaches this origin alone, and knows no other target.
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    channel?.postMessage({drawer, keys});
  };
  channel?.addEventListener("message", ({data}: MessageEvent<{drawer?: unknown; keys?: unknown}>) => {
    const drawer = DRAWERS.find((known) => known === data?.drawer);
    const keys = Array.isArray(data?.keys) ? data.keys.filter((key) => typeof key === "string") : [];
    if (drawer) for (const listener of listeners) listener({drawer, keys, elsewhere: true});
  });
  const open = async () =>
    openDB(name, 1, {
      upgrade: (fresh) => DRAWERS.forEach((drawer) => fresh.createObjectStore(drawer)),
      // A newer page may need to change the database: this one lets go, and is read from the start when it is used again.
      blocking: (_old, _new, event) => (event.target as IDBDatabase).close(),
    });
  // Refused at once, or later: either way the page goes on.
  const db = await open().catch(() => undefined);
  return {
    drawer: (drawer) => (db ? inDatabase(db, drawer, tell) : inMemory(drawer, tell)),
    trouble: db
      ? undefined
      : "This browser keeps nothing for this page (a private window, or its settings): save your recipes as a file before you close it.",
    follow(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

type Tell = (drawer: DrawerName, keys: readonly string[]) => void;

function inDatabase(db: IDBPDatabase, name: DrawerName, tell: Tell): Drawer {
  return {
    get: (key) => db.get(name, key),
    async all() {
      const reading = db.transaction(name);
      const [keys, values] = await Promise.all([reading.store.getAllKeys(), reading.store.getAll()]);
      return new Map(keys.map((key, i) => [String(key), values[i] as unknown]));
    },
    async change(key, next) {
      await orInWords(async () => {
        const writing = db.transaction(name, "readwrite", {durability: "strict"});
        const after = next(await writing.store.get(key));
        await Promise.all([
          after === undefined ? writing.store.delete(key) : writing.store.put(after, key),
          writing.done,
        ]);
      });
      tell(name, [key]);
    },
    async putAll(entries) {
      await orInWords(async () => {
        const writing = db.transaction(name, "readwrite", {durability: "strict"});
        await Promise.all([
          ...[...entries].map(([key, value]) => writing.store.put(value, key)),
          writing.done,
        ]);
      });
      tell(name, [...entries.keys()]);
    },
    async changeAll(next) {
      let written: readonly string[] = [];
      await orInWords(async () => {
        const writing = db.transaction(name, "readwrite", {durability: "strict"});
        const {store} = writing;
        const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
        const entries = next(new Map(keys.map((key, i) => [String(key), values[i] as unknown])));
        written = [...entries.keys()];
        await Promise.all([...[...entries].map(([key, value]) => store.put(value, key)), writing.done]);
      });
      tell(name, written);
    },
  };
}

const memory: Record<DrawerName, Map<string, unknown>> = {
  recipes: new Map(),
  shelf: new Map(),
  ingredients: new Map(),
  settings: new Map(),
};

function inMemory(name: DrawerName, tell: Tell): Drawer {
  const held = memory[name];
  return {
    get: (key) => Promise.resolve(held.get(key)),
    all: () => Promise.resolve(new Map(held)),
    change(key, next) {
      const after = next(held.get(key));
      if (after === undefined) held.delete(key);
      else held.set(key, structuredClone(after));
      tell(name, [key]);
      return Promise.resolve();
    },
    putAll(entries) {
      for (const [key, value] of entries) held.set(key, structuredClone(value));
      tell(name, [...entries.keys()]);
      return Promise.resolve();
    },
    changeAll(next) {
      return this.putAll(next(new Map(held)));
    },
  };
}

/** The browser's refusal in words of the page. */
async function orInWords(write: () => Promise<unknown>): Promise<void> {
  try {
    await write();
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    throw new Error(
      error.name === "QuotaExceededError"
        ? "The browser's storage is full, so this was not kept. Save your recipes as a file, then take out what you no longer need."
        : `The browser did not keep this (${error.name}). Save your recipes as a file, then load the page anew.`,
      {cause: error},
    );
  }
}

let opened: Promise<Keeping> | undefined;

/** The keeping that every part of a page shares. */
export function keeping(): Promise<Keeping> {
  return (opened ??= openKeeping());
}
