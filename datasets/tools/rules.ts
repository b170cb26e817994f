/** The rules by which a composition of exclusive parts is derived from published figures. */
import {sum} from "../../lib/core/numbers.ts";
import {SHORTHANDS} from "../../lib/pantry/composition.ts";
import {LABEL_RULES} from "../../lib/pantry/label-rules.ts";
import {PARTS, type Part} from "../../lib/pantry/parts.ts";
import {addCarbohydrate} from "./carbohydrate.ts";
import {type Add, type Food, type Parts, type Rule, RULES, type Task} from "./rule-kinds.ts";
import {POTASSIUM_CITRATE_PER_MG, SALT_PER_MG_SODIUM} from "./salts.ts";

/** Ash per g of milk protein in MSNF (H. D. Goff, Ice Cream Technology, University of Guelph e-book). */
const ASH_PER_MILK_PROTEIN = (SHORTHANDS.msnf.milkSalts ?? 0) / (SHORTHANDS.msnf.milkProtein ?? 1);

/** The same of curd, which loses most of its salts with the whey: as the class of cheese has it in `lib/pantry/label-rules.ts`. */
const ASH_PER_CURD_PROTEIN = LABEL_RULES.cheese.minerals.milkSalts.share[0];

/** MSNF of the skim portion, g per g (H. D. Goff, as above: 0.09 x (100 - fat)). */
const MSNF_OF_SKIM_PORTION = 0.09;

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
    if (Math.abs(grams) > 1e-9 && (grams > 0 || parts[part])) parts[part] = (parts[part] ?? 0) + grams;
  };
  const gram = (name: string) => food.grams(name) ?? 0;
  const {stated} = task;
  const names = Object.keys(stated);
  if (names.length > 0) steps.push(`${names.join(", ")} ${task.partsFrom ? `of ${task.partsFrom}` : "from memory"}`);

  add("water", gram("water"));
  add("alcohol", stated.alcohol ?? gram("alcohol"));
  add(rule.fat, gram("fat") - (stated.milkFat ?? 0));
  add(rule.protein, gram("protein") - (stated.milkProtein ?? 0));
  for (const part of ["milkFat", "milkProtein"] as const) add(part, stated[part] ?? 0);

  let ash = food.grams("ash");
  if (rule.saltsFromProtein || (rule.ash === "milkSalts" && ash === undefined)) {
    ash =
      gram("protein") * (rule.curd ? ASH_PER_CURD_PROTEIN : ASH_PER_MILK_PROTEIN) + (rule.salted ? (food.sodium ?? 0) * SALT_PER_MG_SODIUM : 0);
    steps.push(rule.curd ? "milk salts as of curd" : "milk salts by MSNF split");
  }
  if (ash === undefined && rule.ash === "plantSalts" && !stated.plantSalts && food.potassium !== undefined) {
    ash = food.potassium * POTASSIUM_CITRATE_PER_MG + (rule.salted ? (food.sodium ?? 0) * SALT_PER_MG_SODIUM : 0);
    steps.push("plant salts by potassium");
  }
  addSalts(add, rule, food, ash, stated);
  addCarbohydrate(add, steps, rule, food, task);
  const excess = sum(Object.values(parts)) - 100;
  if (Math.abs(excess) > 0.06) steps.push(`${rule.difference} by difference`);
  return {composition: closed(parts, rule.difference, task.place), steps};
}


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

/** The parts rounded to 0.0001 g, made to sum to 100 by one of them. */
function closed(parts: Parts, difference: Part, place: string): Parts {
  const result: Parts = {};
  for (const part of PARTS) {
    const grams = Number((parts[part] ?? 0).toFixed(4));
    if (grams !== 0) result[part] = grams;
  }
  const left = Number((100 - sum(Object.values(result))).toFixed(4));
  // What is too much comes off another part where there is too little of the one that takes up a difference.
  const takers = [difference, "water", "otherCarbohydrate"] as const;
  const taker = takers.find((part) => (result[part] ?? 0) + left >= 0) ?? difference;
  if (left !== 0) result[taker] = Number(((result[taker] ?? 0) + left).toFixed(4));
  if ((result[taker] ?? 0) < 0) throw new Error(`${place}: the parts exceed 100 g`);
  return result;
}
