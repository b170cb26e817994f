/**
 * How long large briefs take beyond their deadline: the promise is 200 ms on a machine with nothing else to do, so the clock is the
 * time that the process itself has had. Ends with 1 where the promise is broken.
 */
import {balance, type BriefInput} from "../../lib/index.ts";
import {loadHighs} from "../../lib/highs.ts";

/** Invented syrups of 0 to 50 % sucrose. */
function syrups(count: number, more: object): BriefInput["ingredients"] {
  return Array.from({length: count}, (_, i) => ({
    name: `syrup ${i}`,
    composition: {water: 50 + (i % 50), sucrose: 50 - (i % 50)},
    ...more,
  }));
}

const SOFT = {sugars: {equal: 10}, scoopTemperature: {max: -12}};
const BRIEFS: [string, BriefInput][] = [
  ["2000 in steps", {ingredients: syrups(2000, {step: 1}), targets: {sugars: {min: 60}}}],
  ["300, least if used", {ingredients: syrups(300, {minIfUsed: 5}), targets: SOFT}],
  ["1200, least if used", {ingredients: syrups(1200, {minIfUsed: 5}), targets: SOFT}],
  ["2000, least if used", {ingredients: syrups(2000, {minIfUsed: 5}), targets: SOFT}],
];

/** Time over the deadline that is promised, ms. */
const PROMISED = 200;

/** What the process has had of the processor, ms. */
function now(): number {
  const {user, system} = process.cpuUsage();
  return (user + system) / 1000;
}

async function main(): Promise<void> {
  // The first call is cold, as a cook's is. HiGHS comes after it: its code goes on being compiled while others run, on their clock.
  for (const [engine, load] of [
    ["own", () => ({})],
    ["HiGHS", async () => ({highs: await loadHighs()})],
  ] as const) {
    const search = await load();
    for (const [name, brief] of BRIEFS) {
      for (const deadline of [300, 1000, 10_000]) {
        const start = now();
        const {status} = balance(brief, {deadline, now, search});
        const took = now() - start;
        if (took > deadline + PROMISED) process.exitCode = 1;
        const over = took > deadline ? `${Math.round(took - deadline)} ms over` : "in time";
        console.log(
          `${name}, ${engine}, deadline ${deadline} ms: ${Math.round(took)} ms, ${over}, ${status}`,
        );
      }
    }
  }
}

await main();
