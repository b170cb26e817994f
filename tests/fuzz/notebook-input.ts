/** Hostile files, addresses and typed recipes as the notebooks read them: `npx tsx tests/fuzz/notebook-input.ts [count] [seed]`. */
import {HOSTILE_LARGE, NOTEBOOK_KINDS} from "../support/hostile-notebook.ts";
import {fuzzKinds} from "./kinds.ts";

const [count = "8000", seed = "1"] = process.argv.slice(2);
await fuzzKinds(NOTEBOOK_KINDS, Math.ceil(Number(count) / NOTEBOOK_KINDS.length), Number(seed));
await fuzzKinds([HOSTILE_LARGE], 50, Number(seed));
