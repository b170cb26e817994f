import {numberFrom} from "./address-format.ts";

// The state of a notebook lives in its address, after the "#": a reload, a bookmark or a link shows the same page.

const state = new URLSearchParams(location.hash.slice(1));
let timer: ReturnType<typeof setTimeout> | undefined;

// Another state pasted into the same window starts the page again from it; a jump to a heading keeps the present one.
addEventListener("hashchange", () => {
  if (location.hash.includes("=")) location.reload();
  else history.replaceState(null, "", `#${state}`);
});

/** Everything kept under a name, in order. */
export function recall(key: string): string[] {
  return state.getAll(key);
}

/** A number kept under a name, if it lies within the limits. */
export function recallNumber(key: string, min: number, max: number): number | undefined {
  return numberFrom(state.get(key) ?? "", min, max);
}

/** Keeps values under a name; the address follows a moment later, once the hand rests. */
export function keep(key: string, values: readonly string[]): void {
  state.delete(key);
  for (const value of values) state.append(key, value);
  clearTimeout(timer);
  timer = setTimeout(() => history.replaceState(null, "", `#${state}`), 200);
}
