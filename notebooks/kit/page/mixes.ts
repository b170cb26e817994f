import {svg} from "htl";
import type {Balanced, MixReport} from "../../../lib/balance/mix/answer.ts";

/** A mix of a known mass, however it was found. */
export type WeighedMix = MixReport & Pick<Balanced, "batch">;

/** A mix as the page shows it: with a short name, and a colour, sign and dash that stay with it. */
export interface ShownMix<M extends WeighedMix = Balanced> {
  readonly mix: M;
  /** Short enough for a table's head. */
  readonly label: string;
  readonly style: MixStyle;
}

/** Style in which a mix is drawn: told apart without colour too. */
export interface MixStyle {
  readonly colour: string;
  readonly sign: "circle" | "square" | "triangle" | "diamond" | "star";
  /** Dashes and gaps, px; empty for a full line. */
  readonly dash: string;
}

const STYLES: readonly MixStyle[] = [
  {colour: "var(--mix-1)", sign: "circle", dash: ""},
  {colour: "var(--mix-2)", sign: "square", dash: "9 4"},
  {colour: "var(--mix-3)", sign: "triangle", dash: "2 4"},
  {colour: "var(--mix-4)", sign: "diamond", dash: "10 3 2 3"},
  {colour: "var(--mix-5)", sign: "star", dash: "5 2"},
];

/** The style of the nth mix, from 0; they repeat after five. */
export function styleOf(n: number): MixStyle {
  return STYLES[n % STYLES.length]!;
}

// Drawn in a box from -5 to 5.
const SHAPES = {
  circle: "M-4,0a4,4 0 1,0 8,0a4,4 0 1,0 -8,0",
  square: "M-3.6,-3.6h7.2v7.2h-7.2z",
  triangle: "M0,-4.6L4.4,3.4H-4.4z",
  diamond: "M0,-5L4.2,0L0,5L-4.2,0z",
  star: "M0,-5L1.3,-1.6L4.9,-1.5L2,0.7L3,4.2L0,2.1L-3,4.2L-2,0.7L-4.9,-1.5L-1.3,-1.6z",
} as const;

/** A mix's sign alone, 10 px wide. */
export const signOf = drawnOnce(
  ({colour, sign}) =>
    svg`<svg viewBox="-5 -5 10 10" width="10" height="10" aria-hidden="true"><path d=${SHAPES[sign]} style=${`fill: ${colour}`}></path></svg>`,
);

/** A mix's line and sign, for legends and table heads. */
export const keyOf = drawnOnce(
  ({colour, sign, dash}) => svg`<svg class="key" viewBox="-17 -7 34 14" aria-hidden="true">
    <path d="M-17,0H17" style=${`stroke: ${colour}; stroke-width: 2; stroke-dasharray: ${dash || "none"}`}></path>
    <path d=${SHAPES[sign]} style=${`fill: ${colour}; stroke: var(--paper); stroke-width: 1.5; paint-order: stroke`}></path>
  </svg>`,
);

/** Copies of one drawing for each style: a page shows the same few signs a hundred times. */
function drawnOnce(draw: (style: MixStyle) => SVGElement): (style: MixStyle) => Node {
  const drawings = new Map<MixStyle, SVGElement>();
  return (style) => {
    const drawing = drawings.get(style) ?? draw(style);
    drawings.set(style, drawing);
    return drawing.cloneNode(true);
  };
}
