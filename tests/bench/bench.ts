/** All benchmarks, one after the other: `npm run bench`. Ratios against peers in one process; the one of sizes fails beyond its budgets. */
import {spawnSync} from "node:child_process";
import {fileURLToPath} from "node:url";

const RUNS = ["lp.ts", "deadline.ts", "balance.ts", "trade-off.ts", "freezing.ts", "size.ts", "repaint.ts"];

for (const file of RUNS) {
  console.log(`\n== ${file}`);
  const path = fileURLToPath(new URL(file, import.meta.url));
  const {status} = spawnSync(process.execPath, [...process.execArgv, path], {stdio: "inherit"});
  if (status !== 0) process.exitCode = 1;
}
