/** A unit of a measure: in full, as a table of figures has it, and as a sentence or an axis does. */
export interface Unit {
  readonly full: string;
  readonly short: string;
}

export const PERCENT: Unit = {full: "g per 100 g", short: "%"};
/** Of firmness: 0 where a tub scoops best, 7 where it is twice as hard. */
export const POINTS: Unit = {full: "points", short: "points"};
export const DEGREES: Unit = {full: "°C", short: "°C"};
export const MONEY: Unit = {full: "money per kg", short: "per kg"};
export const LIKE_SUCROSE: Unit = {full: "sucrose = 100", short: "sucrose = 100"};
export const OWN_UNIT: Unit = {full: "per 100 g", short: "per 100 g"};
export const HEAT: Unit = {full: "kJ per kg", short: "kJ/kg"};
