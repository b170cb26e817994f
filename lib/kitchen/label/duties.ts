import {oneOf} from "../../core/shape.ts";
import {
  type Force,
  type HowRead,
  LABEL_LAWS,
  type LabelLaw,
  WAYS_OF_SALE,
  type WayOfSale,
} from "./label-law.ts";

/** A particular that a label must have, may have, or need not have. */
export interface LabelDuty {
  readonly what: string;
  readonly force: Force;
  readonly rule: string;
  readonly read: HowRead;
}

const FIC = "Regulation (EU) No 1169/2011";
const duty = (what: string, force: Force, rule: string, read: HowRead = "text"): LabelDuty => ({
  what,
  force,
  rule,
  read,
});

/** Particulars that the Regulation asks of prepacked food; it stands in the law of Great Britain as on exit day. */
const PREPACKED: readonly LabelDuty[] = [
  duty("name of the food, customary or descriptive", "law", `${FIC}, Articles 9(1)(a) and 17`),
  duty("list of ingredients, by weight, under a heading with “ingredients”", "law", `${FIC}, Article 18`),
  duty("allergens set apart in the list", "law", `${FIC}, Article 21 and Annex II`),
  duty("percentage of what the name or a picture promises", "law", `${FIC}, Article 22 and Annex VIII`),
  duty("best before, with the day within three months", "law", `${FIC}, Article 24 and Annex X`),
  duty("how to store it", "law", `${FIC}, Article 25`),
  duty("name and address of the maker or seller", "law", `${FIC}, Article 9(1)(h)`),
  duty(
    "letters at least 1.2 mm high without their strokes; 0.9 mm on packs below 80 cm²",
    "law",
    `${FIC}, Article 13`,
  ),
  duty(
    "nutrition declaration, where the pack is below 25 cm² or a maker sells small quantities to eaters or shops nearby; else it must",
    "exempt",
    `${FIC}, Article 30 and Annex V, points 18 and 19`,
  ),
  duty("strength of the alcohol", "exempt", `${FIC}, Article 9(1)(k): beverages alone`),
  duty("“do not refreeze”", "offered", "no rule: “quick-frozen” does not cover ices (SI 2007/191)"),
];

const EU_LOOSE: readonly LabelDuty[] = [
  duty("the allergens, as “contains …” with their names", "law", `${FIC}, Articles 21(1) and 44(1)(a)`),
  duty("all else, unless your country asks for it", "exempt", `${FIC}, Article 44(1)(b)`),
  duty(
    "energy alone, or energy with fat, saturates, sugars and salt, of a portion",
    "offered",
    `${FIC}, Articles 30(5) and 33(3)`,
  ),
];

const DUTIES: Readonly<Record<LabelLaw, Readonly<Record<WayOfSale, readonly LabelDuty[]>>>> = {
  EU: {
    prepacked: [
      ...PREPACKED.slice(0, 4),
      duty(
        "net quantity, by weight; by volume where your country had it so before 2012",
        "law",
        `${FIC}, Articles 23 and 42`,
      ),
      duty(
        "lot, with an L unless it is plain; a date with its day will do",
        "law",
        "Directive 2011/91/EU",
        "from memory",
      ),
      ...PREPACKED.slice(4),
    ],
    direct: EU_LOOSE,
    loose: EU_LOOSE,
  },
  GB: {
    prepacked: [
      ...PREPACKED.slice(0, 4),
      duty("net quantity, of ice cream by volume or weight", "law", "SI 2006/659, regulations 3(6) and 8"),
      duty(
        "lot, with an L unless it is plain; a date with day and month will do",
        "law",
        "SI 1996/1502, regulations 3 and 4",
      ),
      ...PREPACKED.slice(4),
    ],
    direct: [
      duty(
        "name and whole list of ingredients on the package, allergens set apart",
        "law",
        "SI 2014/1855, regulation 5A (England)",
      ),
      duty("the list on packs below 10 cm²", "exempt", "SI 2014/1855, regulation 5A (England)"),
      duty(
        "lot, net quantity, nutrition declaration",
        "exempt",
        "SI 1996/1502, regulation 4; 1169/2011, Article 44(1)(b)",
      ),
    ],
    loose: [
      duty(
        "the allergens, on a notice, a menu or a ticket, or by word where a notice says to ask",
        "law",
        "SI 2014/1855, regulation 5 (England)",
      ),
      duty(
        "name of the food beside it, but for what is ready to eat from a caterer",
        "law",
        "SI 2014/1855, regulation 6 (England)",
      ),
      duty(
        "composition of ice cream and dairy ice cream",
        "exempt",
        "SI 2014/1855, regulation 13: revoked in 2014, custom since",
      ),
    ],
  },
  US: {
    prepacked: [
      duty("name, as its standard of identity has it", "law", "21 CFR 135.110 to 135.160"),
      duty("list of ingredients, by weight", "law", "21 CFR 101.4(a)"),
      duty(
        "“Contains …” with the nine major allergens, nuts and fish by their kind",
        "law",
        "21 U.S.C. 343(w)",
      ),
      duty("net quantity, by volume", "law", "21 CFR 101.7", "from memory"),
      duty(
        "Nutrition Facts, where a small maker gives notice or is exempt by its sales; else they must",
        "exempt",
        "21 CFR 101.9(j)(1) and (18)",
        "from memory",
      ),
      duty("name and place of the maker", "law", "21 CFR 101.5", "from memory"),
    ],
    direct: [
      duty(
        "as prepacked; state law decides what a shop's own packing needs",
        "law",
        "21 CFR 101; state law",
        "from memory",
      ),
    ],
    loose: [duty("allergens and names on request; state law decides", "offered", "state law", "from memory")],
  },
};

/**
 * Duties of a label by law and way of sale: what it must say, need not say, and may say, each with its paragraph and how that was
 * read. A duty that was read only from memory fails no product. Laws change: check with your authority; this is no legal advice.
 *
 * @throws InputError for another law or way of sale
 *
 * @example
 * ```ts
 * labelDuties("EU", "loose")[0]?.what; // => "the allergens, as “contains …” with their names"
 * ```
 */
export function labelDuties(law: LabelLaw, sold: WayOfSale): readonly LabelDuty[] {
  oneOf(law, LABEL_LAWS, "law", "law");
  oneOf(sold, WAYS_OF_SALE, "sold", "way of sale");
  return DUTIES[law][sold];
}
