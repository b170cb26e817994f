import type {Quantity} from "../../pantry/quantities.ts";

/** What a target speaks of, or what is minimised. Temperatures in °C. */
export type Subject =
  | {readonly kind: "quantity"; readonly quantity: Quantity}
  | {readonly kind: "property"; readonly property: string}
  | {readonly kind: "cost" | "freezingPoint" | "scoopTemperature"}
  | {readonly kind: "ice" | "hardPhase"; readonly at: number}
  | {readonly kind: "heatShock"; readonly from: number; readonly to: number};

/** What is no quantity and no property: each kind has rows and a value of its own. */
export type SpecialKind = Exclude<Subject["kind"], "quantity" | "property">;

/** The name of a subject in every answer: `fat`, `ice at -18 °C`. */
export function subjectName(subject: Subject): string {
  switch (subject.kind) {
    case "quantity":
      return subject.quantity;
    case "property":
      return subject.property;
    case "ice":
      return `ice at ${subject.at} °C`;
    case "hardPhase":
      return `hard phase at ${subject.at} °C`;
    case "heatShock":
      return `heat shock from ${subject.from} to ${subject.to} °C`;
    default:
      return subject.kind;
  }
}

/** The unit of a value of a subject, in full. */
export function measureUnit(subject: Subject): string {
  switch (subject.kind) {
    case "cost":
      return "money per kg";
    case "freezingPoint":
    case "scoopTemperature":
      return "°C";
    case "property":
      return "per 100 g";
    default:
      return subject.kind === "quantity" && subject.quantity === "sweetness"
        ? "sucrose = 100"
        : "g per 100 g";
  }
}

/** The unit in which a subject is given and reported. */
export function subjectUnit(subject: Subject): string {
  switch (subject.kind) {
    case "cost":
      return "per kg";
    case "freezingPoint":
    case "scoopTemperature":
      return "°C";
    case "property":
      return "per 100 g";
    case "quantity":
      return subject.quantity === "sweetness" ? "(sucrose = 100)" : "%";
    default:
      return "%";
  }
}
