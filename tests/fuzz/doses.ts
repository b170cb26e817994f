/**
 * Random briefs over the whole pantry with random prices: `npx tsx tests/fuzz/doses.ts [count] [first seed]`; fails where an
 * answer goes beyond a dose, and where a brief that cannot be met has a least change after which it still has no answer.
 */
import {explainConflict} from "../../lib/balance/explain/conflict.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {withRelaxations} from "../../lib/balance/explain/with-relaxations.ts";
import {DOSES} from "../../lib/pantry/doses.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";

const nothing = pantryOf([]);
const count = Number(process.argv[2] ?? 10_000);
const first = Number(process.argv[3] ?? 1);
let [wrong, met, mended] = [0, 0, 0];
for (let seed = first; seed < first + count; seed++) {
  const written = randomBrief(seed);
  const brief = readBrief(written, realPantry);
  let solution = solveBrief(brief);
  if (solution.status === "infeasible") {
    const {relaxation, relaxations} = explainConflict(brief, nothing);
    solution = solveBrief(readBrief(withRelaxations(written, relaxations), realPantry));
    if (relaxation === "found" && solution.status === "optimal") mended++;
    else {
      wrong++;
      console.log(`seed ${seed}: ${relaxation}, then ${solution.status}`);
    }
    continue;
  }
  if (solution.status !== "optimal") continue;
  met++;
  // A target's least asks for more outright: then the dose is as high as that takes, and no higher.
  const limits = new Map(brief.doses?.map(({index, limit}) => [DOSES[index]!.key, limit]));
  const over = (solution.beyondDoses ?? []).filter(({dose, has}) => !(has <= limits.get(dose)! * (1 + 1e-6)));
  if (over.length === 0) continue;
  wrong++;
  console.log(`seed ${seed}: ${over.map(({dose, has}) => `${dose} ${has}`).join(", ")}`);
}
console.log(`${count} briefs, ${met} met, ${mended} mended, ${wrong} wrong`);
if (wrong > 0 || met === 0 || mended === 0) process.exitCode = 1;
