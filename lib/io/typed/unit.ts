import {kitchenUnit} from "../../core/units.ts";

/** A unit at the start of a text, in a word that `gramsOf` reads. */
export interface TypedUnit {
  /** Number of `word` in one of the unit as written. */
  readonly times: number;
  /** A unit of mass or volume as the library spells it. */
  readonly word: string;
  readonly rest: string;
  /** Assumption, in words for the cook. */
  readonly taken?: string;
}

interface Known {
  readonly word: string;
  readonly times?: number;
  readonly taken?: string;
}

/** Spellings beside those of `kitchenUnit`, and small measures without a size of their own (common practice, no source). */
const KNOWN: Readonly<Record<string, Known>> = Object.fromEntries(
  (
    [
      [["gr", "gm", "gms", "gs"], {word: "g"}],
      [["kgs", "kilogramme", "kilogrammes"], {word: "kg"}],
      [["ltr", "ltrs", "lt"], {word: "l"}],
      [["mls", "cc", "millis"], {word: "ml"}],
      [["tsps", "teasp", "t"], {word: "teaspoon"}],
      [["tbsps", "tbs", "tblsp", "tblsps", "tablesp", "tbl", "tb"], {word: "tablespoon"}],
      [
        ["dessertspoon", "dessertspoons", "dsp", "dstspn"],
        {word: "ml", times: 10, taken: "a dessertspoon taken as 10 ml"},
      ],
      [["pinch", "pinches"], {word: "g", times: 0.3, taken: "a pinch taken as 0.3 g"}],
      [["dash", "dashes"], {word: "ml", times: 0.6, taken: "a dash taken as 0.6 ml"}],
      [["drop", "drops"], {word: "ml", times: 0.05, taken: "a drop taken as 0.05 ml"}],
      [["splash", "splashes", "glug", "glugs"], {word: "ml", times: 10, taken: "a splash taken as 10 ml"}],
      [["drizzle", "drizzles"], {word: "ml", times: 10, taken: "a drizzle taken as 10 ml"}],
      [["squeeze", "squeezes"], {word: "ml", times: 5, taken: "a squeeze taken as 5 ml"}],
      [["knob", "knobs"], {word: "g", times: 15, taken: "a knob taken as 15 g"}],
      [["stick", "sticks"], {word: "g", times: 113, taken: "a stick taken as 113 g, the US stick of butter"}],
      [["shot", "shots"], {word: "ml", times: 25, taken: "a shot taken as 25 ml"}],
      [["cup", "cups"], {word: "cup", taken: "a cup taken as the US cup, 237 ml"}],
      [
        ["pint", "pints", "pt", "pts"],
        {word: "ml", times: 568, taken: "a pint taken as the UK pint, 568 ml"},
      ],
      [
        ["fluid ounce", "fluid ounces", "fl oz", "floz"],
        {word: "fluid ounce", taken: "a fluid ounce taken as 29.6 ml"},
      ],
      [["quart", "quarts", "qt"], {word: "quart", taken: "a quart taken as the US quart, 946 ml"}],
      [["gallon", "gallons"], {word: "gallon", taken: "a gallon taken as the US gallon, 3.79 l"}],
    ] as const satisfies readonly (readonly [readonly string[], Known])[]
  ).flatMap(([words, known]) => words.map((word) => [word, known])),
);

/** Words for the fill of a spoon: factor on a level one, and a note for the cook. */
const FULL: Readonly<Record<string, {readonly times: number; readonly taken: string} | undefined>> = {
  heaped: {times: 1.5, taken: "a heaped spoon taken as one and a half"},
  heaping: {times: 1.5, taken: "a heaped spoon taken as one and a half"},
  rounded: {times: 1.25, taken: "a rounded spoon taken as one and a quarter"},
  generous: {times: 1.25, taken: "a generous measure taken as one and a quarter"},
  scant: {times: 0.9, taken: "a scant measure taken as nine tenths"},
  level: undefined,
  big: {times: 1.5, taken: "a big spoon or pinch taken as one and a half"},
  good: {times: 1.25, taken: "a good measure taken as one and a quarter"},
  small: {times: 0.75, taken: "a small measure taken as three quarters"},
};

/** The unit that a text begins with: `g`, `fl oz`, `heaped tbsp`, `pinch of`; `undefined` where it begins with a name. */
export function unitFirst(text: string): TypedUnit | undefined {
  const trimmed = text.replace(/^[\s-]+/, "");
  const full = /^(\p{L}+)\s+(?=\p{L})/u.exec(trimmed);
  if (full && Object.hasOwn(FULL, full[1]!.toLowerCase())) {
    const unit = plainUnit(trimmed.slice(full[0].length));
    const how = FULL[full[1]!.toLowerCase()];
    if (!unit) return undefined;
    return how ? {...unit, times: unit.times * how.times, taken: how.taken} : unit;
  }
  return plainUnit(trimmed);
}

function plainUnit(text: string): TypedUnit | undefined {
  // A capital T is the larger spoon wherever it is used at all.
  const capital = /^T(?=[\s.]|$)\.?/.exec(text);
  if (capital)
    return {
      times: 1,
      word: "tablespoon",
      rest: text.slice(capital[0].length),
      taken: "T taken as a tablespoon",
    };
  for (const pattern of [/^\p{L}+\.?\s+\p{L}+\.?(?![\p{L}\p{N}])/u, /^\p{L}+\.?(?![\p{L}\p{N}'’])/u]) {
    const written = pattern.exec(text)?.[0];
    if (written === undefined) continue;
    const word = written.toLowerCase().replace(/\./g, "").replace(/\s+/g, " ");
    const rest = text.slice(written.length);
    const known = Object.hasOwn(KNOWN, word) ? KNOWN[word] : undefined;
    if (known) {
      const taken = written === "t" ? "t taken as a teaspoon" : known.taken;
      return {times: known.times ?? 1, word: known.word, rest, ...(taken !== undefined && {taken})};
    }
    if (kitchenUnit(word) !== undefined) return {times: 1, word, rest};
  }
  return undefined;
}
