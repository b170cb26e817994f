import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {nameKey} from "../../pantry/pantry.ts";
import type {BriefInput} from "./brief-schema.ts";

/**
 * A brief with one number in another place: `targets.fat.max`, `targets.hardPhase[0].max`, `ingredients[2].price`,
 * `ingredients[cream 40 %].max`.
 *
 * Missing objects along the path are made (a target, the details of an ingredient given by name alone), so that a limit can
 * be tried out that the brief does not have; `readBrief` then checks whether the brief makes sense.
 *
 * @throws InputError for a path that no brief has
 */
export function withValueAt(brief: BriefInput<string>, path: string, value: number): BriefInput<string> {
  const keys = keysOf(path);
  if (keys.length < 3 || (keys[0] !== "targets" && keys[0] !== "ingredients")) {
    throw new InputError(
      "path",
      "not a place in a brief",
      path,
      "name a target's limit (targets.fat.max) or an ingredient's price or limit (ingredients[sucrose].price)",
    );
  }
  return put(brief, keys, value, path) as BriefInput<string>;
}

/** The keys of a path: words between full stops, or anything in square brackets, quoted or not. */
function keysOf(path: string): string[] {
  const found = [...path.matchAll(/\[\s*"?([^\]"]*)"?\s*\]|([^.[\]]+)/gu)];
  return found.map(([, bracketed, word]) => (bracketed ?? word!).trim());
}

function put(holder: unknown, [key, ...rest]: readonly string[], value: number, path: string): unknown {
  if (key === undefined) return value;
  if (Array.isArray(holder)) {
    const index = placeIn(holder, key, path);
    return holder.map((entry, i) => (i === index ? put(detailed(entry), rest, value, path) : entry));
  }
  if (holder !== undefined && (typeof holder !== "object" || holder === null)) {
    throw new InputError(
      "path",
      `nothing can stand below ${JSON.stringify(holder)}`,
      path,
      "shorten the path",
    );
  }
  return {...holder, [key]: put((holder as Record<string, unknown> | undefined)?.[key], rest, value, path)};
}

/** An ingredient given by name alone as an object that can hold details. */
function detailed(entry: unknown): unknown {
  return typeof entry === "string" ? {name: entry} : entry;
}

/** The place of an entry, by its number or the name of its ingredient. */
function placeIn(entries: readonly unknown[], key: string, path: string): number {
  const names = entries.map((entry) => (detailed(entry) as {name?: unknown} | null)?.name);
  const byName = names.findIndex((name) => typeof name === "string" && nameKey(name) === nameKey(key));
  const index = byName >= 0 || !/^\d+$/u.test(key) ? byName : Number(key);
  if (index >= 0 && index < entries.length) return index;
  const near = nearestNames(
    key,
    names.filter((name) => typeof name === "string"),
  );
  throw new InputError(
    "path",
    `the brief has no ${JSON.stringify(key)} there`,
    path,
    near.length
      ? `did you mean ${near.join(" or ")}`
      : `give a name from the brief or a number from 0 to ${entries.length - 1}`,
  );
}
