import {html} from "htl";
import {AVOIDED, type Avoided, avoidedIn} from "../../../lib/kitchen/begin/avoided.ts";
import type {StartingKey} from "../../../lib/kitchen/begin/starting-keys.ts";
import {STARTING_POINTS, type StartingPoint} from "../../../lib/kitchen/begin/starting-points.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type Control, control} from "../controls/control.ts";
import {keep, recall} from "../words/address.ts";

/** A starting point to choose, and what must not be in it. */
export interface PointChoice extends Control<StartingPoint> {
  /** Number of points to choose from, in words. */
  tally(): string;
}

const NO: Readonly<Record<Avoided, string>> = {
  milk: "no milk",
  eggs: "no egg",
  nuts: "no nuts",
  gluten: "no gluten",
};

/** The starting points as sentences, with ticks for what a cook avoids: a point that holds it goes out of sight. */
export function pointChoice(pantry: Pantry): PointChoice {
  const held = new Map(STARTING_POINTS.map((point) => [point.key, avoidedIn(point, pantry)]));
  const avoided = new Set(AVOIDED.filter((one) => recall("without").includes(one)));
  let chosen: StartingKey = STARTING_POINTS.find(({key}) => key === recall("start")[0])?.key ?? "custard";

  const ticks = AVOIDED.map((one) => {
    const box = html`<input type="checkbox" checked=${avoided.has(one)} />` as HTMLInputElement;
    box.addEventListener("input", () => {
      if (box.checked) avoided.add(one);
      else avoided.delete(one);
      keep("without", [...avoided]);
      show();
    });
    return html`<label>${box}<span>${NO[one]}</span></label>`;
  });
  const rows = STARTING_POINTS.map(({key, name, like}) => {
    const radio = html`<input type="radio" name="start" value=${key} />` as HTMLInputElement;
    radio.addEventListener("input", () => choose(key));
    return {
      key,
      radio,
      row: html`<label
        >${radio}<span><b>${name}</b> <small>${like}</small></span></label
      >`,
    };
  });
  const element = html`<div class="points">
    <fieldset class="without">
      <legend>Only those with</legend>
      ${ticks}
    </fieldset>
    <fieldset class="starts">
      <legend>Start from</legend>
      ${rows.map(({row}) => row)}
    </fieldset>
  </div>`;
  const choose = (key: StartingKey) => {
    chosen = key;
    keep("start", [key]);
  };
  const offered = () => STARTING_POINTS.filter(({key}) => !held.get(key)!.some((one) => avoided.has(one)));
  function show(): void {
    const keys = new Set(offered().map(({key}) => key));
    if (!keys.has(chosen)) choose([...keys][0]!);
    for (const {key, radio, row} of rows) {
      row.hidden = !keys.has(key);
      radio.checked = key === chosen;
    }
  }
  show();
  return Object.assign(
    control(element, () => STARTING_POINTS.find(({key}) => key === chosen)!),
    {tally: () => `${offered().length} of ${STARTING_POINTS.length}`},
  );
}
