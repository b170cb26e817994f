import {sum} from "../../core/numbers.ts";
import {rootBetween} from "../../core/roots.ts";
import {heatToRemove} from "../../freezing/enthalpy.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";

/** Some of an ingredient in a pot. */
export interface Content {
  readonly ingredient: Ingredient;
  readonly grams: number;
  /** Whether it has been through a published pair of temperature and time. */
  readonly treated: boolean;
}

/** A pot at some temperature: an ingredient by itself, or a mixture. */
export interface Pot {
  readonly contents: readonly Content[];
  /** °C, the same throughout. */
  readonly temperature: number;
}

/** g */
export function potMass(pot: Pot): number {
  return sum(pot.contents.map((content) => content.grams));
}

/** g per 100 g */
export function potComposition(pot: Pot): Composition {
  return blend(
    pot.contents.map(({ingredient, grams}) => ({composition: ingredient.composition, mass: grams})),
  );
}

/**
 * Heat that brings a pot to a temperature, kJ; negative for cooling. Nothing is lost to the pot itself or the air.
 *
 * By the heat capacities of `heatToRemove`. The melting of fat (some 75 kJ per kg of milk fat between 4 and 40 °C) and the
 * cold of dissolving sugar (some 16 kJ per kg of sucrose), both from memory, are left out: the real temperature of a mixture
 * is 1 to 3 °C lower for them.
 */
export function heatTo(pot: Pot, temperature: number): number {
  return (-heatToRemove(potComposition(pot), pot.temperature, temperature) * potMass(pot)) / 1000;
}

/**
 * Pots poured together, at the temperature at which the warm ones lose as much heat as the cold ones gain.
 */
export function pourTogether(pots: readonly Pot[]): Pot {
  const temperatures = pots.map((pot) => pot.temperature);
  const coldest = Math.min(...temperatures);
  const warmest = Math.max(...temperatures);
  const gained = (temperature: number) => sum(pots.map((pot) => heatTo(pot, temperature)));
  return {
    contents: pots.flatMap((pot) => pot.contents),
    temperature: coldest === warmest ? coldest : rootBetween(gained, coldest, warmest, 1e-10)!,
  };
}
