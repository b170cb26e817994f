import {printable} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectList, expectOptions, expectText} from "../../core/shape.ts";
import type {CurvePoint} from "../../freezing/curve.ts";
import {DIPPING} from "../../freezing/scoop.ts";
import {escapeHtml} from "../text/escape.ts";
import {FACES, PALETTE} from "../text/palette.ts";
import {degrees} from "../../core/format.ts";

/** Things that a picture of a freezing curve shows beside the curve. */
export interface CurvePicture {
  /** Temperature of the freezer, °C, drawn as a line; -18 by default. */
  readonly freezer?: number;
  /** Text for those who cannot see the picture; a plain description by default. */
  readonly title?: string;
  /** Width, pixels; 640 by default. */
  readonly width?: number;
}

/**
 * A freezing curve as an SVG picture that stands alone: ice in g per 100 g of mix against temperature in °C, with the
 * freezer as a line and the dipping temperatures, -14 to -12 °C, as a band. It needs no browser.
 *
 * The drawing library and its document are loaded on the first call, because few uses need them.
 *
 * @param curve points of a freezing curve, as `freezingCurve` gives them
 * @param picture the freezer from -60 to 0 °C, the width from 100 to 4000 pixels
 * @throws InputError for a freezer or a width out of range
 *
 * @example
 * ```ts
 * const svg = await freezingCurveSvg(freezingCurve({water: 70, sucrose: 30}), {freezer: -18});
 * svg.slice(0, 4); // => "<svg"
 * ```
 */
export async function freezingCurveSvg(
  curve: readonly CurvePoint[],
  picture: CurvePicture = {},
): Promise<string> {
  expectList(curve, {temperature: "number", ice: "number"}, "points", "give freezingCurve(composition)");
  for (const [i, {temperature, ice}] of curve.entries()) {
    finite(temperature, `points[${i}].temperature`, {min: -60, max: 200}, "°C");
    finite(ice, `points[${i}].ice`, {min: 0, max: 100}, "g per 100 g");
  }
  expectOptions(picture, ["freezer", "title", "width"], "picture");
  if (picture.title !== undefined) expectText(picture.title, "title");
  const freezer = finite(picture.freezer ?? -18, "freezer", {min: -60, max: 0}, "°C");
  const width = finite(picture.width ?? 640, "width", {min: 100, max: 4000}, "pixels");
  const [Plot, {parseHTML}] = await Promise.all([import("@observablehq/plot"), import("linkedom")]);
  const {document} = parseHTML("<!doctype html><html><body></body></html>");
  const points = [{temperature: 0, ice: 0}, ...curve];
  const coldest = Math.min(-25, freezer - 2, ...points.map(({temperature}) => temperature));
  const most = Math.max(50, ...points.map(({ice}) => ice));
  const svg = Plot.plot({
    document,
    className: "freezing-curve",
    width,
    height: Math.round(width * 0.6),
    marginLeft: 48,
    marginTop: 44,
    marginBottom: 40,
    style: {background: "white", color: PALETTE.ink, fontFamily: FACES.sans, fontSize: "13px"},
    x: {domain: [coldest, 0], label: "Temperature (°C)", labelAnchor: "center", labelArrow: "none"},
    y: {domain: [0, most], label: "Ice (g per 100 g of mix)", labelArrow: "none", grid: true, nice: true},
    marks: [
      Plot.rectX([DIPPING], {x1: "from", x2: "to", fill: PALETTE.dipping}),
      Plot.text([DIPPING], {
        x: () => (DIPPING.from + DIPPING.to) / 2,
        text: () => "dipping",
        frameAnchor: "top",
        lineAnchor: "bottom",
        dy: -5,
        fontWeight: 550,
        fill: PALETTE.onDipping,
      }),
      Plot.ruleX([freezer], {stroke: PALETTE.freezer, strokeWidth: 1.5}),
      Plot.text([freezer], {
        x: (at: number) => at,
        text: (at: number) => `freezer ${degrees(at, 0)}`,
        frameAnchor: "top",
        lineAnchor: "bottom",
        textAnchor: freezer > -24 && freezer <= DIPPING.from ? "end" : "start",
        dx: freezer > -24 && freezer <= DIPPING.from ? -5 : 5,
        dy: freezer > -16 && freezer < -10 ? -21 : -5,
        fontWeight: 550,
        fill: PALETTE.freezer,
      }),
      Plot.line(points, {x: "temperature", y: "ice", stroke: PALETTE.accent, strokeWidth: 2.5}),
    ],
  });
  const title = picture.title ?? "Freezing curve: ice in g per 100 g of mix against temperature in °C";
  // Written by hand, because the document escapes attributes for HTML, which is not enough for SVG.
  const opening = `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escapeHtml(printable(title))}"`;
  return `${opening}${svg.outerHTML.slice("<svg".length)}\n`;
}
