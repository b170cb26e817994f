import {html} from "htl";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {type Subject, subjectName} from "../../../lib/balance/brief/subject.ts";
import {type Control, control} from "./control.ts";
import type {ShownMix} from "../page/mixes.ts";
import {targetWindow} from "./window.ts";
import {type Window, windowText} from "../words/written.ts";

type Targets = NonNullable<BriefInput["targets"]>;

/** A target that the page offers: what it speaks of at a freezer temperature, and the ends of its slider. */
interface Offer {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly subject: (freezer: number) => Subject;
}

const share = (
  key: "fat" | "msnf" | "totalSolids" | "sugars" | "glucose" | "eggYolkSolids" | "sweetness",
) => ({
  key,
  subject: (): Subject => ({kind: "quantity", quantity: key}),
});

const OFFERS: readonly Offer[] = [
  {...share("fat"), label: "Fat", unit: "%", from: 0, to: 25, step: 0.5},
  {...share("msnf"), label: "MSNF (milk solids-not-fat)", unit: "%", from: 0, to: 20, step: 0.5},
  {...share("totalSolids"), label: "Total solids", unit: "%", from: 20, to: 60, step: 0.5},
  {...share("sugars"), label: "Sugars without lactose", unit: "%", from: 0, to: 35, step: 0.5},
  {
    ...share("glucose"),
    label: "Dextrose + glucose-syrup solids",
    unit: "%",
    from: 0,
    to: 15,
    step: 0.5,
  },
  {...share("eggYolkSolids"), label: "Egg yolk solids", unit: "%", from: 0, to: 6, step: 0.1},
  {...share("sweetness"), label: "Sweetness", unit: "sucrose = 100", from: 0, to: 35, step: 0.5},
  {
    key: "freezingPoint",
    label: "Freezing point",
    unit: "°C",
    from: -6,
    to: -1,
    step: 0.1,
    subject: () => ({kind: "freezingPoint"}),
  },
  {
    key: "scoopTemperature",
    label: "Scoop temperature",
    unit: "°C",
    from: -24,
    to: -6,
    step: 0.5,
    subject: () => ({kind: "scoopTemperature"}),
  },
  {
    key: "ice",
    label: "Ice in the freezer",
    unit: "%",
    from: 20,
    to: 65,
    step: 0.5,
    subject: (at) => ({kind: "ice", at}),
  },
  {
    key: "hardPhase",
    label: "Ice and solid fat (hard phase) in the freezer",
    unit: "%",
    from: 30,
    to: 75,
    step: 0.5,
    subject: (at) => ({kind: "hardPhase", at}),
  },
];

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
    window: targetWindow({...offer, value: firstWindow(first, offer.key, freezer)}),
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
          window.land(mixes.map((shown) => ({shown, value: valueOf(shown, subject)})));
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
  const {ice, hardPhase, ...others} = Object.fromEntries(
    Object.entries(windows).filter(([, {min, max}]) => min !== undefined || max !== undefined),
  );
  return {
    ...others,
    ...(ice && {ice: [{at: freezer, ...ice}]}),
    ...(hardPhase && {hardPhase: [{at: freezer, ...hardPhase}]}),
  } as Targets;
}

/** How many limits there are, in words. */
export function limitsWords(windows: Windows): string {
  const count = Object.values(windows).reduce((total, window) => total + Object.keys(window).length, 0);
  return count === 1 ? "1 limit" : `${count} limits`;
}

/** The names of the targets that have a window. */
export function offeredTargets(): string[] {
  return OFFERS.map(({key}) => key);
}

/** What a limit speaks of, in the words of the page; the name itself where it is an ingredient's. */
export function labelOf(target: string, freezer: number): string {
  return (
    OFFERS.find(({subject}) => subjectName(subject(freezer)) === target)?.label.replace(/ \(.*?\)/, "") ??
    target
  );
}

/** The value of a subject in a mix. */
export function valueOf({mix}: ShownMix, subject: Subject): number | undefined {
  if (subject.kind === "freezingPoint") return mix.freezing.initialFreezingPoint;
  if (subject.kind === "scoopTemperature") return mix.scoop.temperature;
  return mix.shares[subjectName(subject)];
}

function firstWindow(targets: Targets, key: string, freezer: number): Window {
  const entry: unknown = (targets as Record<string, unknown>)[key];
  const found = Array.isArray(entry) ? entry.find(({at}: {at?: number}) => at === freezer) : entry;
  const {min, max, equal} = (found ?? {}) as Window & {equal?: number};
  const [low, high] = [min ?? equal, max ?? equal];
  return {...(low !== undefined && {min: low}), ...(high !== undefined && {max: high})};
}
