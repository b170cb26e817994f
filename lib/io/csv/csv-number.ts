import {InputError} from "../../core/errors.ts";
import {finite, type Limits} from "../../core/numbers.ts";

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** One sign before three digits: decimals or thousands. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** Digits in threes with one kind of sign between, and perhaps decimals behind another. */
const GROUPED = /^([+-]?\d{1,3}([.,'’\s])\d{3}(?:\2\d{3})*)(?:(?!\2)[.,](\d+))?$/;

/** A number with words or signs before or behind it, and no further digits but those of a reference amount: `€ 38,50`, `< 0,5 g/100 g`. */
const DRESSED =
  /^((?:[^\d+-]*[^\d+.,-])?)([+-]?\d(?:[\d.,'’\s]*\d)?)\s*((?:[\p{L}\p{Sc}%‰°]\D*(?:\/\s*10*\s*\p{L}*)?)?)$/u;

/** Longest cell that is looked through for a number, characters. */
const LONGEST_DRESSED = 60;

const TRACES = /^(?:in )?(?:traces?|tr\.?)$/i;

const BELOW = /[<≤⩽]|\b(?:less than|under|below)\b/i;

/**
 * A number from a piece of text.
 *
 * Nothing is guessed: `1.250`, which could be thousands in a file with decimal commas, and `38,50 €` are refused with an error
 * that says what to write.
 *
 * @throws InputError naming the place, the text and the accepted range, or the number to write instead
 */
export function numberFrom(
  text: string,
  decimalComma: boolean,
  place: string,
  limits: Limits = {},
  unit = "",
): number {
  const plain = decimalComma ? text.replace(",", ".") : text;
  if (PLAIN.test(plain) && !(decimalComma && text.includes(".") && AMBIGUOUS.test(text)))
    return finite(Number(plain), place, limits, unit);
  const [problem, advice] =
    text.length <= LONGEST_DRESSED ? (mistakeIn(text, decimalComma, limits, unit) ?? []) : [];
  if (problem !== undefined && advice !== undefined) throw new InputError(place, problem, text, advice);
  return finite(text, place, limits, unit);
}

/** Mistake in a text that is nearly a number, with the next step; `undefined` for a text without a number. */
function mistakeIn(
  text: string,
  decimalComma: boolean,
  limits: Limits,
  unit: string,
): readonly [problem: string, advice: string] | undefined {
  const zero = (limits.min ?? 0) <= 0 ? "0, or " : "";
  const ofUnit = unit && ` (${unit})`;
  if (TRACES.test(text)) return ["not a number", `write ${zero}the number alone${ofUnit}`];
  const [, before = "", number = "", behind = ""] = DRESSED.exec(text) ?? [];
  if (decimalComma && number.includes(".") && AMBIGUOUS.test(number))
    return [
      "a point before three digits may mean thousands",
      `write ${number.replace(".", "")}, or a decimal comma: ${number.replace(".", ",")}`,
    ];
  if (!decimalComma && number.includes(",") && (AMBIGUOUS.test(number) || /^[+-]?\d+,\d+$/.test(text)))
    return [
      "a comma in a number, in a file whose cells are parted by commas",
      "write a decimal point and no sign for thousands, or part the cells by semicolons",
    ];
  const grouped = GROUPED.exec(number);
  const alone = aloneIn(number, grouped, decimalComma ? "," : ".");
  if (alone === undefined) return undefined;
  if (BELOW.test(before))
    return ["a limit, not a number", `write ${zero}the number alone: ${alone}${ofUnit}`];
  if (before || behind) {
    // A number in another unit of mass cannot be suggested: it would first have to be converted.
    const converted = unit.startsWith("g") && /^(?:kg|mg|[µμ]g|oz|lb)\b/i.test(behind);
    return ["more than a number", `write the number alone${converted ? "" : `: ${alone}`}${ofUnit}`];
  }
  return grouped
    ? ["a sign for thousands in a number", `leave out the thousands ${nameOf(grouped[2]!)}: ${alone}`]
    : undefined;
}

/** A number in the form that the file should have; `undefined` for anything else. */
function aloneIn(number: string, grouped: RegExpExecArray | null, sign: string): string | undefined {
  if (/^[+-]?\d+(?:[.,]\d+)?$/.test(number)) return number.replace(/[.,]/, sign);
  if (!grouped) return undefined;
  const [, whole, , decimals] = grouped;
  return whole!.replace(/[^\d+-]/g, "") + (decimals === undefined ? "" : sign + decimals);
}

function nameOf(sign: string): string {
  if (sign === ".") return "point";
  if (sign === ",") return "comma";
  return sign.trim() === "" ? "blank" : "apostrophe";
}
