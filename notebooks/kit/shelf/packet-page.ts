import {html} from "htl";
import {withInferred} from "../../../lib/pantry/inferred.ts";
import type {Allergen} from "../../../lib/pantry/ingredient.ts";
import {ingredientsNamed, nameKey} from "../../../lib/pantry/pantry.ts";
import {type OwnEntry, parseOwn} from "../keep/own-ingredients.ts";
import type {PackPrice, ShelfLine} from "../keep/shelf.ts";
import {recall} from "../words/address.ts";
import {wayBack} from "../words/address-format.ts";
import {dayOf} from "../words/day.ts";
import {paidIn} from "../words/pack-price.ts";
import {unbroken} from "../words/numbers.ts";
import type {OpenShelf} from "./open-shelf.ts";
import {entryOf, neededWords, typedOf} from "./packet-entry.ts";
import {packetForm, type PacketTyped} from "./packet-form.ts";
import {packetWords} from "./packet-words.ts";
import {type ReadPacket, readPacket} from "./packet.ts";

/** The page's two halves: the form, and what the product is taken for meanwhile. */
export function packetPage(shelf: OpenShelf): {readonly form: HTMLElement; readonly answer: HTMLElement} {
  const edited = shelf.now.own.find(({entry}) => entry.name === recall("edit")[0]);
  const asked = recall("name")[0]?.slice(0, 200) ?? "";
  const back = wayBack(recall("back")[0]) ?? "./my-shelf.html";
  const form = packetForm(edited ? typedOf(edited.entry) : {name: asked});
  const answer = html`<div data-side="answer"></div>`;
  const amiss = html`<p class="amiss" role="alert"></p>`;
  form.element.append(amiss);

  const show = () => {
    const typed = form.value;
    const read: ReadPacket = typed.chosen ? readPacket(typed) : {missing: [], slips: [], taken: []};
    form.evident(typed.chosen ? evidentOf(typed) : []);
    const loose = form.slips(read.slips);
    answer.replaceChildren(
      html`<section class="verdict" aria-live="polite">
        ${understood(typed, read)} ${loose.map(({words}) => html`<p class="alarm">${words}</p>`)}
        ${standsFor(typed, shelf, edited?.entry.name)}
      </section>`,
    );
  };
  form.element.addEventListener("input", show);
  form.element.addEventListener("submit", (event) => {
    event.preventDefault();
    keepIt().then(
      (mistake) => {
        amiss.textContent = mistake ?? "";
        if (mistake === undefined) location.assign(back);
        else amiss.scrollIntoView({block: "nearest"});
      },
      (error: unknown) => {
        amiss.textContent = error instanceof Error ? error.message : String(error);
      },
    );
  });
  show();

  /** Keeps the product; what is amiss where it cannot be kept. */
  async function keepIt(): Promise<string | undefined> {
    const typed = form.value;
    const made = entryOf(typed, asked, edited?.entry);
    if (typeof made === "string") return made;
    const own = parseOwn(made);
    if (!own) return "This cannot be kept as it is: check the name and the figures.";
    let price: PackPrice | undefined;
    if (typed.paid !== "") {
      const paid = await paidIn(typed.paid, own.ingredient);
      if ("mistake" in paid) return paid.mistake;
      const {money, text: pack, grams} = paid.value;
      price = {money, pack, grams, on: dayOf(new Date())};
    }
    const {name} = made;
    // What goes by the same name but for case and spacing makes room too.
    const alike = shelf.now.own.find(
      ({entry}) => entry.name !== name && nameKey(entry.name) === nameKey(name),
    );
    const renamed = edited && edited.entry.name !== name ? edited.entry.name : alike?.entry.name;
    const before = shelf.now.lines.find((line) => line.name === (renamed ?? name));
    const edits = new Map<string, (present: ShelfLine) => ShelfLine | undefined>([
      [name, (present: ShelfLine) => ({...present, ...before, name, ...(price && {price})})],
      ...(renamed === undefined ? [] : [[renamed, () => undefined] as [string, () => undefined]]),
    ]);
    await shelf.change(
      [`${name} is your own now, from its packet.`],
      edits,
      new Map<string, OwnEntry | undefined>([
        [name, made],
        ...(renamed === undefined ? [] : [[renamed, undefined] as const]),
      ]),
    );
    return undefined;
  }
  return {form: form.element, answer};
}

/** Allergens that the class makes certain: no tick takes them off. */
function evidentOf({name, class: read}: PacketTyped): readonly Allergen[] {
  const {allergens = []} = withInferred({name, composition: {water: 100}}, read);
  return allergens.filter((allergen) => allergen === "milk" || allergen === "eggs");
}

function understood(typed: PacketTyped, {read, missing, slips, taken}: ReadPacket): HTMLElement {
  if (!typed.chosen) return html`<h2>What is it like? Choose the nearest class</h2>`;
  if (slips.length) return html`<h2>This packet <b>cannot be right</b>: see beside the figure</h2>`;
  if (!read) return html`<h2>${neededWords(missing, typed.law)}</h2>`;
  const words = packetWords(read);
  return html`<div>
    <h2>100 g of ${typed.name || "it"} keep as much water unfrozen as <b>${unbroken(words.asSugar)}</b></h2>
    <p>${unbroken(`${words.freezing} ${words.sweet}`)}</p>
    <p>${unbroken(words.taken)}</p>
    <p class="aside">
      <b>${words.sure}.</b> ${unbroken(words.guessed)}
      ${taken.map((one) => `${one[0]!.toUpperCase()}${one.slice(1)}.`).join(" ")}
    </p>
  </div>`;
}

/** Ingredient that goes by that name already. */
function standsFor({name}: PacketTyped, {now}: OpenShelf, edited: string | undefined): HTMLElement | string {
  if (name === "" || name === edited) return "";
  if (now.own.some(({entry}) => entry.name === name))
    return html`<p class="aside">You have one of that name: this takes its place.</p>`;
  const [known] = ingredientsNamed(now.kitchen.pantry, name);
  return known
    ? html`<p class="aside">
        ${known.name === name ? "On every page this takes the place of what is included under that name." : `That is another name of ${known.name}: from now on it means yours.`}
      </p>`
    : "";
}
