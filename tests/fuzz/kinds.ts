import * as fc from "fast-check";
import {type HostileKind, survive, warmUp} from "../support/hostile.ts";

/**
 * Uses so many inputs of each kind. It fails on anything but an answer or a refusal that names its place, on more than 2 s,
 * and on a changed prototype; it prints the smallest input that does so, and then the process ends with 1.
 */
export async function fuzzKinds(kinds: readonly HostileKind[], each: number, seed: number): Promise<void> {
  await warmUp();
  for (const kind of kinds) {
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
    process.exitCode = 1;
    console.log(`  FAILED: ${JSON.stringify(details.counterexample?.[0])?.slice(0, 2000)}`);
    console.log(
      `  ${String((details.errorInstance as Error | null)?.stack)
        .split("\n")
        .slice(0, 6)
        .join("\n  ")}`,
    );
  }
}
