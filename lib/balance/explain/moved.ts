import {DOSES} from "../../pantry/doses.ts";
import type {Relaxation} from "../mix/answer.ts";
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
  const doses = brief.doses?.map(({index, limit, own}) => {
    const [move] = movesOf(`doses.${DOSES[index]!.key}`);
    if (move) return {index, limit: move.to, own: true as const};
    return own ? {index, limit, own} : {index, limit: DOSES[index]!.limit};
  });
  return {
    ...brief,
    ingredients,
    targets,
    ...(doses && {doses: raisedDoses(doses, ingredients, targets, brief.batch)}),
  };
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
