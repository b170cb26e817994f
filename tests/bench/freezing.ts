/** Speed of the freezing model. Run it with `npx tsx tests/bench/freezing.ts`. */
import {freezingCurve} from "../../lib/freezing/curve.ts";
import {initialFreezingPoint, unclippedHardPhase, unclippedIce} from "../../lib/freezing/ice.ts";
import {piecesOf} from "../../lib/freezing/pieces.ts";
import {scoopTemperature} from "../../lib/freezing/scoop.ts";
import {temperingTime} from "../../lib/freezing/tub.ts";
import {mixComposition, type Portion} from "../../lib/pantry/mix.ts";
import type {Composition} from "../../lib/pantry/parts.ts";

/** Twenty ingredients of a shelf, g per 100 g, invented. */
const shelf: readonly Composition[] = Array.from({length: 20}, (_, i) => {
  const water = 20 + ((i * 37) % 70);
  const rest = 100 - water;
  return {
    water,
    milkFat: rest * 0.3,
    lactose: rest * 0.2,
    milkSalts: rest * 0.03,
    milkProtein: rest * 0.12,
    sucrose: rest * 0.15,
    dextrose: rest * 0.05,
    fructose: rest * 0.05,
    glucoseSyrupSolids: rest * 0.1,
    dextroseEquivalent: 20 + i * 3,
  };
});
const portions: readonly Portion[] = shelf.map((composition, i) => ({composition, grams: 50 + 10 * i}));
const mix = mixComposition(portions);

/** Time of a call in µs: the fastest of some rounds, the one least disturbed by the rest of the machine. */
function microseconds(call: () => unknown, calls: number): number {
  const rounds = Array.from({length: 15}, () => {
    const start = performance.now();
    for (let i = 0; i < calls; i++) call();
    return ((performance.now() - start) / calls) * 1000;
  });
  return Math.min(...rounds);
}

const SUMS = "coefficients of one brief: ice and hard phase of 20 ingredients at -18 °C";
const PIECES = "coefficients of a limit on firmness: every piece of it, of 20 ingredients at -18 °C";
const range = {from: 0, to: -30, step: 0.5};
const cases: [string, () => unknown, number][] = [
  ["curve of 61 temperatures of a known composition", () => freezingCurve(mix, range), 2000],
  ["the same from the masses of 20 ingredients", () => freezingCurve(mixComposition(portions), range), 2000],
  ["initial freezing point", () => initialFreezingPoint(mix), 2000],
  ["scoop temperature and its band", () => scoopTemperature(mix), 500],
  [
    SUMS,
    () => shelf.map((composition) => [unclippedIce(composition, -18), unclippedHardPhase(composition, -18)]),
    1000,
  ],
  [PIECES, () => piecesOf(shelf, -18), 1000],
  [
    "tempering time of a litre",
    () =>
      temperingTime(
        mix,
        {shape: "box", length: 16, width: 11, height: 6},
        {
          freezer: -25,
          airTemperature: 20,
          overrun: 40,
        },
      ),
    1,
  ],
];
for (const [name, call, calls] of cases) {
  const time = microseconds(call, calls);
  const rate = Math.round(1e6 / time).toLocaleString("en-GB");
  console.log(`${name}: ${time.toFixed(1)} µs, ${rate} per second`);
}

/** Fastest of one call over the fastest of another, in rounds that take turns: a busy machine disturbs both alike. */
function ratioOf(one: () => unknown, other: () => unknown): number {
  const rounds = Array.from({length: 20}, () => [microseconds(one, 100), microseconds(other, 100)] as const);
  return Math.min(...rounds.map(([time]) => time)) / Math.min(...rounds.map(([, time]) => time));
}
const callOf = (wanted: string) => cases.find(([name]) => name === wanted)![1];
console.log(`firmness over ice and hard phase: ${ratioOf(callOf(PIECES), callOf(SUMS)).toFixed(2)} times`);
