import type {ProgramBuilder, VariableRef} from "../../lp/program/builder.ts";
import type {Brief, Choice} from "../brief/brief.ts";
import {ingredientPath} from "../brief/limit-path.ts";
import {HELP, type RowOrigin, type RuleOrigin} from "./row-origin.ts";

/**
 * Adds the practical rules of a brief, with the yes-or-no variables that they need: for each ingredient that a rule counts,
 * whether it is used.
 *
 * With u = used (0 or 1), M the largest share the ingredient can have and m the smallest if used:
 * - share <= M u, and share >= m u where there is a smallest amount if used;
 * - the sum of all u is at most `maxIngredients`;
 * - "only with": share <= M u' and share' >= min u', where u' says that the other is there in sufficient amount;
 * - "ratio": share = grams x share'.
 *
 * @param amounts the ingredients' variables
 * @param units share of the batch that one unit of each of them is
 */
export function addRules(
  builder: ProgramBuilder<RowOrigin>,
  {batch, ingredients: choices, maxIngredients}: Brief,
  amounts: readonly VariableRef[],
  units: readonly number[],
): void {
  const share = (j: number, times = 1) => [amounts[j]!, times * units[j]!] as const;
  /** A yes-or-no variable without which the ingredient is not used. */
  const needed = (j: number, what: string): VariableRef => {
    const yes = builder.variable({name: what, cost: 0, lower: 0, upper: 1, integer: true});
    const {ingredient, max} = choices[j]!;
    const largest = Math.min(1, max / batch);
    builder.row({name: ingredient.name, terms: [share(j), [yes, -largest]], upper: 0}, HELP);
    return yes;
  };
  /** A row that asks for at least so many g of an ingredient where a yes-or-no variable is 1. */
  const atLeast = (
    j: number,
    grams: number,
    yes: VariableRef,
    name: string,
    rule: Omit<RuleOrigin, "kind">,
  ) => builder.row({name, terms: [share(j), [yes, -grams / batch]], lower: 0}, {kind: "rule", ...rule});
  const used = choices.map((choice, j) => {
    const {ingredient, minIfUsed} = choice;
    if (maxIngredients === undefined && minIfUsed === undefined) return undefined;
    const yes = needed(j, `${ingredient.name} used`);
    if (minIfUsed !== undefined) {
      atLeast(j, minIfUsed, yes, ingredient.name, {
        path: `${ingredientPath(j)}.minIfUsed`,
        name: `${ingredient.name}, if used,`,
        on: {kind: "rule", rule: "minIfUsed", ingredient: ingredient.name},
        bound: "min",
        limit: minIfUsed,
        ...percentIn(choice, "minIfUsed"),
      });
    }
    return yes;
  });
  if (maxIngredients !== undefined) {
    const terms = used.map((yes) => [yes!, 1] as const);
    builder.row(
      {name: "ingredients", terms, upper: maxIngredients},
      {
        kind: "rule",
        path: "maxIngredients",
        name: "number of ingredients",
        on: {kind: "rule", rule: "maxIngredients"},
        bound: "max",
        limit: maxIngredients,
      },
    );
  }
  for (const [j, choice] of choices.entries()) {
    const {ingredient, onlyWith, ratio} = choice;
    if (onlyWith) {
      const other = choices[onlyWith.index]!.ingredient.name;
      const yes = needed(j, `${other} there for ${ingredient.name}`);
      atLeast(onlyWith.index, onlyWith.min, yes, ingredient.name, {
        path: `${ingredientPath(j)}.onlyWith`,
        name: `${other}, for ${ingredient.name},`,
        on: {kind: "rule", rule: "onlyWith", ingredient: ingredient.name, other},
        bound: "min",
        limit: onlyWith.min,
        ...percentIn(choice, "onlyWith"),
      });
    }
    if (ratio) {
      const other = choices[ratio.index]!.ingredient.name;
      builder.row(
        {name: ingredient.name, terms: [share(j), share(ratio.index, -ratio.grams)], lower: 0, upper: 0},
        {
          kind: "rule",
          path: `${ingredientPath(j)}.ratio`,
          name: `${ingredient.name} per g of ${other}`,
          on: {kind: "rule", rule: "ratio", ingredient: ingredient.name, other},
          bound: "equal",
          limit: ratio.grams,
        },
      );
    }
  }
}

function percentIn({percents}: Choice, key: "minIfUsed" | "onlyWith"): {percent?: number} {
  const percent = percents?.[key];
  return percent === undefined ? {} : {percent};
}
