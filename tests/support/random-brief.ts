import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {mixComposition} from "../../lib/pantry/mix.ts";
import {quantityOf} from "../../lib/pantry/quantities.ts";
import {hardPhase, ice, initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {seededRandom as random} from "../../lib/core/random.ts";
import {realPantry} from "./pantry.ts";

/**
 * A random brief over the real pantry. Three in four have targets drawn around a random mix of its ingredients, so that they
 * can be met; in the others some targets are moved away from it and may conflict. Most minimise cost, in one of ten cases
 * with everything free of charge; the others pursue another aim.
 */
export function randomBrief(seed: number): BriefInput {
  const next = random(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  const shelf = inOrder(seed).slice(0, 4 + Math.floor(between(0, 20)));
  const portions = shelf.map(({composition}) => ({composition, grams: next() ** 3}));
  portions.push({composition: {water: 100}, grams: between(0.2, 2)});
  const mix = mixComposition(portions);
  const away = next() < 0.25;
  const limits = (value: number, scale: number) => {
    const middle = value + (away ? between(-1, 1) * scale * 4 : 0);
    const width = between(0, 1) * scale;
    const low = Math.max(0, middle - width * next());
    const kind = next();
    if (kind < 0.25) return {min: low};
    if (kind < 0.5) return {max: Math.max(0, middle + width * next())};
    if (kind < 0.9) return {min: low, max: Math.max(low, middle + width)};
    return {equal: Math.max(0, middle)};
  };
  const targets: Record<string, unknown> = {};
  for (const quantity of ["fat", "totalSolids", "sugars", "msnf", "glucose", "sweetness"] as const) {
    if (next() < 0.6) targets[quantity] = limits(quantityOf(mix, quantity), 2);
  }
  if (next() < 0.5)
    targets.ice = [{at: -18, max: Math.min(100, ice(mix, -18) + between(0, 3) - (away ? 5 : 0))}].filter(
      ({max}) => max >= 0,
    );
  if (next() < 0.5) targets.hardPhase = [{at: -14, max: Math.min(100, hardPhase(mix, -14) + between(0, 3))}];
  const point = initialFreezingPoint(mix);
  if (point !== undefined && point < -0.1 && next() < 0.5)
    targets.freezingPoint = {max: Math.min(-0.01, Math.max(-40, point + between(0, 0.5)))};
  const free = next() < 0.1;
  const aims = [
    {minimise: {hardPhase: {at: -18}}},
    {minimise: "sweetness"},
    {maximise: "fat"},
    {maximise: {ice: {at: -10}}},
  ];
  return {
    ...(next() < 0.2 && aims[Math.floor(next() * aims.length)]),
    batch: Math.round(between(500, 20_000)),
    ingredients: [
      ...shelf.map(({name}) => ({name, price: free ? 0 : between(0.5, 20)})),
      ...(shelf.some(({name}) => name === "water") ? [] : [{name: "water", price: 0}]),
    ].map((ingredient) => (next() < 0.1 ? {...ingredient, max: between(50, 500)} : ingredient)),
    targets,
  } as BriefInput;
}

/** The pantry in an order of the seed's own, in which a newcomer takes its place and moves no other: most briefs stay as they were. */
function inOrder(seed: number): Ingredient[] {
  const place = ({name}: Ingredient) => {
    let mixed = seed;
    for (const sign of name) mixed = (Math.imul(mixed, 31) + sign.codePointAt(0)!) >>> 0;
    return random(mixed)();
  };
  return realPantry.ingredients
    .map((ingredient) => ({ingredient, at: place(ingredient)}))
    .sort((a, b) => a.at - b.at)
    .map(({ingredient}) => ingredient);
}
