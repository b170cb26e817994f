import {html} from "htl";
import type {BriefInput} from "../../lib/balance/brief-schema.ts";
import {folded} from "../../lib/core/nearest.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {keep, recall} from "./address.ts";
import {changed, type Control, control, numberIn} from "./control.ts";
import {pickedFrom, pickedText} from "./written.ts";

/** An ingredient that the cook allows in the mix, with limits in g per batch and a price per kg. */
export type Picked = Exclude<BriefInput["ingredients"][number], string>;

/** What each ingredient of a brief costs, money per kg: as the brief says, else as the shelf does. */
export function pricesFor({ingredients}: BriefInput, shelf: readonly Ingredient[]): Map<string, number> {
  const known = new Map(shelf.map(({name, price}) => [name, price]));
  return new Map(
    ingredients.flatMap((entry) => {
      const {name, price = known.get(name)} = typeof entry === "string" ? {name: entry} : entry;
      return price === undefined ? [] : [[name, price] as const];
    }),
  );
}

/** A control for what may go into the mix. */
export type ShelfControl = Control<readonly Picked[]>;

/**
 * What may go into the mix: the chosen ingredients with their limits, and the whole shelf to choose from, by group.
 *
 * @param shelf every ingredient there is
 * @param first what is chosen at first
 */
export function shelfPicker(
  shelf: readonly Ingredient[],
  first: BriefInput["ingredients"],
  key = "use",
): ShelfControl {
  const known = new Map(shelf.map((ingredient) => [ingredient.name, ingredient]));
  const given = new Map(
    first.map((entry) => (typeof entry === "string" ? [entry, {name: entry}] : [entry.name, entry])),
  );
  const kept = recall(key)
    .map(pickedFrom)
    .filter((picked) => picked !== undefined);
  // What the opening brief says of an ingredient beside its limits (a composition of its own) stays with the name.
  const chosen = new Map<string, Picked>(
    kept.length
      ? kept.map((picked) => [picked.name, {...withoutLimits(given.get(picked.name)), ...picked}])
      : given,
  );

  const lines = html`<ul class="chosen"></ul>`;
  const count = html`<small></small>`;
  const results = html`<div class="results"></div>`;
  const search = html`<input
    type="search"
    placeholder="Find an ingredient"
    aria-label="Find an ingredient"
    autocomplete="off"
  />` as HTMLInputElement;
  const element = html`<div class="shelf">
    ${lines}
    <details class="finder">
      <summary>${count}</summary>
      ${search}${results}
    </details>
  </div>`;

  const write = () => keep(key, [...chosen.values()].map(pickedText));
  const line = (picked: Picked): HTMLElement => {
    const box = (field: "price" | "min" | "max", words: string, unit: string) => {
      const preset = field === "price" ? known.get(picked.name)?.price : undefined;
      const input = html`<input
        type="number"
        min="0"
        step="any"
        placeholder=${preset ?? (field === "price" ? "none" : "any")}
        value=${picked[field] ?? ""}
        aria-label=${`${picked.name}, ${words}, ${unit}`}
      />` as HTMLInputElement;
      input.addEventListener("input", () => {
        const {[field]: _, ...rest} = chosen.get(picked.name)!;
        const value = numberIn(input);
        chosen.set(picked.name, value === undefined || value < 0 ? rest : {...rest, [field]: value});
        write();
      });
      return html`<label>${words}, ${unit}${input}</label>`;
    };
    const remove = html`<button type="button" aria-label=${`Remove ${picked.name}`}>×</button>`;
    remove.addEventListener("click", () => {
      const next = remove.closest("li")?.nextElementSibling?.querySelector(".name")?.textContent;
      toggle(picked.name);
      const follows =
        [...lines.children].find((child) => child.querySelector(".name")?.textContent === next) ?? element;
      follows.querySelector<HTMLElement>("button, summary")?.focus();
    });
    return html`<li>
      <span class="name">${picked.name}</span>${remove}
      ${box("min", "at least", "g")}${box("max", "at most", "g")}${box("price", "price", "per kg")}
    </li>`;
  };
  const tick = html`<input type="checkbox" />` as HTMLInputElement;
  const boxes = new Map<string, HTMLInputElement>();
  const rows = new Map<string, HTMLElement>();
  const names = new Map<string, string[]>();
  for (const {name, group = "other"} of shelf) names.set(group, [...(names.get(group) ?? []), name]);
  const groups = [...names].map(([group, members]) => {
    const labels = members.map((name) => {
      const box = tick.cloneNode() as HTMLInputElement;
      box.addEventListener("input", (event) => {
        event.stopPropagation();
        toggle(name);
      });
      boxes.set(name, box);
      const row = html`<label>${box}<span>${name}</span></label>`;
      rows.set(name, row);
      return row;
    });
    return html`<fieldset>
      <legend>${group}</legend>
      ${labels}
    </fieldset>`;
  });
  const none = html`<p class="none" hidden>Nothing on the shelf goes by that name.</p>`;
  results.append(...groups, none);

  function toggle(name: string): void {
    if (!chosen.delete(name)) chosen.set(name, {...withoutLimits(given.get(name)), name});
    show();
    write();
    changed(element);
  }
  function show(): void {
    lines.replaceChildren(...[...chosen.values()].map(line));
    for (const [name, box] of boxes) box.checked = chosen.has(name);
    count.textContent = `Choose from the ${shelf.length} ingredients on the shelf`;
  }
  search.addEventListener("input", (event) => {
    event.stopPropagation();
    const words = folded(search.value).split(" ");
    for (const [name, row] of rows) row.hidden = !words.every((word) => folded(name).includes(word));
    for (const group of groups)
      group.hidden = [...group.querySelectorAll("label")].every((row) => row.hidden);
    none.hidden = groups.some((group) => !group.hidden);
  });
  // The arrows walk the list, so that a hundred ingredients need no hundred presses of Tab; Enter takes the first found.
  element.querySelector(".finder")!.addEventListener("keydown", (event) => {
    const {key: pressed, target} = event as KeyboardEvent;
    const visible = [...boxes]
      .filter(([name]) => !rows.get(name)!.hidden && rows.get(name)!.offsetParent)
      .map(([, box]) => box);
    if (pressed === "Enter" && target === search && visible[0]) {
      event.preventDefault();
      visible[0].click();
    } else if (pressed === "ArrowDown" || pressed === "ArrowUp") {
      event.preventDefault();
      const at = visible.indexOf(target as HTMLInputElement) + (pressed === "ArrowDown" ? 1 : -1);
      (visible[at] ?? search).focus();
    }
  });
  show();
  return control(element, () => [...chosen.values()]);
}

function withoutLimits(picked?: Picked): Partial<Picked> {
  const {min: _, max: __, price: ___, ...rest} = picked ?? {};
  return rest;
}
