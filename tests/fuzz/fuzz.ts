/** All long random runs, one after the other: `npm run fuzz`. Ends with 1 if any of them found something wrong. */
import {spawnSync} from "node:child_process";
import {fileURLToPath} from "node:url";

const RUNS = [
  ["lp.ts", "10000"],
  ["briefs.ts", "10000"],
  ["doses.ts", "10000"],
  ["verdicts.ts", "10000"],
  ["changes.ts", "20000"],
  ["input.ts", "20000"],
  ["notebook-input.ts", "8000"],
];

for (const [file, count] of RUNS) {
  console.log(`\n== ${file}, ${count} cases`);
  const path = fileURLToPath(new URL(file!, import.meta.url));
  const {status} = spawnSync(process.execPath, [...process.execArgv, path, count!], {stdio: "inherit"});
  if (status !== 0) process.exitCode = 1;
}
