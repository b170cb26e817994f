/**
 * Fits every solute's binary freezing curve to published data, and writes `datasets/solutes.csv` and
 * `lib/freezing/solute-table.ts`. Run it with `npx tsx datasets/tools/fit-solutes.ts`.
 *
 * Each fit is least squares in °C along the curve `heldWaterPerGram`. Where the data end before the coldest
 * freezer, one shape is shared: bound water falls with 1 - a at the relative rate that sucrose shows between the handbook's
 * freezing points and its eutectic with ice at -13.95 °C, the coldest point there is of any sugar.
 */
import {writeFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {csvFormat} from "d3-dsv";
import {heldWaterPerGram} from "../../lib/freezing/solute.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import {SHORTHANDS} from "../../lib/pantry/composition.ts";
import {asLiteral, formatted} from "./as-module.ts";
import {borrowed, type Fit, fit, multiple, type Shape} from "./fit-curve.ts";
import {type Data, norrishPoints, published} from "./published-points.ts";
import {readTable} from "./read-table.ts";

const ROOT = [0, 1, 0, 0, 0, 0] as const;
const C0 = [0, 0, 1, 0, 0, 0] as const;
const C1 = [0, 0, 0, 1, 0, 0] as const;
const C2 = [0, 0, 0, 0, 1, 0] as const;
const C3 = [0, 0, 0, 0, 0, 1] as const;

/** Molar mass of tripotassium citrate, g/mol (IUPAC standard atomic weights). */
const POTASSIUM_CITRATE = 306.395;

/** g of sodium chloride that freeze milk as its salts do, per g of milk salts, from the freezing point of milk. */
function milkSaltsAsSalt(milk: string, lactose: Fit, salt: Fit): number {
  const row = readTable("milk_freezing_point.csv").find((d) => d.milk === milk)!;
  const activity = iceWaterActivity(Number(row.freezing_point_C));
  const heldBySalts =
    Number(row.water_percent) -
    Number(row.protein_percent) * boundWater("milkProtein") -
    Number(row.lactose_percent) * heldWaterPerGram(lactose.coefficients, activity);
  const salts = Number(row.solids_not_fat_percent) * SHORTHANDS.msnf.milkSalts!;
  return heldBySalts / heldWaterPerGram(salt.coefficients, activity) / salts;
}

/** Water held by the milk salts if they were calibrated on the freezing point of milk of 1927, over what they hold. */
function milkSaltsOf1927(fits: readonly Fit[]): number {
  const [lactose, salt] = ["lactose", "salt"].map((part) => fits.find((d) => d.part === part)!) as [Fit, Fit];
  return (
    milkSaltsAsSalt("average milk 1927", lactose, salt) / milkSaltsAsSalt("average milk today", lactose, salt)
  );
}

/** Water that a part binds at every temperature, g per g. */
function boundWater(part: string): number {
  return Number(readTable("bound_water.csv").find((d) => d.part === part)!.bound_water_g_per_g);
}

/** Molar masses of disaccharides and their alcohols, g/mol (IUPAC standard atomic weights). */
const [DISACCHARIDE, DISACCHARIDE_ALCOHOL] = [342.297, 344.313];

/** Molar mass of inulin of ten units, the mean of the native one (from memory), g/mol. */
const INULIN = 10 * 162.141 + 18.015;

/** Freezing-point depression of polydextrose over that of as much sucrose, as its makers print it (from memory). */
const POLYDEXTROSE = 0.6;

/** Every solute, fitted afresh from the published points. */
export function fitSolutes(): Fit[] {
  const sucrose = fit(
    "sucrose",
    published("sucrose"),
    1,
    [C0, C1],
    "CRC to -4.9 °C and the eutectic with ice at -13.95 °C",
  );
  const falling: Shape = [[0, 0, 1, sucrose.coefficients[3] / sucrose.coefficients[2], 0, 0]];
  const sugar = (part: string) => fit(part, published(part), 1, falling, "bound water falls as in sucrose");
  const dextrose = sugar("dextrose");
  // CRC's lactose ends at -0.5 °C, too weak to show its bound water; nowhere does it leave the sucrose curve by more
  // than 0.015 °C, and the published sucrose equivalent of lactose is 1.0 (Goff and Hartel, Ice Cream, 2013).
  const lactose = borrowed(
    sucrose,
    "lactose",
    published("lactose", "check"),
    "taken as sucrose; errors against CRC's lactose",
  );
  const salt = fit(
    "salt",
    published("sodium chloride"),
    2,
    [ROOT, C0, C1],
    "sodium chloride, to its eutectic",
  );
  const polyol = (part: string) =>
    fit(
      part,
      norrishPoints(part),
      1,
      [C0, C1],
      "published Norrish curve at 25 °C; glycerol's misses CRC by 1.3 °C",
      "estimated",
    );
  const fructose = sugar("fructose");
  const maltose = sugar("maltose");
  const alcohol = (of: Fit, part: string, note: string) =>
    multiple(of, DISACCHARIDE / DISACCHARIDE_ALCOHOL, part, "estimated", note);
  return [
    sucrose,
    dextrose,
    fructose,
    multiple(dextrose, 1, "galactose", "estimated", "taken as dextrose, its isomer"),
    lactose,
    maltose,
    multiple(
      dextrose,
      1,
      "glucoseSyrupSolids",
      "estimated",
      "at 100 DE; times DE / 100, as many molecules of dextrose",
    ),
    polyol("sorbitol"),
    polyol("xylitol"),
    polyol("erythritol"),
    sugar("mannitol"),
    named(alcohol(maltose, "maltitol", "freezes nearly as maltose, by calorimetry"), "nskkk-1997"),
    named(alcohol(lactose, "lactitol", "freezes nearly as lactose, by calorimetry"), "nskkk-1997"),
    alcohol(sucrose, "isomalt", "as sucrose, mole for mole: no measurement at hand"),
    multiple(
      sucrose,
      1,
      "trehalose",
      "estimated",
      "as sucrose, mole for mole; the commercial product is over 15 % lighter by freezing point",
    ),
    multiple(fructose, 1, "allulose", "estimated", "taken as fructose, its epimer"),
    multiple(sucrose, 1, "isomaltulose", "estimated", "as sucrose, its isomer"),
    multiple(fructose, 1, "tagatose", "estimated", "taken as fructose, its epimer"),
    multiple(sucrose, POLYDEXTROSE, "polydextrose", "from memory", "0.6 of sucrose, as makers print it"),
    multiple(sucrose, POLYDEXTROSE, "oligofructose", "estimated", "as polydextrose, of like molar mass"),
    multiple(sucrose, DISACCHARIDE / INULIN, "inulin", "from memory", "chains of ten units on average"),
    fit("glycerol", published("glycerol"), 1, [C0, C1, C2], "CRC to -15.5 °C, Melinder below"),
    fit(
      "alcohol",
      firmlyTo(-31, published("ethanol")),
      1,
      [ROOT, C0, C1, C2, C3],
      "ethanol; the root is one more term of the fit, and no effect of charges",
    ),
    salt,
    {
      ...multiple(
        salt,
        milkSaltsAsSalt("average milk today", lactose, salt),
        "milkSalts",
        "calculated",
        "sodium chloride that gives milk the freezing point that today's cryoscopes read, -0.52 °C (from memory)",
      ),
      source: `${salt.source}; leighton-1927; from-memory`,
    },
    fit(
      "plantSalts",
      asPotassium(published("trisodium citrate")),
      4,
      [ROOT, C0, C1],
      "tripotassium citrate, taken to freeze mole for mole as trisodium citrate",
      "estimated",
    ),
    fit("organicAcids", published("citric acid"), 1, falling, "citric acid; bound water falls as in sucrose"),
  ];
}

/** A fit that also rests on another source. */
function named(of: Fit, source: string): Fit {
  return {...of, source: `${of.source}; ${source}`};
}

/** Points of which those warmer than a temperature count twelve times: the curve cannot follow ethanol to -40 °C as closely. */
function firmlyTo(temperature: number, data: Data): Data {
  const warm = data.points.filter((d) => d.temperature >= temperature);
  return {...data, points: [...data.points, ...Array.from({length: 11}, () => warm).flat()]};
}

/** Points of trisodium citrate as those of the potassium salt at the same molality. */
function asPotassium({points, molarMass, source}: Data): Data {
  const heavier = points.map((d) => ({...d, strength: (d.strength * POTASSIUM_CITRATE) / molarMass}));
  return {points: heavier, molarMass: POTASSIUM_CITRATE, source};
}

/** The fits as `datasets/solutes.csv`. */
export function asCsv(fits: readonly Fit[]): string {
  const names = ["ideal", "root", "c0", "c1", "c2", "c3"];
  return `${csvFormat(
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
  )}\n`;
}

/** The fits as the module `lib/freezing/solute-table.ts`. */
export async function asModule(fits: readonly Fit[]): Promise<string> {
  const rows = fits.map(({part, source, note, ...curve}) => {
    const comment = [note, source && `source: ${source}`].filter(Boolean).join("; ");
    return `  // ${comment}\n  ${part}: ${asLiteral(curve)},`;
  });
  const text = `// Generated by datasets/tools/fit-solutes.ts from datasets/freezing_points.csv: change those, not this file.
import type {SoluteCurve} from "./solute.ts";

/** Binary freezing curves by part; glucose-syrup solids at 100 dextrose equivalent. Sources: datasets/solutes.csv. */
// oxfmt-ignore
export const SOLUTE_TABLE = {
${rows.join("\n")}
} as const satisfies Record<string, SoluteCurve>;

/** Effect of the milk salts if they were calibrated on the freezing point of milk of 1927, -0.55 °C, over that on -0.52 °C. */
export const MILK_SALTS_OF_1927 = ${milkSaltsOf1927(fits).toFixed(4)};
`;
  return formatted(text, new URL("../../lib/freezing/solute-table.ts", import.meta.url));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const fits = fitSolutes();
  writeFileSync(new URL("../solutes.csv", import.meta.url), asCsv(fits));
  writeFileSync(new URL("../../lib/freezing/solute-table.ts", import.meta.url), await asModule(fits));
}
