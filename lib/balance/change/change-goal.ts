import {decimal, degrees, setDegrees, tenth} from "../../core/format.ts";
import {firmness, type FirmnessOptions, firmnessReference} from "../../freezing/firmness.ts";
import {COLDEST_SCOOP, scooping, verdictBands} from "../../freezing/scoop.ts";
import {recipeComposition} from "../../pantry/recipe.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import type {Target} from "../brief/brief.ts";
import {tubOf} from "../measure/tub-of.ts";
import {noWorseThan, WARMEST} from "../program/no-worse.ts";
import type {SimilarityTrait} from "../substitute/similarity-traits.ts";
import type {ChangeProblem} from "./change-problem.ts";
import type {Towards} from "./change-types.ts";

/** Goal of a change, with the limits that it must keep. */
export interface ChangeGoal {
  readonly towards: Towards;
  readonly wanted: string;
  readonly target: Target;
  /** Limits that a change keeps whatever it counts. */
  readonly keeps: readonly Target[];
  /** Traits that are meant to change, and so do not count as noticed. */
  readonly sought: readonly SimilarityTrait[];
}

/** Less sweetness, as a share of what there is: about as little as can be told apart (Weber's law; common practice, no source). */
const LESS_SWEET = 0.1;

/** Less cost, as a share of what it is. */
const CHEAPER = 0.1;

/** Goal "softer" of a mix that scoops already: by so much a colder scoop temperature, °C. */
const COLDER = 2;

/** Largest change of a quantity that makes the dessert what it is: a share of it, or g per 100 g where that is more. */
const SHARE = 0.25;
const ROOM = {sweetness: 2, fat: 2, totalSolids: 4, protein: 1, lactose: 0.5} as const;

/**
 * Total solids that a change may always go up to, g per 100 g, and beyond them by how much more than there are: published mixes have 36 to 45
 * (University of Guelph, ice cream technology e-book).
 */
const [SOLIDS, MORE_SOLIDS] = [43, 3];

/** Goals that make sense for a recipe: softer or firmer, cheaper, less sweet. */
export function changeGoals(problem: ChangeProblem): ChangeGoal[] {
  const {before, freezer, batch} = problem;
  const composition = recipeComposition(before);
  const tub = tubOf(problem);
  const sweetness = quantityOf(composition, "sweetness");
  const noWorse = noWorseThan(composition, problem);
  const same = sameDessert(problem);
  const at = Math.min(WARMEST, tenth(freezer));
  const reference = firmnessReference(tub.overrun, tub.learned);
  const now = firmness(composition, at) - reference;
  const scoops = scoopingBand(tub);
  const cost = before.lines.every(({ingredient}) => ingredient.price !== undefined)
    ? before.lines.reduce((sum, {ingredient, grams}) => sum + (grams / batch) * ingredient.price!, 0)
    : 0;
  const noHarder = softEnough(problem, now, scoops.to - reference);
  const goals: ChangeGoal[] = [consistency(problem, [...noWorse.map(withoutMost), ...same])];
  if (cost > 0)
    goals.push({
      towards: "cheaper",
      wanted: `costs ${decimal(100 * CHEAPER, 0)} % less`,
      target: {subject: {kind: "cost"}, max: (1 - CHEAPER) * cost},
      keeps: [
        ...noWorse,
        ...same,
        {subject: {kind: "firmness", at}, max: Math.max(now, scoops.to - reference)},
      ],
      sought: ["cost"],
    });
  if (sweetness >= 1)
    goals.push({
      towards: "less sweet",
      wanted: `tastes ${decimal(100 * LESS_SWEET, 0)} % less sweet`,
      target: {subject: {kind: "quantity", quantity: "sweetness"}, max: (1 - LESS_SWEET) * sweetness},
      keeps: [...noWorse, ...same, ...noHarder],
      sought: ["sweetness"],
    });
  return goals;
}

/**
 * Limits that keep a mix no harder than before, in the freezer and where it scooped. One that was too soft may harden until it scoops.
 *
 * @param now its firmness in the freezer, points
 * @param most the firmness up to which it scoops there, points
 */
function softEnough(problem: ChangeProblem, now: number, most: number): Target[] {
  const {before, freezer} = problem;
  const at = Math.min(WARMEST, tenth(freezer));
  const {temperature, verdict} = scooping(recipeComposition(before), freezer, tubOf(problem));
  if (verdict === "soft" || verdict === "never hardens")
    return [{subject: {kind: "firmness", at}, max: most}];
  return [
    {subject: {kind: "firmness", at}, max: now},
    ...(temperature === undefined || temperature > WARMEST
      ? []
      : [{subject: {kind: "firmness" as const, at: temperature}, max: 0}]),
  ];
}

/** The goal "softer", or "firmer" where the tub does not hold its shape. */
function consistency(problem: ChangeProblem, keeps: readonly Target[]): ChangeGoal {
  const {before, freezer} = problem;
  const tub = tubOf(problem);
  const {temperature, verdict} = scooping(recipeComposition(before), freezer, tub);
  const reference = firmnessReference(tub.overrun, tub.learned);
  const scoops = scoopingBand(tub);
  const at = Math.min(WARMEST, tenth(freezer));
  const sought = ["firmness", "freezingPoint"] as const;
  const here = `scoops at ${setDegrees(freezer)}`;
  if (verdict === "soft" || verdict === "never hardens")
    return {
      towards: "firmer",
      wanted: here,
      target: {subject: {kind: "firmness", at}, min: scoops.from - reference},
      keeps: keeps.filter(({subject}) => subject.kind !== "firmness"),
      sought,
    };
  if (verdict !== "scoops")
    return {
      towards: "softer",
      wanted: here,
      target: {subject: {kind: "firmness", at}, max: scoops.to - reference},
      keeps,
      sought,
    };
  const colder = Math.max(COLDEST_SCOOP, temperature! - COLDER);
  return {
    towards: "softer",
    wanted: `scoops best at ${degrees(colder)}`,
    target: {subject: {kind: "firmness", at: colder}, max: 0},
    keeps,
    sought,
  };
}

function scoopingBand(tub: FirmnessOptions) {
  return verdictBands(tub).find(({verdict}) => verdict === "scoops")!;
}

/** A limit without its upper side. */
function withoutMost({subject, min}: Target): Target {
  return {subject, ...(min !== undefined && {min})};
}

/** Limits within which a dessert stays the one that it is: as sweet, as rich and as thick but for a quarter. */
function sameDessert({before}: ChangeProblem): Target[] {
  const composition = recipeComposition(before);
  return (Object.keys(ROOM) as (keyof typeof ROOM)[]).map((quantity): Target => {
    const value = quantityOf(composition, quantity);
    const room = Math.max(SHARE * value, ROOM[quantity]);
    const most = quantity === "totalSolids" ? Math.max(SOLIDS, value + MORE_SOLIDS) : value + room;
    return {subject: {kind: "quantity", quantity}, min: Math.max(0, value - room), max: most};
  });
}
