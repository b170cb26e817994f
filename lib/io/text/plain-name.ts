import {trueMinus} from "../../core/format.ts";

/** Name of a quantity at its first mention: `msnf` is "milk solids-not-fat (MSNF)", all others are as in {@link plainName}. */
export function fullName(key: string): string {
  return key === "msnf" ? "milk solids-not-fat (MSNF)" : plainName(key);
}

/** Name of a quantity for a cook: `totalSolids` is "total solids", `msnf` "MSNF", `ice at -18 °C` has a true minus sign. */
export function plainName(key: string): string {
  if (key === "msnf") return "MSNF";
  return /^[a-z]+([A-Z][a-z]+)+$/.test(key)
    ? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : trueMinus(key).replace(/\bCO2\b/g, "CO₂");
}
