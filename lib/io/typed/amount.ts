import {numberFirst} from "./number.ts";
import {unitFirst} from "./unit.ts";

/** An amount as it is written: a number of units, of packs, or of whole ones. */
export interface TypedAmount {
  readonly count: number;
  /** Unit of mass or volume; absent for whole ones and bare numbers. */
  readonly unit?: string;
  /** Share of the whole recipe, where the unit is a percent sign. */
  readonly percent?: boolean;
  /** The pack that it counts, such as `tub`, where its size is not said. */
  readonly pack?: string;
  /** Assumptions, in words for the cook. */
  readonly taken: readonly string[];
}

/** An amount at the start of a text and what follows it. */
export interface AmountFirst extends TypedAmount {
  readonly rest: string;
}

const PACK =
  /^\s*(tubs?|pots?|tins?|cans?|cartons?|bottles?|jars?|packs?|packets?|pkts?|bags?|bars?|sachets?|boxes|box|blocks?|tubes?|punnets?|sheets?|leaves|leaf|pods?|sprigs?|slices?|rashers?|bunch(?:es)?|handfuls?|cloves?|scoops?)\b\.?(?:\s+of\b)?/i;

/** Packs that are pieces of the thing itself: a weight behind them is of all of them, `4 leaves (8 g)`. */
const PIECE =
  /^(?:sheets?|leaves|leaf|pods?|sprigs?|slices?|rashers?|bunch(?:es)?|handfuls?|cloves?|scoops?)$/;

/** `250 g` in `2 x 250 g tubs`. */
const TIMES = /^\s*[x×*]\s*/i;

/**
 * The amount that a text begins with: `500 g`, `1 1/2 tsp`, `2 x 250 g tub`, `1 tin (397 g)`, `a pinch of`, `3`; `undefined` where it
 * begins with none. Of a measure given twice, `1 cup (240 g)`, the mass is taken.
 */
export function amountFirst(text: string): AmountFirst | undefined {
  const number = numberFirst(text);
  if (!number) return unitAlone(text);
  const taken = number.taken === undefined ? [] : [number.taken];
  const times = TIMES.exec(number.rest);
  const each = times ? amountFirst(number.rest.slice(times[0].length)) : undefined;
  if (each?.unit !== undefined) {
    const rest = each.rest.replace(PACK, "");
    return {...each, count: number.value * each.count, taken: [...taken, ...each.taken], rest};
  }
  if (/^\s*%/.test(number.rest))
    return {count: number.value, percent: true, taken, rest: number.rest.replace(/^\s*%/, "")};
  const unit = unitFirst(number.rest);
  // "2 250 g tubs"
  const packed = unit ? undefined : packOfSize(number.value, number.rest, taken);
  if (packed) return packed;
  if (!unit) return wholeOnes(number.value, number.rest, taken);
  const spaced = spacedPacks(text, unit.rest);
  if (spaced) return spaced;
  const assumed = unit.taken === undefined ? taken : [...taken, unit.taken];
  const more = AND_MORE.exec(unit.rest);
  const after = more ? unit.rest.slice(more[0].length) : unit.rest;
  const count = number.value + (more ? (more[1]!.toLowerCase() === "half" ? 0.5 : 0.25) : 0);
  const rest = after.replace(PACK, "");
  return restated({count: count * unit.times, unit: unit.word, taken: assumed, rest});
}

/** The rest of `a cup and a half`. */
const AND_MORE = /^\s+and (?:an? )?(half|quarter)\b/i;

/** `pinch of salt`, `knob of butter`: one of it. */
function unitAlone(text: string): AmountFirst | undefined {
  const unit = unitFirst(text);
  if (!unit?.taken || !/^(?:\p{L}+\s+)?(?:pinch|dash|splash|knob|drop|glug)/iu.test(text.trim()))
    return undefined;
  return {count: unit.times, unit: unit.word, taken: [unit.taken], rest: unit.rest};
}

/** `250 g tubs` after a number of them. */
function packOfSize(count: number, text: string, taken: readonly string[]): AmountFirst | undefined {
  const size = numberFirst(text.trim().replace(/^[([]\s*/, ""));
  const unit = size && unitFirst(size.rest);
  const after = unit && unit.rest.replace(/^\s*[)\]]/, "");
  const pack = after === undefined ? undefined : PACK.exec(after.replace(/^-/, ""));
  if (!size || !unit || !pack) return undefined;
  const rest = after!.slice(pack[0].length + (after!.startsWith("-") ? 1 : 0));
  return {count: count * size.value * unit.times, unit: unit.word, taken, rest};
}

/** `2 250 g tubs` again, where the number was read as thousands. */
function spacedPacks(text: string, after: string): AmountFirst | undefined {
  const two = /^(\d{1,2}) (\d{3})(?=\s*(?:g|ml)\b)/i.exec(text);
  if (!two || !PACK.test(after)) return undefined;
  return packOfSize(Number(two[1]), text.slice(two[1]!.length), []);
}

/** Whole ones, or packs whose size may stand in brackets behind: `2 tubs (250 g each)`. */
function wholeOnes(count: number, text: string, taken: readonly string[]): AmountFirst | undefined {
  const pack = PACK.exec(text);
  const after = pack ? text.slice(pack[0].length) : text;
  const size = bracketed(after);
  if (size) {
    const each = size.each || !(pack && PIECE.test(pack[1]!.toLowerCase()));
    const told =
      each && !size.each && count > 1 ? [oneTaken(`${plainCount(size.count)} ${size.unit}`, count)] : [];
    return {
      count: each ? count * size.count : size.count,
      unit: size.unit!,
      taken: [...taken, ...size.taken, ...told],
      rest: size.rest,
    };
  }
  if (pack) return {count, pack: pack[1]!.toLowerCase(), taken, rest: after};
  return {count, taken, rest: text};
}

/** Note for the cook that a weight was taken as that of one of several. */
export function oneTaken(written: string, count: number): string {
  return `${written} taken as one of the ${plainCount(count)}`;
}

/** A number without an exponent, and without zeros behind. */
export function plainCount(count: number): string {
  return String(Number(count.toFixed(6)));
}

/** A mass or volume in brackets at the beginning of a text, and whether it is said to be that of each. */
function bracketed(text: string): (AmountFirst & {readonly each: boolean}) | undefined {
  const found = /^\s*[([]\s*(?:about |approx\.? |ca\.? |each |~)?([^()[\]]*?)(?:\s*each)?\s*[)\]]/i.exec(
    text,
  );
  const size = found && amountFirst(found[1]!);
  if (!size || size.unit === undefined || size.rest.trim() !== "") return undefined;
  return {...size, rest: text.slice(found[0].length), each: /\beach\b/i.test(found[0])};
}

/** An amount followed by the same in another measure: of a volume and a mass the mass is taken. */
function restated(first: AmountFirst): AmountFirst {
  const found = bracketed(first.rest) ?? slashed(first.rest);
  if (!found) return first;
  const again = {...plainAmount(found), rest: found.rest};
  const better = isMetric(again) && !isMetric(first) && (isMass(again) || !isMass(first));
  return better || (isMass(again) && !isMass(first)) ? again : {...first, rest: again.rest};
}

function slashed(text: string): AmountFirst | undefined {
  const found = /^\s*[/|]\s*(?=[\d½¼¾⅓⅔])/u.exec(text);
  const size = found && amountFirst(text.slice(found[0].length));
  return size?.unit === undefined ? undefined : size;
}

/** True for grams, litres and their like. */
export function isMetric({unit}: TypedAmount): boolean {
  return (
    unit !== undefined &&
    /^(?:m|k|c|d)?(?:g|l|grams?|grammes?|lit(?:er|re)s?|ilos?|ilograms?|illilit(?:er|re)s?)$/i.test(unit)
  );
}

/** True for a unit of mass. */
export function isMass({unit}: TypedAmount): boolean {
  return (
    unit !== undefined &&
    /^(?:m?g|kg|grams?|grammes?|kilos?|kilograms?|milligrams?|oz|ounces?|lbs?|pounds?)$/i.test(unit)
  );
}

/** An amount without the text behind it. */
export function plainAmount({count, unit, percent, pack, taken}: TypedAmount): TypedAmount {
  return {
    count,
    taken,
    ...(unit !== undefined && {unit}),
    ...(percent && {percent}),
    ...(pack !== undefined && {pack}),
  };
}
