/** Measures that have a plural, in either form. */
const PLURALS: Readonly<Record<string, string>> = {
  teaspoon: "teaspoons",
  tablespoon: "tablespoons",
  cup: "cups",
};

/** So many of a kitchen measure: `1 cup`, `1.5 cups`, `250 ml`, whichever form of the unit is given. */
export function measureWords(amount: number, unit: string): string {
  const known = Object.entries(PLURALS).find((forms) => forms.includes(unit));
  return `${amount} ${known ? known[amount === 1 ? 0 : 1] : unit}`;
}
