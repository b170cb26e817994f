/** What may stand in a cell. */
type Content = string | Node | readonly (string | Node)[];

/**
 * A row of a table: its heading, a cell for each text, and cells made elsewhere. Made by hand, since a slider redraws hundreds
 * of cells at each move, and a template is parsed anew each time.
 */
export function row(
  heading: Content,
  texts: readonly Content[],
  ...more: readonly HTMLElement[]
): HTMLElement {
  const header = element("th", heading);
  header.setAttribute("scope", "row");
  return element("tr", [header, ...texts.map((text) => cell(text)), ...more]);
}

/** One cell of a table. */
export function cell(content: Content, className?: string): HTMLElement {
  const made = element("td", content);
  if (className !== undefined) made.className = className;
  return made;
}

/** A name with its unit in smaller letters. */
export function withUnit(name: string, unit: string): (string | Node)[] {
  if (!unit) return [name];
  const small = element("span", `, ${unit}`);
  small.className = "unit";
  return [name, small];
}

function element(name: string, content: Content): HTMLElement {
  const made = document.createElement(name);
  made.append(...(isList(content) ? content : [content]));
  return made;
}

function isList(content: Content): content is readonly (string | Node)[] {
  return Array.isArray(content);
}
