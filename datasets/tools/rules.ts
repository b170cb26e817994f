/** The rules by which a composition of exclusive parts is derived from published figures. */
import {sum} from "../../lib/core/numbers.ts";
import {SHORTHANDS} from "../../lib/pantry/composition.ts";
import {PARTS, type Part} from "../../lib/pantry/parts.ts";
import {POTASSIUM_CHLORIDE_PER_MG, POTASSIUM_CITRATE_PER_MG, SALT_PER_MG_SODIUM} from "./salts.ts";

/** A food of a published table, per 100 g. */
export interface Food {
  readonly source: string;
  readonly sourceId: string;
  /** Whether carbohydrate is what water, protein, fat, ash and alcohol leave of 100 g (it then includes fibre). */
  readonly byDifference: boolean;
  /** Whether the total of sugars was measured, and not imputed or set equal to carbohydrate. */
  readonly sugarsMeasured: boolean;
  readonly liquid: boolean;
  /** g of a named constituent, absent where the source has none. */
  readonly grams: (name: string) => number | undefined;
  /** mg */
  readonly sodium: number | undefined;
  /** mg */
  readonly potassium: number | undefined;
  /** kcal */
  readonly energy: number | undefined;
  /** g/ml, as printed */
  readonly density: number | undefined;
  readonly portions: string;
}

/**
 * How the split of sugars is used: the amounts themselves, or their proportions scaled to the food's total sugars or to
 * its carbohydrate less fibre; or, for sugars that no table splits, half dextrose and half fructose, or sucrose.
 */
export type Sugars = "amounts" | "share of sugars" | "share of carbohydrate" | "halves" | "sucrose";

interface Rule {
  readonly fat: Part;
  readonly protein: Part;
  readonly ash: Part;
  /** Part of the carbohydrate that is neither sugar, starch nor fibre. */
  readonly rest: Part;
  /** Part that takes up what the source's figures leave of 100 g, or exceed it by. */
  readonly difference: Part;
  /** Whether the sodium is salt, as far as the ash goes. */
  readonly salted?: boolean;
  /** Whether milk salts follow from the protein even where the source prints ash. */
  readonly saltsFromProtein?: boolean;
  /** g of ash that dissolves per mg potassium; the rest is taken as insoluble (calcium salts, phosphate of fats). */
  readonly ashPerPotassium?: number;
  /** Sugars that the food can hold; others, printed at the limit of detection, stay in the rest. All by default. */
  readonly sugars?: readonly Part[];
}

const plant: Rule = {
  fat: "otherFat",
  protein: "otherProtein",
  ash: "plantSalts",
  rest: "otherSolids",
  difference: "water",
};
const dairy: Rule = {
  fat: "milkFat",
  protein: "milkProtein",
  ash: "milkSalts",
  rest: "lactose",
  difference: "water",
  sugars: [],
};
const dairyWithSugars: Rule = {...plant, fat: "milkFat", protein: "milkProtein", ash: "milkSalts"};
const drink: Rule = {...plant, salted: true, ashPerPotassium: POTASSIUM_CHLORIDE_PER_MG};

/** What becomes of a food's fat, protein, ash and unsplit carbohydrate. */
const RULES: Readonly<Record<string, Rule>> = {
  dairy,
  "salted dairy": {...dairy, salted: true, saltsFromProtein: true},
  "fermented dairy": {...dairyWithSugars, rest: "organicAcids"},
  "salted fermented dairy": {...dairyWithSugars, rest: "organicAcids", salted: true},
  "sweetened dairy": dairyWithSugars,
  egg: {...plant, fat: "eggFat", salted: true, ashPerPotassium: POTASSIUM_CITRATE_PER_MG, sugars: ["sucrose", "dextrose"]},
  plant,
  "salted plant": {...plant, salted: true},
  "plant drink": drink,
  "coconut drink": {...drink, fat: "coconutFat"},
  coconut: {...plant, fat: "coconutFat"},
  cocoa: {...plant, fat: "cocoaButter"},
  syrup: {...plant, difference: "otherSolids"},
  "salted syrup": {...plant, difference: "otherSolids", salted: true},
  starch: {...plant, rest: "starch"},
  gum: {...plant, rest: "stabiliser"},
  gelatine: {...plant, protein: "stabiliser"},
  oil: {...plant, difference: "otherFat"},
  "coconut oil": {...plant, fat: "coconutFat", difference: "coconutFat"},
  emulsifier: {...plant, fat: "emulsifier"},
};

/** Names of the sugars in the tables, by part. */
const SUGARS = {
  sucrose: "sucrose",
  dextrose: "glucose",
  fructose: "fructose",
  lactose: "lactose",
  maltose: "maltose",
  galactose: "galactose",
} as const;

/** Ash per g of milk protein in MSNF (H. D. Goff, Ice Cream Technology, University of Guelph e-book). */
const ASH_PER_MILK_PROTEIN = (SHORTHANDS.msnf.milkSalts ?? 0) / (SHORTHANDS.msnf.milkProtein ?? 1);

/** MSNF of the skim portion, g per g (H. D. Goff, as above: 0.09 x (100 - fat)). */
const MSNF_OF_SKIM_PORTION = 0.09;

type Parts = Partial<Record<Part, number>>;

interface Task {
  readonly rule: string;
  readonly food: Food | undefined;
  /** Parts stated on the shelf, g per 100 g; they are taken out of the food's fat, protein, ash or carbohydrate. */
  readonly stated: Parts;
  readonly sugarsFrom: Food | undefined;
  readonly sugarsAs: Sugars;
  readonly place: string;
}

/** The composition of an ingredient, g per 100 g, and the names of the rules that led to it. */
export function derive(task: Task): {composition: Parts; steps: string[]} {
  if (task.rule === "stated" || task.rule === "pure substance") {
    return {
      composition: closed(task.stated, "water", task.place),
      steps: [task.rule === "stated" ? "stated parts" : task.rule],
    };
  }
  if (task.rule === "skim portion") {
    const fat = task.stated.milkFat ?? 0;
    const composition: Parts = {milkFat: fat};
    for (const part of PARTS) {
      const share = SHORTHANDS.msnf[part];
      if (share) composition[part] = share * MSNF_OF_SKIM_PORTION * (100 - fat);
    }
    return {composition: closed(composition, "water", task.place), steps: ["skim portion", "MSNF split"]};
  }
  const rule = RULES[task.rule];
  if (!rule || !task.food) throw new Error(`${task.place}: no rule ${task.rule}, or no food for it`);
  return fromFood(rule, task.food, task);
}

function fromFood(rule: Rule, food: Food, task: Task): {composition: Parts; steps: string[]} {
  const steps = [task.rule];
  const parts: Parts = {};
  const add = (part: Part, grams: number) => {
    if (grams > 1e-9) parts[part] = (parts[part] ?? 0) + grams;
  };
  const gram = (name: string) => food.grams(name) ?? 0;
  const {stated} = task;
  const names = Object.keys(stated);
  if (names.length > 0) steps.push(`${names.join(", ")} from memory`);

  add("water", gram("water"));
  add("alcohol", gram("alcohol"));
  add(rule.fat, gram("fat") - (stated.milkFat ?? 0));
  add(rule.protein, gram("protein") - (stated.milkProtein ?? 0));
  for (const part of ["milkFat", "milkProtein"] as const) add(part, stated[part] ?? 0);

  let ash = food.grams("ash");
  if (rule.saltsFromProtein || (rule.ash === "milkSalts" && ash === undefined)) {
    ash =
      gram("protein") * ASH_PER_MILK_PROTEIN + (rule.salted ? (food.sodium ?? 0) * SALT_PER_MG_SODIUM : 0);
    steps.push("milk salts by MSNF split");
  }
  addSalts(add, rule, food, ash, stated);
  addCarbohydrate(add, steps, rule, food, task);
  const excess = sum(Object.values(parts)) - 100;
  if (Math.abs(excess) > 0.06) steps.push(`${rule.difference} by difference`);
  return {composition: closed(parts, rule.difference, task.place), steps};
}

type Add = (part: Part, grams: number) => void;

function addSalts(add: Add, rule: Rule, food: Food, ash: number | undefined, stated: Parts): void {
  const salt = rule.salted ? Math.min((food.sodium ?? 0) * SALT_PER_MG_SODIUM, ash ?? Infinity) : 0;
  add("salt", salt);
  for (const part of ["milkSalts", "plantSalts"] as const) add(part, stated[part] ?? 0);
  const rest = (ash ?? 0) - salt - (stated.milkSalts ?? 0) - (stated.plantSalts ?? 0);
  const soluble =
    rule.ashPerPotassium === undefined ? rest : Math.min(rest, (food.potassium ?? 0) * rule.ashPerPotassium);
  add(rule.ash, soluble);
  add("otherSolids", rest - soluble);
}

function addCarbohydrate(add: Add, steps: string[], rule: Rule, food: Food, task: Task): void {
  const fibre = food.grams("fibre") ?? 0;
  const carbohydrate = food.grams("carbohydrate") ?? 0;
  const available = Math.max(0, food.byDifference ? carbohydrate - fibre : carbohydrate);
  add("fibre", fibre);
  const sugars = sugarsOf(food, available, task);
  const starch = task.sugarsFrom?.grams("starch") ?? food.grams("starch") ?? 0;
  let left = available;
  const total = sum(Object.values(sugars));
  const scale = total > left ? left / total : 1;
  if (scale < 1) steps.push("sugars scaled to the carbohydrate");
  if (task.sugarsAs !== "amounts" && total > 0) steps.push(`sugars by ${task.sugarsAs}`);
  for (const part of PARTS) add(part, (sugars[part] ?? 0) * scale);
  left -= total * scale;
  for (const [part, grams] of [
    ["starch", starch],
    ["organicAcids", task.stated.organicAcids ?? 0],
    ["glycerol", task.stated.glycerol ?? 0],
  ] as const) {
    const taken = Math.min(grams, Math.max(0, left));
    if (grams - taken > 0.05) steps.push(`${part} limited to the carbohydrate`);
    add(part, taken);
    left -= taken;
  }
  add(rule.rest, left);
}

/** Sugars below this, g per 100 g, are a table's limit of detection, not a content. */
const TRACE = 0.005;

/** Sugars of a food, g per 100 g by part. */
function sugarsOf(food: Food, available: number, {rule, sugarsFrom, sugarsAs}: Task): Parts {
  const total = food.grams("sugars") ?? 0;
  if (sugarsAs === "sucrose") return {sucrose: total};
  if (sugarsAs === "halves") return {dextrose: total / 2, fructose: total / 2};
  const split: Parts = {};
  for (const [part, name] of Object.entries(SUGARS) as [Part, string][]) {
    const grams = sugarsFrom?.grams(name);
    if (grams && grams > TRACE && (RULES[rule]?.sugars ?? PARTS).includes(part)) split[part] = grams;
  }
  if (sugarsAs === "amounts") return split;
  const factor = (sugarsAs === "share of sugars" ? total : available) / sum(Object.values(split));
  for (const part in split) split[part as Part]! *= factor;
  return split;
}

/** The parts rounded to 0.0001 g, made to sum to 100 by one of them. */
function closed(parts: Parts, difference: Part, place: string): Parts {
  const result: Parts = {};
  for (const part of PARTS) {
    const grams = Number((parts[part] ?? 0).toFixed(4));
    if (grams !== 0) result[part] = grams;
  }
  const left = Number((100 - sum(Object.values(result))).toFixed(4));
  if (left !== 0) result[difference] = Number(((result[difference] ?? 0) + left).toFixed(4));
  if ((result[difference] ?? 0) < 0) throw new Error(`${place}: the parts exceed 100 g`);
  return result;
}
