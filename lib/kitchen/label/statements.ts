import {finite, sum} from "../../core/numbers.ts";
import {expectOptions, oneOf} from "../../core/shape.ts";
import type {Part} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {expectProduct, type Product, productComposition, productLines} from "../product/product.ts";
import {type Force, type HowRead, LABEL_LAWS, type LabelLaw} from "./label-law.ts";
import {isSweetener} from "./label-names.ts";

/** A sentence that a label carries because of the food's contents. */
export interface LabelStatement {
  /** As the law prints it, where it prints one. */
  readonly text: string;
  /** `law`, or `offered` where no law asks for it of an ice. */
  readonly force: Force;
  readonly rule: string;
  readonly read: HowRead;
}

/** Facts that the statements depend on. */
export interface StatementOptions {
  /** `EU` by default. */
  readonly law?: LabelLaw;
  /** g of a serving, from 1, for the United States; 100 by default. */
  readonly serving?: number;
}

/** Added polyols that need a statement, g per 100 g: Regulation (EU) No 1169/2011, Annex III, point 2.4, "more than 10 %". */
export const MANY_POLYOLS = 10;

/** Polydextrose of a serving that needs a statement in the United States, g: 21 CFR 172.841(e). */
const MUCH_POLYDEXTROSE = 15;

/** Groups whose polyols are their own, not added: pears and plums hold sorbitol. */
const NATURAL = new Set(["fruit", "juice"]);

/** Sugars that make "with sugar(s)" where they are added as such. */
const ADDED_SUGARS: readonly Part[] = [
  "sucrose",
  "dextrose",
  "fructose",
  "maltose",
  "glucoseSyrupSolids",
  "trehalose",
  "isomaltulose",
  "tagatose",
];

const INTENSE =
  /\b(aspartame|acesulfame|sucralose|saccharin|stevia|steviol|thaumatin|neotame|advantame|neohesperidine|cyclamate)\b/i;

/** Polyols that come from no fruit, g per 100 g of the product. */
export function addedPolyols(product: Product): number {
  const added = productLines(product).filter(({ingredient: {group = ""}}) => !NATURAL.has(group));
  return sum(
    added.map(({ingredient, grams}) => (quantityOf(ingredient.composition, "polyols") * grams) / 100),
  );
}

/**
 * The sentences that a label needs besides its list: sweeteners beside the name, polyols above 10 %, aspartame, and in the United
 * States polydextrose; and sentences that are offered though no law asks them of an ice.
 *
 * Regulation (EU) No 1169/2011, Annex III, points 2.1 to 2.4, and the same in Great Britain; 21 CFR 172.841(e). An ice with polyols
 * or sweeteners must moreover be energy-reduced or hold no added sugar (Regulation (EC) No 1333/2008, Annex II, category 03).
 * Annex III, point 3, on liquorice, is for confectionery and drinks. This is not licensed advice.
 *
 * @param options the law, `EU` by default, and the g of a serving, for the United States
 * @throws InputError for another law, and a serving that is no number from 1 g
 *
 * @example
 * ```ts
 * const lines = ["whole milk", "sucrose", "erythritol"].map((name) => ({
 *   ingredient: findIngredient(includedPantry(), name),
 *   grams: 100,
 * }));
 * labelStatements(makeProduct("ice", [baseComponent({name: "ice", lines})]))
 *   .filter(({force}) => force === "law")
 *   .map(({text}) => text); // => ["with sugar(s) and sweetener(s)", "excessive consumption may produce laxative effects"]
 * ```
 */
export function labelStatements(product: Product, options: StatementOptions = {}): LabelStatement[] {
  expectProduct(product);
  expectOptions(options, ["law", "serving"]);
  const {law = "EU", serving = 100} = options;
  oneOf(law, LABEL_LAWS, "options.law", "law");
  finite(serving, "options.serving", {min: 1}, "g");
  const lines = productLines(product).filter(({grams}) => grams > 0);
  const composition = productComposition(product);
  const statements: LabelStatement[] = [];
  const add = (text: string, force: Force, rule: string, read: HowRead = "text") =>
    statements.push({text, force, rule, read});
  if (law === "US") {
    if (((composition.polydextrose ?? 0) * serving) / 100 > MUCH_POLYDEXTROSE)
      add(
        "Sensitive individuals may experience a laxative effect from excessive consumption of this product",
        "law",
        "21 CFR 172.841(e)",
      );
    if ((composition.sorbitol ?? 0) + (composition.mannitol ?? 0) > 0)
      add(
        "Excess consumption may have a laxative effect",
        "offered",
        "21 CFR 184.1835 and 180.25",
        "from memory",
      );
  } else {
    const annex = (point: string) => `Regulation (EU) No 1169/2011, Annex III, point ${point}`;
    const names = lines.map(({ingredient}) => ingredient.name);
    if (names.some((name) => isSweetener(name) || INTENSE.test(name))) {
      const sugared = lines.some(
        ({ingredient: {composition: own, group = ""}}) =>
          group === "sugar" && ADDED_SUGARS.some((part) => (own[part] ?? 0) > 0),
      );
      add(
        sugared ? "with sugar(s) and sweetener(s)" : "with sweetener(s)",
        "law",
        annex(sugared ? "2.2" : "2.1"),
      );
    }
    if (names.some((name) => /\baspartame\b/i.test(name)))
      add("contains a source of phenylalanine", "law", annex("2.3"));
    if (addedPolyols(product) > MANY_POLYOLS)
      add("excessive consumption may produce laxative effects", "law", annex("2.4"));
  }
  add(
    "Do not refreeze after defrosting",
    "offered",
    "no rule: “quick-frozen” does not cover ices (SI 2007/191)",
  );
  if (composition.alcohol)
    add(
      "Contains alcohol",
      "offered",
      "no rule in the EU: Article 9(1)(k) of 1169/2011 is for beverages above 1.2 % vol",
    );
  return statements;
}
