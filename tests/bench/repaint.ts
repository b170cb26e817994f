// From a slider's move to the repainted answer, in the browser: 80 moves of one limit, each waited for until all that
// changes in sight has been painted. Run with: npx tsx tests/bench/repaint.ts
import {launchBrowser} from "../support/browser.ts";
import {startSite} from "../support/notebooks-site.ts";

const MOVES = 80;

/**
 * In the page, as text since it is written for the browser: moves a slider to and fro, at the start of a frame as browsers
 * send a pointer's moves; ms from each move until the last frame that changed something in sight has been painted.
 */
const MEASURE = `
  const painted = () => new Promise((resolve) => {
    const {port1, port2} = new MessageChannel();
    port1.onmessage = () => resolve(performance.now());
    port2.postMessage(0);
  });
  const inSight = ({target}) => {
    const {top, bottom, height} = target.getBoundingClientRect();
    return height > 0 && bottom > 0 && top < innerHeight;
  };
  const base = slider.valueAsNumber;
  const times = [];
  for (let i = 0; i < moves; i++) {
    // What stands above may have grown or shrunk with the last answer.
    document.querySelector(selector)?.scrollIntoView({block: "center"});
    let records = [];
    const observer = new MutationObserver((more) => records.push(...more));
    observer.observe(document.querySelector("main"), {childList: true, subtree: true});
    let start, last;
    // The answer may take its time; once it is there, four frames without a change say that it is whole.
    for (let quiet = 0; quiet < (last === undefined ? 60 : 4); quiet++) {
      const end = await new Promise((resolve) => requestAnimationFrame(() => {
        if (start === undefined) {
          start = performance.now();
          slider.valueAsNumber = base + Number(slider.step) * (1 + (i % 8));
          slider.dispatchEvent(new Event("input", {bubbles: true}));
        }
        resolve(painted());
      }));
      if (records.some(inSight)) [last, quiet] = [end, 0];
      records = [];
    }
    observer.disconnect();
    if (last !== undefined) times.push(last - start);
  }
  slider.valueAsNumber = base;
  slider.dispatchEvent(new Event("input", {bubbles: true}));
  return times;`;

const measure = new Function("slider", "{moves, selector}", `return (async () => {${MEASURE}})()`) as (
  slider: unknown,
  how: {readonly moves: number; readonly selector: string},
) => unknown;

/** What is moved on which page, and what is in sight meanwhile. */
const CASES: readonly {
  readonly page: string;
  readonly slider: string;
  readonly sights: readonly (readonly [selector: string, name: string])[];
}[] = [
  {
    page: "design-a-flavour.html",
    slider: "Total solids, at least, %",
    sights: [
      [".verdict", "sentences and weights"],
      ['[aria-label="Temperature at which each mix scoops"]', "two charts"],
      ['table[aria-label="What comes out"]', "chart and table"],
    ],
  },
  {
    page: "replace-an-ingredient.html#recipe=hazelnut&out=cream+40+%25",
    slider: "Still there, g",
    sights: [
      [".verdict", "the ways"],
      ['table[aria-label="What to weigh"]', "the sheet to weigh from"],
    ],
  },
  {
    page: "explore-trade-offs.html",
    slider: "Along the bold line",
    sights: [
      [".trade-chart", "map and recipe"],
      ['[aria-label="Temperature at which each mix scoops"]', "two charts"],
    ],
  },
  {
    page: "explore-trade-offs.html#x=sugars&y=fat",
    slider: "Total solids, at least, %",
    sights: [[".trade-chart", "a limit moves the line"]],
  },
  {
    page: "explore-trade-offs.html",
    slider: "Total solids, at least, %",
    sights: [[".trade-chart", "a limit moves a line of temperatures"]],
  },
];

const site = await startSite();
// As fast as a cook's own: pages that are moved 80 times are worth compiling.
const browser = await launchBrowser("measuring");
for (const {page: name, slider: label, sights} of CASES) {
  for (const width of [1280, 390]) {
    const page = await browser.newPage({viewport: {width, height: 900}});
    await page.goto(`${site.address}${name}`, {waitUntil: "networkidle"});
    const folded = page.locator("details.panel:not([open]) > summary");
    for (let n = await folded.count(); n > 0; n--) await folded.first().click();
    // What the page folds away is measured as a cook has it who wants to see it.
    await page.evaluate('for (const fold of document.querySelectorAll("details.fold")) fold.open = true');
    const slider = await page.getByRole("slider", {name: label}).elementHandle();
    for (const [selector, sight] of sights) {
      await page.waitForSelector(selector);
      const times = (await slider!.evaluate(measure, {moves: MOVES, selector})) as number[];
      times.sort((a, b) => a - b);
      const at = (share: number) =>
        times[Math.min(times.length - 1, Math.floor(share * times.length))]!.toFixed(1);
      const place = `${name.replace(/\.html.*/, "")}, ${width} px, ${sight} in sight`;
      // The times of what hardly ever changes say nothing.
      if (times.length < MOVES / 2) {
        process.stdout.write(`${place}: only ${times.length} of ${MOVES} moves changed anything there\n`);
        continue;
      }
      process.stdout.write(
        `${place}: median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms, longest ${at(1)} ms (${times.length} repaints)\n`,
      );
    }
    await page.close();
  }
}
await browser.close();
site.close();
