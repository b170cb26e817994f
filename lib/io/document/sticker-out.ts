import {printable} from "../../core/errors.ts";
import {expectShape} from "../../core/shape.ts";
import type {Sticker} from "../../kitchen/label/sticker.ts";
import {escapeHtml} from "../text/escape.ts";
import {MEASURED_FACE, X_HEIGHT} from "../text/letter-widths.ts";
import {type PlacedLine, stickerLayout, type StickerSize} from "./sticker-layout.ts";

/**
 * A sticker as an SVG picture of its real size, black on white: the largest type that fits, with small letters of at least 1.2 mm (0.9
 * on a small pack), as Regulation (EU) No 1169/2011, Article 13, asks. Every line is set to its calculated width, so that no
 * text leaves the sticker, whatever typefaces the machine has.
 *
 * @param sticker as `stickerOf` makes it
 * @param size mm, 20 to 300 each way
 * @throws InputError for a size outside its range, and for words that do not fit, with the size that they need
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 100}];
 * const sticker = stickerOf(makeProduct("Milk ice", [baseComponent({name: "milk ice", lines})]));
 * stickerSvg(sticker, {width: 60, height: 40}).slice(0, 74); // => '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox'
 * ```
 */
export function stickerSvg(sticker: Sticker, size: StickerSize): string {
  expectShape(
    sticker,
    {title: "text", paragraphs: "list", foot: "list"},
    "sticker",
    "make it with stickerOf(product)",
  );
  const {lines, rules, size: type, margin} = stickerLayout(sticker, size);
  const {width, height} = size;
  const across = rules.map(
    (y) =>
      `<path d="M${mm(margin)} ${mm(y)}H${mm(width - margin)}" stroke="#000" stroke-width="${mm(0.05 * type)}"/>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escapeHtml(printable(sticker.title))}">
<rect width="${width}" height="${height}" fill="#fff"/>
<g fill="#000" font-family="${escapeHtml(MEASURED_FACE)}" style="white-space: pre; font-size-adjust: ${X_HEIGHT}">
${[...across, ...lines.map(textLine)].join("\n")}
</g>
</svg>
`;
}

function textLine({runs, x, y, size, width}: PlacedLine): string {
  const spans = runs.map(({text, bold}) =>
    bold ? `<tspan font-weight="700">${safe(text)}</tspan>` : safe(text),
  );
  return `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(size)}" textLength="${mm(width)}" lengthAdjust="spacingAndGlyphs">${spans.join("")}</text>`;
}

/** Text without the characters that SVG forbids, escaped. */
function safe(text: string): string {
  return escapeHtml(printable(text));
}

function mm(value: number): string {
  return String(Number(value.toFixed(3)));
}

/**
 * A sticker as an HTML document that prints on one page of its size: no script, no outside file, everything escaped.
 *
 * @param sticker as `stickerOf` makes it
 * @param size mm, 20 to 300 each way
 * @throws InputError as {@link stickerSvg}
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 100}];
 * const sticker = stickerOf(makeProduct("Milk ice", [baseComponent({name: "milk ice", lines})]));
 * stickerHtml(sticker, {width: 60, height: 40}).slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function stickerHtml(sticker: Sticker, size: StickerSize): string {
  const svg = stickerSvg(sticker, size);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(sticker.title)}</title>
<style>
@page {size: ${size.width}mm ${size.height}mm; margin: 0}
html, body {margin: 0; background: #fff}
svg {display: block}
@media screen {body {padding: 5mm} svg {outline: .2mm dashed #999}}
</style>
</head>
<body>
${svg}</body>
</html>
`;
}

/** A sticker as plain text for the screen, allergens in capitals. */
export function stickerText({title, paragraphs, nutrition, foot, quantity, lacking}: Sticker): string {
  const said = (pieces: Sticker["foot"][number]) =>
    printable(
      pieces
        .map(({text, emphasised}) => (emphasised && !/[: ]$/.test(text) ? text.toUpperCase() : text))
        .join(""),
    );
  return [
    [printable(title), quantity].filter(Boolean).join(", "),
    ...paragraphs.map(said),
    ...(nutrition ? [nutrition.line] : []),
    ...foot.map((pieces) => printable(pieces.map(({text}) => text).join(""))),
    ...(lacking.length ? [`\nNot on it, though a prepacked tub needs it: ${lacking.join("; ")}.`] : []),
    "\nCheck with your authority; this is no legal advice.",
  ].join("\n");
}
