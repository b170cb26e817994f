import {html} from "htl";
import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {designAddress} from "../controls/design-address.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import {briefOf} from "../views/recipe-brief.ts";

/** Least and largest batch that the page's slider has, g. */
const [LEAST, LARGEST] = [200, 20_000];

/** Freezer of a recipe that says none, °C. */
const USUAL_FREEZER = -18;

/** Offers to design from the open recipe: its ingredients may go in, and what it is, give or take, becomes the limits. */
export function takeOpen(open: OpenRecipe, pantry: Pantry): HTMLElement {
  const button = html`<button type="button"></button>`;
  const note = html`<p class="hint" role="status"></p>`;
  const element = html`<div class="take-open" data-side="brief">${button}${note}</div>`;
  button.addEventListener("click", () => {
    void (async () => {
      const {now} = open;
      if (!now) return;
      const read = await readTypedRecipe(now.text, pantry, {name: now.name}).catch(() => undefined);
      if (!read?.recipe.lines.length) {
        note.textContent = "There is nothing in it to read yet: write it in Read a recipe.";
        return;
      }
      const {freezer = USUAL_FREEZER, overrun = read.recipe.overrun} = now;
      location.assign(
        designAddress({
          ...inRange(briefOf({...read.recipe, name: now.name})),
          freezer,
          ...(overrun !== undefined && {overrun}),
        }),
      );
    })();
  });
  const show = () => {
    element.hidden = open.now === undefined;
    button.textContent = `Take my open recipe: ${open.now?.name ?? ""}`;
  };
  open.follow(show);
  show();
  return element;
}

/** The same mix in a batch that the slider has. */
function inRange(brief: BriefInput): BriefInput {
  const {batch = 1000} = brief;
  const factor = Math.min(LARGEST, Math.max(LEAST, batch)) / batch;
  const scaled = (grams: number | undefined, key: "min" | "max") =>
    grams === undefined ? {} : {[key]: grams * factor};
  return {
    ...brief,
    batch: Math.round(batch * factor),
    ingredients: brief.ingredients.map((entry) =>
      typeof entry === "string"
        ? entry
        : {
            ...entry,
            ...scaled(typeof entry.min === "number" ? entry.min : undefined, "min"),
            ...scaled(typeof entry.max === "number" ? entry.max : undefined, "max"),
          },
    ),
  };
}
