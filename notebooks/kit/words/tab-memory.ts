// What this tab alone remembers, from page to page, until it is closed. A browser may deny it: then the page goes on without.

const PREFIX = "mixwright ";

/** Texts under names. */
export const tabMemory = {
  get(key: string): string | undefined {
    try {
      return sessionStorage.getItem(PREFIX + key) ?? undefined;
    } catch {
      return undefined;
    }
  },
  /** Whether it is remembered. */
  set(key: string, text: string): boolean {
    try {
      sessionStorage.setItem(PREFIX + key, text);
      return true;
    } catch {
      return false;
    }
  },
};
