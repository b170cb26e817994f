/** Random briefs over the real pantry against HiGHS: `npx tsx tests/fuzz/briefs.ts [count] [first seed]`; fails on any wrong answer. */
import {formulate} from "../../lib/balance/program/formulate.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";
import {loadHighs, referenceOf} from "../support/reference-lp.ts";

const highs = await loadHighs();
const count = Number(process.argv[2] ?? 10_000);
const first = Number(process.argv[3] ?? 1);
const tallies = new Map<string, number>();
let wrong = 0;
for (let seed = first; seed < first + count; seed++) {
  const brief = readBrief(randomBrief(seed), realPantry);
  const ours = solveBrief(brief);
  const theirs = referenceOf(highs, formulate(brief).program);
  const outcome = solve(formulate(brief).program);
  const value = outcome.status === "optimal" ? outcome.objective : NaN;
  const same =
    ours.status === "optimal"
      ? theirs.status === "optimal" && Math.abs(value - theirs.objective) <= 1e-6
      : theirs.status === ours.status;
  // HiGHS itself is undecided on a few nearly infeasible programs; our certificate then stands alone.
  const unknown = theirs.status === "unknown";
  if (!same && !unknown) {
    wrong++;
    console.log(`seed ${seed}: ${ours.status} ${value}, HiGHS ${theirs.status} ${theirs.objective}`);
  }
  const key = `${ours.status}${unknown ? " (HiGHS unknown)" : ""}`;
  tallies.set(key, (tallies.get(key) ?? 0) + 1);
}
for (const [key, tally] of tallies) console.log(String(tally).padStart(6), key);
console.log(`${count} briefs, ${wrong} wrong`);
if (wrong > 0) process.exitCode = 1;
