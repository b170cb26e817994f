import {html} from "htl";
import type {AxisInput} from "../../../lib/balance/read/axis.ts";
import type {Subject} from "../../../lib/balance/measure/measures.ts";
import {offers, unitOf, writtenAs} from "../../../lib/balance/measure/of-subject.ts";
import {decimal, degrees} from "../../../lib/core/format.ts";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "../controls/control.ts";
import {setting} from "../words/numbers.ts";

/** Better direction of an axis. */
type Sense = "minimise" | "maximise";

/** Axis of the page. */
export interface Axis {
  /** In the address. */
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly sense: Sense;
  readonly input: AxisInput;
  /** As the library takes it where no way is better. */
  readonly plain: AxisInput;
  readonly read: (value: number) => string;
  /** Name of the best mix: `softest`, `least CO2`. */
  readonly best: string;
  /** The same as a noun, for the first mix and for another: `softest mix`, `one with least CO2`. */
  readonly bestMix: (noun: "mix" | "one") => string;
}

interface Offer {
  readonly name: string;
  readonly unit: string;
  readonly sense: Sense;
  readonly wish: (freezer: number) => AxisInput;
  readonly digits?: number;
  /** Names of the mix with least and with most of it; least and most of its name by default. */
  readonly ends?: readonly [least: string, most: string];
}

/** Offers of the page, by their names in the address; a property of a brief may be called anything, `constructor` too. */
const OFFERS: ReadonlyMap<string, Offer> = new Map(
  [...offers()]
    .sort((a, b) => Number(isShare(a.subject(-18))) - Number(isShare(b.subject(-18))))
    .flatMap(({key, subject, axis}) => {
      if (!axis) return [];
      const {better, ...words} = axis;
      const wish = (freezer: number): AxisInput => {
        const {key: name, at} = writtenAs(subject(freezer));
        return at ? ({[name]: at} as AxisInput) : name;
      };
      return [[key, {...words, unit: unitOf(subject(-18)).short, sense: better, wish}] as const];
    }),
);

/** Quantities of the composition stand after what a mix is like. */
function isShare({kind}: Subject): boolean {
  return kind === "quantity";
}

/** A choice of axis, with which way is better. */
export interface AxisControl extends Control<(freezer: number) => Axis> {
  /** Offers properties too that the ingredients of a brief have. */
  offer(properties: readonly string[]): void;
}

/** Choice of what one axis shows, by its name in the address. */
export function axisChoice(key: string, label: string, first: string): AxisControl {
  const what = html`<select></select>` as unknown as HTMLSelectElement;
  const better = html`<select aria-label=${`${label}, what is better`}>
    <option value="minimise">less is better</option>
    <option value="maximise">more is better</option>
  </select>` as unknown as HTMLSelectElement;
  const element = html`<div class="axis">
    <label class="field">${label}${what}</label>
    <div class="field">${better}</div>
  </div>`;
  const usual = () => OFFERS.get(what.value)?.sense ?? "minimise";
  const options = (names: readonly (readonly [string, string])[]) =>
    names.map(([value, words]) => html`<option value=${value}>${words}</option>`);
  const fill = (properties: readonly string[], chosen: string) => {
    what.replaceChildren(
      ...options([...OFFERS].map(([name, offer]) => [name, offer.name] as const)),
      ...options(properties.map((name) => [name, name] as const)),
    );
    what.value = chosen;
    if (!what.value) what.value = first;
  };
  fill([], first);
  what.addEventListener("input", () => {
    better.value = usual();
    keep(key, [what.value]);
    keep(`${key}Better`, []);
  });
  better.addEventListener("input", () => keep(`${key}Better`, [better.value]));
  const asked = recall(`${key}Better`)[0];
  return Object.assign(
    control(element, () => {
      const name = what.value;
      const sense = better.value as Sense;
      const offer: Offer = OFFERS.get(name) ?? {
        name: name === "CO2" ? "CO₂" : name,
        unit: "per 100 g",
        sense,
        wish: () => name,
        digits: 0,
      };
      return (freezer: number): Axis => {
        const plain = offer.wish(freezer);
        const digits = offer.digits ?? 1;
        const superlative = sense === "minimise" ? "least" : "most";
        const best =
          offer.ends?.[sense === "minimise" ? 0 : 1] ??
          `${superlative} ${offer.name.replace(/ in the freezer$/, "")}`;
        return {
          key: name,
          name: offer.name,
          unit: offer.unit,
          sense,
          plain,
          input: {[sense]: plain} as AxisInput,
          best,
          bestMix: (noun) => (offer.ends ? `${best} ${noun}` : `${noun} with ${best}`),
          read: (value) => (offer.unit === "°C" ? degrees(value, digits) : decimal(value, digits)),
        };
      };
    }),
    {
      offer(properties: readonly string[]) {
        fill(properties, recall(key)[0] ?? first);
        better.value = asked === "minimise" || asked === "maximise" ? asked : usual();
      },
    },
  );
}

/** Title of an axis beside the chart: `Cost, per kg`, with an arrow to what is better. */
export function axisTitle({name, unit, sense}: Axis, freezer: number, upright: boolean): string {
  const [less, more] = upright ? ["↓", "↑"] : ["←", "→"];
  const at = name.endsWith("in the freezer") ? ` at ${setting(freezer)}` : "";
  return `${name[0]!.toUpperCase()}${name.slice(1)}${at}, ${unit} (${sense === "minimise" ? `${less} less` : `${more} more`} is better)`;
}

/** A value of an axis with its unit: `2.31 per kg`, `−15.4 °C`. */
export function valueText({unit, read}: Axis, value: number): string {
  return unit === "°C" || unit === "sucrose = 100" ? read(value) : `${read(value)} ${unit}`;
}
