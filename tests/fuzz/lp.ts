/** Random programs of every awkward kind against HiGHS: `npx tsx tests/fuzz/lp.ts [count] [first seed]`; fails on any wrong answer. */
import {solve} from "../../lib/lp/solve/solve.ts";
import {compare, loadHighs, referenceOf} from "../support/reference-lp.ts";
import {KINDS, plainlyScaled, programOf} from "../support/programs.ts";

const count = Number(process.argv[2] ?? 10_000);
const first = Number(process.argv[3] ?? 1);
const highs = await loadHighs();
const tallies = new Map<string, number>();
let [wrong, slowest] = [0, 0];
for (let k = 0; k < count; k++) {
  const kind = KINDS[k % KINDS.length]!;
  const size = [10, 30, 30, 100][Math.floor(k / KINDS.length) % 4]!;
  const seed = first + Math.floor(k / KINDS.length);
  const program = programOf(kind, size, seed, (oracle) => referenceOf(highs, oracle).objective);
  const started = performance.now();
  const outcome = solve(program);
  slowest = Math.max(slowest, performance.now() - started);
  const result = compare(program, outcome, referenceOf(highs, plainlyScaled(kind, program, size, seed)));
  if (result.startsWith("wrong")) {
    wrong++;
    console.log(`${kind}, ${size} ingredients, seed ${seed}: ${result}`);
  }
  const engine = "engine" in outcome ? outcome.engine : "no engine";
  const key = `${kind.padEnd(30)} ${result.startsWith("wrong") ? "WRONG" : result} (${engine})`;
  tallies.set(key, (tallies.get(key) ?? 0) + 1);
}
for (const [key, tally] of [...tallies].sort(([a], [b]) => (a < b ? -1 : 1)))
  console.log(String(tally).padStart(6), key);
console.log(`${count} programs, ${wrong} wrong, slowest ${slowest.toFixed(0)} ms`);
process.exitCode = wrong > 0 ? 1 : 0;
