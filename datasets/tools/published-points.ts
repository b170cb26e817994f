import {rootBetween} from "../../lib/core/roots.ts";
import {WATER_MOLAR_MASS} from "../../lib/freezing/solute.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import {readTable} from "./read-table.ts";

/** One point of a freezing curve: g solute per g water, and its freezing point in °C. */
export interface Point {
  readonly strength: number;
  readonly temperature: number;
}

/** Points of one solute and where they come from. */
export interface Data {
  readonly points: readonly Point[];
  /** g/mol. */
  readonly molarMass: number;
  readonly source: string;
}

const freezingPoints = readTable("freezing_points.csv");
const norrish = readTable("norrish.csv");

/** Published points of a solute: those that its curve is fitted to, or those that it is held against. */
export function published(solute: string, use: "fit" | "check" = "fit"): Data {
  const rows = freezingPoints.filter((d) => d.solute === solute && d.use === use);
  const points = rows.map((d) => ({
    strength: Number(d.mass_percent) / (100 - Number(d.mass_percent)),
    temperature: Number(d.freezing_point_C),
  }));
  const sources = [...new Set(rows.map((d) => d.source))].join("; ");
  return {points, molarMass: Number(rows[0]!.molar_mass_g_per_mol), source: sources};
}

/** Points of a Norrish curve, ln a = ln x_w - K x_s², every degree down to -20 °C. */
export function norrishPoints(solute: string): Data {
  const row = norrish.find((d) => d.solute === solute)!;
  const [molarMass, k] = [Number(row.molar_mass_g_per_mol), Number(row.norrish_k)];
  const points = Array.from({length: 20}, (_, i) => {
    const logActivity = Math.log(iceWaterActivity(-1 - i));
    const x = rootBetween((x) => Math.log(1 - x) - k * x * x - logActivity, 1e-9, 0.9, 1e-14)!;
    return {strength: (x / (1 - x)) * (molarMass / WATER_MOLAR_MASS), temperature: -1 - i};
  });
  return {points, molarMass, source: row.source!};
}
