import {html} from "htl";
import {type Equivalent, EQUAL_IN, equivalents} from "../../../lib/balance/substitute/equivalents.ts";
import {splitInto} from "../../../lib/balance/substitute/split.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {quantityOf} from "../../../lib/pantry/quantities.ts";
import {keep, recall} from "../words/address.ts";
import {setting} from "../words/numbers.ts";
import {row} from "../page/row.ts";
import {table} from "../page/sheet.ts";

const EQUAL_WORDS: Readonly<Record<Equivalent["equalIn"], string>> = {
  sweetness: "sweetness",
  freezing: "softness in the freezer",
  totalSolids: "solids",
  mass: "weight",
  fat: "fat",
};

/** Least fat of what counts as a fat, g per 100 g. */
const FATTY = 3;

/** A like-for-like table with its own choices: what 100 g of one sugar or fat is worth in others. */
export interface LikeForLike {
  readonly element: HTMLElement;
  /** Compares in a freezer at a temperature, °C, what is out if the table knows it. */
  show(freezer: number, out: string): void;
}

/** The table over the sugars and the fats of a shelf. */
export function likeForLike(shelf: readonly Ingredient[]): LikeForLike {
  const sugars = shelf.filter(({group}) => group === "sugar");
  const fats = shelf.filter(
    ({group = "", composition}) =>
      ["dairy", "egg", "fat"].includes(group) && quantityOf(composition, "fat") >= FATTY,
  );
  const both = [...sugars, ...fats];
  const what = html`<select>
    ${[
      ["sugars", sugars],
      ["fats", fats],
    ].map(
      ([label, all]) =>
        html`<optgroup label=${label}>
          ${(all as Ingredient[]).map(({name}) => html`<option>${name}</option>`)}
        </optgroup>`,
    )}
  </select>` as unknown as HTMLSelectElement;
  const equal = html`<select>
    ${Object.entries(EQUAL_WORDS).map(([key, words]) => html`<option value=${key}>${words}</option>`)}
  </select>` as unknown as HTMLSelectElement;
  const place = html`<div></div>`;
  const element = html`<figure class="chart" data-side="answer">
    <figcaption>
      <h3>Like for like</h3>
      How much of another sugar or fat takes the place of 100 g, and the water to add or take away so that the
      mix keeps the water it had. The rest of the row is what the mix then has more or less of.
    </figcaption>
    <div class="tools">
      <label>100 g of ${what}</label>
      <label>at the same ${equal}</label>
    </div>
    ${place}
  </figure>`;
  what.value = both.find(({name}) => name === recall("like")[0])?.name ?? "";
  equal.value = EQUAL_IN.find((one) => one === recall("equal")[0]) ?? "";
  let freezer = -18;
  let out = "";

  const draw = () => {
    const known = both.find(({name}) => name === (what.value || out)) ?? sugars[0];
    if (!known) return;
    what.value = known.name;
    // Sugars are there for their sweetness, fats for their fat.
    if (!recall("equal").length) equal.value = sugars.includes(known) ? "sweetness" : "fat";
    place.replaceChildren(
      comparison(
        known,
        equal.value as Equivalent["equalIn"],
        sugars.includes(known) ? sugars : fats,
        freezer,
      ),
      blends(known, shelf) ?? "",
    );
  };
  const choose = (key: string, select: HTMLSelectElement) => (event: Event) => {
    event.stopPropagation();
    keep(key, [select.value]);
    draw();
  };
  what.addEventListener("input", choose("like", what));
  equal.addEventListener("input", choose("equal", equal));
  return {
    element,
    show(at, missing) {
      if (at === freezer && missing === out && place.firstChild) return;
      // What is out comes first, until the cook asks for something else.
      if (missing !== out && !recall("like").length) what.value = "";
      [freezer, out] = [at, missing];
      draw();
    },
  };
}

/** Pairs of which a cream or a milk can be made, one lean and one fat. */
const BLENDS = [
  ["whole milk", "unsalted butter"],
  ["skimmed milk", "unsalted butter"],
  ["whole milk", "cream 48 %"],
] as const;

/** A cream or milk as a blend of two, at equal weight and fat, with what then differs in solids. */
function blends(x: Ingredient, shelf: readonly Ingredient[]): HTMLElement | undefined {
  const find = (wanted: string) => shelf.find(({name}) => name === wanted);
  const ways = BLENDS.flatMap(([lean, rich]) => {
    const parts = [find(lean), find(rich)];
    if (x.group !== "dairy" || !parts[0] || !parts[1] || parts.includes(x)) return [];
    const found = splitInto(x, [parts[0], parts[1]]);
    if (!found) return [];
    const [first, second] = found.grams;
    const solids = found.differs.totalSolids ?? 0;
    const off =
      Math.abs(solids) < 0.05
        ? "the same solids"
        : `${decimal(Math.abs(solids), 1)} g ${solids > 0 ? "more" : "less"} solids`;
    return [
      html`<li>
        ${grams(first)} g ${lean} and ${grams(second)} g ${rich}: the same weight and fat, ${off}
      </li>`,
    ];
  });
  return ways.length
    ? html`<div class="blends">
        <p>Or 100 g ${x.name} made of two:</p>
        <ul>
          ${ways}
        </ul>
      </div>`
    : undefined;
}

function comparison(
  x: Ingredient,
  equalIn: Equivalent["equalIn"],
  others: readonly Ingredient[],
  freezer: number,
): HTMLElement {
  const rows = others
    .filter((y) => y !== x)
    .flatMap((y) =>
      equivalents(x, y, {freezer}).flatMap((found) => (found.equalIn === equalIn ? [{y, found}] : [])),
    );
  if (!rows.length) return html`<p class="aside">${x.name} has too little of that to be replaced by it.</p>`;
  const made = table({
    name: "Like for like",
    columns: ["instead", "take", "water", "solids", "sweetness", "fat", "ice"],
    body: rows.map(({y, found: {grams: g, water, change}}) =>
      row(y.name, [
        html`<b>${grams(g)}</b>`,
        ...[water, change.totalSolids, change.sweetness, change.fat, change.ice].map(signed),
      ]),
    ),
    className: "like",
  });
  made.prepend(
    html`<caption class="aside">
      Instead of 100 g ${x.name}, at the same ${EQUAL_WORDS[equalIn]}, g. Freezer at ${setting(freezer)}; less
      ice is softer.
    </caption>`,
  );
  return html`<div class="wide" tabindex="0" role="group" aria-label="Like for like, a wide table">
    ${made}
  </div>`;
}

/** A change with its sign. */
function signed(value: number): string {
  const text = decimal(Math.abs(value), 1);
  return Number(text.replaceAll(" ", "")) === 0 ? "0" : `${value > 0 ? "+" : "−"}${text}`;
}
