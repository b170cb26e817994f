import {expect, test} from "vitest";
import {formulate} from "../../lib/balance/program/formulate.ts";
import {mixOf} from "../../lib/balance/mix/mix-report.ts";
import {valueOf} from "../../lib/balance/measure/of-subject.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {loadHighs, referenceOf} from "../support/reference-lp.ts";
import {realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";

const highs = await loadHighs();

// A share of `tests/fuzz/briefs.ts`, which takes 10,000. Reference: HiGHS (npm `highs`), an independent open-source solver, at tolerances of 1e-9.
test("250 random briefs over the real pantry: same status as HiGHS, same cost to 1e-6", () => {
  const wrong: unknown[] = [];
  const counts: Record<string, number> = {};
  for (let seed = 1; seed <= 250; seed++) {
    const brief = readBrief(randomBrief(seed), realPantry);
    const ours = solveBrief(brief);
    const theirs = referenceOf(highs, formulate(brief).program);
    counts[ours.status] = (counts[ours.status] ?? 0) + 1;
    if (ours.status === "optimal" && brief.aim?.subject.kind !== "cost") {
      const value = valueOf(
        brief.aim!.subject,
        mixOf(
          brief,
          ours.amounts.map(({percent}) => percent / 100),
        ),
      )!;
      // The program counts ice before it is cut off at zero.
      const best = brief.aim!.subject.kind === "ice" ? Math.max(0, theirs.objective) : theirs.objective;
      if (theirs.status !== "optimal" || !(Math.abs(value - best) <= 1e-6))
        wrong.push({seed, ours: value, ...theirs});
    } else if (ours.status === "optimal") {
      const cost = ((ours.cost ?? NaN) / brief.batch) * 1000;
      if (theirs.status !== "optimal" || !(Math.abs(cost - theirs.objective) <= 1e-6))
        wrong.push({seed, ours: cost, ...theirs});
    } else if (theirs.status !== ours.status) wrong.push({seed, ours: ours.status, ...theirs});
  }
  expect(wrong).toEqual([]);
  // The sample must exercise both outcomes.
  expect(counts.optimal).toBeGreaterThan(150);
  expect(counts.infeasible).toBeGreaterThan(40);
  expect(counts.undecided ?? 0).toBe(0);
});
