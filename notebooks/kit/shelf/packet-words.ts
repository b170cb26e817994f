import {decimal} from "../../../lib/core/format.ts";
import {heldWater} from "../../../lib/freezing/held-water.ts";
import {ice} from "../../../lib/freezing/ice.ts";
import {plainName} from "../../../lib/io/text/plain-name.ts";
import type {LabelledIngredient} from "../../../lib/pantry/from-label.ts";
import {PARTS, type Part} from "../../../lib/pantry/parts.ts";
import {quantityOf} from "../../../lib/pantry/quantities.ts";

/** Parts below this are not told, g per 100 g. */
const TOLD = 0.1;

/** A spread from which a part is told to be a guess, g per 100 g. */
const GUESS = 0.5;

/** So many guesses are told. */
const GUESSES = 4;

/** Up to so many g per 100 g off a figure is sure, and fairly sure. */
const SURE = {sure: 1.5, fairly: 4};

/** Freezer of a household, °C: what the effect on freezing is told at. */
const FREEZER = -18;

/** Assumptions on a product, a sentence each. */
export interface PacketWords {
  readonly taken: string;
  readonly guessed: string;
  readonly sweet: string;
  readonly freezing: string;
  /** So much sugar keeps as much water unfrozen: `27 g of sugar`. */
  readonly asSugar: string;
  /** Certainty in a word or two: for a heading. */
  readonly sure: string;
}

/** Assumptions on a product by its label: contents, guesses, sweetness and freezing. */
export function packetWords({ingredient: {composition}, uncertainty}: LabelledIngredient): PacketWords {
  const parts = PARTS.flatMap((part) =>
    (composition[part] ?? 0) >= TOLD ? [{part, grams: composition[part]!}] : [],
  )
    .sort((a, b) => b.grams - a.grams)
    .map(({part, grams}) => `${amount(grams)} g ${plainName(part)}`);
  const guesses = (Object.entries(uncertainty) as [Part, number][])
    .filter(([part, off]) => off >= GUESS && (part as string) !== "dextroseEquivalent")
    .sort((a, b) => b[1] - a[1])
    .slice(0, GUESSES)
    .map(([part, off]) => `${plainName(part)} ${amount(composition[part] ?? 0)} ± ${amount(off)}`);
  const held = heldWater(composition, FREEZER);
  const ofSugar = heldWater({sucrose: 1}, FREEZER);
  const off = freezingOff({uncertainty, composition});
  const itself = ice(composition, FREEZER);
  const {dextroseEquivalent: de} = composition;
  return {
    taken: `In 100 g: ${parts.join(", ")}${de === undefined ? "" : ` of ${decimal(de, 0)} DE`}.`,
    guessed: guesses.length
      ? `A guess of its class, g in 100 g: ${guesses.join(", ")}.`
      : "Nothing in it is more than rounding off.",
    sweet: `As sweet as ${amount(quantityOf(composition, "sweetness"))} g of sugar.`,
    asSugar: `${amount(held / ofSugar)} g of sugar`,
    freezing: `That is at −18 °C${off >= 0.5 ? `, give or take ${amount(off)} g` : ""}; by itself, ${itself < 0.05 ? "nothing" : `${amount(itself)} g`} of it is ice.`,
    sure: sureness(Math.max(uncertainty.water ?? 0, off)),
  };
}

/** Error of the effect on freezing, g of sugar per 100 g: the parts' own spreads, as independent errors. */
function freezingOff({
  uncertainty,
  composition,
}: Pick<LabelledIngredient, "uncertainty"> & Pick<LabelledIngredient["ingredient"], "composition">): number {
  const of = (part: Part) =>
    heldWater(
      {
        [part]: 1,
        ...(part === "glucoseSyrupSolids" && {dextroseEquivalent: composition.dextroseEquivalent ?? 40}),
      },
      FREEZER,
    );
  const errors = PARTS.map((part) => (uncertainty[part] ?? 0) * (part === "water" ? 0 : of(part)));
  return Math.hypot(...errors) / heldWater({sucrose: 1}, FREEZER);
}

function sureness(off: number): string {
  if (off <= SURE.sure) return "Sure";
  return off <= SURE.fairly ? "Fairly sure" : "A rough guess";
}

function amount(grams: number): string {
  return decimal(grams, grams < 10 ? 1 : 0);
}
