import {html} from "htl";
import {isFlavour} from "../../../lib/pantry/flavour-groups.ts";
import {grams} from "../../../lib/core/format.ts";
import type {Recipe, RecipeLine} from "../../../lib/pantry/recipe.ts";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "../controls/control.ts";
import {eachOnce} from "../words/load-recipe.ts";
import type {Attempt} from "../words/mistakes.ts";
import {slider} from "../controls/slider.ts";

/** Question of the page: what is out, and what must stay. */
export interface Question {
  readonly without: readonly string[];
  /** Whether nothing like it is there either: of cream no cream of another fat. */
  readonly noneAlike: boolean;
  /** Rest of it, g; nothing where several are out. */
  readonly left: number;
  /** Ingredients that stay as they are. */
  readonly keep: readonly string[];
}

/** The controls for what is out, made anew for each recipe. */
export function replaceQuestion(recipe: Control<Attempt<Recipe>>): Control<Question> {
  const out = html`<select></select>` as unknown as HTMLSelectElement;
  const rest = html`<div></div>`;
  const stays = html`<div class="ticks"></div>`;
  const alsoOut = html`<div class="ticks"></div>`;
  const alike = tick(
    "Nothing like it either: of cream, no other cream and no crème fraîche",
    recall("alike")[0] === "none",
    (box) => keep("alike", box.checked ? ["none"] : []),
  );
  const element = html`<div>
    <label class="field">What is out?${out}</label>
    ${rest}
    <details class="also-out" open=${recall("out").length > 1}>
      <summary>Something else is out too</summary>
      ${alsoOut}
    </details>
    ${alike.element}
    <fieldset class="stays">
      <legend>What stays as it is</legend>
      ${stays}
    </fieldset>
  </div>`;
  let left: Control<number> | undefined;
  let lines: RecipeLine[] = [];
  const kept = new Set<string>();
  const also = new Set<string>();
  const isOut = (name: string) => name === out.value || also.has(name);

  const showRest = () => {
    const line = lines.find(({ingredient}) => ingredient.name === out.value);
    // Less than the recipe takes: with all of it there is nothing to replace.
    const most = line ? Math.floor(line.grams * 9.9) / 10 : 0;
    const step = most >= 500 ? 10 : most >= 50 ? 1 : 0.1;
    left = slider({key: "left", label: "Still there", unit: "g", min: 0, max: most, step, value: 0});
    rest.replaceChildren(left);
    left.hidden = also.size > 0;
  };
  const showAlso = () => {
    alsoOut.replaceChildren(
      ...lines
        .filter(({ingredient}) => ingredient.name !== out.value)
        .map(
          ({ingredient: {name}}) =>
            tick(name, also.has(name), (box) => {
              if (box.checked) also.add(name);
              else also.delete(name);
              kept.delete(name);
              keep("out", [out.value, ...also]);
              if (left) left.hidden = also.size > 0;
              showStays();
            }).element,
        ),
    );
  };
  const showStays = () => {
    stays.replaceChildren(
      ...lines
        .filter(({ingredient}) => !isOut(ingredient.name))
        .map(({ingredient: {name}}) => {
          const box = html`<input type="checkbox" />` as HTMLInputElement;
          box.checked = kept.has(name);
          box.addEventListener("input", () => {
            if (box.checked) kept.add(name);
            else kept.delete(name);
            keep("keep", kept.size ? [...kept] : [""]);
          });
          return html`<label>${box}<span>${name}</span></label>`;
        }),
    );
  };
  const show = () => {
    lines = "value" in recipe.value ? eachOnce(recipe.value.value) : [];
    out.replaceChildren(
      ...lines.map(
        ({ingredient: {name}, grams: g}) => html`<option value=${name}>${name}, ${grams(g)} g</option>`,
      ),
    );
    const names = lines.map(({ingredient}) => ingredient.name);
    out.value = names.find((name) => name === recall("out")[0]) ?? likely(lines);
    also.clear();
    for (const name of recall("out").slice(1)) if (names.includes(name) && name !== out.value) also.add(name);
    kept.clear();
    const known = recall("keep");
    for (const {ingredient} of lines) {
      if (known.length ? known.includes(ingredient.name) : isFlavour(ingredient)) kept.add(ingredient.name);
    }
    for (const name of also) kept.delete(name);
    showRest();
    showAlso();
    showStays();
  };
  out.addEventListener("input", () => {
    also.delete(out.value);
    keep("out", [out.value, ...also]);
    keep("left", []);
    kept.delete(out.value);
    showRest();
    showAlso();
    showStays();
  });
  recipe.addEventListener("input", () => {
    for (const key of ["out", "left", "keep"]) keep(key, []);
    show();
  });
  show();
  return control(element, () => ({
    without: [out.value, ...also],
    noneAlike: alike.box.checked,
    left: also.size ? 0 : (left?.value ?? 0),
    keep: [...kept].filter((name) => !isOut(name)),
  }));
}

function tick(words: string, checked: boolean, changed: (box: HTMLInputElement) => void) {
  const box = html`<input type="checkbox" />` as HTMLInputElement;
  box.checked = checked;
  box.addEventListener("input", () => changed(box));
  return {box, element: html`<label class="tick">${box}<span>${words}</span></label>`};
}

/** Ingredient that a page opens without: the sugar that is least of all, or cream, or whatever comes first. */
function likely(lines: readonly RecipeLine[]): string {
  const sugars = lines
    .filter(({ingredient}) => ingredient.group === "sugar")
    .sort((a, b) => a.grams - b.grams);
  return (sugars[0] ?? lines[0])?.ingredient.name ?? "";
}
