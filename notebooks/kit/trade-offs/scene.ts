import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Brief} from "../../../lib/balance/brief/brief.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import type {FrontPoint, TradeOff} from "../../../lib/balance/trade-off/trade-off-types.ts";
import {InputError} from "../../../lib/core/errors.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {Kept} from "../controls/kept.ts";
import {type ShownMix, styleOf, type WeighedMix} from "../page/mixes.ts";
import type {Axis} from "./axes.ts";
import type {Mark} from "../words/address-format.ts";
import type {TradeFound, TradeSearch} from "./search.ts";
import {weighedShares} from "../views/weighed.ts";

/** A front that there is. */
export type Front = Extract<TradeOff, {status: "front"}>;

/** Scene that the page shows of a trade-off. */
export interface TradeScene {
  readonly brief: Brief;
  readonly x: Axis;
  readonly y: Axis;
  readonly found: TradeFound;
  readonly front: Front;
}

/** Mix that the page looks at, with its place in the chart. */
export interface Looked {
  readonly mark: Mark;
  readonly x: number;
  readonly y: number;
  readonly mix: WeighedMix;
}

/** A corner nearer than this to an end, or to the straight line between the ends, is no compromise: shares of the front's size. */
const CLEAR = {end: 0.1, line: 0.05};

/** The corner of a front at which going on either way costs clearly more than it gains; where the front is nearly straight, none. */
export function compromiseOf(front: Front): number | undefined {
  const {points} = front;
  const index = bendOf(front);
  const [first, last, here] = [points[0]!, points.at(-1)!, points[index]!];
  const [x, y] = [(here.x - first.x) / (last.x - first.x || 1), (here.y - first.y) / (last.y - first.y || 1)];
  const nearEnd = Math.max(x, y) < CLEAR.end || Math.min(x, y) > 1 - CLEAR.end;
  return nearEnd || Math.abs(x - y) < CLEAR.line ? undefined : index;
}

/** The corner of a front that is farthest from the straight line between its ends, each axis as long as the front: where it bends. */
export function bendOf({points}: Front): number {
  const [first, last] = [points[0]!, points.at(-1)!];
  const [dx, dy] = [last.x - first.x || 1, last.y - first.y || 1];
  const away = points.map(({x, y}) => Math.abs((x - first.x) / dx - (y - first.y) / dy));
  return away.indexOf(Math.max(...away));
}

/** The mix that a mark points at; one that points at nothing means the bend of the front. */
export function lookedAt(scene: TradeScene, mark: Mark): Looked {
  const {front, found, brief} = scene;
  if (mark.at === "map" && found.map?.status === "map") {
    const {row, column} = mark;
    const cell = found.map.cells[row]?.[column];
    if (cell) {
      const shares = cell.amounts.map(({percent}) => percent / 100);
      return {mark, x: found.map.x[column]!, y: found.map.y[row]!, mix: weighedShares(brief, shares)};
    }
  }
  const index = mark.at === "front" ? Math.min(mark.index, front.points.length - 1) : bendOf(front);
  const point: FrontPoint = front.points[index]!;
  return {
    mark: {at: "front", index},
    x: point.x,
    y: point.y,
    mix: {batch: brief.batch, ...point.mix},
  };
}

/** Mixes side by side: the one looked at, and those kept. */
export function sideBySide(scene: TradeScene, looked: Looked, kept: Kept): ShownMix<WeighedMix>[] {
  return [
    {label: "This one", mix: looked.mix, style: styleOf(0)},
    ...kept.of(scene.brief).map(({name, shares}, i) => ({
      label: name,
      mix: weighedShares(scene.brief, shares),
      style: styleOf(i + 1),
    })),
  ];
}

/** Question of a trade-off. */
interface Asked {
  readonly input: BriefInput;
  readonly pantry: Pantry;
  readonly search: TradeSearch;
  readonly x: Axis;
  readonly y: Axis;
  /** Scene that the page shows now. */
  readonly before: TradeScene | undefined;
}

/**
 * The trade-off as far as it is known, or what it waits for.
 *
 * @throws InputError for a mistake in the brief or an axis
 */
export function tradeScene({
  input,
  pantry,
  search,
  x,
  y,
  before,
}: Asked): TradeScene | {readonly waits: string} {
  if (x.key === y.key) {
    throw new InputError("What against what", "the same twice", x.name, "choose two different things");
  }
  const brief = readBrief(input, pantry, input.name ?? "brief");
  const priced =
    x.key !== "cost" &&
    y.key !== "cost" &&
    brief.ingredients.every(({ingredient}) => ingredient.price !== undefined);
  const spread = !(x.unit === "°C" && y.unit === "°C");
  const found = search.ask(JSON.stringify([input, x.input, y.input]), {brief, x, y, priced, spread});
  const {front} = found;
  if (!front) {
    // While a limit moves, the line before stands until the next is there.
    const same = before?.x.key === x.key && before.y.key === y.key && before.brief.name === brief.name;
    return same && before.brief.ingredients.length === brief.ingredients.length
      ? before
      : {waits: "Looking for the line …"};
  }
  if (front.status !== "front")
    return {
      waits:
        front.status === "infeasible"
          ? "No mix of these ingredients keeps every limit: let one go"
          : front.reason,
    };
  return {brief, x, y, found, front};
}
