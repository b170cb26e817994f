import {expectOptions, expectRecord, expectText, oneOf} from "../../core/shape.ts";

/** Printed form of an ingredient. */
export interface LabelName {
  /** Legal or customary name, where it is not the name on the shelf. */
  readonly name?: string;
  /** Its own ingredients, when it is a compound one (chocolate, biscuit), as its label prints them. */
  readonly contains?: string;
}

/**
 * An additive as a list names it: classes of Regulation (EU) No 1169/2011, Annex VII, Part C; numbers of Regulation (EC) No 1333/2008, in
 * part from memory. An additive may have another function in a mix: the cook's own name for it has priority.
 */
interface Additive {
  /** Function, from the closed list of the annex. */
  readonly class: string;
  readonly name: string;
  readonly number?: string;
}

const ADDITIVES: readonly (readonly [pattern: RegExp, additive: Additive])[] = [
  [/^agar\b/i, {class: "stabiliser", name: "agar", number: "E 406"}],
  [/^((kappa|iota|lambda) )?carrageenan\b/i, {class: "stabiliser", name: "carrageenan", number: "E 407"}],
  [/^(cellulose gum|cmc)\b/i, {class: "stabiliser", name: "cellulose gum", number: "E 466"}],
  [/^guar\b/i, {class: "stabiliser", name: "guar gum", number: "E 412"}],
  [/^(locust|carob)[ -]?bean gum\b/i, {class: "stabiliser", name: "locust bean gum", number: "E 410"}],
  [/^tara\b/i, {class: "stabiliser", name: "tara gum", number: "E 417"}],
  [/^xanthan\b/i, {class: "stabiliser", name: "xanthan gum", number: "E 415"}],
  [/^(low-methoxyl |high-methoxyl )?pectins?\b/i, {class: "stabiliser", name: "pectins", number: "E 440"}],
  [/^sodium alginate\b/i, {class: "stabiliser", name: "sodium alginate", number: "E 401"}],
  [
    /^mono- and diglycerides\b/i,
    {class: "emulsifier", name: "mono- and diglycerides of fatty acids", number: "E 471"},
  ],
  [/^polysorbate 80\b/i, {class: "emulsifier", name: "polysorbate 80", number: "E 433"}],
  [/^(crude )?soya? lecithin\b/i, {class: "emulsifier", name: "soya lecithins", number: "E 322 of soya"}],
  [/^(sunflower )?lecithin\b/i, {class: "emulsifier", name: "lecithins", number: "E 322"}],
  [/^gellan\b/i, {class: "stabiliser", name: "gellan gum", number: "E 418"}],
  [/^konjac\b/i, {class: "stabiliser", name: "konjac", number: "E 425"}],
  [/^(gum arabic|acacia gum)\b/i, {class: "stabiliser", name: "gum arabic", number: "E 414"}],
  [/^tragacanth\b/i, {class: "stabiliser", name: "tragacanth", number: "E 413"}],
  [/^karaya\b/i, {class: "stabiliser", name: "karaya gum", number: "E 416"}],
  [/^methyl ?cellulose\b/i, {class: "stabiliser", name: "methyl cellulose", number: "E 461"}],
  [/^microcrystalline cellulose\b/i, {class: "stabiliser", name: "cellulose", number: "E 460"}],
  [/^sucrose esters\b/i, {class: "emulsifier", name: "sucrose esters of fatty acids", number: "E 473"}],
  [
    /^lactic esters\b/i,
    {
      class: "emulsifier",
      name: "lactic acid esters of mono- and diglycerides of fatty acids",
      number: "E 472b",
    },
  ],
  [
    /^polyglycerol polyricinoleate\b/i,
    {class: "emulsifier", name: "polyglycerol polyricinoleate", number: "E 476"},
  ],
  [/^malic acid\b/i, {class: "acid", name: "malic acid", number: "E 296"}],
  [/^tartaric acid\b/i, {class: "acid", name: "tartaric acid", number: "E 334"}],
  [/^lactic acid\b/i, {class: "acid", name: "lactic acid", number: "E 270"}],
  [/^ascorbic acid\b/i, {class: "antioxidant", name: "ascorbic acid", number: "E 300"}],
  [/^trisodium citrate\b/i, {class: "acidity regulator", name: "sodium citrates", number: "E 331"}],
  [/^disodium phosphate\b/i, {class: "acidity regulator", name: "sodium phosphates", number: "E 339"}],
  [/^citric acid\b/i, {class: "acid", name: "citric acid", number: "E 330"}],
  [/^glycerol\b/i, {class: "humectant", name: "glycerol", number: "E 422"}],
  [/^polydextrose\b/i, {class: "bulking agent", name: "polydextrose", number: "E 1200"}],
  [/^sorbitol\b/i, {class: "sweetener", name: "sorbitols", number: "E 420"}],
  [/^mannitol\b/i, {class: "sweetener", name: "mannitol", number: "E 421"}],
  [/^isomalt\b/i, {class: "sweetener", name: "isomalt", number: "E 953"}],
  [/^maltitol\b/i, {class: "sweetener", name: "maltitols", number: "E 965"}],
  [/^lactitol\b/i, {class: "sweetener", name: "lactitol", number: "E 966"}],
  [/^xylitol\b/i, {class: "sweetener", name: "xylitol", number: "E 967"}],
  [/^erythritol\b/i, {class: "sweetener", name: "erythritol", number: "E 968"}],
];

/** Names that a list gives in a category's word: Annex VII, Part B; of the fructose syrups by Directive 2001/111/EC, from memory. */
const CUSTOMARY: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^(sucrose|(caster|granulated|white|table) sugar)$/i, "sugar"],
  [/^(anhydrous dextrose|dextrose( mono| an)?hydrate|dextrose)$/i, "dextrose"],
  [/^dried glucose syrup\b.*/i, "dried glucose syrup"],
  [/^glucose syrup\b.*/i, "glucose syrup"],
  [/^maltodextrin\b.*/i, "maltodextrin"],
  [/^high-fructose syrup 55\b.*/i, "fructose-glucose syrup"],
  [/^high-fructose syrup\b.*/i, "glucose-fructose syrup"],
  [/^invert syrup\b.*/i, "invert sugar syrup"],
  [/^lactose( monohydrate)?$/i, "lactose"],
];

/** The additive that a name on the shelf means, if it means one. */
function additiveOf(name: string): Additive | undefined {
  return ADDITIVES.find(([pattern]) => pattern.test(name))?.[1];
}

/**
 * Name of an ingredient in a list of ingredients, from its name on the shelf: the customary name ("sugar" for sucrose), an additive
 * by its class and its name, without a strength behind it.
 *
 * Regulation (EU) No 1169/2011, Annex VII, Parts B and C. In the United States additives stand by their common name alone.
 *
 * @param as `EU` (by default, and as in Great Britain) or `US`; or `E numbers` for the number in place of an additive's name
 * @throws InputError for another word
 *
 * @example
 * ```ts
 * customaryName("locust bean gum"); // => "stabiliser (locust bean gum)"
 * customaryName("locust bean gum", "E numbers"); // => "stabiliser (E 410)"
 * customaryName("cream 40 %"); // => "cream"
 * ```
 */
export function customaryName(name: string, as: ListStyle = "EU"): string {
  expectText(name, "name", "give the name of an ingredient");
  oneOf(as, LIST_STYLES, "as", "way of naming");
  const additive = additiveOf(name);
  if (additive && as === "US") return additive.name;
  if (additive) return `${additive.class} (${(as === "E numbers" && additive.number) || additive.name})`;
  const customary = CUSTOMARY.find(([pattern]) => pattern.test(name))?.[1];
  return (
    customary ??
    (name.replace(/(?:\s+over)?\s+\d+(?:[.,]\d+)?(?:\s*[-–]\s*\d+)?\s*(?:%(?: vol)?|DE)$/i, "") || name)
  );
}

/** Options for the naming of additives in a list. */
export type ListStyle = "EU" | "US" | "E numbers";

export const LIST_STYLES: readonly ListStyle[] = ["EU", "US", "E numbers"];

/** Ingredients that are sweeteners by that list. */
export function isSweetener(name: string): boolean {
  return additiveOf(name)?.class === "sweetener";
}

/** True for a name of something that is itself made of several ingredients. */
export function isCompound(name: string): boolean {
  return /\b(chocolate|biscuits?|crackers?|cookies?|wafers?|cake|marzipan|praline|spread|jam|liqueur|condensed|dulce|blend|marshmallows?|peanut butter|sauce)\b/i.test(
    name,
  );
}

/**
 * Refuses anything but printed names by the ingredient's name.
 *
 * @throws InputError naming the entry
 */
export function expectNames(names: Readonly<Record<string, LabelName>>): void {
  expectRecord(names, "names", "give {name, contains} by the ingredient's name");
  for (const [ingredient, own] of Object.entries(names)) {
    const place = `names.${ingredient}`;
    expectOptions(own, ["name", "contains"], place);
    for (const key of ["name", "contains"] as const)
      if (own[key] !== undefined) expectText(own[key], `${place}.${key}`);
  }
}

/** Printed form of an ingredient that the cook chose. */
export function ownLabel(names: Readonly<Record<string, LabelName>>, name: string): LabelName {
  return Object.hasOwn(names, name) ? names[name]! : {};
}
