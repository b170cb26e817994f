import {expectText} from "../core/shape.ts";
import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {finite} from "../core/numbers.ts";
import {expectEquivalent} from "./expect.ts";
import {refuseBeyond} from "./label-slips.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";
import {expectWhole} from "./whole.ts";

/**
 * Shorthands accepted for parts, with their published split in g per g.
 *
 * `msnf`: 38 % protein, 54 % lactose, 8 % ash (H. D. Goff, Ice Cream Technology, University of Guelph e-book).
 * `wheySolids`: lactose 0.765 (sucrose-equivalence formula of Goff & Hartel, Ice Cream, 7th ed. 2013); ash 0.085 and,
 * by difference, protein 0.15, as in USDA SR28 NDB 01115 "Whey, sweet, dried" without its water and fat.
 */
export const SHORTHANDS: Readonly<Record<"msnf" | "wheySolids", Composition>> = {
  msnf: {milkProtein: 0.38, lactose: 0.54, milkSalts: 0.08},
  wheySolids: {milkProtein: 0.15, lactose: 0.765, milkSalts: 0.085},
};

const KEYS = [...PARTS, "dextroseEquivalent", "msnf", "wheySolids", "fat"];

/**
 * A checked composition from a plain object: known parts, each from 0 to 100, summing to 100 within 0.5.
 *
 * Shorthands are expanded (see `SHORTHANDS`); `fat` counts as milk fat when the ingredient has `msnf`,
 * `wheySolids` or milk protein, otherwise as other fat.
 *
 * @param input object of g per 100 g by part or shorthand, and `dextroseEquivalent` (5 to 100) with glucose-syrup solids
 * @param place where the composition stands, for errors, e.g. `ingredients[2] "cream": composition`
 * @throws InputError for an unknown key, a value that is no number from 0 to 100, a wrong sum, or a missing
 *   dextrose equivalent
 *
 * @example
 * ```ts
 * readComposition({water: 54, milkFat: 40, msnf: 6}); // => {water: 54, milkFat: 40, milkProtein: 2.28, lactose: 3.24, milkSalts: 0.48}
 * ```
 */
export function readComposition(input: unknown, place = "composition"): Composition {
  expectText(place, "place");
  if (typeof input !== "object" || input === null || Array.isArray(input)) {
    throw new InputError(
      place,
      "not an object",
      input,
      'give the parts in g per 100 g, e.g. {"water": 88, "milkFat": 3.5, "msnf": 8.5}',
    );
  }
  const given = new Map<string, number>();
  for (const [key, value] of Object.entries(input)) {
    if (!KEYS.includes(key)) {
      const near = nearestNames(key, KEYS);
      throw new InputError(
        `${place}.${key}`,
        "unknown part",
        value,
        near.length ? `did you mean ${near.join(" or ")}` : `use ${KEYS.join(", ")}`,
        {code: "unknown key"},
      );
    }
    if (value === undefined) continue;
    refuseBeyond(value, `${place}.${key}`);
    const limits = key === "dextroseEquivalent" ? {min: 5, max: 100} : {min: 0, max: 100};
    given.set(
      key,
      finite(value, `${place}.${key}`, limits, key === "dextroseEquivalent" ? "" : "g per 100 g"),
    );
  }
  const parts: Partial<Record<Part, number>> = {};
  const add = (part: Part, grams: number) => {
    if (grams > 0) parts[part] = (parts[part] ?? 0) + grams;
  };
  for (const [key, grams] of given) {
    if (key === "dextroseEquivalent") continue;
    if (key === "fat")
      add(
        given.has("msnf") || given.has("wheySolids") || given.has("milkProtein") ? "milkFat" : "otherFat",
        grams,
      );
    else if (key === "msnf" || key === "wheySolids") {
      for (const part of PARTS) add(part, grams * (SHORTHANDS[key][part] ?? 0));
    } else add(key as Part, grams);
  }
  expectWhole(parts, place, Object.fromEntries(given));
  if (!parts.glucoseSyrupSolids) return parts;
  const dextroseEquivalent = given.get("dextroseEquivalent");
  expectEquivalent(parts.glucoseSyrupSolids, dextroseEquivalent, `${place}.dextroseEquivalent`);
  return {...parts, dextroseEquivalent: dextroseEquivalent!};
}
