import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {readCsv} from "../../lib/io/csv/csv.ts";
import {energyOf} from "../../lib/pantry/energy.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";

const table = (name: string) =>
  readCsv(readFileSync(new URL(`../../datasets/tools/${name}`, import.meta.url), "utf8"), name).rows;
const foods = new Map(table("food-tables.csv").map(({cells}) => [cells.get("food")!, cells]));

/** Every row that comes from a food of a table, with its energy, kcal per 100 g. */
const rows = table("shelf.csv").flatMap(({cells: shelf}) => {
  const food = foods.get(shelf.get("food") ?? "");
  if (!food || shelf.has("source")) return [];
  const {name, composition} = findIngredient(includedPantry(), shelf.get("name")!);
  const grams = (column: string) => Number(food.get(`${column}_g`) ?? 0);
  const byDifference = food.get("carbohydrate_basis") === "by difference";
  const available = byDifference
    ? Math.max(0, grams("carbohydrate") - grams("fibre"))
    : grams("carbohydrate");
  // Regulation (EU) No 1169/2011, Annex XIV, from the table's own figures.
  const proximates =
    4 * available +
    2 * grams("fibre") +
    4 * grams("protein") +
    9 * grams("fat") +
    7 * grams("alcohol") +
    3 * grams("organic_acids");
  const printed = food.get("energy_kcal");
  return [
    {
      name,
      ours: energyOf(composition, "kilocalories"),
      proximates,
      ...(printed !== undefined && {printed: Number(printed)}),
    },
  ];
});

const off = (ours: number, theirs: number) => Math.abs(ours - theirs) > 0.05 * theirs + 2;

const ALCOHOL = "the table prints its alcohol per 100 ml: mended by its strength";
const FIBRE = "fibre that the table lacks is that of another";
const ACIDS =
  "acids of another table have 3 kcal per g where carbohydrate has 4, or stand beside the carbohydrate";
const GUM = "gum is fibre, 2 kcal per g; the table counts it as carbohydrate";

/** Rows whose energy is not that of the table's own figures, and why. */
const NOT_OF_THE_FIGURES: Readonly<Record<string, string>> = {
  "coffee liqueur 26 % vol": ALCOHOL,
  "mint liqueur 36 % vol": ALCOHOL,
  "coffee liqueur 31 % vol": ALCOHOL,
  blackcurrant: FIBRE,
  chestnuts: FIBRE,
  "instant coffee": FIBRE,
  lemon: ACIDS,
  lime: ACIDS,
  "lime juice": ACIDS,
  "cooking gooseberry": ACIDS,
  agar: GUM,
};

const USDA =
  "USDA prints energy by factors of each food, 3.6 kcal per g of the carbohydrate of fruit, 1.33 of cocoa, 8.37 of the fat of nuts (Agriculture Handbook 74; from memory), and counts fibre as carbohydrate";
const COFID = "CoFID counts neither fibre nor acids in its energy (fibre 2, acids 3 kcal per g)";
const FAT = "an emulsifier counts as fat, 9 kcal per g";

/** Rows whose energy is not what the table prints, and why. */
const NOT_AS_PRINTED: Readonly<Record<string, string>> = {
  agar: GUM,
  "alkalised cocoa powder 13 %": USDA,
  allspice: USDA,
  aniseed: USDA,
  "black pepper": USDA,
  "black walnuts": USDA,
  blackberry: USDA,
  blackcurrant: FIBRE,
  "bottled lemon juice": USDA,
  "cane syrup": USDA,
  "carob powder": USDA,
  "cashew butter": USDA,
  "cayenne pepper": USDA,
  celery: USDA,
  chestnuts: FIBRE,
  "chia seeds": USDA,
  "chickpea flour": USDA,
  cloves: USDA,
  "cocoa powder 14 %": USDA,
  "coconut cream 35 %": USDA,
  "coconut milk": USDA,
  "coffee liqueur 26 % vol": ALCOHOL,
  "coffee liqueur 31 % vol": ALCOHOL,
  "cooking apple": COFID,
  "cooking gooseberry": COFID,
  "coriander seed": USDA,
  "creamed coconut": USDA,
  damson: COFID,
  "dessert gooseberry": COFID,
  "dried currants": USDA,
  "dried egg white": USDA,
  feijoa: USDA,
  "frozen boysenberries": USDA,
  "frozen raspberries": USDA,
  "frozen wild blueberries": USDA,
  "golden raisins": USDA,
  "green apple": USDA,
  "green peas": USDA,
  greengage: COFID,
  "hemp seeds": USDA,
  "high-fat alkalised cocoa powder 24 %": USDA,
  "high-fat cocoa powder 24 %": USDA,
  honey: USDA,
  "instant coffee": FIBRE,
  jackfruit: USDA,
  lemon: USDA,
  "lemon juice": USDA,
  lime: USDA,
  "lime juice": USDA,
  loganberry: COFID,
  "medjool dates": USDA,
  "mint liqueur 36 % vol": ALCOHOL,
  "orange marmalade": USDA,
  "orange zest": USDA,
  "passion fruit": USDA,
  "peanut butter": USDA,
  "pine nuts": USDA,
  "pumpkin pie spice": USDA,
  "pumpkin seeds": USDA,
  raisins: USDA,
  raspberry: USDA,
  "red pepper": USDA,
  rosemary: USDA,
  saffron: USDA,
  "seed gums, as analysed": GUM,
  "semisweet chocolate": USDA,
  "soya lecithin": FAT,
  "soya protein isolate": USDA,
  spearmint: USDA,
  "star fruit": COFID,
  "stone fruit jam": COFID,
  "sweet dark chocolate 35 %": USDA,
  sweetcorn: USDA,
  "sweetened dried blueberries": USDA,
  "sweetened dried cranberries": USDA,
  "tomato juice": USDA,
  turmeric: USDA,
  "victoria plum": COFID,
  walnuts: USDA,
  whitecurrant: COFID,
};

describe("energy by Regulation (EU) No 1169/2011, Annex XIV", () => {
  test("is that of each table's own figures, but where a reason is given", () => {
    expect(rows.length).toBeGreaterThan(450);
    const different = rows.filter(({ours, proximates}) => off(ours, proximates)).map(({name}) => name);
    expect(different.sort()).toEqual(Object.keys(NOT_OF_THE_FIGURES).sort());
  });

  test("is what the table prints, but where a reason is given", () => {
    const compared = rows.filter(({printed}) => printed !== undefined);
    expect(compared.length).toBeGreaterThan(420);
    const different = compared.filter(({ours, printed}) => off(ours, printed!)).map(({name}) => name);
    expect(different.sort()).toEqual(Object.keys(NOT_AS_PRINTED).sort());
  });
});
