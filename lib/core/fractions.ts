/** Values of the fractions that have a sign of their own. */
export const FRACTIONS: Readonly<Record<string, number>> = {
  "½": 1 / 2,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "¼": 1 / 4,
  "¾": 3 / 4,
  "⅕": 1 / 5,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};

/** All of these signs, for a class of characters in a pattern. */
export const FRACTION_SIGNS = Object.keys(FRACTIONS).join("");
