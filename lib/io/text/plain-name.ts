import {trueMinus} from "../../core/format.ts";

/** A quantity's key where it is first met: `msnf` is "milk solids-not-fat (MSNF)", all others are as {@link plainName} has them. */
export function fullName(key: string): string {
  return key === "msnf" ? "milk solids-not-fat (MSNF)" : plainName(key);
}

/** A quantity's key as a cook reads it: `totalSolids` is "total solids", `msnf` "MSNF", `ice at -18 °C` has a true minus sign. */
export function plainName(key: string): string {
  if (key === "msnf") return "MSNF";
  return /^[a-z]+([A-Z][a-z]+)+$/.test(key)
    ? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : trueMinus(key).replace(/\bCO2\b/g, "CO₂");
}
