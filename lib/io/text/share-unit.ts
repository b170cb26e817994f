import {isQuantity} from "../../pantry/quantities.ts";

/** The unit of a share of an answer, from its name. */
export function shareUnit(name: string): string {
  if (name === "sweetness") return "sucrose = 100";
  if (name === "cost") return "money per kg";
  if (name === "freezingPoint" || name === "scoopTemperature") return "°C";
  return isQuantity(name) || /^(ice|hard phase|heat shock) /.test(name) ? "g per 100 g" : "per 100 g";
}

/** Decimals of a share of an answer where it is read: a scoop temperature is an estimate, to 0.1 °C; all else to 0.01. */
export function shareDigits(name: string): number {
  return name === "scoopTemperature" ? 1 : 2;
}
