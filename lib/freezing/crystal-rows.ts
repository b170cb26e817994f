import type {Composition} from "../pantry/parts.ts";
import {CRYSTALLISING, type Crystallising, crystalTerms} from "./crystals.ts";
import {CRYSTAL_WEIGHT, firmnessWithoutIce} from "./firmness.ts";
import {heldByRest} from "./state.ts";

/**
 * What a linear program over the shares of some ingredients needs to count crystals at a temperature, as plain numbers. Every
 * list has the ingredients first, in their order, then the further variables, in the order of `parts`.
 */
export interface CrystalRows {
  /** Sweeteners that some ingredient brings: one further variable each, not below 0, what is dissolved of it, g per 100 g. */
  readonly parts: readonly Crystallising[];
  /** Sums that must not be above 0. */
  readonly atMostNone: readonly (readonly number[])[];
  /** The ice before it is cut off at zero, g per 100 g: as small as the further variables let it be. */
  readonly ice: readonly number[];
  /** The firmness with that ice, g per 100 g. */
  readonly firmness: readonly number[];
  /** The firmness without ice, crystals included, g per 100 g: for mixes that have none. */
  readonly withoutIce: readonly number[];
}

/**
 * Rows that make a limit "at most" on ice or firmness at a temperature exact where sweeteners crystallise (see `frozenState`):
 * `ice` or `firmness` at most the limit, and every sum of `atMostNone` at most 0. Where `parts` is empty nothing crystallises, and
 * the lists are the ingredients' own coefficients. For a limit "at least" use `unclippedIce` or `unclippedFirmness`.
 *
 * @param compositions of the ingredients, g per 100 g
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function crystalRows(compositions: readonly Composition[], temperature: number): CrystalRows {
  const parts = CRYSTALLISING.filter((part) => compositions.some((d) => d[part]));
  const terms = parts.map((part) => crystalTerms(part, temperature));
  const masses = compositions.map((d) => parts.map((part) => d[part] ?? 0));
  const rest = compositions.map((d) => heldByRest(d, temperature));
  const water = compositions.map((d) => d.water ?? 0);
  const still = compositions.map((d) => firmnessWithoutIce(d, temperature));
  const crystalWater = masses.map((m) => dot(m, (j) => terms[j]!.water));
  const solid = masses.map((m) => dot(m, (j) => CRYSTAL_WEIGHT * (1 + terms[j]!.water)));
  const own = (j: number) => terms.map((_, i) => (i === j ? 1 : 0));
  return {
    parts,
    atMostNone: terms.flatMap(({perLiquid, perWater}, j) => [
      // No more than there is.
      [...masses.map((m) => -m[j]!), ...own(j)],
      // No more than the water dissolves that is held liquid, nor than all of it does where there is no ice.
      [
        ...rest.map((a, i) => -perLiquid * a - perWater * water[i]!),
        ...own(j).map((d, i) => d - perLiquid * terms[i]!.held),
      ],
      [
        ...water.map((w, i) => -perLiquid * (w - crystalWater[i]!) - perWater * w),
        ...own(j).map((d, i) => d - perLiquid * terms[i]!.water),
      ],
    ]),
    ice: [...water.map((w, i) => w - rest[i]! - crystalWater[i]!), ...terms.map((d) => d.water - d.held)],
    firmness: [
      ...water.map((w, i) => w - rest[i]! - crystalWater[i]! + solid[i]! + still[i]!),
      ...terms.map((d) => d.water - d.held - CRYSTAL_WEIGHT * (1 + d.water)),
    ],
    withoutIce: [...still.map((f, i) => f + solid[i]!), ...terms.map((d) => -CRYSTAL_WEIGHT * (1 + d.water))],
  };
}

function dot(masses: readonly number[], weight: (j: number) => number): number {
  let total = 0;
  for (let j = 0; j < masses.length; j++) total += masses[j]! * weight(j);
  return total;
}
