/** A quantity's key as a cook reads it: `totalSolids` is "total solids", `msnf` "MSNF". */
export function plainName(key: string): string {
  if (key === "msnf") return "MSNF";
  return /^[a-z]+([A-Z][a-z]+)+$/.test(key)
    ? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : key;
}

/** A number with a fixed count of decimals, a true minus sign and thin groups of three: `5 000`, `−2.74`. */
export function decimal(value: number, digits: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(digits).split(".") as [string, string?];
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, " ") : whole;
  const rounded = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && Number(value.toFixed(digits)) !== 0 ? `−${rounded}` : rounded;
}

/** Grams as a kitchen scale shows them: whole from 100 g, a tenth below, a hundredth below 1 g. */
export function grams(value: number): string {
  return decimal(value, value >= 100 ? 0 : value >= 1 || value === 0 ? 1 : 2);
}

/** A temperature to a tenth of a degree: `−13.2 °C`. */
export function degrees(value: number, digits = 1): string {
  return `${decimal(value, digits)} °C`;
}
