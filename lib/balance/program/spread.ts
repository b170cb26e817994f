import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Part} from "../../pantry/parts.ts";
import type {MixRow} from "../measure/mix-row.ts";
import type {Brief, Spread, Target} from "../brief/brief.ts";
import {targetRows} from "../measure/of-subject.ts";

/** An ingredient with another amount of one part, made up by water; both stay at least 0. */
export function shifted(ingredient: Ingredient, part: Part, by: number): Ingredient {
  const {composition} = ingredient;
  const [own, water] = [composition[part] ?? 0, composition.water ?? 0];
  const move = Math.min(water, Math.max(-own, by));
  return {...ingredient, composition: {...composition, [part]: own + move, water: water - move}};
}

/**
 * The rows of a target, narrowed so that it holds for every composition and every weighing within the spread: the robust
 * counterpart for a box of errors, which is a linear program again.
 *
 * An upper limit u on the sum of share x brought becomes
 * sum of share x (brought + d) <= u - weighing / batch x sum of |brought - u|, where d is the most that the ingredient can
 * bring beyond its stated value; lower limits likewise. Targets of one exact value cannot hold over a range and stay as
 * they are.
 *
 * Source: A. Ben-Tal, L. El Ghaoui & A. Nemirovski, Robust Optimization (2009), section 1.3 (interval uncertainty).
 */
export function narrowedRows(target: Target, brief: Brief, {parts, weighing}: Spread): MixRow[] {
  const {ingredients: choices, batch} = brief;
  const variants = choices.flatMap((choice, j) =>
    Object.entries(parts.get(choice.ingredient.name) ?? {}).flatMap(([part, by]) =>
      [by, -by].map((move) => ({
        j,
        part,
        choice: {...choice, ingredient: shifted(choice.ingredient, part as Part, move)},
      })),
    ),
  );
  const rows = targetRows(target, {
    ...brief,
    ingredients: [...choices, ...variants.map(({choice}) => choice)],
  });
  return rows.flatMap(({weights: all, lower, upper, ...row}): MixRow[] => {
    const brought = all.slice(0, choices.length);
    if (lower !== undefined && lower === upper) return [{...row, weights: brought, lower, upper}];
    const worst = (side: 1 | -1) =>
      brought.map((value, j) => {
        const most = new Map<string, number>();
        for (const [k, variant] of variants.entries()) {
          if (variant.j !== j) continue;
          const change = side * (all[choices.length + k]! - value);
          most.set(variant.part, Math.max(most.get(variant.part) ?? 0, change));
        }
        return value + side * [...most.values()].reduce((total, change) => total + change, 0);
      });
    const slack = (limit: number) =>
      (weighing / batch) * brought.reduce((total, value) => total + Math.abs(value - limit), 0);
    return [
      ...(upper === undefined ? [] : [{...row, weights: worst(1), upper: upper - slack(upper)}]),
      ...(lower === undefined ? [] : [{...row, weights: worst(-1), lower: lower + slack(lower)}]),
    ];
  });
}
