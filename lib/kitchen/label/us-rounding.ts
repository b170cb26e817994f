/** Kinds of figures that 21 CFR 101.9(c) rounds alike. */
type Rounding =
  | "calories"
  | "fat"
  | "cholesterol"
  | "sodium"
  | "carbohydrate"
  | "vitaminD"
  | "iron"
  | "mineral";

const nearest = (value: number, step: number) => Math.round(value / step + 1e-9) * step;
const one = (value: number) => String(Number(value.toFixed(1)));

/**
 * A figure of a serving as a US panel prints it, without its unit but for "less than".
 *
 * 21 CFR 101.9(c)(1) to (7): calories to 5 up to 50, to 10 above; fats to 0.5 g below 5 g, to 1 g above; cholesterol to 5 mg; sodium to
 * 5 mg up to 140, to 10 above; carbohydrate and protein to 1 g. Vitamin D and iron to 0.1, calcium and potassium to 10 mg (from memory).
 */
export function usFigure(value: number, kind: Rounding): {readonly text: string; readonly lessThan?: true} {
  switch (kind) {
    case "calories":
      return {text: value < 5 ? "0" : String(nearest(value, value <= 50 ? 5 : 10))};
    case "fat":
      return {text: value < 0.5 ? "0" : one(nearest(value, value < 5 ? 0.5 : 1))};
    case "cholesterol":
      if (value >= 2 && value <= 5) return {text: "5", lessThan: true};
      return {text: value < 2 ? "0" : String(nearest(value, 5))};
    case "sodium":
      return {text: value < 5 ? "0" : String(nearest(value, value <= 140 ? 5 : 10))};
    case "carbohydrate":
      if (value >= 0.5 && value < 1) return {text: "1", lessThan: true};
      return {text: value < 0.5 ? "0" : String(nearest(value, 1))};
    case "vitaminD":
    case "iron":
      return {text: one(value)};
    case "mineral":
      return {text: String(nearest(value, 10))};
  }
}

/** Per cent of the daily value of fat and the like: 21 CFR 101.9(d)(7), to 1 %. */
export function dailyPercent(value: number, daily: number): string {
  return `${Math.round((100 * value) / daily + 1e-9)}%`;
}

/** Per cent of the daily value of a vitamin or mineral: 21 CFR 101.9(c)(8)(iii), to 2 % up to 10, to 5 % up to 50, to 10 % above. */
export function mineralPercent(value: number, daily: number): string {
  const percent = (100 * value) / daily;
  if (percent < 2) return "0%";
  return `${nearest(percent, percent <= 10 ? 2 : percent <= 50 ? 5 : 10)}%`;
}
