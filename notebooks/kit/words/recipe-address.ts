/** A recipe as a link carries it. */
export interface CarriedRecipe {
  readonly text: string;
  /** °C. */
  readonly freezer?: number;
  /** % */
  readonly overrun?: number;
}

/** The part of an address behind "#" that carries one recipe to the page that reads it, on whatever machine. */
export function recipeHash({text, freezer, overrun}: CarriedRecipe): string {
  return `#${new URLSearchParams({
    recipe: text,
    ...(freezer !== undefined && {freezer: String(freezer)}),
    ...(overrun !== undefined && {overrun: String(overrun)}),
  })}`;
}
