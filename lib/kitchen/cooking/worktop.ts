import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {finite} from "../../core/numbers.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {type Pot, potMass} from "./pot.ts";
import type {Item} from "./process.ts";

/** Groups of ingredients that come out of the refrigerator. */
const CHILLED = new Set(["dairy", "egg"]);

/** Worktop while a process is followed: what is left of each ingredient and result, by name. */
export class Worktop {
  readonly #pots = new Map<string, Pot>();

  constructor(recipe: Recipe, start: Readonly<Record<string, number>>) {
    for (const {ingredient, grams} of recipe.lines) {
      finite(grams, `${recipe.name}: ${ingredient.name}`, {min: 0}, "g");
      const given = Object.hasOwn(start, ingredient.name) ? start[ingredient.name] : undefined;
      const temperature = finite(
        given ?? (CHILLED.has(ingredient.group ?? "") ? 4 : 20),
        `start: ${ingredient.name}`,
        {min: 0, max: 150},
        "°C (thaw what is frozen)",
      );
      const before = this.#pots.get(ingredient.name)?.contents ?? [];
      this.#pots.set(ingredient.name, {
        contents: [...before, {ingredient, grams, treated: false}],
        temperature,
      });
    }
    for (const name of Object.keys(start)) {
      if (this.#pots.has(name)) continue;
      throw new InputError("start", "not an ingredient of the recipe", name, this.#nearest(name), {
        code: "unknown name",
        path: ["start", name],
      });
    }
  }

  /** What stands here under a name like this one. */
  #nearest(name: string): string {
    const near = nearestNames(name, this.#pots.keys());
    return near.length ? `did you mean ${near.join(" or ")}` : `use ${[...this.#pots.keys()].join(", ")}`;
  }

  /** Takes items away; a name without grams takes all that is left. */
  take(items: readonly Item[], place: string): Pot[] {
    if (items.length === 0)
      throw new InputError(place, "nothing named", undefined, "name at least one ingredient");
    return items.map((item) => {
      const name = typeof item === "string" ? item : item.name;
      const pot = this.#pots.get(name);
      if (!pot) {
        throw new InputError(
          place,
          "neither an ingredient that is left nor the result of a step",
          name,
          this.#nearest(name),
        );
      }
      const left = potMass(pot);
      const grams = typeof item === "string" ? left : finite(item.grams, `${place}: ${name}`, {min: 0}, "g");
      if (grams > left * (1 + 1e-9)) {
        throw new InputError(place, `only ${left.toFixed(1)} g of ${name} are left`, grams, "take less");
      }
      if (grams >= left * (1 - 1e-9)) this.#pots.delete(name);
      else this.#pots.set(name, share(pot, 1 - grams / left));
      return share(pot, left > 0 ? grams / left : 1);
    });
  }

  /** Sets a result down under a name that is not in use. */
  put(name: string, pot: Pot, place: string): void {
    if (this.#pots.has(name)) {
      throw new InputError(
        place,
        "a name that is still in use",
        name,
        "give the result another name with `into`",
      );
    }
    this.#pots.set(name, pot);
  }

  /** Names of everything that stands here but one pot. */
  left(except: Pot): string[] {
    return [...this.#pots].filter(([, pot]) => pot !== except).map(([name]) => name);
  }
}

function share(pot: Pot, part: number): Pot {
  return {...pot, contents: pot.contents.map((content) => ({...content, grams: content.grams * part}))};
}
