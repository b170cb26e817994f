import {html} from "htl";
import {PANEL_STYLE, usPanelTable} from "../../../lib/io/document/panel-html.ts";
import {stickerHtml, stickerSvg} from "../../../lib/io/document/sticker-out.ts";
import {labelDuties} from "../../../lib/kitchen/label/duties.ts";
import type {LabelLaw, WayOfSale} from "../../../lib/kitchen/label/label-law.ts";
import type {LabelName} from "../../../lib/kitchen/label/label-names.ts";
import {stickerOf} from "../../../lib/kitchen/label/sticker.ts";
import {usPanel} from "../../../lib/kitchen/label/us-panel.ts";
import {type Product, productDensity, productLines} from "../../../lib/kitchen/product/product.ts";
import {goesBy} from "../../../lib/pantry/pantry.ts";
import {figure} from "../page/plot.ts";
import {fileName} from "../page/downloads.ts";
import {attempt, Mistake} from "../words/mistakes.ts";
import {readable} from "../words/readable.ts";

/** The cook's choices for the sticker. */
export interface StickerWish {
  readonly law: LabelLaw;
  readonly sold: WayOfSale;
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly small: "usual" | "small";
  readonly made: string;
  readonly until: string;
  readonly lot: string;
  readonly maker: string;
  readonly storage: string;
  /** `sucrose = cane sugar; white chocolate = white chocolate (sugar, cocoa butter)`. */
  readonly printed: string;
  readonly nutrition: "none" | "printed";
}

/** Fill of the tub. */
interface Filled {
  /** ml. */
  readonly tub: number;
  /** ml. */
  readonly portion: number;
  /** %. */
  readonly overrun: number;
}

/** The sticker of a tub at its real size, with buttons that print and save it. */
export function stickerSheet(
  product: Product,
  named: readonly string[],
  called: Readonly<Record<string, LabelName>>,
  wish: StickerWish,
  {tub, portion, overrun}: Filled,
): HTMLElement {
  const heading = "A sticker for the tub";
  const size = {width: wish.width, height: wish.height, smallPack: wish.small === "small"};
  const made = attempt(() => {
    const sticker = stickerOf(product, {
      law: wish.law,
      sold: wish.sold,
      quantity: {millilitres: tub},
      named,
      names: printedNames(product, called, wish.printed),
      ...(wish.made.trim() && {made: wish.made.trim()}),
      ...(wish.until.trim() && {bestBefore: wish.until.trim()}),
      ...(wish.lot.trim() && {lot: wish.lot.trim()}),
      ...(wish.maker.trim() && {maker: wish.maker.trim()}),
      storage: wish.storage.trim(),
      nutrition: wish.nutrition === "printed",
      portion: portion * productDensity(product, overrun),
      overrun,
    });
    return {sticker, page: stickerHtml(sticker, size), picture: stickerSvg(sticker, size)};
  });
  if ("mistake" in made) return figure(heading, readable(made.mistake));
  const {sticker, page, picture} = made.value;
  const lacking = sticker.lacking.length
    ? ` Not on it, though a prepacked tub needs it: ${sticker.lacking.join("; ")}.`
    : "";
  // No script of the sticker runs, whatever its names hold; it may open the browser's window for printing.
  const frame = html`<iframe
    class="sticker"
    title="Sticker"
    sandbox="allow-same-origin allow-modals"
    style=${`width: calc(${wish.width}mm + 10mm + 2px); height: calc(${wish.height}mm + 10mm + 2px)`}
  ></iframe>` as HTMLIFrameElement;
  frame.srcdoc = page;
  const print = html`<button type="button">Print the sticker</button>`;
  print.addEventListener("click", () => frame.contentWindow?.print());
  const save = (name: string, ending: string, type: string, text: string) =>
    html`<a
      download=${`${fileName(product.name)}.${ending}`}
      href=${URL.createObjectURL(new Blob([text], {type: `${type};charset=utf-8`}))}
      >${name}</a
    >`;
  return html`<figure class="chart sticky">
    <figcaption>
      <h3>${heading}</h3>
      ${`${wish.width} by ${wish.height} mm, at its real size; prints on a page of that size.${lacking} Check with your authority; this is no legal advice.`}
    </figcaption>
    <div class="tools">
      ${print}<span>or save it as</span>${save("a page of its size", "html", "text/html", page)}
      ${save("a picture (SVG)", "svg", "image/svg+xml", picture)}
    </div>
    ${frame}
  </figure>`;
}

/** Nutrition Facts of a tub for the United States; nothing for another law. */
export function factsSheet(product: Product, law: LabelLaw, {tub, overrun}: Filled): HTMLElement | undefined {
  if (law !== "US") return undefined;
  const panel = attempt(() => usPanel(product, {overrun, container: tub}));
  if ("mistake" in panel) return figure("Nutrition Facts", panel.mistake);
  const lacking = [...new Set(Object.values(panel.value.lacking).flat())];
  const holder = html`<div class="facts-holder"></div>`;
  // Its words are the library's own, and escaped there; its look is the law's, and none of the page's.
  holder.attachShadow({mode: "open"}).innerHTML = `<style>${PANEL_STYLE}</style>${usPanelTable(panel.value)}`;
  return figure(
    "Nutrition Facts",
    `In the order and with the rounding of 21 CFR 101.9.${lacking.length ? ` Not whole: ${lacking.join(", ")} do not say everything.` : ""}`,
    holder,
  );
}

/** Duties of the label by law, and what the law leaves free. */
export function dutiesSheet({law, sold}: StickerWish): HTMLElement {
  const duties = labelDuties(law, sold);
  const words = {law: "must be there", exempt: "need not be there", offered: "may be there"} as const;
  return figure(
    "What the law asks of this label",
    "Each with its paragraph. Laws change, and countries add to them: check with your authority; this is no legal advice.",
    html`<dl class="duties">
      ${(["law", "exempt", "offered"] as const).flatMap((force) => {
        const own = duties.filter((duty) => duty.force === force);
        return own.length
          ? [
              html`<dt>${words[force]}</dt>`,
              ...own.map(
                ({what, rule, read}) =>
                  html`<dd>${what} <small>${rule}${read === "text" ? "" : `, ${read}`}</small></dd>`,
              ),
            ]
          : [];
      })}
    </dl>`,
  );
}

/** The cook's names of ingredients, those typed as they are printed. */
function printedNames(
  product: Product,
  called: Readonly<Record<string, LabelName>>,
  typed: string,
): Record<string, LabelName> {
  const names: Record<string, LabelName> = {...called};
  for (const entry of typed.split(";").filter((part) => part.trim())) {
    const at = entry.indexOf("=");
    const [shelf, printed] = [entry.slice(0, at).trim(), entry.slice(at + 1).trim()];
    if (at < 1 || !printed)
      throw new Mistake(`“${entry.trim()}” says no name and what to print: write “sucrose = cane sugar”.`);
    const own = /^([^()]+?)\s*\((.+)\)$/.exec(printed);
    const lines = productLines(product).filter(({ingredient}) => goesBy(ingredient, shelf));
    if (!lines.length) throw new Mistake(`“${shelf}” is not in the recipe: print what it holds.`);
    for (const {ingredient} of lines)
      names[ingredient.name] = own ? {name: own[1]!, contains: own[2]!} : {name: printed};
  }
  return names;
}
