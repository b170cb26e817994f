/**
 * Hostile input of every kind: `npx tsx tests/fuzz/input.ts [count] [seed]`. It fails on anything but an answer or a refusal
 * that names its place, on more than 2 s, and on a changed prototype; it prints the smallest input that does so.
 */
import * as fc from "fast-check";
import {HOSTILE_KINDS, survive, warmUp} from "../support/hostile.ts";

const count = Number(process.argv[2] ?? 20_000);
const seed = Number(process.argv[3] ?? 1);
const each = Math.ceil(count / HOSTILE_KINDS.length);
let failures = 0;
await warmUp();
for (const kind of HOSTILE_KINDS) {
  const tally = {read: 0, refused: 0};
  let slowest = 0;
  const details = await fc.check(
    fc.asyncProperty(kind.input, async (text) => {
      const started = performance.now();
      tally[await survive(kind, text)]++;
      slowest = Math.max(slowest, performance.now() - started);
    }),
    {numRuns: each, seed},
  );
  console.log(
    `${kind.name}: ${details.numRuns} inputs, ${tally.read} read, ${tally.refused} refused, slowest ${slowest.toFixed(0)} ms`,
  );
  if (!details.failed) continue;
  failures++;
  console.log(`  FAILED: ${JSON.stringify(details.counterexample?.[0])}`);
  console.log(
    `  ${String((details.errorInstance as Error | null)?.stack)
      .split("\n")
      .slice(0, 6)
      .join("\n  ")}`,
  );
}
process.exitCode = failures ? 1 : 0;
