import type {Composition} from "../pantry/parts.ts";
import {CRYSTALLISING, type CrystalTerms, crystalTerms} from "./crystals.ts";
import {CRYSTAL_WEIGHT, firmnessWithoutIce} from "./firmness.ts";
import {heldByRest} from "./state.ts";

/** A sum over the shares of some ingredients: what 100 g of each bring, in their order. */
export type Piece = readonly number[];

/**
 * Linear pieces of ice and firmness at a temperature over the shares of some ingredients. What a mix has is the largest of the
 * pieces (of ice, or 0 where all are below it), so a limit "at most" is one row for each piece, and exact.
 *
 * The first piece of each list has all sweeteners dissolved. A limit "at least" that the first piece keeps is kept by the mix, for crystals
 * only add ice and firmness; it refuses mixes that would reach it by their crystals alone.
 */
export interface Pieces {
  /** Ice before it is cut off at zero, g per 100 g. */
  readonly ice: readonly Piece[];
  /** Firmness with that ice, g per 100 g. */
  readonly firmness: readonly Piece[];
  /** Firmness without ice, crystals included, g per 100 g: never more than a mix has. */
  readonly withoutIce: readonly Piece[];
}

/**
 * The pieces of some ingredients, one for each set of sweeteners that can be saturated together. With a set given, the state of a
 * mix (see `frozenState`) is linear in the masses: the dissolved d are m or s L + r W, and L = A + Σ h d, or all water where
 * there is no ice. Each such solution keeps the limits of the linear program whose optimum the state is in its dual, so that
 * none exceeds the optimum (weak duality), and the state is one of them.
 *
 * Pieces that never exceed the first are left out.
 *
 * @param compositions of the ingredients, g per 100 g
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function piecesOf(compositions: readonly Composition[], temperature: number): Pieces {
  const terms = CRYSTALLISING.filter((part) => compositions.some((d) => d[part])).map((part) =>
    crystalTerms(part, temperature),
  );
  const mixed: Mixed = {
    water: compositions.map((d) => d.water ?? 0),
    rest: compositions.map((d) => heldByRest(d, temperature)),
    masses: terms.map(({part}) => compositions.map((d) => d[part] ?? 0)),
  };
  const still = compositions.map((d) => firmnessWithoutIce(d, temperature));
  // Everything dissolved: no crystals.
  const dissolvedIce = mixed.water.map((water, i) => {
    let free = water - mixed.rest[i]!;
    for (let j = 0; j < terms.length; j++) free -= terms[j]!.held * mixed.masses[j]![i]!;
    return free;
  });
  const frozen = [{ice: dissolvedIce, firmness: dissolvedIce.map((d, i) => d + still[i]!)}];
  const melted = [still];
  for (const saturated of subsets(terms).slice(1)) {
    const gain = sumOf(saturated, ({held, perLiquid}) => held * perLiquid);
    const freed = sumOf(saturated, ({water, perLiquid}) => water * perLiquid);
    const solid = sumOf(saturated, ({water, perLiquid}) => (1 + water) * perLiquid);
    const boundPerWater = sumOf(saturated, ({water, perWater}) => water * perWater);
    const heldPerWater = sumOf(saturated, ({held, perWater}) => held * perWater);
    const solidPerWater = sumOf(saturated, ({water, perWater}) => (1 + water) * perWater);
    const of = (inSet: (term: CrystalTerms) => number, outside: (term: CrystalTerms) => number) =>
      terms.map((term) => (saturated.includes(term) ? inSet(term) : outside(term)));
    // There is no ice beside saturated sweeteners that could hold more water than they need.
    if (gain < 1) {
      const [liquid, per] = [1 / (1 - gain), (1 - freed) / (1 - gain)];
      const ice = summed(mixed, {
        water: 1 + boundPerWater - per * heldPerWater,
        rest: -per,
        masses: of(
          ({water}) => -water,
          ({held}) => -per * held,
        ),
      });
      const crystals = summed(mixed, {
        water: -solidPerWater - solid * liquid * heldPerWater,
        rest: -solid * liquid,
        masses: of(
          ({water}) => 1 + water,
          ({held}) => -solid * liquid * held,
        ),
      });
      frozen.push({ice, firmness: ice.map((d, i) => d + CRYSTAL_WEIGHT * crystals[i]! + still[i]!)});
    }
    const dissolved = solid / (1 - freed);
    const crystals = summed(mixed, {
      water: -solidPerWater - dissolved * (1 + boundPerWater),
      rest: 0,
      masses: of(
        ({water}) => 1 + water + dissolved * water,
        () => 0,
      ),
    });
    melted.push(crystals.map((d, i) => CRYSTAL_WEIGHT * d + still[i]!));
  }
  return {
    ice: aboveFirst(frozen.map(({ice}) => ice)),
    firmness: aboveFirst(frozen.map(({firmness}) => firmness)),
    withoutIce: aboveFirst(melted),
  };
}

/** Water, water held by what never crystallises, and masses of what does, of each ingredient; or a weight for each of these. */
interface Mixed<Each = readonly number[]> {
  readonly water: Each;
  readonly rest: Each;
  readonly masses: readonly Each[];
}

function summed({water, rest, masses}: Mixed, weights: Mixed<number>): number[] {
  return water.map((grams, i) => {
    let total = weights.water * grams + weights.rest * rest[i]!;
    for (let j = 0; j < masses.length; j++) total += weights.masses[j]! * masses[j]![i]!;
    return total;
  });
}

/** Every choice among some terms, the empty one first. */
function subsets(terms: readonly CrystalTerms[]): CrystalTerms[][] {
  return terms.reduce<CrystalTerms[][]>(
    (sets, term) => [...sets, ...sets.map((set) => [...set, term])],
    [[]],
  );
}

/** The first piece, and those that are above it somewhere. */
function aboveFirst([first = [], ...others]: readonly Piece[]): Piece[] {
  return [first, ...others.filter((piece) => piece.some((weight, i) => weight > first[i]! + 1e-12))];
}

function sumOf(terms: readonly CrystalTerms[], value: (term: CrystalTerms) => number): number {
  let total = 0;
  for (const term of terms) total += value(term);
  return total;
}
