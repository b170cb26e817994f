import {numberFrom} from "./address-format.ts";
import {tabMemory} from "./tab-memory.ts";

// The state of a notebook lives in its address, after the "#": a reload, a bookmark or a link shows the same page. The tab remembers
// it too, for each page and open recipe, so that a page is found as it was left by whatever way one comes back to it.

const carried = location.hash.includes("=");
const state = new URLSearchParams(carried ? location.hash.slice(1) : (tabMemory.get(remembered()) ?? ""));
let timer: ReturnType<typeof setTimeout> | undefined;

// Another state pasted into the same window starts the page again from it; a jump to a heading keeps the present one.
addEventListener("hashchange", () => {
  if (location.hash.includes("=")) location.reload();
  else history.replaceState(null, "", `#${state}`);
});
if (!location.hash && state.size) history.replaceState(null, "", `#${state}`);

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
  timer = setTimeout(write, 200);
}

const carriers = new Map<string, () => readonly string[]>();

/** Adds what a link for another person must carry under a name, where the page's own address does not: nothing while it is empty. */
export function carry(key: string, values: () => readonly string[]): void {
  carriers.set(key, values);
}

/** The part behind "#" of a link for another person, who has neither this tab nor this book. */
export function linkHash(): string {
  const all = new URLSearchParams(state);
  for (const [key, valuesOf] of carriers) {
    const values = valuesOf();
    if (!values.length) continue;
    all.delete(key);
    for (const value of values) all.append(key, value);
  }
  return `#${all}`;
}

/** Opens the page as it is at first, with nothing that was set on it. */
export function beginAfresh(): void {
  for (const key of new Set(state.keys())) state.delete(key);
  write();
  location.reload();
}

function write(): void {
  clearTimeout(timer);
  timer = undefined;
  history.replaceState(null, "", `#${state}`);
  tabMemory.set(remembered(), String(state));
}
addEventListener("pagehide", () => timer !== undefined && write());

function remembered(): string {
  return `page ${location.pathname} ${tabMemory.get("open recipe") ?? ""}`;
}

/** The page as it stands, as an address beside it: `./read-a-recipe.html#recipe=…`. */
function here(): string {
  const name = /[^/]*$/.exec(location.pathname)![0] || "index.html";
  return `./${name}#${state}`;
}

/** Link to where something that is not known is added from its packet; from there the way leads back here. */
export function packetAddress(name: string): string {
  return `./add-from-its-packet.html#${new URLSearchParams({name: name.trim().slice(0, 200), back: here()})}`;
}
