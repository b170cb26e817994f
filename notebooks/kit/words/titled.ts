import {knownName} from "../../../lib/io/typed/name.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";

/** Lines of a recipe under its name; one that is an ingredient's too ("Chocolate") gets a colon, so that it is read as the title. */
export function titled(name: string, lines: string, pantry: Pantry): string {
  return `${name}${knownName(pantry, name) ? ":" : ""}\n${lines}`;
}
