/** A quantity's key as a cook reads it: `totalSolids` is "total solids", `msnf` "MSNF". */
export function plainName(key: string): string {
  if (key === "msnf") return "MSNF";
  return /^[a-z]+([A-Z][a-z]+)+$/.test(key)
    ? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    : key;
}
