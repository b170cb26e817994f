import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {sum} from "../core/numbers.ts";
import {withInferred} from "./inferred.ts";
import type {Ingredient} from "./ingredient.ts";
import type {Estimate, Guess, LabelRule, Split} from "./label-rule.ts";
import {LABEL_RULES} from "./label-rules.ts";
import type {Nutrients} from "./nutrient-keys.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";
import {type Label, readLabel} from "./read-label.ts";

/** A class of ingredients that a label is read by. */
export type IngredientClass = keyof typeof LABEL_RULES;

/** Every class of ingredients, e.g. for a menu. */
export const INGREDIENT_CLASSES = Object.keys(LABEL_RULES) as IngredientClass[];

/** An ingredient from its label, and how far each part may be off. */
export interface LabelledIngredient {
  readonly ingredient: Ingredient;
  /** ± g per 100 g of each part that may be there; ± points for the dextrose equivalent. */
  readonly uncertainty: Readonly<Partial<Record<Part | "dextroseEquivalent", number>>>;
}

/** Largest deviation of the sum of the figures from 100 g that rounding and guesses explain, g. */
const SUM_TOLERANCE = 4;

/** Dextrose equivalent against the mono- and disaccharides of the solids, points: see `totalSugars` in `quantities.ts`. */
const EQUIVALENT_SPREAD = 9;

/** Share of saturates above which plant fat is coconut's, g per g: its own is 0.8 to 0.9, palm oil's 0.5 (USDA SR28). */
const COCONUT_SATURATES = 0.75;

/**
 * An ingredient from its nutrition label: each figure is shared out over the parts of a composition by the rule of the
 * class, minerals (and fibre, where the label has none) are guessed from protein or solids, and water is what is left.
 *
 * The uncertainty of a part covers the rounding of the label (half of 1 g from 10 g on, half of 0.1 g below, 0.5 g for a
 * printed 0; from memory of the European Commission's guidance on tolerances, 2012) and the spread of its rule. It assumes
 * that the label is true: by the same guidance a product may differ from it by 2 g or 20 %. Polyols are taken as sorbitol,
 * which is a guess as wide as they are.
 *
 * A table of figures says nothing of allergens: what the class makes evident (milk of dairy, nuts of nuts) is there, the rest is
 * in the list of ingredients on the pack. Add it, and a price, e.g. `{...ingredient, allergens: ["nuts", "soya"], price: 22}`.
 *
 * @param label g per 100 g, each from 0 to 100
 * @param ingredientClass one of {@link INGREDIENT_CLASSES}
 * @throws InputError naming the figure for one out of range, a part larger than its whole, a sum over 100 g, or an unknown
 *   class
 *
 * @example
 * ```ts
 * const label = {name: "our cream", fat: 36, carbohydrate: 3, sugars: 3, protein: 2.2, salt: 0.08};
 * const {ingredient} = fromLabel(label, "dairy");
 * ingredient.composition.milkFat; // => 36
 * ingredient.allergens; // => ["milk"]
 * ```
 */
export function fromLabel(label: Label, ingredientClass: IngredientClass): LabelledIngredient {
  const figures = readLabel(label);
  const {name} = label;
  const rule = ruleOf(ingredientClass, `label "${name}": class`);
  const {parts, spread, minerals} = shareOut(figures, rule);
  const solids = sum(parts.values());
  const total = solids + (figures.water ?? 0);
  const room = 100 - total;
  if (room < -SUM_TOLERANCE || (figures.water !== undefined && room > SUM_TOLERANCE)) {
    throw new InputError(
      `label "${name}"`,
      `the figures do not sum to 100 g${minerals > 0 ? ` with ${minerals.toFixed(1)} g of minerals, a guess of the class ${ingredientClass}` : ""}`,
      Number(total.toFixed(1)),
      "check them and the class; carbohydrate is without fibre, alcohol in g",
    );
  }
  if (figures.water === undefined) parts.set("water", Math.max(0, room));
  else {
    parts.set("water", figures.water);
    if (room > 0) parts.set("otherSolids", (parts.get("otherSolids") ?? 0) + room);
  }
  spread.set("water", figures.water === undefined ? waterSpread(figures, spread) : rounding(figures.water));
  // Rounding and guesses may exceed 100 g in a dry product: every part gives way in proportion.
  const scale = room < 0 ? 100 / total : 1;
  const composition: Composition = Object.fromEntries(
    PARTS.flatMap((part) => {
      const grams = (parts.get(part) ?? 0) * scale;
      return grams > 0 ? [[part, grams] as const] : [];
    }),
  );
  const syrup = composition.glucoseSyrupSolids !== undefined;
  const {carbohydrate, sugars} = figures;
  const dextroseEquivalent = Math.min(100, Math.max(5, (100 * sugars) / carbohydrate));
  return {
    ingredient: withInferred(
      {
        name,
        composition: syrup ? {...composition, dextroseEquivalent} : composition,
        nutrients: nutrientsOf(figures),
        grade: "label",
      },
      ingredientClass,
    ),
    uncertainty: {
      ...Object.fromEntries(PARTS.flatMap((part) => (spread.has(part) ? [[part, spread.get(part)!]] : []))),
      ...(syrup && {dextroseEquivalent: EQUIVALENT_SPREAD}),
    },
  };
}

/** mg of sodium per g of salt: Regulation (EU) 1169/2011, Annex I, has salt as sodium x 2.5. */
const SODIUM_PER_SALT = 1000 / 2.5;

/** Figures of a label that no composition keeps. */
function nutrientsOf({saturates, salt}: Label): Nutrients {
  return {...(saturates !== undefined && {saturates}), sodium: salt * SODIUM_PER_SALT};
}

function ruleOf(ingredientClass: string, place: string): LabelRule {
  if (Object.hasOwn(LABEL_RULES, ingredientClass)) return LABEL_RULES[ingredientClass as IngredientClass];
  const near = nearestNames(String(ingredientClass), INGREDIENT_CLASSES);
  throw new InputError(
    place,
    "unknown class",
    ingredientClass,
    near.length ? `did you mean ${near.join(" or ")}` : `use ${INGREDIENT_CLASSES.join(", ")}`,
  );
}

type Grams = Map<Part, number>;

/** Everything but water, with the spread of each part and the minerals that are guessed, g per 100 g. */
function shareOut(label: Label, rule: LabelRule): {parts: Grams; spread: Grams; minerals: number} {
  const parts: Grams = new Map();
  const spread: Grams = new Map();
  const add = (part: Part, grams: number, plusMinus: number) => {
    parts.set(part, (parts.get(part) ?? 0) + grams);
    spread.set(part, (spread.get(part) ?? 0) + plusMinus);
  };
  const split = (split: Split, grams: number, plusMinus: number) => {
    for (const [part, [share, off]] of Object.entries(split) as [Part, Estimate][])
      add(part, share * grams, off * grams + share * plusMinus);
  };
  const {fat, carbohydrate, sugars, protein, salt, polyols = 0, alcohol = 0} = label;
  const guessed = ({of, share: [value, off]}: Guess): Estimate => {
    const grams = of === "protein" ? protein : protein + carbohydrate + (label.fibre ?? 0);
    return [value * grams, off * grams];
  };
  split(fatSplit(label, rule), fat, rounding(fat));
  split(rule.protein, protein, rounding(protein));

  const [perProtein, perProteinOff] = rule.lactose ?? [0, 0];
  const milkProtein = parts.get("milkProtein") ?? 0;
  const lactose = Math.min(sugars, perProtein * milkProtein);
  const lactoseOff = perProteinOff * milkProtein + perProtein * (spread.get("milkProtein") ?? 0);
  if (rule.lactose) add("lactose", lactose, lactoseOff);
  split(rule.sugars, sugars - lactose, rounding(sugars) + (rule.lactose ? lactoseOff : 0));

  const other = carbohydrate - sugars - polyols;
  const [wanted, acidsOff] = rule.acids ?? [0, 0];
  const acids = Math.min(wanted, other);
  if (rule.acids) add("organicAcids", acids, acidsOff);
  const otherOff = rounding(carbohydrate) + rounding(sugars);
  split(rule.rest, other - acids, otherOff + (rule.acids ? Math.min(acidsOff, other) : 0));
  if (polyols > 0) add("sorbitol", polyols, polyols);
  if (alcohol > 0) add("alcohol", alcohol, rounding(alcohol));

  const guesses = (Object.entries(rule.minerals) as [Part, Guess][]).map(
    ([part, guess]) => [part, ...guessed(guess)] as const,
  );
  const minerals = sum(guesses.map(([, grams]) => grams));
  const left = Math.max(
    0,
    100 - fat - carbohydrate - protein - salt - alcohol - minerals - (label.water ?? 0),
  );
  const [fibre = 0, fibreOff = 0] =
    label.fibre === undefined
      ? guessed(rule.fibre ?? {of: "solids", share: [0, 0]}).map((grams) => Math.min(grams, left))
      : [label.fibre, rounding(label.fibre)];
  if (fibre > 0 || fibreOff > 0) add("fibre", fibre, fibreOff);
  const ownSalt = Math.min(salt, rule.ownSalt * protein);
  add("salt", salt - ownSalt, ownSalt + (salt >= 1 ? 0.05 : 0.02));
  for (const [part, grams, off] of guesses) add(part, grams, off + 0.02);
  return {parts, spread, minerals};
}

/** Plant fat is coconut fat where the saturates say so. */
function fatSplit({fat, saturates}: Label, rule: LabelRule): Split {
  const saturated = saturates !== undefined && fat > 0 && saturates / fat >= COCONUT_SATURATES;
  return saturated && "otherFat" in rule.fat ? {coconutFat: [1, 0]} : rule.fat;
}

/** Water is what is left: the roundings and the guesses that no other figure takes up, as independent errors. */
function waterSpread(label: Label, spread: Grams): number {
  const {fat, carbohydrate, protein, fibre} = label;
  const errors = [
    rounding(fat),
    rounding(carbohydrate),
    rounding(protein),
    fibre === undefined ? (spread.get("fibre") ?? 0) : rounding(fibre),
    spread.get("milkSalts") ?? 0,
    spread.get("plantSalts") ?? 0,
    spread.get("salt") ?? 0,
  ];
  return 2 * Math.hypot(...errors);
}

/** Largest rounding error of a printed figure, g. */
function rounding(grams: number): number {
  if (grams === 0) return 0.5;
  return grams >= 10 ? 0.5 : 0.05;
}
