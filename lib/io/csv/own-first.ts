import type {Ingredient} from "../../pantry/ingredient.ts";
import {nameKey} from "../../pantry/pantry.ts";

/**
 * Ingredients of one's own before others. Of two with the same name one's own is taken, with the other's aliases and group
 * where it has none itself.
 */
export function ownFirst(own: readonly Ingredient[], others: readonly Ingredient[]): Ingredient[] {
  const replaced = new Map(others.map((ingredient) => [nameKey(ingredient.name), ingredient]));
  const named = own.map((ingredient): Ingredient => {
    const {aliases, group} = replaced.get(nameKey(ingredient.name)) ?? {};
    return {
      ...ingredient,
      ...(!ingredient.aliases?.length && aliases && {aliases}),
      ...(ingredient.group === undefined && group !== undefined && {group}),
    };
  });
  const names = new Set(own.map(({name}) => nameKey(name)));
  return [...named, ...others.filter(({name}) => !names.has(nameKey(name)))];
}
