import type {Composition, Part} from "../pantry/parts.ts";
import {quantityIn} from "../pantry/quantities.ts";
import {heldBy, isSolute} from "./held-water.ts";

/** What keeps water liquid, as a cook would take it out. */
export type Softener = "salt" | "alcohol" | "sugar alcohols" | "sugars";

/** The kind of solute that keeps most water of a mix liquid at a temperature; `undefined` where nothing is dissolved. */
export function softenedBy(composition: Composition, temperature: number): Softener | undefined {
  const {dextroseEquivalent, ...parts} = composition;
  const held = new Map<Softener, number>();
  for (const [name, grams] of Object.entries(parts)) {
    const part = name as Part;
    if (!grams || !isSolute(part)) continue;
    const kind = kindOf(part);
    held.set(kind, (held.get(kind) ?? 0) + grams * heldBy(part, temperature, dextroseEquivalent));
  }
  return [...held].sort(([, a], [, b]) => b - a)[0]?.[0];
}

function kindOf(part: Part): Softener {
  if (part === "salt" || part === "alcohol") return part;
  return quantityIn({[part]: 1}, "polyols") > 0 ? "sugar alcohols" : "sugars";
}
