import {InputError} from "../../core/errors.ts";
import {expectFlag, expectOptions, expectText, oneOf} from "../../core/shape.ts";
import {expectProduct, type Product} from "../product/product.ts";
import {isUnknown, usAllergenWords} from "./allergen-words.ts";
import {dayWords, expectDay} from "./day-words.ts";
import {LABEL_LAWS, type LabelLaw, WAYS_OF_SALE} from "./label-law.ts";
import {labelGaps} from "./label-gaps.ts";
import {ingredientList, type LabelText} from "./label.ts";
import {labelStatements} from "./statements.ts";
import {
  declaration,
  quantityText,
  type StickerNutrition,
  type StickerOptions,
  tubGrams,
} from "./sticker-options.ts";

/** A paragraph of a sticker, pieces to be set apart among its text. */
export type StickerText = readonly LabelText[];

/** The words of a sticker in their order; `stickerSvg` and `stickerHtml` lay them out. */
export interface Sticker {
  readonly title: string;
  /** Paragraphs below the name, from the list of ingredients to the storage. */
  readonly paragraphs: readonly StickerText[];
  /** The nutrition declaration, behind the paragraphs: a table where there is room, else a line (Article 34(2)); in the US a line. */
  readonly nutrition?: StickerNutrition;
  /** At the foot: dates, batch, maker. */
  readonly foot: readonly StickerText[];
  /** `500 ml`. */
  readonly quantity?: string;
  /** Particulars that the law asks of such a pack and the sticker lacks, for the cook to read. */
  readonly lacking: readonly string[];
}

const OPTIONS = [
  "law",
  "sold",
  "quantity",
  "made",
  "bestBefore",
  "lot",
  "storage",
  "maker",
  "words",
  "named",
  "names",
  "eNumbers",
  "leaveOutWater",
  "nutrition",
  "portion",
  "overrun",
] satisfies (keyof StickerOptions)[];

/**
 * The words of a sticker for one tub: name, the words that the law wants beside it, ingredients with allergens set apart, nutrition if
 * wanted, storage, best before, made, batch, quantity and maker. Dates and batch are the cook's: nothing here reads a clock.
 *
 * Regulation (EU) No 1169/2011, Article 9; in the United States 21 CFR 101 and 21 U.S.C. 343(w). A sticker is no legal advice: check
 * with your authority.
 *
 * @throws InputError for a cereal or nut of unknown kind, a best-before date that is no date or before the day of making, a quantity that
 *   is not above 0, a portion above it, nutrition that an ingredient lacks, and words of more than 300 letters
 *
 * @example
 * ```ts
 * const lines = ["whole milk", "sucrose"].map((name) => ({ingredient: findIngredient(includedPantry(), name), grams: 100}));
 * const milkIce = makeProduct("Milk ice", [baseComponent({name: "milk ice", lines})]);
 * const sticker = stickerOf(milkIce, {quantity: {millilitres: 500}, made: "2026-07-01", bestBefore: "2027-01-31"});
 * sticker.quantity; // => "500 ml"
 * sticker.foot.map((pieces) => pieces.map(({text}) => text).join("")); // => ["Best before 31 January 2027", "Made 1 July 2026"]
 * sticker.lacking; // => ["name and address of the maker or seller"]
 * ```
 */
export function stickerOf(product: Product, options: StickerOptions = {}): Sticker {
  expectProduct(product);
  expectOptions(options, OPTIONS);
  const {law = "EU", sold = "prepacked", names = {}, named = [], overrun = 30} = options;
  oneOf(law, LABEL_LAWS, "options.law", "law");
  oneOf(sold, WAYS_OF_SALE, "options.sold", "way of sale");
  for (const key of ["lot", "storage", "maker", "words"] as const)
    expectWords(options[key], `options.${key}`);
  const [unnamed] = labelGaps(product, names).filter((gap) => isUnknown(gap.slice(gap.indexOf(": ") + 2)));
  if (unnamed) {
    const at = unnamed.indexOf(": ");
    throw new InputError(
      unnamed.slice(0, at),
      "a label must name the kind",
      undefined,
      `${unnamed.slice(at + 2)}, and print it so: names: {${JSON.stringify(unnamed.slice(0, at))}: {name: "…"}}`,
    );
  }
  const held = tubGrams(product, options, overrun);
  const {made, bestBefore, lot} = options;
  if (made !== undefined) expectDay(made, "options.made");
  if (bestBefore !== undefined) expectDay(bestBefore, "options.bestBefore");
  if (made !== undefined && bestBefore !== undefined && bestBefore < made)
    throw new InputError(
      "options.bestBefore",
      "before the day of making",
      bestBefore,
      `give a day from ${made} on`,
    );
  const statements = labelStatements(product, {law}).filter(({force}) => force === "law");
  const beside = statements.filter(({text}) => text.startsWith("with "));
  const storage = options.storage ?? "Keep frozen at −18 °C or below.";
  const {eNumbers = false, leaveOutWater = false} = options;
  expectFlag(eNumbers, "options.eNumbers");
  const style = law === "US" ? "US" : eNumbers ? "E numbers" : "EU";
  const list = ingredientList(product, named, names, {style, leaveOutWater});
  const contains = usAllergenWords(product, names);
  return {
    title: product.name,
    paragraphs: [
      ...beside.map(({text}) => [plain(text)]),
      [strong("Ingredients: "), ...(law === "US" ? list.map(({text}) => plain(text)) : list), plain(".")],
      ...(law === "US" && contains.length ? [[strong(`Contains ${contains.join(", ")}.`)]] : []),
      ...statements.filter((one) => !beside.includes(one)).map(({text}) => [plain(sentence(text))]),
      ...(storage ? [[plain(storage)]] : []),
      ...(options.words ? [[plain(options.words)]] : []),
    ],
    ...(options.nutrition && {nutrition: declaration(product, options, law, held)}),
    foot: [
      ...(bestBefore === undefined ? [] : [[plain("Best before "), strong(dayWords(bestBefore))]]),
      ...(made === undefined && !lot
        ? []
        : [[plain([made && `Made ${dayWords(made)}`, lot && lotMark(lot)].filter(Boolean).join(" · "))]]),
      ...(options.maker ? [[plain(options.maker)]] : []),
    ],
    ...(options.quantity && {quantity: quantityText(options.quantity, law)}),
    lacking: sold === "prepacked" ? lackingOf(options, law) : [],
  };
}

/** Particulars of a prepacked food that only the cook knows. */
function lackingOf({quantity, bestBefore, lot, maker}: StickerOptions, law: LabelLaw): string[] {
  return [
    ...(quantity ? [] : ["net quantity"]),
    ...(bestBefore || law === "US" ? [] : ["best before"]),
    ...(lot || bestBefore || law === "US" ? [] : ["lot"]),
    ...(maker ? [] : ["name and address of the maker or seller"]),
  ];
}

function expectWords(words: string | undefined, place: string): void {
  if (words === undefined) return;
  expectText(words, place);
  if (words.length > 300)
    throw new InputError(place, "longer than 300 letters", words.length, "shorten it: a sticker is small");
}

function lotMark(lot: string): string {
  return /^(l|lot|batch)\b|^l\d/i.test(lot) ? lot : `L${lot}`;
}

function sentence(text: string): string {
  return `${text[0]!.toUpperCase()}${text.slice(1)}.`;
}

function plain(text: string): LabelText {
  return {text, emphasised: false};
}

function strong(text: string): LabelText {
  return {text, emphasised: true};
}
