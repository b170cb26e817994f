/** Content of a cell. */
export type Content = string | Node | readonly (string | Node)[];

// Tables are made by hand, since a slider redraws hundreds of cells at each move, and a template is parsed anew each time.

/** A row of a table: its heading, and a cell for each content that is not a cell already. */
export function row(heading: Content, cells: readonly Content[]): HTMLElement {
  const made = cells.map((one) => (isCell(one) ? one : cell(one)));
  return element("tr", [headed("row", heading), ...made]);
}

/** The heads of a table's columns, made of each content that is not a head already; a corner without words is no head. */
export function head(columns: readonly Content[]): HTMLElement {
  const heads = columns.map((one) => (isCell(one) ? one : one === "" ? cell(one) : column(one)));
  return element("thead", element("tr", heads));
}

/** One cell of a table. */
export function cell(content: Content, className?: string): HTMLElement {
  return classed(element("td", content), className);
}

/** The head of one column. */
export function column(content: Content, className?: string): HTMLElement {
  return classed(headed("col", content), className);
}

/** A name with its unit in smaller letters. */
export function withUnit(name: string, unit: string): (string | Node)[] {
  return unit ? [name, small(`, ${unit}`)] : [name];
}

/** The smaller letters of a unit. */
export function small(text: string): HTMLElement {
  return classed(element("span", text), "unit");
}

/** An element around its content. */
export function element(name: string, content: Content): HTMLElement {
  const made = document.createElement(name);
  made.append(...(isList(content) ? content : [content]));
  return made;
}

function headed(scope: "col" | "row", content: Content): HTMLElement {
  const made = element("th", content);
  made.setAttribute("scope", scope);
  return made;
}

function classed(made: HTMLElement, className: string | undefined): HTMLElement {
  if (className !== undefined) made.className = className;
  return made;
}

function isCell(content: Content): content is HTMLElement {
  return content instanceof HTMLTableCellElement;
}

function isList(content: Content): content is readonly (string | Node)[] {
  return Array.isArray(content);
}
