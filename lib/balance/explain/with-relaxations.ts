import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {parse} from "../../core/schema.ts";
import {expectList, oneOf} from "../../core/shape.ts";
import type {Relaxation} from "../mix/answer.ts";
import {BRIEF_KEYS, briefSchema} from "../brief/brief-schema.ts";
import type {BriefInput, IngredientInput, LimitsInput} from "../brief/brief-schema.ts";

/**
 * A brief with its limits moved as a conflict's least change lists them: the brief then has an answer.
 *
 * One exact value becomes a range on the side that gives; a limit that is `dropped` goes; more than is in stock becomes a
 * larger stock.
 *
 * @param brief as the cook wrote it, the one whose answer lists the changes
 * @param relaxations `answer.conflict.relaxations`, or some of them
 * @throws InputError for anything but a brief and a list of changes, and for a change of a place that the brief does not have
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["whole milk"], targets: {fat: {min: 10}}};
 * const answer = balance(brief, {pantry: includedPantry()});
 * answer.status === "infeasible" && withRelaxations(brief, answer.conflict.relaxations).targets; // => {fat: {min: 3.25}}
 * ```
 */
export function withRelaxations(
  brief: BriefInput<string>,
  relaxations: readonly Relaxation[],
): BriefInput<string> {
  parse(briefSchema, brief, "brief", BRIEF_KEYS);
  expectList(
    relaxations,
    {path: "text", bound: "text", to: "number"},
    "relaxations",
    "give answer.conflict.relaxations",
  );
  for (const [i, {to, bound}] of relaxations.entries()) {
    finite(to, `relaxations[${i}].to`);
    oneOf(bound, ["min", "max", "equal"], `relaxations[${i}].bound`, "bound");
  }
  return relaxations.reduce(changed, brief);
}

function changed(brief: BriefInput<string>, move: Relaxation): BriefInput<string> {
  const {path, to} = move;
  const [, kind, key] = /^(targets|doses)\.([^[]+)/u.exec(path) ?? [];
  if (kind === "doses") {
    const {doses} = brief;
    return {...brief, doses: {...(typeof doses === "object" && doses), [key!]: to}};
  }
  const position = Number(/\[(\d+)\]$/u.exec(path)?.[1]);
  if (path.startsWith("ingredients[")) {
    const entry = brief.ingredients[position];
    if (entry === undefined) throw nowhere(path);
    const ingredients = brief.ingredients.map((other, j) => (j === position ? amount(entry, move) : other));
    return {...brief, ingredients};
  }
  const name = path.replace(/^targets\./u, "");
  const held = brief.targets?.[kind === "targets" && !Number.isNaN(position) ? key! : name];
  if (held === undefined || !path.startsWith("targets.")) throw nowhere(path);
  if (!Array.isArray(held)) {
    return {...brief, targets: withTarget(brief, name, limits(held as LimitsInput, move))};
  }
  if (held[position] === undefined) throw nowhere(path);
  const list = (held as readonly LimitsInput[]).map((one, i) => (i === position ? limits(one, move) : one));
  return {...brief, targets: withTarget(brief, key!, list as never)};
}

function withTarget(
  {targets}: BriefInput<string>,
  name: string,
  value: LimitsInput,
): NonNullable<BriefInput<string>["targets"]> {
  const {[name]: _old, ...others} = targets ?? {};
  // In its old place, so that later places stay what they were.
  return Array.isArray(value) || limited(value) ? {...targets, [name]: value} : others;
}

function limited({min, max, equal}: LimitsInput): boolean {
  return min !== undefined || max !== undefined || equal !== undefined;
}

/** Limits with one side moved, or without it. */
function limits({equal, ...given}: LimitsInput, {bound, to, dropped}: Relaxation): LimitsInput {
  const range: LimitsInput = equal === undefined ? given : {...given, min: equal, max: equal};
  const {[bound as "min" | "max"]: _side, ...other} = range;
  return dropped ? other : {...range, [bound]: to};
}

/** An ingredient with another limit on its amount. */
function amount(entry: BriefInput["ingredients"][number], move: Relaxation): IngredientInput {
  const input: IngredientInput = typeof entry === "string" ? {name: entry} : entry;
  const {bound, to, inStock, toPercent} = move;
  if (!inStock) return {...input, [bound]: toPercent === undefined ? to : `${toPercent} %`};
  return {...input, stock: to, ...(input.max !== undefined && {max: to})};
}

function nowhere(path: string): InputError {
  return new InputError(
    "relaxations",
    "a place that the brief does not have",
    path,
    "give the brief whose answer lists these changes",
  );
}
