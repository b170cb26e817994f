/** A number with a fixed count of decimals, a true minus sign and, from five digits on, groups of three: `10 000`, `−2.74`. */
export function decimal(value: number, digits: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(digits).split(".") as [string, string?];
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, " ") : whole;
  const rounded = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && Number(value.toFixed(digits)) !== 0 ? `−${rounded}` : rounded;
}

/** A text to be read, with true minus signs before its numbers: `ice at -18 °C` is `ice at −18 °C`. */
export function trueMinus(text: string): string {
  return text.replace(/(?<![\p{L}\p{N})])-(?=\d)/gu, "−");
}

/** Grams as a kitchen scale shows them: whole from 100 g, a tenth below, a hundredth below 1 g. */
export function grams(value: number): string {
  return decimal(value, value >= 100 ? 0 : value >= 1 || value === 0 ? 1 : 2);
}

/** A number rounded to the one decimal that is printed, so that two that print alike compare as equal. */
export function tenth(value: number): number {
  return Number(value.toFixed(1)) || 0;
}

/** A temperature to a tenth of a degree: `−13.2 °C`. */
export function degrees(value: number, digits = 1): string {
  return `${decimal(value, digits)} °C`;
}

/**
 * A limit to two decimals, rounded to the side that leaves more room, so that a mix exists for the printed limit too. What a solver leaves
 * beyond the eighth decimal is no reason for a whole hundredth.
 */
export function roomy(bound: "min" | "max" | "equal", limit: number): number {
  const hundredths = Number((limit * 100).toFixed(6));
  // Adding 0 turns the −0 that rounding up from below leaves into 0.
  if (bound === "max") return Math.ceil(hundredths) / 100 + 0;
  return bound === "min" ? Math.floor(hundredths) / 100 + 0 : limit;
}

/** A temperature as someone set it, e.g. that of a freezer: `−18 °C`, `−18.5 °C`. */
export function setDegrees(value: number): string {
  return degrees(value, Number.isInteger(tenth(value)) ? 0 : 1);
}
