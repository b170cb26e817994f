import {rootBetween} from "../../lib/core/roots.ts";
import {unclippedIce} from "../../lib/freezing/ice.ts";
import type {Solute} from "../../lib/freezing/held-water.ts";
import {WATER_MOLAR_MASS} from "../../lib/freezing/solute.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import {compare, type PublishedTables, type ValidationRow} from "./row.ts";

/** The part that a published solute is; of one that only stands for another (`plantSalts`), none. */
export const PART: Readonly<Record<string, Solute | undefined>> = {
  sucrose: "sucrose",
  dextrose: "dextrose",
  fructose: "fructose",
  lactose: "lactose",
  maltose: "maltose",
  glycerol: "glycerol",
  ethanol: "alcohol",
  "sodium chloride": "salt",
  "citric acid": "organicAcids",
  sorbitol: "sorbitol",
  xylitol: "xylitol",
  erythritol: "erythritol",
  mannitol: "mannitol",
  // It stands for potassium citrate, mole for mole.
  "trisodium citrate": undefined,
};

/** Largest error of a handbook's freezing point, °C: its solutes scatter about any smooth curve by up to this. */
const TOLERANCE = 0.15;

/** Difference of the two tables of ethanol and glycerol where they overlap, °C. */
const TABLES_DIFFER = 0.4;

/** Below this ethanol, whose curve has a bend that a cubic cannot follow, is fitted less closely, °C. */
const LOOSE = {below: -31, tolerance: 0.25};

/** The accepted rms of the sugars over their CRC table, °C. */
const RMS_TOLERANCE = 0.03;

/** The sugars that the rms is asked of. */
const SUGARS = ["sucrose", "dextrose", "fructose", "lactose", "maltose"];

/**
 * Freezing points of binary solutions, nothing crystallised: each published point, then the rms of each sugar over its CRC
 * table. Points colder than the model are left out.
 */
export function solutionRows({freezing_points}: PublishedTables): ValidationRow[] {
  const rows = freezing_points.flatMap((row): ValidationRow[] => {
    if (!Object.hasOwn(PART, row.solute!))
      throw new Error(`no part for the freezing points of ${row.solute}`);
    const part = PART[row.solute!];
    const published = Number(row.freezing_point_C);
    if (part === undefined || row.use === "beyond" || published < -40) return [];
    const held = row.use === "check";
    const loose = row.solute === "ethanol" && published < LOOSE.below;
    return [
      compare({
        group: "solutions",
        use: held ? "held" : "fitted",
        what: `freezing point of ${row.solute} ${row.mass_percent} %`,
        published,
        computed: freezingPointOf(part, Number(row.mass_percent)),
        tolerance: held && row.source !== "crc-2021" ? TABLES_DIFFER : loose ? LOOSE.tolerance : TOLERANCE,
        unit: "°C",
        source: row.source!,
        temperature: published,
        series: row.solute!,
      }),
    ];
  });
  return [...rows, ...SUGARS.map((sugar) => rmsRow(sugar, rows))];
}

function rmsRow(sugar: string, rows: readonly ValidationRow[]): ValidationRow {
  const table = rows.filter(({series, source}) => series === sugar && source === "crc-2021");
  const squares = table.reduce((total, {difference}) => total + difference ** 2, 0);
  return compare({
    group: "solutions",
    use: table[0]?.use ?? "held",
    what: `rms error of ${sugar} over its table`,
    published: 0,
    computed: Math.sqrt(squares / table.length),
    tolerance: RMS_TOLERANCE,
    unit: "°C",
    source: "crc-2021",
  });
}

/** Solutes whose Norrish curve is all that is known of them. */
const FITTED = new Set(["sorbitol", "xylitol", "erythritol"]);

/**
 * Down to what temperature the curves at 25 °C are asked to agree with freezing points, °C. Those of polyols to 0.02 °C, since
 * the model is fitted to them; those of sugars to a tenth of the temperature: heat of dilution (0.5 kJ/mol per mol/kg for sucrose,
 * from memory) lowers the activity of strong solutions in the cold, and its freezing point by 1.0 °C at -14 °C.
 */
const NORRISH: Readonly<Record<string, {readonly coldest: number}>> = {
  sorbitol: {coldest: -15},
  xylitol: {coldest: -15},
  erythritol: {coldest: -15},
  sucrose: {coldest: -15},
  dextrose: {coldest: -15},
  fructose: {coldest: -15},
  // Lactose saturates near -0.6 °C, and maltose leaves its own freezing points below -5 °C.
  lactose: {coldest: -5},
  maltose: {coldest: -5},
};

/**
 * Freezing points of the strengths that a published Norrish curve, ln a = ln x - K y², gives at -1, -2, -5, -10 and
 * -15 °C: for the sugars an independent check of the extrapolation beyond their freezing points.
 *
 * Glycerol is left out: its constant misses CRC, which the model follows, by 1.3 °C.
 */
export function norrishRows({norrish}: PublishedTables): ValidationRow[] {
  return norrish.flatMap((row) => {
    const limits = NORRISH[row.solute!];
    const part = PART[row.solute!];
    if (!limits || !part) return [];
    const temperatures = [-1, -2, -5, -10, -15].filter((temperature) => temperature >= limits.coldest);
    return temperatures.map((temperature) =>
      compare({
        group: "Norrish curves",
        use: FITTED.has(row.solute!) ? "fitted" : "held",
        what: `freezing point of ${row.solute} where its Norrish curve (K = ${row.norrish_k}) has ${temperature} °C`,
        published: temperature,
        computed: freezingPointOf(
          part,
          norrishPercent(
            iceWaterActivity(temperature),
            Number(row.norrish_k),
            Number(row.molar_mass_g_per_mol),
          ),
        ),
        tolerance: FITTED.has(row.solute!) ? 0.02 : Math.max(0.02, -0.1 * temperature),
        unit: "°C",
        source: row.source!,
        temperature,
        series: row.solute!,
      }),
    );
  });
}

/** Freezing point of a binary solution that stays one, °C: several were measured beyond saturation. */
function freezingPointOf(part: Solute, massPercent: number): number {
  const composition = {[part]: massPercent, water: 100 - massPercent};
  return rootBetween((t) => unclippedIce(composition, t), -40, -1e-6) ?? NaN;
}

/** g solute per 100 g solution at which a Norrish curve has an activity. */
function norrishPercent(activity: number, k: number, molarMass: number): number {
  let [low, high] = [0, 0.5];
  for (let i = 0; i < 60; i++) {
    const x = (low + high) / 2;
    if (Math.log(1 - x) - k * x * x > Math.log(activity)) low = x;
    else high = x;
  }
  const solute = low * molarMass;
  return (100 * solute) / (solute + (1 - low) * WATER_MOLAR_MASS);
}
