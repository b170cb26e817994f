import {html} from "htl";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Subject} from "../../../lib/balance/measure/measures.ts";
import {
  isTemperature,
  offers,
  subjectName,
  unitOf,
  valueOf,
  writtenAs,
} from "../../../lib/balance/measure/of-subject.ts";
import {type Control, control} from "./control.ts";
import type {ShownMix} from "../page/mixes.ts";
import {rangeControl} from "./range-control.ts";
import {type Window, windowText} from "../words/address-format.ts";

type Targets = NonNullable<BriefInput["targets"]>;

/** The targets that the page offers: what each speaks of at a freezer temperature, and the ends of its slider. */
const OFFERS = offers().flatMap(({key, subject, target}) =>
  target ? [{key, subject, ...target, unit: unitOf(subject(-18)).short}] : [],
);

/** All target windows of the page by key; an open one is `{}`. */
export type Windows = Readonly<Record<string, Window>>;

/** The control for all targets. */
export interface TargetsControl extends Control<Windows> {
  /** Puts the signs of the mixes where they landed. */
  land(mixes: readonly ShownMix[], freezer: number): void;
  /** Takes over the limits that a brief has. */
  take(targets: Targets, freezer: number): void;
}

/** Windows for every target that a cook may set, first set as a brief has them. */
export function targetWindows(first: Targets, freezer: number): TargetsControl {
  const windows = OFFERS.map((offer) => ({
    offer,
    window: rangeControl({...offer, value: firstWindow(first, offer.key, freezer)}),
  }));
  const element = html`<div>${windows.map(({window}) => window)}</div>`;
  return Object.assign(
    control(element, (): Windows =>
      Object.fromEntries(windows.map(({offer, window}) => [offer.key, window.value])),
    ),
    {
      land(mixes: readonly ShownMix[], at: number) {
        for (const {offer, window} of windows) {
          const subject = offer.subject(at);
          window.land(mixes.map((shown) => ({shown, value: valueIn(shown, subject)})));
        }
      },
      take(targets: Targets, at: number) {
        for (const {offer, window} of windows) {
          const next = firstWindow(targets, offer.key, at);
          if (windowText(next) !== windowText(window.value)) window.set(next);
        }
      },
    },
  );
}

/** The targets of a brief, from the windows and the freezer that ice and hard phase are meant for. */
export function targetsOf(windows: Windows, freezer: number): Targets {
  const written = OFFERS.flatMap(({key, subject}) => {
    const limits = windows[key] ?? {};
    if (limits.min === undefined && limits.max === undefined) return [];
    const {at} = writtenAs(subject(freezer));
    return [[key, at ? [{...at, ...limits}] : limits] as const];
  });
  return Object.fromEntries(written) as Targets;
}

/** Number of limits, in words. */
export function limitsWords(windows: Windows): string {
  const count = Object.values(windows).reduce((total, window) => total + Object.keys(window).length, 0);
  return count === 1 ? "1 limit" : `${count} limits`;
}

/** The names of the targets that have a window. */
export function offeredTargets(): string[] {
  return OFFERS.map(({key}) => key);
}

/** Subject of a limit, in the words of the page; the name itself where it is an ingredient's. */
export function labelOf(target: string, freezer: number): string {
  return (
    OFFERS.find(({subject}) => subjectName(subject(freezer)) === target)?.label.replace(/ \(.*?\)/, "") ??
    target
  );
}

/** The value of a subject in a mix: a temperature's in any, another's where the brief asked for it. */
export function valueIn({mix}: ShownMix, subject: Subject): number | undefined {
  if (!isTemperature(subject)) return mix.shares[subjectName(subject)];
  return valueOf(subject, {
    brief: {ingredients: [], overrun: mix.scoop.overrun},
    shares: [],
    composition: mix.composition,
  });
}

function firstWindow(targets: Targets, key: string, freezer: number): Window {
  const entry: unknown = (targets as Record<string, unknown>)[key];
  const found = Array.isArray(entry) ? entry.find((one: object) => standsAt(one, key, freezer)) : entry;
  const {min, max, equal} = (found ?? {}) as Window & {equal?: number};
  const [low, high] = [min ?? equal, max ?? equal];
  return {...(low !== undefined && {min: low}), ...(high !== undefined && {max: high})};
}

/** Whether limits in a list stand at the temperatures that the window of a key is for. */
function standsAt(limits: object, key: string, freezer: number): boolean {
  const {at = {}} = writtenAs(OFFERS.find((offer) => offer.key === key)!.subject(freezer));
  return Object.entries(at).every(([name, value]) => (limits as Record<string, unknown>)[name] === value);
}
