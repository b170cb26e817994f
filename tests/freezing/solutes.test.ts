import {readFileSync} from "node:fs";
import Papa from "papaparse";
import {describe, expect, test} from "vitest";
import {asCsv, asModule, fitSolutes} from "../../datasets/tools/fit-solutes.ts";
import {norrishPoints} from "../../datasets/tools/published-points.ts";
import {asModule as tablesModule} from "../../datasets/tools/tabulate.ts";
import {heldBy, isSolute, type Solute, SOLUTES} from "../../lib/freezing/held-water.ts";
import {initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {SOLUTE_TABLE} from "../../lib/freezing/solute-table.ts";
import {extrapolations, iceError, methodDifference} from "../../lib/freezing/validity.ts";
import {brix} from "../../lib/kitchen/sugar/brix.ts";
import {GRADES} from "../../lib/pantry/ingredient.ts";
import {DERIVED, type Derived, quantityOf} from "../../lib/pantry/quantities.ts";
import {within} from "../support/within.ts";

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const rowsOf = (name: string) =>
  Papa.parse<Record<string, string>>(read(`datasets/${name}.csv`).trimEnd(), {header: true}).data;

/** Solutes that are fibre to the label. */
const SOLUBLE_FIBRE = new Set<Solute>(["polydextrose", "oligofructose", "inulin"]);

/** Relative sweetness of what is fibre and sweet (PubMed Central article PMC10346066, table 2: polydextrose 0.1, oligofructose with its sugars 0.4). */
const SWEET_FIBRE: Readonly<Partial<Record<Solute, number>>> = {polydextrose: 0.1, oligofructose: 0.37};

/** Solutes that are neither sugar nor sugar alcohol. */
const NO_CARBOHYDRATE = new Set<Solute>(["alcohol", "salt", "milkSalts", "plantSalts", "organicAcids"]);

describe("fitted solutes", () => {
  test("are what the fit makes of the published points", async () => {
    const fits = fitSolutes();
    expect(asCsv(fits)).toBe(read("datasets/solutes.csv"));
    expect(await asModule(fits)).toBe(read("lib/freezing/solute-table.ts"));
  });

  test("stand beside tables that are what the data files say", async () => {
    expect(await tablesModule()).toBe(read("lib/freezing/tables.ts"));
  });

  test.each(SOLUTES)("%s holds water, and less of it the colder", (part) => {
    let warmer = Infinity;
    for (let temperature = -0.1; temperature > -40; temperature -= 0.1) {
      const held = heldBy(part, temperature, 100);
      expect(held).toBeGreaterThan(0);
      expect(held).toBeLessThan(warmer);
      warmer = held;
    }
  });

  test.each([...SOLUBLE_FIBRE])(
    "%s is fibre to the label, less sweet than half of sugar, and shows on a refractometer",
    (part) => {
      const half = {water: 50, [part]: 50};
      within(quantityOf(half, "totalSugars") + quantityOf(half, "polyols"), 0, 0, "sugars and polyols");
      within(quantityOf(half, "sweetness"), 50 * (SWEET_FIBRE[part] ?? 0), 1e-9, "sweetness");
      within(brix(half), 50, 1e-9, "°Brix");
    },
  );

  test.each(SOLUTES.filter((part) => !NO_CARBOHYDRATE.has(part) && !SOLUBLE_FIBRE.has(part)))(
    "%s is a sugar or a polyol to the label, tastes sweet and shows on a refractometer (Regulation (EU) 1169/2011, Annex I)",
    (part) => {
      const half = {water: 50, [part]: 50, ...(part === "glucoseSyrupSolids" && {dextroseEquivalent: 40})};
      const {totalSugars, polyols, sweetness} = Object.fromEntries(
        DERIVED.map((quantity) => [quantity, quantityOf(half, quantity)]),
      ) as Record<Derived, number>;
      within(totalSugars + polyols, part === "glucoseSyrupSolids" ? 20 : 50, 1e-9, "sugars and polyols");
      expect(sweetness).toBeGreaterThan(0);
      within(brix(half), 50, 1e-9, "°Brix");
    },
  );

  test("are the only parts that lower the freezing point; proteins, starch, fibre and gums bind the same water at all temperatures", () => {
    expect(isSolute("milkProtein")).toBe(false);
    expect(initialFreezingPoint({water: 90, milkProtein: 5, starch: 5})).toBe(0);
    // Unfreezable water of bovine serum albumin: 0.36 ± 0.04 g per g (Nippon Nogeikagaku Kaishi 53, 1979).
    within(heldBy("milkProtein", -18), 0.36, 0.04, "milk protein");
    for (const part of ["milkProtein", "otherProtein", "starch", "fibre", "stabiliser"] as const) {
      expect(heldBy(part, -2)).toBe(heldBy(part, -40));
      expect(heldBy(part, -2)).toBeGreaterThan(0);
    }
    expect(heldBy("milkFat", -18)).toBe(0);
  });

  test("leave the Norrish constant of glycerol, which misses its freezing points by 1.3 °C", () => {
    const {points} = norrishPoints("glycerol");
    const misfits = points
      .filter(({temperature}) => temperature >= -15)
      .map(({strength, temperature}) => {
        const percent = (100 * strength) / (1 + strength);
        return initialFreezingPoint({glycerol: percent, water: 100 - percent})! - temperature;
      });
    within(Math.max(...misfits.map(Math.abs)), 1.3, 0.3, "glycerol, Norrish against CRC");
  });
});

describe("sources of the freezing data", () => {
  const keys = new Set(rowsOf("sources").map((row) => row.key));
  const files = [
    "bound_water",
    "crystals",
    "firmness_anchors",
    "firmness_checks",
    "firmness_facts",
    "measured_mixes",
    "component_properties",
    "freezing_curve_example",
    "freezing_points",
    "glass_transition",
    "hard_mixes",
    "ice_cream_thermal",
    "milk_freezing_point",
    "norrish",
    "solid_fat",
    "solubility",
    "solutes",
    "sucrose_equivalents",
    "sucrose_table",
    "texture_norms",
  ];

  test.each(files)("%s names a known source, and a known grade, in every row", (file) => {
    const rows = rowsOf(file);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.flatMap((row) => row.source!.split("; ")).filter((source) => !keys.has(source))).toEqual([]);
    expect(rows.filter((row) => row.grade !== undefined && !GRADES.includes(row.grade as never))).toEqual([]);
  });
});

describe("how far to trust the ice", () => {
  const mix = {water: 62, sucrose: 14, lactose: 6, milkSalts: 0.9, dextrose: 3, milkFat: 14};

  test("names the solutes whose data end above the temperature, the largest holder first", () => {
    const beyond = extrapolations(mix, -18);
    expect(beyond.map(({part}) => part)).toEqual(["sucrose", "lactose", "dextrose"]);
    expect(beyond[2]?.coldest).toBe(SOLUTE_TABLE.dextrose.coldest);
    within(beyond[2]?.held, 3 * heldBy("dextrose", -18), 1e-12, "water held by dextrose");
    expect(extrapolations(mix, -0.4)).toEqual([]);
  });

  test("covers the gap to today's freezing point of milk", () => {
    const milk = {lactose: 4.9, milkSalts: 0.7192, water: 87.11};
    const slope = heldBy("milkSalts", -0.52) * milk.milkSalts * 0.1;
    expect(iceError(milk, -0.52)).toBeGreaterThan(slope);
    expect(iceError({water: 100}, -18)).toBe(0);
    expect(iceError(mix, -30)).toBeGreaterThan(iceError(mix, -14));
  });

  test("counts the second method's disagreement, on what both methods know", () => {
    const difference = methodDifference(mix, -10);
    expect(Math.abs(difference)).toBeLessThan(1);
    expect(iceError(mix, -10)).toBeGreaterThan(Math.abs(difference) / 2);
    within(
      methodDifference({...mix, alcohol: 3}, -10),
      difference,
      1e-12,
      "alcohol, which one method leaves out",
    );
    expect(methodDifference({water: 100}, -10)).toBe(0);
  });
});
