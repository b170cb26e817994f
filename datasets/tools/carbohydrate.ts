/** Sugars, starch, fibre and acids of a composition, from what a table gives. */
import {sum} from "../../lib/core/numbers.ts";
import {PARTS, type Part} from "../../lib/pantry/parts.ts";
import {type Add, type Food, type Parts, type Rule, RULES, type Task} from "./rule-kinds.ts";

/** Names of the sugars in the tables, by part. */
const SUGARS = {
  sucrose: "sucrose",
  dextrose: "glucose",
  fructose: "fructose",
  lactose: "lactose",
  maltose: "maltose",
  galactose: "galactose",
} as const;

/** Adds a food's sugars, starch, fibre, acids and what else is carbohydrate, and names the steps. */
export function addCarbohydrate(add: Add, steps: string[], rule: Rule, food: Food, task: Task): void {
  const fibre = task.stated.fibre ?? food.grams("fibre") ?? 0;
  const carbohydrate = food.grams("carbohydrate") ?? 0;
  const available = Math.max(0, food.byDifference ? carbohydrate - fibre : carbohydrate);
  add("fibre", fibre);
  const sugars = sugarsOf(food, available, task);
  const starch = task.sugarsFrom?.grams("starch") ?? food.grams("starch") ?? 0;
  if (task.stated.lactose !== undefined) sugars.lactose = task.stated.lactose;
  let left = available;
  const total = sum(Object.values(sugars));
  // Acids are measured, and known better than fibre: where the carbohydrate is by difference and too little for all, up to half of the
  // fibre gives way, and the water for the rest.
  const acids = task.stated.organicAcids ?? food.grams("organic_acids") ?? 0;
  // Sugars that the table did not measure are what the acids leave.
  const most = food.byDifference && !food.sugarsMeasured ? Math.max(0, left - acids) : left;
  const scale = total > most ? most / total : 1;
  if (scale < 1) steps.push("sugars scaled to the carbohydrate");
  if (task.sugarsAs !== "amounts" && total > 0) steps.push(`sugars by ${task.sugarsAs}`);
  for (const part of PARTS) add(part, (sugars[part] ?? 0) * scale);
  left -= total * scale;
  const room = food.byDifference ? Math.max(0, left - Math.min(starch, left)) : acids;
  const given = Math.min(Math.max(0, acids - room), fibre / 2);
  if (given > 0.005) {
    add("fibre", -given);
    steps.push("fibre gives way to the acids");
  }
  add("organicAcids", acids);
  if (food.byDifference) left -= Math.min(acids, room);
  for (const [part, grams] of [
    ["starch", starch],
    ["glycerol", task.stated.glycerol ?? 0],
  ] as const) {
    const taken = Math.min(grams, Math.max(0, left));
    if (grams - taken > 0.05) steps.push(`${part} limited to the carbohydrate`);
    add(part, taken);
    left -= taken;
  }
  // What a table leaves beside printed acids is not the acid again.
  add(rule.rest === "organicAcids" && food.grams("organic_acids") ? "otherCarbohydrate" : rule.rest, left);
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
    const as = RULES[rule]?.foundAs?.[part] ?? part;
    if (grams && grams > TRACE && (RULES[rule]?.sugars ?? PARTS).includes(part))
      split[as] = (split[as] ?? 0) + grams;
  }
  if (sugarsAs === "amounts") return split;
  const factor = (sugarsAs === "share of sugars" ? total : available) / sum(Object.values(split));
  for (const part in split) split[part as Part]! *= factor;
  return split;
}

