/** Hostile input of every kind that the library takes: `npx tsx tests/fuzz/input.ts [count] [seed]`. */
import {HOSTILE_KINDS} from "../support/hostile.ts";
import {fuzzKinds} from "./kinds.ts";

const [count = "20000", seed = "1"] = process.argv.slice(2);
await fuzzKinds(HOSTILE_KINDS, Math.ceil(Number(count) / HOSTILE_KINDS.length), Number(seed));
