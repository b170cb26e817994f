import {html} from "htl";
import type {RecipeContent} from "../keep/kept-recipe.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import {carry, keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";
import type {Source} from "../words/load-recipe.ts";
import {sourceFrom} from "../words/address-format.ts";

/** Options of a choice of sources. */
interface SourceOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  /** The demonstration's, by what each is called in the address, with how it reads; the first is chosen at first. */
  readonly demos: Readonly<Record<string, Source & {readonly label: string}>>;
  /** The open recipe, which is chosen at first where there is one. */
  readonly open: OpenRecipe;
}

/** A choice of sources that says what of the chosen one is left out. */
export interface SourceControl extends Control<Source> {
  /** Whether it is the open recipe. */
  readonly isOpen: () => boolean;
  /** So many lines of it could not be read. */
  leaveOut(lines: number): void;
}

/** Longest text that the address carries, characters. */
const LONGEST_KEPT = 40_000;

/** Largest file that is read, bytes: the readers take no more either. */
const LARGEST = 5_000_000;

const OWN = "own";
const OPEN = "open";
/** Part of a link for a recipe that was typed, and is open where the link comes from. */
export const TYPED = "typed";

/**
 * The open recipe, one of the demonstration's files, or one of the cook's own, whose text goes into the address, and nowhere else.
 */
export function sourceChoice({key, label, demos, open}: SourceOptions): SourceControl {
  const names = Object.keys(demos);
  const [kind = ""] = recall(key);
  const carried = sourceFrom(recall(`${key}File`));
  let own = carried && (kind === TYPED ? {...carried, typed: {}} : carried);
  const first = kind === TYPED ? OWN : kind;
  // A typed recipe of a link can be kept in the book.
  if (own?.typed && own.text !== open.now?.text) open.show({name: own.file, text: own.text});
  let chosen = (first === OWN && own) || names.includes(first) ? first : OPEN;
  /** The choice, or its stand-in while no recipe is open. */
  const now = () => (chosen === OPEN && !open.now ? names[0]! : chosen);

  const select = html`<select></select>` as unknown as HTMLSelectElement;
  const input = html`<input type="file" accept=".json,.csv,application/json,text/csv" />` as HTMLInputElement;
  const note = html`<p class="note" role="status"></p>`;
  const gaps = html`<p class="note" role="status"></p>`;
  const element = html`<div>
    <label class="field">${label}${select}</label>
    <label class="field">Or load your own, JSON or CSV${input}</label>
    ${note} ${gaps}
  </div>`;
  const show = () => {
    select.replaceChildren(
      ...(open.now ? [html`<option value=${OPEN}>${open.now.name} (open)</option>`] : []),
      ...names.map((name) => html`<option value=${name}>${demos[name]!.label}</option>`),
      ...(own ? [html`<option value=${OWN}>${own.file}</option>`] : []),
    );
    select.value = now();
  };
  const choose = (name: string) => {
    chosen = name;
    keep(key, [name === OWN && own?.typed ? TYPED : name]);
    show();
  };
  select.addEventListener("input", () => choose(select.value));
  // The file is told when it has been read, not when it has been chosen.
  input.addEventListener("input", (event) => event.stopPropagation());
  // A file that was mended may be chosen again: it counts as another one.
  input.addEventListener("click", () => {
    input.value = "";
  });
  input.addEventListener("change", () => {
    const [loaded] = input.files ?? [];
    if (!loaded) return;
    if (loaded.size > LARGEST) {
      note.textContent = `${loaded.name} has more than ${LARGEST / 1e6} MB: that is no recipe. Choose another file.`;
      return;
    }
    const take = (read: string) => {
      // What was chosen last wins, however long an earlier one takes to read.
      if (input.files?.[0] !== loaded) return;
      own = {file: loaded.name, text: read};
      const fits = read.length <= LONGEST_KEPT;
      keep(`${key}File`, fits ? [own.file, own.text] : []);
      note.textContent = fits
        ? ""
        : "This file is too long for the address: a link will open the page without it.";
      choose(OWN);
      changed(element);
    };
    loaded.text().then(take, () => {
      note.textContent = `${loaded.name} cannot be read: it was moved or changed. Choose it again.`;
    });
  });
  // Another person has not this recipe open: a link carries it.
  const ofOpen = (values: (recipe: RecipeContent) => readonly string[]) => () =>
    now() === OPEN ? values(open.now!) : [];
  const unlessSaid = (name: "freezer" | "overrun") =>
    ofOpen(({[name]: value}) => (value === undefined || recall(name).length ? [] : [String(value)]));
  carry(
    key,
    ofOpen(() => [TYPED]),
  );
  carry(
    `${key}File`,
    ofOpen(({name, text}) => [name, text]),
  );
  carry("freezer", unlessSaid("freezer"));
  carry("overrun", unlessSaid("overrun"));
  let last = open.now;
  open.follow(() => {
    const {now: fresh} = open;
    const same = last?.id === fresh?.id && last?.text === fresh?.text && last?.name === fresh?.name;
    last = fresh;
    if (same) return;
    show();
    if (chosen === OPEN) changed(element);
  });
  show();
  return Object.assign(
    control(element, (): Source => {
      const name = now();
      if (name === OPEN) return typedSource(open.now!);
      return name === OWN && own ? own : demos[name]!;
    }),
    {
      isOpen: () => now() === OPEN,
      leaveOut(lines: number) {
        const count = lines === 1 ? "One line of it is" : `${lines} lines of it are`;
        gaps.textContent = lines ? `${count} not understood and left out: settle that in Read a recipe.` : "";
      },
    },
  );
}

function typedSource({name, text, overrun}: RecipeContent): Source {
  return {file: name, text, typed: overrun === undefined ? {} : {overrun}};
}
