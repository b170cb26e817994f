import {readFileSync} from "node:fs";
import {type CsvRow, numberIn, readCsv} from "../../lib/io/csv/csv.ts";
import type {IngredientClass} from "../../lib/pantry/from-label.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import type {Label} from "../../lib/pantry/read-label.ts";
import {realPantry} from "./pantry.ts";

const table = (name: string) =>
  readCsv(readFileSync(new URL(`../../datasets/tools/${name}`, import.meta.url), "utf8"), name);
const foods = table("food-tables.csv");
const foodRows = new Map(foods.rows.map((row) => [row.cells.get("food")!, row]));

/** A food of the published tables as its pack would label it, beside its full composition. */
export interface LabelledFood {
  readonly ingredientClass: IngredientClass;
  readonly label: Label;
  readonly ingredient: Ingredient;
}

/** Ingredients by the class that a cook would choose for them: whole groups, then single names that differ. */
const CLASS_OF_GROUP: Readonly<Record<string, IngredientClass>> = {
  dairy: "dairy",
  egg: "egg",
  fruit: "fruit",
  juice: "fruit",
  nut: "nut",
  "plant drink": "plant drink",
  coconut: "coconut",
  fat: "oil",
  starch: "starch",
};
const CLASS_OF_NAME: Readonly<Record<string, IngredientClass>> = {
  "lactose-free milk": "lactose-free dairy",
  "crème fraîche": "fermented dairy",
  "soured cream": "fermented dairy",
  buttermilk: "fermented dairy",
  "whole-milk yoghurt": "fermented dairy",
  "greek yoghurt": "fermented dairy",
  "fat-free greek yoghurt": "fermented dairy",
  "sweetened condensed milk": "sweetened dairy",
  "dulce de leche": "sweetened dairy",
  "sweet whey powder": "whey",
  "acid whey powder": "whey",
  "cream cheese": "cheese",
  "half-fat crème fraîche": "fermented dairy",
  "whole buttermilk": "fermented dairy",
  kefir: "fermented dairy",
  "low-fat yoghurt": "fermented dairy",
  "fat-free yoghurt": "fermented dairy",
  "greek-style yoghurt 10 %": "fermented dairy",
  "low-fat greek yoghurt": "fermented dairy",
  "goat's milk yoghurt": "fermented dairy",
  skyr: "fermented dairy",
  "fromage blanc 3 %": "fermented dairy",
  "fromage blanc 8 %": "fermented dairy",
  "fromage blanc 0 %": "fermented dairy",
  "petit-suisse 10 %": "fermented dairy",
  "sheep's milk yoghurt": "fermented dairy",
  "cottage cheese": "cheese",
  "part-skim ricotta": "cheese",
  "mascarpone 44 %": "cheese",
  neufchâtel: "cheese",
  "medium-fat soft cheese": "cheese",
  "full-fat soft cheese 24 %": "cheese",
  "fresh goat's cheese": "cheese",
  "buffalo mozzarella": "cheese",
  "lactose-free cream 38 %": "lactose-free dairy",
  "sweet whey, liquid": "whey",
  "acid whey, liquid": "whey",
  "sweetened condensed milk 8 %": "sweetened dairy",
  "milk jam 5 %": "sweetened dairy",
  "dried apricots": "dried fruit",
  "dried figs": "dried fruit",
  prunes: "dried fruit",
  "prune purée": "dried fruit",
  "dried apple": "dried fruit",
  "dried pear": "dried fruit",
  "dried currants": "dried fruit",
  "golden raisins": "dried fruit",
  "orange marmalade": "jam",
  "strawberry jam": "jam",
  "apricot jam": "jam",
  "cherry jam": "jam",
  "blueberry jam": "jam",
  "stone fruit jam": "jam",
  "sweet oat drink": "oat or rice drink",
  "high-fat alkalised cocoa powder 24 %": "cocoa powder",
  "cocoa powder 21 %": "cocoa powder",
  "dark chocolate over 70 %": "dark chocolate",
  "sweet dark chocolate 35 %": "dark chocolate",
  mascarpone: "cheese",
  ricotta: "cheese",
  "sugared egg yolk": "sugared egg",
  "icing sugar": "sugar",
  "brown sugar": "sugar",
  "demerara sugar": "sugar",
  honey: "honey",
  "maple syrup": "syrup",
  "golden syrup": "syrup",
  "black treacle": "syrup",
  molasses: "syrup",
  "cocoa powder 14 %": "cocoa powder",
  "alkalised cocoa powder 13 %": "cocoa powder",
  "high-fat cocoa powder 24 %": "cocoa powder",
  "cocoa mass": "dark chocolate",
  "dark chocolate 45-59 %": "dark chocolate",
  "dark chocolate 60-69 %": "dark chocolate",
  "dark chocolate 70-85 %": "dark chocolate",
  "semisweet chocolate": "dark chocolate",
  "milk chocolate": "milk chocolate",
  "white chocolate": "white chocolate",
  "oat drink": "oat or rice drink",
  "rice drink": "oat or rice drink",
  "coconut drink": "coconut",
  "coconut oil": "coconut",
  raisins: "dried fruit",
  "medjool dates": "dried fruit",
  "deglet noor dates": "dried fruit",
  jam: "jam",
  "spirit 40 % vol": "spirit",
  "whisky 43 % vol": "spirit",
  "spirit 50 % vol": "spirit",
  "coffee liqueur 26 % vol": "spirit",
  "mint liqueur 36 % vol": "spirit",
  "cream liqueur 17 % vol": "cream liqueur",
  "red wine": "wine",
  "white wine": "wine",
  "dessert wine": "wine",
  "chocolate sandwich biscuits": "biscuit",
  "graham crackers": "biscuit",
};

/** Ingredients that no class is meant for: ripened cheese, what is candied or sweetened, flours, creams of starch. */
const OF_NO_CLASS: ReadonlySet<string> = new Set([
  "gorgonzola",
  "roquefort",
  "parmesan",
  "cheddar",
  "feta",
  "marzipan",
  "sweetened chestnut purée",
  "mixed peel",
  "candied orange peel",
  "candied fruit",
  "maraschino cherries",
  "sweetened dried cranberries",
  "sweetened dried blueberries",
  "banana powder",
  "lemon curd",
  "blackcurrant cordial",
  "lime cordial",
  "soya flour",
  "soya protein isolate",
  "silken tofu",
  "chickpea flour",
  "chocolate hazelnut spread",
  "wheat flour",
  "oat cream 15 %",
  "oat cream 7 %",
  "rice cream 7 %",
  "custard powder",
  "sweetened shredded coconut",
]);

/** Every ingredient that comes from one row of a published table and is of some class, with the label of that row. */
export const LABELLED_FOODS: readonly LabelledFood[] = table("shelf.csv").rows.flatMap((shelf) => {
  const name = shelf.cells.get("name")!;
  const food = foodRows.get(shelf.cells.get("food") ?? "");
  const ingredientClass = CLASS_OF_NAME[name] ?? CLASS_OF_GROUP[shelf.cells.get("group") ?? ""];
  const ingredient = realPantry.ingredients.find((known) => known.name === name);
  if (!food || shelf.cells.has("source") || !ingredientClass || !ingredient || OF_NO_CLASS.has(name))
    return [];
  if (isIncomplete(food)) return [];
  return [{ingredientClass, ingredient, label: labelOf(name, food, ingredient)}];
});

/**
 * Whether a fruit's figures miss 100 g by more than 1.5 g, since the table (CoFID) prints no fibre: its label would miss it too, and
 * no class guesses what a label that does print fibre leaves out.
 */
function isIncomplete(food: CsvRow): boolean {
  if (food.cells.get("carbohydrate_basis") === "by difference" || !food.cells.has("water_g")) return false;
  const fruit = ["protein_g", "fat_g"].every((column) => (numberIn(foods, food, column) ?? 0) < 3);
  const columns = ["water", "protein", "fat", "carbohydrate", "fibre", "ash", "alcohol"];
  const total = columns.reduce((sum, name) => sum + (numberIn(foods, food, `${name}_g`) ?? 0), 0);
  return fruit && !food.cells.has("ash_g") && total < 98.5 && total > 50;
}

/**
 * The label that a food of a table would carry: carbohydrate without fibre, salt as 2.5 times sodium (Regulation (EU)
 * 1169/2011, Annex I), figures rounded. Where the table has no sugars, those of the composition are printed.
 */
function labelOf(name: string, food: CsvRow, {composition}: Ingredient): Label {
  const grams = (column: string) => numberIn(foods, food, column);
  // The row has fibre of another table where this one has none, and less of it where the acids need room.
  const {fibre = 0} = composition;
  const byDifference = food.cells.get("carbohydrate_basis") === "by difference";
  // A pack's carbohydrate is what is left of 100 g: acids that the table prints apart are in it (common practice, no source).
  const printed = (grams("carbohydrate_g") ?? 0) + (byDifference ? 0 : (grams("organic_acids_g") ?? 0));
  const carbohydrate = Math.max(0, byDifference ? printed - fibre : printed);
  const {sucrose = 0, dextrose = 0, fructose = 0, lactose = 0, maltose = 0, galactose = 0} = composition;
  const sugars =
    (food.cells.get("sugars_basis") === "measured" ? grams("sugars_g") : undefined) ??
    sucrose + dextrose + fructose + lactose + maltose + galactose;
  const alcohol = grams("alcohol_g") ?? 0;
  const salt = ((grams("sodium_mg") ?? 0) * 2.5) / 1000;
  return {
    name,
    fat: rounded(grams("fat_g") ?? 0),
    carbohydrate: rounded(carbohydrate),
    sugars: rounded(Math.min(sugars, carbohydrate)),
    protein: rounded(grams("protein_g") ?? 0),
    salt: salt >= 1 ? Number(salt.toFixed(1)) : Number(salt.toFixed(2)),
    fibre: rounded(fibre),
    ...(alcohol > 0 && {alcohol}),
  };
}

/**
 * A figure as labels print it: whole grams from 10 g on, tenths below, 0 up to 0.5 g (European Commission, guidance on
 * tolerances for nutrient values declared on a label, 2012; from memory).
 */
function rounded(grams: number): number {
  if (grams <= 0.5) return 0;
  return grams >= 10 ? Math.round(grams) : Number(grams.toFixed(1));
}
