import {decimal, degrees} from "../../core/format.ts";
import type {BatchSheet} from "../../kitchen/day/batch-sheet.ts";
import {DIPPING} from "../../freezing/scoop.ts";

const WIDTH = 300;
const HEIGHT = 120;
const MARGIN = {left: 28, right: 8, top: 14, bottom: 22};

/** Range of the curve, °C. */
const WARM = 0;
const COLD = -30;

/** The freezing curve of a sheet as an SVG picture: ice in g per 100 g of mix against temperature, with the freezer marked. */
export function curveSvg({curve, freezer: kept}: Pick<BatchSheet, "curve" | "freezer">): string {
  const top = Math.max(20, Math.ceil(Math.max(0, ...curve.map((point) => point.ice)) / 20) * 20);
  const x = (temperature: number) =>
    MARGIN.left + ((temperature - COLD) / (WARM - COLD)) * (WIDTH - MARGIN.left - MARGIN.right);
  const y = (ice: number) => HEIGHT - MARGIN.bottom - (ice / top) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const points = curve
    .filter((point) => point.temperature >= COLD && point.temperature <= WARM)
    .map((point) => `${x(point.temperature).toFixed(1)},${y(point.ice).toFixed(1)}`);
  const bottom = y(0);
  const ticks = [-30, -24, -18, -12, -6, 0].map(
    (t) => `<text x="${x(t).toFixed(1)}" y="${bottom + 10}" text-anchor="middle">${decimal(t, 0)}</text>`,
  );
  const levels = [0, top / 2, top].map(
    (ice) =>
      `<path d="M${MARGIN.left} ${y(ice).toFixed(1)}H${WIDTH - MARGIN.right}" class="grid"/><text x="${MARGIN.left - 4}" y="${(y(ice) + 3).toFixed(1)}" text-anchor="end">${ice}</text>`,
  );
  const coldest = Math.max(COLD, kept);
  const freezer = x(coldest).toFixed(1);
  const band = [x(DIPPING.from), x(DIPPING.to)] as const;
  const onTheLeft = coldest > -24 && coldest <= DIPPING.from;
  return [
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="Freezing curve: ice in g per 100 g of mix against temperature in °C">`,
    `<rect x="${band[0].toFixed(1)}" y="${MARGIN.top}" width="${(band[1] - band[0]).toFixed(1)}" height="${(bottom - MARGIN.top).toFixed(1)}" class="dipping"/>`,
    ...levels,
    ...ticks,
    `<path d="M${freezer} ${MARGIN.top}V${bottom}" class="freezer"/>`,
    `<polyline points="${points.join(" ")}" class="ice"/>`,
    `<text x="${((band[0] + band[1]) / 2).toFixed(1)}" y="${MARGIN.top - 4}" text-anchor="middle" class="named-dipping">dipping</text>`,
    `<text x="${freezer}" y="${MARGIN.top - 4}" text-anchor="${onTheLeft ? "end" : "start"}" class="named-freezer">freezer ${degrees(kept, 0)}</text>`,
    `<text x="${WIDTH - MARGIN.right}" y="${HEIGHT - 2}" text-anchor="end">ice, g in 100 g of mix, against °C</text>`,
    "</svg>",
  ].join("");
}
