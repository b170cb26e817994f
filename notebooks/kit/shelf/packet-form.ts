import {html} from "htl";
import {INGREDIENT_CLASSES, type IngredientClass} from "../../../lib/pantry/from-label.ts";
import {ALLERGENS, type Allergen} from "../../../lib/pantry/ingredient.ts";
import {numberIn} from "../controls/control.ts";
import type {Figure, Packet, Slip} from "./packet.ts";
import {
  ALLERGEN_WORDS,
  CLASS_WORDS,
  FIGURE_WORDS,
  FURTHER,
  KINDS,
  ORDER,
  US_WORDS,
} from "./packet-choices.ts";

/** Entries of the form. */
export interface PacketTyped extends Packet {
  /** Whether a class has been chosen. */
  readonly chosen: boolean;
  readonly allergens: readonly Allergen[];
  /** The cereals and nuts by name. */
  readonly kinds: readonly string[];
  /** The cook's price, as it is written. */
  readonly paid: string;
}

/** The form, in the order of a nutrition label. */
export interface PacketForm {
  readonly element: HTMLElement;
  readonly value: PacketTyped;
  /** Shows what is amiss, each beside its figure; returns what is about no figure of the form. */
  slips(slips: readonly Slip[]): readonly Slip[];
  /** Ticks allergens that are evident of the class, and cannot be taken off. */
  evident(allergens: readonly Allergen[]): void;
}

/** A form with what is known already. */
export function packetForm(first: Partial<PacketTyped>): PacketForm {
  const name = html`<input type="text" autocomplete="off" maxlength="200" />` as HTMLInputElement;
  name.value = first.name ?? "";
  const select = <K extends string>(options: readonly (readonly [K, string])[], value: K | undefined) => {
    const made = html`<select>
      ${options.map(([key, words]) => html`<option value=${key} selected=${key === value}>${words}</option>`)}
    </select>`;
    return made as unknown as HTMLSelectElement;
  };
  const food = select<IngredientClass | "">(
    [["", "choose what it is like"], ...INGREDIENT_CLASSES.map((one) => [one, CLASS_WORDS[one]] as const)],
    first.class ?? "",
  );
  const law = select(
    [
      ["EU", "of the EU, the UK and most others"],
      ["US", "of the United States, Nutrition Facts"],
    ],
    first.law ?? "EU",
  );
  const per = select(
    [
      ["100 g", "100 g"],
      ["100 ml", "100 ml"],
      ["portion", "a portion"],
    ],
    first.per ?? "100 g",
  );
  const rows = new Map(
    (Object.keys(FIGURE_WORDS) as Figure[]).map((figure) => [
      figure,
      figureRow(figure, first.figures?.[figure]),
    ]),
  );
  const printed = html`<div class="figures"></div>`;
  const portion = html`<div>${rows.get("portion")!.element}</div>`;
  const ticks = allergenTicks(first.allergens ?? [], first.kinds ?? []);
  const paid = html`<input type="text" autocomplete="off" placeholder="22 for 1 kg" />` as HTMLInputElement;
  paid.value = first.paid ?? "";
  const paidSlip = html`<p class="slip" role="alert" data-slip="paid"></p>`;
  const order = () => {
    const wanted = law.value === "US" ? "US" : "EU";
    for (const [figure, row] of rows)
      row.call((wanted === "US" ? US_WORDS[figure] : undefined) ?? FIGURE_WORDS[figure][0]);
    printed.replaceChildren(...ORDER[wanted].map((figure) => rows.get(figure)!.element));
    portion.hidden = per.value !== "portion";
  };
  law.addEventListener("input", () => {
    if (law.value === "US") per.value = "portion";
    order();
  });
  per.addEventListener("input", order);
  order();
  const element = html`<form class="packet" data-side="brief">
    <label class="field">What it is called${name}</label>
    <label class="field">What it is like${food}</label>
    <label class="field">The label is one${law}</label>
    <label class="field">Its figures are for${per}</label>
    ${portion} ${printed}
    <details open=${FURTHER.some((figure) => first.figures?.[figure] !== undefined)}>
      <summary>Alcohol, water, weight of a millilitre</summary>
      ${FURTHER.map((figure) => rows.get(figure)!.element)}
    </details>
    ${ticks.element}
    <label class="field">What you pay, if you know${paid}</label>
    ${paidSlip}
    <p class="tools"><button type="submit">Keep it on my shelf</button></p>
  </form>`;
  return {
    element,
    get value(): PacketTyped {
      const figures = [...rows].flatMap(([figure, {value, element: row}]) =>
        value() === undefined || (!row.isConnected && element.isConnected)
          ? []
          : [[figure, value()!] as const],
      );
      return {
        name: name.value.trim(),
        class: (food.value || "dairy") as IngredientClass,
        chosen: food.value !== "",
        law: law.value as Packet["law"],
        per: per.value as Packet["per"],
        figures: Object.fromEntries(figures),
        ...ticks.value(),
        paid: paid.value.trim(),
      };
    },
    slips(slips) {
      for (const [figure, row] of rows)
        row.say(
          slips
            .filter((one) => one.figure === figure)
            .map(({words}) => words)
            .join(" "),
        );
      const shown = (figure: Figure | undefined) =>
        figure !== undefined && rows.get(figure)!.element.isConnected;
      return slips.filter(({figure}) => !shown(figure));
    },
    evident: ticks.evident,
  };
}

interface Row {
  readonly element: HTMLElement;
  readonly value: () => number | undefined;
  readonly call: (label: string) => void;
  readonly say: (words: string) => void;
}

function figureRow(figure: Figure, first: number | undefined): Row {
  const [label, unit] = FIGURE_WORDS[figure];
  const box = html`<input type="number" step="any" min="0" inputmode="decimal" />` as HTMLInputElement;
  if (first !== undefined) box.value = String(first);
  const words = html`<span>${label}</span>`;
  const id = `slip-${figure}`;
  const slip = html`<p class="slip" role="alert" id=${id} data-slip=${figure}></p>`;
  box.setAttribute("aria-describedby", id);
  return {
    element: html`<div class=${label.startsWith("of which") ? "figure-row inner" : "figure-row"}>
      <label class="field number"
        ><span>${words}<span class="unit">, ${unit}</span></span
        >${box}</label
      >
      ${slip}
    </div>`,
    // What is no number counts as not yet said: the box itself marks it.
    value: () => numberIn(box),
    call: (called) => (words.textContent = called),
    say(text) {
      if (slip.textContent !== text) slip.textContent = text;
      box.setAttribute("aria-invalid", String(text !== ""));
    },
  };
}

/** Ticks for the fourteen allergens; under cereals and nuts, which. */
function allergenTicks(first: readonly Allergen[], kinds: readonly string[]) {
  const tick = (words: string, checked: boolean) => {
    const box = html`<input type="checkbox" />` as HTMLInputElement;
    box.checked = checked;
    return {box, label: html`<label>${box}<span>${words}</span></label>`};
  };
  const all = ALLERGENS.map((allergen) => {
    const one = tick(ALLERGEN_WORDS[allergen], first.includes(allergen));
    const named = (KINDS[allergen] ?? []).map((kind) => ({kind, ...tick(kind, kinds.includes(kind))}));
    const which = html`<span class="kinds">${named.map(({label}) => label)}</span>`;
    const show = () => (which.hidden = !one.box.checked || !named.length);
    one.box.addEventListener("input", show);
    show();
    return {allergen, ...one, named, which, show};
  });
  return {
    element: html`<fieldset class="stays allergens">
      <legend>Its list of ingredients names, in bold or otherwise</legend>
      <div class="ticks">${all.flatMap(({label, which}) => [label, which])}</div>
    </fieldset>`,
    value: () => ({
      allergens: all.filter(({box}) => box.checked).map(({allergen}) => allergen),
      kinds: all.flatMap(({box, named}) =>
        box.checked ? named.filter((one) => one.box.checked).map(({kind}) => kind) : [],
      ),
    }),
    evident(allergens: readonly Allergen[]) {
      for (const {allergen, box, show} of all) {
        const certain = allergens.includes(allergen);
        if (certain) box.checked = true;
        box.disabled = certain;
        show();
      }
    },
  };
}
