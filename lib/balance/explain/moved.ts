import {DOSES} from "../../pantry/doses.ts";
import type {LimitSide, Relaxation} from "../mix/answer.ts";
import type {Brief, Choice, Target} from "../brief/brief.ts";
import {raisedDoses} from "../program/dose-limits.ts";
import {ingredientPath, targetPath} from "../brief/limit-path.ts";

/** A checked brief with its limits moved as listed: what `withRelaxations` does to the written one. */
export function moved(brief: Brief, relaxations: readonly Relaxation[]): Brief {
  const movesOf = (path: string) => relaxations.filter((move) => move.path === path);
  const ingredients = brief.ingredients.map((choice, j) =>
    movesOf(ingredientPath(j)).reduce(movedAmount, choice),
  );
  const targets = brief.targets.flatMap((target): Target[] => {
    const {subject, min, max} = movesOf(targetPath(brief, target)).reduce(movedTarget, target);
    if (min === undefined && max === undefined) return [];
    return [{subject, ...(min !== undefined && {min}), ...(max !== undefined && {max})}];
  });
  const doses = brief.doses?.map((dose) => {
    const [move] = movesOf(`doses.${DOSES[dose.index]!.key}`);
    return move ? {index: dose.index, limit: move.to, own: true as const} : dose;
  });
  return withDosesAsAsked({...brief, ingredients, targets, ...(doses && {doses})});
}

/** A checked brief without one of its limits; with a rule, as it is. */
export function without(brief: Brief, {of, path, bound}: LimitSide): Brief {
  const sides = bound === "equal" ? (["min", "max"] as const) : [bound];
  const ingredients = brief.ingredients.map((choice, j) =>
    of === "ingredient" && path === ingredientPath(j)
      ? {...choice, ...Object.fromEntries(sides.map((side) => [side, side === "min" ? 0 : Infinity]))}
      : choice,
  );
  const targets = brief.targets.flatMap((target): Target[] => {
    if (path !== targetPath(brief, target)) return [target];
    const kept = Object.entries(target).filter(([side]) => !sides.includes(side as "min" | "max"));
    return kept.length > 1 ? [Object.fromEntries(kept) as unknown as Target] : [];
  });
  const doses = brief.doses?.filter(({index}) => path !== `doses.${DOSES[index]!.key}`);
  return withDosesAsAsked({...brief, ingredients, targets, ...(doses && {doses})});
}

/** A brief whose customary doses are raised as far as it asks for, whatever they were before. */
function withDosesAsAsked(brief: Brief): Brief {
  const {doses, ingredients, targets, batch} = brief;
  if (!doses) return brief;
  const customary = doses.map(({index, limit, own}) =>
    own ? {index, limit, own} : {index, limit: DOSES[index]!.limit},
  );
  return {...brief, doses: raisedDoses(customary, ingredients, targets, batch)};
}

function movedAmount(choice: Choice, {bound, to, inStock, toPercent}: Relaxation): Choice {
  const percents = toPercent === undefined ? {} : {percents: {...choice.percents, [bound]: toPercent}};
  if (!inStock) return {...choice, [bound]: to, ...percents};
  const {max: _max, ...rest} = choice.percents ?? {};
  return {
    ...choice,
    max: to,
    ingredient: {...choice.ingredient, stock: to},
    ...(choice.percents && {percents: rest}),
  };
}

function movedTarget(target: Target, {bound, to, dropped}: Relaxation): Target {
  return {...target, [bound]: dropped ? undefined : to};
}
