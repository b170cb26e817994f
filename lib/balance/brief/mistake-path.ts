import {InputError} from "../../core/errors.ts";

/**
 * Runs the reader of a brief, and gives a mistake that it finds the path within the brief that its place names.
 *
 * @param input what the cook wrote
 * @param root its name in errors
 */
export function withPaths<T>(input: unknown, root: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError) || error.path.length || !error.place.startsWith(root)) throw error;
    const path = pathIn(input, error.place.slice(root.length));
    if (path.length === 0) throw error;
    const {place, problem, value, advice, code, mistakes} = error;
    throw new InputError(place, problem, value, advice, {code, path, more: mistakes.slice(1)});
  }
}

/**
 * The keys and positions that a place such as `: ingredients[2] "cream": composition.milkFat` names. Keys are looked up in the
 * input itself, since a name in it may hold full stops and brackets; a key that is missing there is the next word.
 */
function pathIn(input: unknown, place: string): (string | number)[] {
  const path: (string | number)[] = [];
  let [holder, rest] = [input, place];
  for (;;) {
    // The name of an ingredient stands in quotes behind its position: it is no part of the path.
    rest = rest.replace(/^ ".*"/su, "").replace(/^(: |\.)/u, "");
    const position = /^\[(\d+)\]/u.exec(rest);
    const step = position ? Number(position[1]) : keyAt(holder, rest);
    if (step === undefined || rest.startsWith('ingredient "')) return path;
    path.push(step);
    rest = rest.slice(position ? position[0].length : String(step).length);
    holder =
      typeof holder === "object" && holder !== null
        ? (holder as Readonly<Record<string | number, unknown>>)[step]
        : undefined;
  }
}

/** The longest key of a holder that a text begins with, else its first word, if it has one. */
function keyAt(holder: unknown, text: string): string | undefined {
  const keys = typeof holder === "object" && holder !== null ? Object.keys(holder) : [];
  const [own] = keys
    .filter((key) => key && text.startsWith(key) && /^($|[.:[ ])/u.test(text.slice(key.length)))
    .sort((a, b) => b.length - a.length);
  return own ?? /^\w+/u.exec(text)?.[0];
}
