import {keyOf, type ShownMix} from "./mixes.ts";
import {figure} from "./plot.ts";
import {type Content, element, head} from "./row.ts";

/** A table: what it is called, the heads of its columns, and its rows. */
export interface Table {
  /** Said of the table to those who do not see it. */
  readonly name: string;
  readonly columns: readonly Content[];
  readonly body: readonly HTMLElement[];
  /** Rows of sums below. */
  readonly foot?: readonly HTMLElement[];
  /** Beside the class that every table has. */
  readonly className?: string;
}

/** A table under a heading and one sentence that says how to read it; called as it is headed, where no name is given. */
export interface Sheet extends Omit<Table, "name"> {
  readonly heading: string;
  readonly reading: string;
  readonly name?: string;
}

/** A table with its heading. */
export function sheet({heading, reading, name = heading, ...rest}: Sheet): HTMLElement {
  return figure(heading, reading, table({name, ...rest}));
}

/** A table alone. */
export function table({name, columns, body, foot = [], className}: Table): HTMLElement {
  const made = element("table", [head(columns), element("tbody", body)]);
  made.className = className === undefined ? "sheet" : `sheet ${className}`;
  made.setAttribute("aria-label", name);
  if (foot.length) made.append(element("tfoot", foot));
  return made;
}

/** Heads of columns with the key of each mix's line. */
export function keyed(mixes: readonly Pick<ShownMix, "label" | "style">[]): Content[] {
  return mixes.map(({label, style}) => [keyOf(style), label]);
}
