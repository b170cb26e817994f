import type {Amount, ConflictingLimit} from "../../balance/mix/answer.ts";
import type {Brief} from "../../balance/brief/brief.ts";
import {printable} from "../../core/errors.ts";
import {decimal, grams, trueMinus} from "../../core/format.ts";
import type {DoseOver} from "../../pantry/doses.ts";
import {plainName} from "../text/plain-name.ts";

/** Widest name in a column, characters; longer ones are cut. */
export const NAME_WIDTH = 30;

/** The name of a brief and its batch, underlined. */
export function titleLines(brief: Brief): string {
  const text = `${printable(brief.name)}, ${grams(brief.batch)} g`;
  return `${text}\n${"=".repeat(text.length)}`;
}

/** Amounts with their share of the mix, the largest first, and their sum. */
export function amountLines({
  amounts,
  batch,
}: {
  readonly amounts: readonly Amount[];
  readonly batch: number;
}): string[] {
  const used = amounts.filter((amount) => amount.percent > 1e-4).sort((a, b) => b.grams - a.grams);
  const lines = used.map(
    ({ingredient, grams: g, percent}) =>
      `  ${cell(ingredient)} ${right(`${grams(g)} g`, 11)} ${right(`${decimal(percent, 2)} %`, 9)}`,
  );
  return [...lines, `  ${cell("in all")} ${right(`${grams(batch)} g`, 11)} ${right("100.00 %", 9)}`];
}

/** A limit in words: `fat at least 7`, `cream at most 100 g`, `customary: salt at most 0.2 %`. */
export function limitName({
  of = "target",
  target,
  bound,
  limit,
  inStock,
  own,
  percent,
}: Pick<ConflictingLimit, "target" | "bound" | "limit" | "inStock" | "own" | "percent"> &
  Partial<Pick<ConflictingLimit, "of">>): string {
  const word = {min: "at least", max: "at most", equal: "exactly"}[bound];
  const stock = inStock ? ", all there is" : "";
  const unit = {target: "", rule: "", ingredient: " g", dose: " %"}[of];
  const before = of === "dose" && !own ? "customary: " : "";
  const name = of === "ingredient" ? printable(target) : plainName(printable(target));
  const figure =
    percent === undefined
      ? `${decimal(limit, decimals(limit))}${unit}`
      : `${decimal(percent, decimals(percent))} %`;
  return `${before}${name} ${word} ${figure}${stock}`;
}

/** Step of a limit for which its price is given: 100 g of an ingredient, a tenth of a per cent of a dose, else one unit. */
export function priceUnit({of}: Pick<ConflictingLimit, "of">): {units: number; words: string} {
  if (of === "ingredient") return {units: 100, words: "100 g"};
  return of === "dose" ? {units: 0.1, words: "0.1 %"} : {units: 1, words: "one"};
}

/** The doses that a mix goes beyond, a caution a line. */
export function doseCautions(over: readonly DoseOver[] = []): string[] {
  return over.map(
    ({name, has, limit, source}) =>
      `Caution: ${name} ${decimal(has, 2)} %, customary at most ${decimal(limit, decimals(limit))} % (${source}).`,
  );
}

/** Number of decimals of a number as it was given, at most 4. */
export function decimals(value: number): number {
  return Math.min(4, (String(value).split(".")[1] ?? "").length);
}

/** A name as a column of fixed width, safe for a terminal. */
export function cell(text: string): string {
  const plain = trueMinus(printable(text));
  return (plain.length > NAME_WIDTH ? `${plain.slice(0, NAME_WIDTH - 1)}…` : plain).padEnd(NAME_WIDTH);
}

/** Text at the right of a column. */
export function right(text: string, width: number): string {
  return text.padStart(width);
}

/** Lines of at most 78 columns, broken at commas. */
export function wrap(text: string): string[] {
  const lines = [""];
  for (const word of text.split(", ")) {
    const line = lines.at(-1)!;
    if (line && line.length + word.length > 74) {
      lines[lines.length - 1] = `${line},`;
      lines.push(word);
    } else lines[lines.length - 1] = line ? `${line}, ${word}` : word;
  }
  return lines.map((line) => `  ${line}`);
}

/** Lines of at most 78 columns, broken at words; none for an empty text. */
export function wrapWords(text: string): string[] {
  const lines: string[] = [];
  // A number stays on one line with its unit.
  for (const word of text.split(/ (?![°%])/).filter(Boolean)) {
    const line = lines.at(-1);
    if (line === undefined || line.length + 1 + word.length > 76) lines.push(word);
    else lines[lines.length - 1] = `${line} ${word}`;
  }
  return lines.map((line) => `  ${line}`);
}
