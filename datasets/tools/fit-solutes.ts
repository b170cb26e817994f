/**
 * Fits every solute's binary freezing curve to published data, and writes `datasets/solutes.csv` and
 * `lib/freezing/solute-table.ts`. Run it with `npx tsx datasets/tools/fit-solutes.ts`.
 *
 * Each fit is least squares in °C along the curve `heldWaterPerGram`. Where the data end before the coldest
 * freezer, one shape is shared: bound water falls with 1 - a at the relative rate measured on sucrose, the only sugar
 * with data to -19 °C. Glycerol's own data, to -15.5 °C, fall at nearly the same rate.
 */
import {readFileSync, writeFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {lusolve} from "mathjs";
import Papa from "papaparse";
import {format, resolveConfig} from "prettier";
import {sum} from "../../lib/core/numbers.ts";
import {bisect} from "../../lib/core/roots.ts";
import {type HeldWaterCoefficients, heldWaterPerGram, WATER_MOLAR_MASS} from "../../lib/freezing/solute.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import {SHORTHANDS} from "../../lib/pantry/composition.ts";
import type {Grade} from "../../lib/pantry/ingredient.ts";

/** One point of a freezing curve: g solute per g water, and its freezing point in °C. */
interface Point {
  readonly strength: number;
  readonly temperature: number;
}

/** A fitted or borrowed solute, as a row of `datasets/solutes.csv`. */
export interface Fit {
  readonly part: string;
  readonly coefficients: HeldWaterCoefficients;
  readonly coldest: number;
  readonly strongest: number;
  readonly points: number;
  readonly rms: number;
  readonly largest: number;
  readonly grade: Grade;
  readonly source: string;
  readonly note: string;
}

/** What a fit may choose: directions in the space of coefficients, on top of the ideal term. */
type Shape = readonly HeldWaterCoefficients[];
const ROOT = [0, 1, 0, 0, 0, 0] as const;
const C0 = [0, 0, 1, 0, 0, 0] as const;
const C1 = [0, 0, 0, 1, 0, 0] as const;
const C2 = [0, 0, 0, 0, 1, 0] as const;
const C3 = [0, 0, 0, 0, 0, 1] as const;

const table = (name: string) =>
  Papa.parse<Record<string, string>>(readFileSync(new URL(`../${name}`, import.meta.url), "utf8").trimEnd(), {
    header: true,
  }).data;
const freezingPoints = table("freezing_points.csv");
const norrish = table("norrish.csv");

/** Published points of a solute, no colder than a limit. */
function published(solute: string, coldest = -60): Data {
  const rows = freezingPoints.filter((d) => d.solute === solute && Number(d.freezing_point_C) >= coldest);
  const points = rows.map((d) => ({
    strength: Number(d.mass_percent) / (100 - Number(d.mass_percent)),
    temperature: Number(d.freezing_point_C),
  }));
  const sources = [...new Set(rows.map((d) => d.source))].join(" and ");
  return {points, molarMass: Number(rows[0]!.molar_mass_g_per_mol), source: sources};
}

/** Points of a Norrish curve, ln a = ln x_w - K x_s², every degree down to -20 °C. */
function norrishPoints(solute: string): Data {
  const row = norrish.find((d) => d.solute === solute)!;
  const [molarMass, k] = [Number(row.molar_mass_g_per_mol), Number(row.norrish_k)];
  const points = Array.from({length: 20}, (_, i) => {
    const logActivity = Math.log(iceWaterActivity(-1 - i));
    const x = bisect((x) => Math.log(1 - x) - k * x * x - logActivity, 1e-9, 0.9, 1e-14)!;
    return {strength: (x / (1 - x)) * (molarMass / WATER_MOLAR_MASS), temperature: -1 - i};
  });
  return {points, molarMass, source: row.source!};
}

/** Freezing point of a binary solution by a curve, °C. */
function freezingPoint(coefficients: HeldWaterCoefficients, strength: number): number {
  return bisect(
    (t) => heldWaterPerGram(coefficients, iceWaterActivity(t)) - 1 / strength,
    -60,
    -1e-6,
    1e-12,
  )!;
}

/** Least squares in °C: an error in held water, over the slope of the curve, is an error in freezing point. */
function leastSquares(points: readonly Point[], ideal: number, shape: Shape): HeldWaterCoefficients {
  const start = [ideal, 0, 0, 0, 0, 0] as const;
  let coefficients: HeldWaterCoefficients = start;
  for (let round = 0; round < 12; round++) {
    const normal = shape.map(() => shape.map(() => 0));
    const right = shape.map(() => 0);
    for (const {strength, temperature} of points) {
      const held = (t: number) => heldWaterPerGram(coefficients, iceWaterActivity(t));
      const slope = (held(temperature * 0.999) - held(temperature * 1.001)) / (0.002 * temperature);
      const activity = iceWaterActivity(temperature);
      const terms = shape.map((direction) => heldWaterPerGram(direction, activity) / slope);
      const rest = (1 / strength - heldWaterPerGram(start, activity)) / slope;
      terms.forEach((x, i) => {
        right[i]! += x * rest;
        terms.forEach((y, j) => (normal[i]![j]! += x * y));
      });
    }
    const weights = (lusolve(normal, right) as number[][]).map((d) => d[0]!);
    coefficients = start.map(
      (d, i) => d + sum(shape.map((direction, j) => weights[j]! * direction[i]!)),
    ) as never;
  }
  return rounded(coefficients);
}

/** Seven significant digits: far below any error of the data, and the same on every machine. */
function rounded(coefficients: readonly number[]): HeldWaterCoefficients {
  return coefficients.map((d) => Number(d.toPrecision(7))) as never;
}

interface Data {
  readonly points: readonly Point[];
  readonly molarMass: number;
  readonly source: string;
}

/** A fitted curve with its errors. `particles` per formula unit in dilute solution: 1, or the ions of a salt. */
function fit(part: string, data: Data, particles: number, shape: Shape, grade: Grade, note: string): Fit {
  const coefficients = leastSquares(data.points, (particles * WATER_MOLAR_MASS) / data.molarMass, shape);
  return {part, coefficients, ...errorsOf(coefficients, data.points), grade, source: data.source, note};
}

/** How far a curve is from points, and how far the points reach. */
function errorsOf(
  coefficients: HeldWaterCoefficients,
  points: readonly Point[],
): Pick<Fit, "coldest" | "strongest" | "points" | "rms" | "largest"> {
  const errors = points.map((d) => freezingPoint(coefficients, d.strength) - d.temperature);
  return {
    coldest: Math.min(...points.map((d) => d.temperature)),
    strongest: Number(Math.max(...points.map((d) => d.strength)).toFixed(3)),
    points: errors.length,
    rms: Number(Math.sqrt(sum(errors.map((d) => d * d)) / errors.length).toFixed(4)),
    largest: Number(Math.max(...errors.map(Math.abs)).toFixed(3)),
  };
}

/** A curve that is another one's multiple: no points of its own. */
function multiple(of: Fit, factor: number, changes: Pick<Fit, "part" | "grade" | "source" | "note">): Fit {
  return {...of, coefficients: rounded(of.coefficients.map((d) => d * factor)), points: 0, ...changes};
}

/** g of sodium chloride that freeze milk as its salts do, per g of milk salts, from the freezing point of milk. */
export function milkSaltsAsSalt(milk: string, lactose: Fit, salt: Fit): number {
  const row = table("milk_freezing_point.csv").find((d) => d.milk === milk)!;
  const activity = iceWaterActivity(Number(row.freezing_point_C));
  const heldBySalts =
    Number(row.water_percent) -
    Number(row.lactose_percent) * heldWaterPerGram(lactose.coefficients, activity);
  const salts = Number(row.solids_not_fat_percent) * SHORTHANDS.msnf.milkSalts!;
  return heldBySalts / heldWaterPerGram(salt.coefficients, activity) / salts;
}

/** Another solute's curve, with its errors against points of this one's own. */
function borrowed(of: Fit, part: string, data: Data, note: string): Fit {
  return {
    ...of,
    part,
    ...errorsOf(of.coefficients, data.points),
    grade: "estimated",
    source: data.source,
    note,
  };
}

/** Every solute, fitted afresh from the published points. */
export function fitSolutes(): Fit[] {
  const sucrose = fit(
    "sucrose",
    published("sucrose"),
    1,
    [C0, C1],
    "compiled",
    "CRC to -4.9 °C, Young and Jones to -19 °C",
  );
  const fall = sucrose.coefficients[3] / sucrose.coefficients[2];
  const falling: Shape = [[0, 0, 1, fall, 0, 0]];
  const sugarNote = "bound water falls as in sucrose";
  const sugar = (part: string) => fit(part, published(part), 1, falling, "compiled", sugarNote);
  const dextrose = sugar("dextrose");
  // CRC's lactose ends at -0.5 °C, too weak to show its bound water; nowhere does it leave the sucrose curve by more
  // than 0.015 °C, and the published sucrose equivalence of lactose is 1.0 (Goff and Hartel, Ice Cream, 2013).
  const lactose = borrowed(
    sucrose,
    "lactose",
    published("lactose"),
    "taken as sucrose; errors against CRC's lactose",
  );
  const salt = fit(
    "salt",
    published("sodium chloride"),
    2,
    [ROOT, C0, C1],
    "compiled",
    "sodium chloride, to its eutectic",
  );
  const citrate = published("trisodium citrate");
  const polyol = (part: string) =>
    fit(
      part,
      norrishPoints(part),
      1,
      [C0, C1],
      "estimated",
      "Norrish curve at 25 °C; for glycerol and mannitol such curves miss CRC, see DEVELOPERS.md",
    );
  return [
    sucrose,
    dextrose,
    sugar("fructose"),
    multiple(dextrose, 1, {
      part: "galactose",
      grade: "estimated",
      source: dextrose.source,
      note: "taken as dextrose, its isomer",
    }),
    lactose,
    sugar("maltose"),
    multiple(dextrose, 1, {
      part: "glucoseSyrupSolids",
      grade: "estimated",
      source: dextrose.source,
      note: "at 100 dextrose equivalent; times DE / 100: dextrose of the same number of molecules",
    }),
    polyol("sorbitol"),
    polyol("xylitol"),
    polyol("erythritol"),
    fit("glycerol", published("glycerol"), 1, [C0, C1], "compiled", ""),
    fit("alcohol", published("ethanol", -31), 1, [C0, C1, C2, C3], "compiled", "ethanol"),
    salt,
    multiple(salt, milkSaltsAsSalt("average milk 1927", lactose, salt), {
      part: "milkSalts",
      grade: "calculated",
      source: "leighton-1927",
      note: "sodium chloride that gives milk its freezing point, -0.55 °C",
    }),
    fit(
      "plantSalts",
      {
        ...citrate,
        molarMass: 306.395,
        points: citrate.points.map((d) => ({...d, strength: d.strength * (306.395 / citrate.molarMass)})),
      },
      4,
      [ROOT, C0, C1],
      "estimated",
      "tripotassium citrate, taken to freeze mole for mole as trisodium citrate",
    ),
    fit(
      "organicAcids",
      published("citric acid"),
      1,
      falling,
      "compiled",
      "citric acid; bound water falls as in sucrose",
    ),
  ];
}

/** The fits as `datasets/solutes.csv`. */
export function asCsv(fits: readonly Fit[]): string {
  const names = ["ideal", "root", "c0", "c1", "c2", "c3"];
  return `${Papa.unparse(
    fits.map(({coefficients, ...d}) => ({
      solute: d.part,
      ...Object.fromEntries(names.map((name, i) => [`${name}_g_per_g`, coefficients[i]])),
      coldest_C: d.coldest,
      strongest_g_per_g_water: d.strongest,
      points: d.points,
      rms_C: d.rms,
      largest_error_C: d.largest,
      source: d.source,
      grade: d.grade,
      note: d.note,
    })),
    {newline: "\n"},
  )}\n`;
}

/** The fits as the module `lib/freezing/solute-table.ts`. */
export async function asModule(fits: readonly Fit[]): Promise<string> {
  const rows = fits.map(({part, source, note, ...curve}) => {
    const comment = [note, source && `source: ${source}`].filter(Boolean).join("; ");
    return `  // ${comment}\n  ${part}: ${JSON.stringify(curve)},`;
  });
  const text = `// Generated by datasets/tools/fit-solutes.ts from datasets/freezing_points.csv: change those, not this file.
import type {SoluteCurve} from "./solute.ts";

/** Binary freezing curves by part; glucose-syrup solids at 100 dextrose equivalent. Sources: datasets/solutes.csv. */
export const SOLUTE_TABLE = {
${rows.join("\n")}
} as const satisfies Record<string, SoluteCurve>;
`;
  const options =
    (await resolveConfig(fileURLToPath(new URL("../../lib/freezing/solute-table.ts", import.meta.url)))) ??
    {};
  return format(text, {...options, parser: "typescript"});
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const fits = fitSolutes();
  writeFileSync(new URL("../solutes.csv", import.meta.url), asCsv(fits));
  writeFileSync(new URL("../../lib/freezing/solute-table.ts", import.meta.url), await asModule(fits));
}
