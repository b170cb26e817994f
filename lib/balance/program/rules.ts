import type {Variable} from "../../lp/program/program.ts";
import type {Brief, Choice} from "../brief/brief.ts";
import {ingredientPath} from "../brief/limit-path.ts";
import type {SparseRow} from "./meaning.ts";

/**
 * The practical rules of a brief as rows over shares of the batch, with the yes-or-no variables that they need: for each
 * ingredient that a rule counts, whether it is used.
 *
 * With u = used (0 or 1), M the largest share the ingredient can have and m the smallest if used:
 * - share <= M u, and share >= m u where there is a smallest amount if used;
 * - the sum of all u is at most `maxIngredients`;
 * - "only with": share <= M u' and share' >= min u', where u' says that the other is there in sufficient amount;
 * - "ratio": share = grams x share'.
 *
 * The rows' coefficients are indexed as the variables will be: the ingredients first, then the ones returned here.
 */
export function ruleRows(brief: Brief): {variables: Variable[]; rows: SparseRow[]} {
  const {batch, ingredients: choices, maxIngredients} = brief;
  const variables: Variable[] = [];
  const rows: SparseRow[] = [];
  const yesOrNo = (name: string): number => {
    variables.push({name, cost: 0, lower: 0, upper: 1, integer: true});
    return choices.length + variables.length - 1;
  };
  const largest = ({max}: Choice) => Math.min(1, max / batch);
  const used = choices.map((choice, j) => {
    const {ingredient, minIfUsed} = choice;
    if (maxIngredients === undefined && minIfUsed === undefined) return undefined;
    const u = yesOrNo(`${ingredient.name} used`);
    rows.push({
      ...row(
        [
          [j, 1],
          [u, -largest(choice)],
        ],
        "upper",
      ),
      meaning: {kind: "help"},
      name: ingredient.name,
    });
    if (minIfUsed !== undefined) {
      rows.push({
        ...row(
          [
            [j, 1],
            [u, -minIfUsed / batch],
          ],
          "lower",
        ),
        name: ingredient.name,
        meaning: {
          kind: "rule",
          path: `${ingredientPath(j)}.minIfUsed`,
          name: `${ingredient.name}, if used,`,
          bound: "min",
          limit: minIfUsed,
          ...percentIn(choice.percents?.minIfUsed),
        },
      });
    }
    return u;
  });
  if (maxIngredients !== undefined) {
    rows.push({
      name: "ingredients",
      coefficients: sparse(used.map((u) => [u!, 1])),
      upper: maxIngredients,
      meaning: {
        kind: "rule",
        path: "maxIngredients",
        name: "number of ingredients",
        bound: "max",
        limit: maxIngredients,
      },
    });
  }
  for (const [j, choice] of choices.entries()) {
    const {ingredient, onlyWith, ratio} = choice;
    if (onlyWith) {
      const other = choices[onlyWith.index]!.ingredient.name;
      const u = yesOrNo(`${other} there for ${ingredient.name}`);
      rows.push(
        {
          ...row(
            [
              [j, 1],
              [u, -largest(choice)],
            ],
            "upper",
          ),
          name: ingredient.name,
          meaning: {kind: "help"},
        },
        {
          ...row(
            [
              [onlyWith.index, 1],
              [u, -onlyWith.min / batch],
            ],
            "lower",
          ),
          name: ingredient.name,
          meaning: {
            kind: "rule",
            path: `${ingredientPath(j)}.onlyWith`,
            name: `${other}, for ${ingredient.name},`,
            bound: "min",
            limit: onlyWith.min,
            ...percentIn(choice.percents?.onlyWith),
          },
        },
      );
    }
    if (ratio) {
      rows.push({
        name: ingredient.name,
        coefficients: sparse([
          [j, 1],
          [ratio.index, -ratio.grams],
        ]),
        lower: 0,
        upper: 0,
        meaning: {
          kind: "rule",
          path: `${ingredientPath(j)}.ratio`,
          name: `${ingredient.name} per g of ${choices[ratio.index]!.ingredient.name}`,
          bound: "equal",
          limit: ratio.grams,
        },
      });
    }
  }
  return {variables, rows};
}

function percentIn(percent: number | undefined): {percent?: number} {
  return percent === undefined ? {} : {percent};
}

function row(entries: readonly (readonly [index: number, value: number])[], side: "lower" | "upper") {
  return {coefficients: sparse(entries), [side]: 0};
}

function sparse(entries: readonly (readonly [index: number, value: number])[]): Map<number, number> {
  return new Map(entries);
}
