import {sum} from "../../core/numbers.ts";
import {textWidth} from "./letter-widths.ts";

/** A piece of a line. */
export interface Run {
  readonly text: string;
  readonly bold: boolean;
}

/** Width of runs at a type size, in its unit. */
export function widthOf(runs: readonly Run[], size: number): number {
  return size * sum(runs.map(({text, bold}) => textWidth(text, bold)));
}

/** Blanks at which no line may end: between a figure and its unit, in a date. */
const UNBROKEN = /(?<=\d) (?=[\p{L}%°/])|(?<=\p{L}) (?=20\d\d\b)/gu;

/** Runs broken into lines no wider than the width: between words, and within a word that is wider than a whole line. */
export function wrapped(runs: readonly Run[], width: number, size: number): Run[][] {
  const words = runs.flatMap(({text, bold}) =>
    text
      .replace(/\s/gu, " ")
      .replace(UNBROKEN, "\u00a0")
      .split(/(?<= )|(?= )/u)
      .map((word) => ({text: word, bold})),
  );
  const lines: Run[][] = [[]];
  let used = 0;
  const add = (run: Run, wide: number) => {
    const line = lines.at(-1)!;
    const last = line.at(-1);
    if (last && last.bold === run.bold) line[line.length - 1] = {...last, text: last.text + run.text};
    else line.push(run);
    used += wide;
  };
  const next = () => {
    lines.push([]);
    used = 0;
  };
  for (const group of glued(words)) {
    const wide = widthOf(group, size);
    const blank = group.every(({text}) => text === " ");
    if (blank && used === 0) continue;
    if (used > 0 && used + wide > width) {
      if (blank) continue;
      next();
    }
    if (wide <= width) {
      for (const run of group) add(run, widthOf([run], size));
      continue;
    }
    for (const run of group)
      for (const sign of run.text) {
        const one = {text: sign, bold: run.bold};
        const each = widthOf([one], size);
        if (used > 0 && used + each > width) next();
        add(one, each);
      }
  }
  return lines.map(trimmed).filter((line) => line.length > 0);
}

/** Pieces of one word that change in weight, such as a bold `milk` and the bracket behind it, kept together. */
function glued(words: readonly Run[]): Run[][] {
  const groups: Run[][] = [];
  let open = false;
  for (const word of words) {
    if (word.text === "") continue;
    const blank = word.text === " ";
    if (open && !blank) groups.at(-1)!.push(word);
    else groups.push([word]);
    open = !blank;
  }
  return groups;
}

function trimmed(line: readonly Run[]): Run[] {
  const last = line.at(-1);
  if (!last) return [];
  const text = last.text.trimEnd();
  return text ? [...line.slice(0, -1), {...last, text}] : trimmed(line.slice(0, -1));
}
