import {html} from "htl";
import {sweepSteps} from "../../../lib/balance/trade-off/sweep.ts";
import {keep, recall} from "../words/address.ts";
import {numberIn} from "../controls/control.ts";
import {longRun} from "../page/long-run.ts";
import {attempt} from "../words/mistakes.ts";
import {limit} from "../words/numbers.ts";
import {sweepChart} from "./sweep-chart.ts";
import {type Path, pathsOf, type Swept} from "./sweep-paths.ts";
import {rangeOf} from "./sweep-range.ts";

/** So many values of a sweep. */
const VALUES = 61;

/** Time that a hand must rest before the sweep runs again, ms. */
const REST = 400;

/** A part of the page in which one number of the brief runs over a range. */
export interface SweepSection {
  readonly element: HTMLElement;
  show(swept: Swept | undefined): void;
}

/** The sweep with its own choices: which number, from where to where. */
export function sweepSection(): SweepSection {
  const which = html`<select></select>` as unknown as HTMLSelectElement;
  const box = () => html`<input type="number" step="any" />` as HTMLInputElement;
  const [from, to] = [box(), box()];
  const place = html`<div></div>`;
  const run = longRun();
  const element = html`<section data-side="answer" class="sweep">
    <h3>Change one limit or price</h3>
    <p>The cheapest mix along a range. A mark stands where another ingredient or another limit takes over.</p>
    <div class="tools"><label>Vary ${which}</label><label>from ${from}</label><label>to ${to}</label></div>
    ${run.element} ${place}
  </section>`;
  let swept: Swept | undefined;
  let paths: readonly Path[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last = "";

  const current = () => paths.find(({path}) => path === which.value) ?? paths[0];
  const ends = (): [number, number] | undefined => {
    const [low, high] = [numberIn(from), numberIn(to)];
    return low !== undefined && high !== undefined && low < high ? [low, high] : undefined;
  };
  const fresh = () => {
    const path = current();
    if (!path) return;
    const [low, high] = rangeOf(path);
    from.value = limit(low).replace("−", "-");
    to.value = limit(high).replace("−", "-");
  };
  const work = () => {
    const path = current();
    if (!swept || !path) return place.replaceChildren();
    const range = ends();
    if (!range)
      return place.replaceChildren(
        html`<p class="note">Give a number to start from and a greater one to end with.</p>`,
      );
    const {brief, pantry, ...along} = swept;
    const [low, high] = range;
    const values = Array.from({length: VALUES}, (_, i) => low + ((high - low) * i) / (VALUES - 1));
    const begun = attempt(() =>
      run.start({
        words: "Running through the values …",
        steps: sweepSteps(brief, path.path, values, {pantry}),
        done: (points) =>
          place.replaceChildren(sweepChart(points, path, {...along, batch: brief.batch ?? 1000})),
      }),
    );
    if ("mistake" in begun) place.replaceChildren(html`<p class="note">${begun.mistake}</p>`);
    return undefined;
  };
  which.addEventListener("input", (event) => {
    event.stopPropagation();
    fresh();
    keep("sweep", [which.value]);
    keep("sweepRange", []);
    work();
  });
  for (const one of [from, to]) {
    one.addEventListener("input", (event) => {
      event.stopPropagation();
      keep("sweepRange", [from.value, to.value]);
      work();
    });
  }
  return {
    element,
    show(next) {
      const key = JSON.stringify([next?.brief, next?.freezer, next?.width]);
      if (key === last) return;
      last = key;
      swept = next;
      const chosen = which.value || recall("sweep")[0];
      paths = next ? pathsOf(next) : [];
      which.replaceChildren(
        ...paths.map(({path, name, unit}) => html`<option value=${path}>${name}, ${unit}</option>`),
      );
      which.value = paths.some(({path}) => path === chosen)
        ? chosen!
        : ((paths.find(({path}) => /scoopTemperature/.test(path)) ?? paths[0])?.path ?? "");
      const [low, high] = recall("sweepRange");
      if (low !== undefined && high !== undefined && which.value === recall("sweep")[0])
        [from.value, to.value] = [low, high];
      else fresh();
      clearTimeout(timer);
      timer = setTimeout(work, REST);
    },
  };
}
