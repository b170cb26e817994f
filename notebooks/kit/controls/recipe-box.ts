import {html} from "htl";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import {LONGEST_TEXT, titleOf} from "../keep/kept-recipe.ts";
import {carry, keep, recall, recallNumber} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";

/** Options of the box of the open recipe. */
interface RecipeBoxOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  /** Text while no recipe is open and the address carries none: the demonstration. */
  readonly demo: string;
}

/** The box in which the open recipe is typed. */
export interface RecipeBox extends Control<string> {
  /** Whether it holds the open recipe: not while it shows a demonstration, or what the address carries. */
  readonly own: boolean;
  /** Writes into it by a press, which is a step of its own to go back over. */
  write(text: string): void;
  /** Has a link carry these of the page beside the open recipe, as they begin otherwise where that is not open. */
  along(values: Readonly<Record<string, () => string | number>>): void;
}

/**
 * The open recipe as a text to type. What the address carries comes first, then the open recipe, then the demonstration; the first and
 * the last are kept in the book as soon as they are changed, and not before.
 */
export function recipeBox(open: OpenRecipe, {key, label, demo}: RecipeBoxOptions): RecipeBox {
  const [carried] = recall(key);
  if (carried !== undefined && carried !== open.now?.text)
    open.show({
      ...nameOf(carried),
      text: carried,
      ...given("freezer", -40, 0),
      ...given("overrun", 0, 200),
    });
  const own = () => open.now !== undefined && open.visitor === undefined;
  const box = html`<textarea spellcheck="false"></textarea>` as HTMLTextAreaElement;
  box.value = (own() ? open.now!.text : carried) ?? demo;
  box.rows = Math.min(30, Math.max(4, box.value.split("\n").length));
  /** Text that the page itself put there last: the browser's own undo goes back no further. */
  let put = box.value;
  let address = carried;

  const toBook = (how: "typed" | "pressed") => {
    if (own()) open.edit({text: box.value}, how);
    else if (box.value.trim()) open.begin({...open.visitor, ...nameOf(box.value), text: box.value});
  };
  // The address need not carry what the book keeps; where the browser refuses to keep it, it does.
  const follow = () => {
    if (!own()) return;
    const {text} = open.now!;
    const wanted = open.standing.is === "not kept" ? text : undefined;
    if (wanted !== address) keep(key, wanted === undefined ? [] : [wanted]);
    address = wanted;
    // A text too long for the book stays for the page to answer.
    if (box.value === text || box.value.length > LONGEST_TEXT) return;
    const {selectionStart} = box;
    box.value = put = text;
    box.setSelectionRange(selectionStart, selectionStart);
    changed(element);
  };
  box.addEventListener("input", () => toBook("typed"));
  box.addEventListener("keydown", (event) => {
    const {ctrlKey, metaKey, altKey, shiftKey} = event;
    if (altKey || !(ctrlKey || metaKey) || box.value !== put) return;
    const step = {z: shiftKey ? open.redo : open.undo, y: open.redo}[event.key.toLowerCase()];
    if (!step) return;
    event.preventDefault();
    step();
  });
  const element = control(html`<label class="field">${label}${box}</label>`, () => box.value);
  open.follow(follow);
  follow();
  const along: RecipeBox["along"] = (values) => {
    for (const [name, read] of Object.entries(values))
      carry(name, () => (own() ? [String(read()).replace("NaN", "")] : []));
  };
  // Another person has not this recipe open: a link carries it.
  along({[key]: () => box.value});
  return Object.defineProperties(element, {
    own: {get: own},
    along: {value: along},
    write: {
      value(text: string) {
        box.value = put = text;
        toBook("pressed");
        changed(element);
      },
    },
  }) as RecipeBox;
}

/** Name of the recipe: its title, or as the address says. */
function nameOf(text: string): {readonly name?: string} {
  const name = titleOf(text) ?? recall("name")[0];
  return name === undefined ? {} : {name};
}

function given<K extends string>(key: K, min: number, max: number): Partial<Record<K, number>> {
  const value = recallNumber(key, min, max);
  return (value === undefined ? {} : {[key]: value}) as Partial<Record<K, number>>;
}
