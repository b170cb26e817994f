import type {Allergen, Grade, Ingredient} from "./ingredient.ts";
import {SAID_NUTRIENTS} from "./nutrient-keys.ts";
import {type Composition, PARTS} from "./parts.ts";

/**
 * Ingredients written small, one a line in each of four texts, so that a page which brings hundreds of them stays light. Names are
 * parted by semicolons, the other cells by bars; a part is a letter, its place in the list of parts, and its figure; water is what
 * the other parts leave of 100 g.
 */
export interface Packed {
  readonly names: string;
  readonly compositions: string;
  readonly nutrients: string;
  readonly further: string;
}

const KEYS = [...PARTS.slice(1), "dextroseEquivalent"] as const;
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";

/** A number as short as it goes: `.5` for 0.5, nothing for an unknown one. */
const short = (value: number | undefined) => (value === undefined ? "" : `${value}`.replace(/^0\./, "."));

/** Ingredients as {@link unpacked} reads them; prices, stocks and properties are left out. */
export function packed(ingredients: readonly Ingredient[]): Packed {
  const lines = (line: (ingredient: Ingredient) => string) => ingredients.map(line).join("\n");
  return {
    names: lines(({name, aliases = []}) => [name, ...aliases].join(";")),
    compositions: lines(({composition}) =>
      KEYS.flatMap((key, i) => (composition[key] ? [LETTERS[i]! + short(composition[key])] : [])).join(""),
    ),
    nutrients: lines(({nutrients}) =>
      nutrients ? SAID_NUTRIENTS.map((key) => short(nutrients[key])).join(",") : "",
    ),
    further: lines(({group, allergens = [], density, unit, portions = {}, grade, source}) =>
      [
        group,
        allergens.join(","),
        short(density),
        short(unit),
        Object.entries(portions)
          .map(([name, grams]) => `${name}=${grams}`)
          .join(";"),
        grade,
        source,
      ].join("|"),
    ),
  };
}

/** The ingredients of what {@link packed} wrote. */
export function unpacked({names, compositions, nutrients, further}: Packed): Ingredient[] {
  const [named, parts, said, rest] = [names, compositions, nutrients, further].map((text) =>
    text.split("\n"),
  );
  return named!.map((line, i): Ingredient => {
    const [name = "", ...aliases] = line.split(";");
    const [group = "", allergens, density, unit, portions, grade, source = ""] = rest![i]!.split("|");
    return {
      name,
      composition: compositionOf(parts![i]!),
      group,
      ...(allergens && {allergens: allergens.split(",") as Allergen[]}),
      ...(said![i] && {nutrients: nutrientsOf(said![i]!)}),
      ...(aliases.length > 0 && {aliases}),
      ...(unit && {unit: Number(unit)}),
      ...(density && {density: Number(density)}),
      ...(portions && {portions: portionsOf(portions)}),
      grade: grade as Grade,
      source,
    };
  });
}

function compositionOf(text: string): Composition {
  const entries = [...text.matchAll(/([A-Za-z])([\d.]+)/g)].map(
    ([, letter, figure]) => [KEYS[LETTERS.indexOf(letter!)]!, Number(figure)] as const,
  );
  const solids = entries.reduce((sum, [key, grams]) => (key === "dextroseEquivalent" ? sum : sum + grams), 0);
  const water = Number((100 - solids).toFixed(4));
  return Object.fromEntries([...(water > 0 ? [["water", water] as const] : []), ...entries]);
}

function nutrientsOf(text: string): Ingredient["nutrients"] & object {
  const figures = text.split(",");
  return Object.fromEntries(
    SAID_NUTRIENTS.flatMap((key, i) => (figures[i] ? [[key, Number(figures[i])] as const] : [])),
  );
}

function portionsOf(text: string): Record<string, number> {
  return Object.fromEntries(
    text.split(";").map((portion) => {
      const [name = "", grams] = portion.split("=");
      return [name, Number(grams)];
    }),
  );
}
