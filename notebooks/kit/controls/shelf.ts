import {html} from "htl";
import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Amount} from "../../../lib/balance/mix/answer.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";
import {isLimited, limitUnit} from "./limit-unit.ts";
import {shelfFinder} from "./shelf-finder.ts";
import {entryOf, inUnit, pickedOf} from "./shelf-limits.ts";
import {shelfLine} from "./shelf-line.ts";
import {type Picked, pickedFrom, pickedText} from "../words/address-format.ts";

/** Price of each ingredient of a brief, money per kg: as the brief says, else as the shelf does. */
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
export interface ShelfControl extends Control<readonly IngredientInput[]> {
  /** Takes over the limits that a brief has, each in the unit that its line shows. */
  limit(entries: BriefInput["ingredients"]): void;
  /** Tells how much of each there is in the mix that is shown: what a lock holds. */
  now(amounts: readonly Amount[] | undefined): void;
}

/** Options of the control, beside the shelf. */
interface ShelfOptions {
  /** Ingredients chosen at first, with limits in g. */
  readonly first: BriefInput["ingredients"];
  /** Batch that those are meant for, and the batch now, g; without it limits are in g, and stay so. */
  readonly batch?: {readonly first: number; readonly now: () => number};
  /** Names whose price the cook has set; all other prices of the shelf are invented. */
  readonly priced: ReadonlySet<string>;
  /** Name in the address. */
  readonly key?: string;
}

/**
 * Ingredients that may go into the mix: the chosen ones with their limits, and the whole shelf to choose from, by group. Limits are
 * percentages of the batch, so that another batch is the same mix, or all in g, which stay as they are with another batch.
 */
export function shelfPicker(
  shelf: readonly Ingredient[],
  {first, batch, priced, key = "use"}: ShelfOptions,
): ShelfControl {
  const size = () => batch?.now() ?? 1000;
  let shown: ReadonlyMap<string, number> = new Map();
  const prices = new Map(shelf.map(({name, price}) => [name, price]));
  // What the opening brief says of an ingredient beside its limits (a composition of its own) stays with the name.
  const given = new Map(
    first.map((entry) => {
      const {
        min: _,
        max: __,
        price: ___,
        ...rest
      } = typeof entry === "string" ? ({name: entry} as IngredientInput) : entry;
      return [rest.name, rest] as const;
    }),
  );
  const kept = recall(key)
    .map(pickedFrom)
    .filter((picked) => picked !== undefined)
    .map((picked) => (batch ? picked : inUnit(picked, "g", size())));
  const opening = kept.length
    ? kept
    : first.map((entry) => pickedOf(entry, batch?.first ?? size(), batch ? "%" : "g"));
  const chosen = new Map<string, Picked>(opening.map((picked) => [picked.name, picked]));

  const lines = html`<ul class="chosen"></ul>`;
  const finder = shelfFinder(shelf, toggle);
  const units = limitUnit((unit) => {
    for (const picked of chosen.values()) chosen.set(picked.name, inUnit(picked, unit, size()));
    show();
    write();
  });
  const element = html`<div class="shelf">${batch ? units.element : ""}${lines}${finder.element}</div>`;

  const write = () => keep(key, [...chosen.values()].map(pickedText));
  const line = (picked: Picked): HTMLElement =>
    shelfLine(picked, {
      price: prices.get(picked.name),
      own: priced.has(picked.name),
      batch: batch?.now,
      amount: () => shown.get(picked.name),
      change(next) {
        chosen.set(next.name, next);
        units.show(chosen.values());
        write();
      },
      remove(button) {
        const next = button.closest("li")?.nextElementSibling?.querySelector(".name")?.textContent;
        toggle(picked.name);
        const follows =
          [...lines.children].find((child) => child.querySelector(".name")?.textContent === next) ?? element;
        follows.querySelector<HTMLElement>("button, summary")?.focus();
      },
    });
  function toggle(name: string): void {
    if (!chosen.delete(name)) chosen.set(name, {name, unit: batch ? units.now() : "g"});
    show();
    write();
    changed(element);
  }
  function show(): void {
    units.show(chosen.values());
    // A line without limits is ready for one in the unit of the others.
    for (const [name, picked] of chosen)
      if (batch && !isLimited(picked)) chosen.set(name, {...picked, unit: units.now()});
    lines.replaceChildren(...[...chosen.values()].map(line));
    finder.show(new Set(chosen.keys()));
  }
  show();
  return Object.assign(
    control(element, () =>
      [...chosen.values()].map((picked): IngredientInput => ({
        ...given.get(picked.name),
        ...entryOf(picked),
      })),
    ),
    {
      now(amounts: readonly Amount[] = []) {
        shown = new Map(amounts.map(({ingredient, percent}) => [ingredient, percent]));
      },
      limit(entries: BriefInput["ingredients"]) {
        for (const entry of entries) {
          if (typeof entry === "string") continue;
          const now = chosen.get(entry.name);
          if (!now) continue;
          const {min: _, max: __, ...line} = now;
          const {min, max} = pickedOf(entry, size(), now.unit);
          chosen.set(entry.name, {...line, ...(min !== undefined && {min}), ...(max !== undefined && {max})});
          // More of it than the shelf has: the cook gets more.
          if (entry.stock !== undefined)
            given.set(entry.name, {...given.get(entry.name), name: entry.name, stock: entry.stock});
        }
        show();
        write();
        changed(element);
      },
    },
  );
}
