/**
 * Random briefs over the whole pantry with random prices: `npx tsx tests/fuzz/verdicts.ts [count] [first seed]`; fails where the
 * words of an answer, its first lines among them, and its numbers are not of one mind, or a limit that was asked for is not kept.
 */
import {answerTo} from "../../lib/balance/balance.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {decimal, degrees, tenth} from "../../lib/core/format.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {firstWarnings} from "../../lib/kitchen/product/first-warnings.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";
import {verdictsIn} from "../support/verdicts-in.ts";

const count = Number(process.argv[2] ?? 10_000);
const first = Number(process.argv[3] ?? 1);
const seen: Record<string, number> = {};
let wrong = 0;

for (let seed = first; seed < first + count; seed++) {
  const brief = readBrief(randomBrief(seed), realPantry);
  // Without a larger shelf and without candidates: what is looked at here is the answer.
  const answer = answerTo(brief, pantryOf([]), {}, false);
  const told = textReport(answer, brief);
  const plain = told.replaceAll(/\s+/g, " ");
  const below = told
    .split("\n")
    .slice(2)
    .find((line) => line.trim() !== "")!
    .trim();
  const faults: string[] = [];
  const expectThat = (holds: boolean, what: string) => void (holds || faults.push(what));
  if (answer.status === "optimal") {
    const {scoop, cost, batch, amounts, composition} = answer;
    const {verdict, temperature, low = -40, high, freezer} = scoop;
    seen[verdict] = (seen[verdict] ?? 0) + 1;
    const stated = verdictsIn(told);
    const wanted = scoop.unsure === "no ice" ? "" : verdict;
    expectThat(stated.join() === wanted, `says ${stated.join(" and ")}, is ${verdict}`);
    const unfit = firstWarnings(answer).length > 0;
    const first = /^(Soft in|Never hardens|Too hard for|(Fat|A paste|Ice|A drink), not)/;
    expectThat(first.test(below) === unfit, `first line: ${below}`);
    const within = high !== undefined && tenth(freezer) >= low && tenth(freezer) <= high;
    expectThat(within === (verdict === "scoops"), "the band and the verdict differ");
    if (temperature !== undefined && !scoop.unsure)
      expectThat(plain.includes(`Scoops at about ${degrees(temperature)}`), "another scoop temperature");
    const [grams, percent] = [
      amounts.reduce((sum, one) => sum + one.grams, 0),
      amounts.reduce((sum, one) => sum + one.percent, 0),
    ];
    expectThat(
      Math.abs(grams / batch - 1) < 1e-6 && Math.abs(percent - 100) < 1e-4,
      "amounts miss the batch",
    );
    if (cost !== undefined) expectThat(plain.includes(`cost ${decimal(cost, 2)}`), "another cost");
    expectThat(plain.includes("Tastes salty") === (composition.salt ?? 0) > 0.3, "salt without a word");
    for (const {subject, min = -Infinity, max = Infinity} of brief.targets) {
      if (subject.kind !== "quantity") continue;
      const value = answer.shares[subject.quantity] ?? 0;
      expectThat(value >= min - 1e-6 && value <= max + 1e-6, `${subject.quantity} is ${value}`);
    }
  } else {
    seen[answer.status] = (seen[answer.status] ?? 0) + 1;
    // The example of a conflict is a mix.
    expectThat(verdictsIn(told.split("for example:")[0]!).length === 0, "a verdict of no mix");
    expectThat(/no mix|conflict|no verified answer/i.test(below), `first line: ${below}`);
  }
  if (faults.length === 0) continue;
  wrong++;
  console.log(`seed ${seed}: ${faults.join("; ")}`);
}
const of = Object.entries(seen).map(([name, times]) => `${times} ${name}`);
console.log(`${count} briefs (${of.join(", ")}), ${wrong} wrong`);
if (wrong > 0 || !seen.scoops || !seen.soft || !seen.infeasible) process.exitCode = 1;
