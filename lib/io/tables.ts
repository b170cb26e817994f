import {escapeHtml, escapeMarkdown} from "./escape.ts";

/** Something to be read: a title, then sections of sentences and tables. */
export interface Tables {
  readonly title: string;
  readonly sections: readonly TableSection[];
}

/** A heading with sentences, a table, or both. */
export interface TableSection {
  readonly heading: string;
  readonly sentences?: readonly string[];
  /** Columns after the first hold numbers. */
  readonly columns?: readonly string[];
  readonly rows?: readonly (readonly string[])[];
}

/** Tables as Markdown (CommonMark with GitHub's tables), everything escaped. */
export function tablesMarkdown({title, sections}: Tables): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const section = ({heading, sentences = [], columns = [], rows = []}: TableSection) => [
    `## ${escapeMarkdown(heading)}`,
    ...sentences.map(escapeMarkdown),
    ...(columns.length
      ? [
          [
            line(columns.map(escapeMarkdown)),
            line(columns.map((_, i) => (i ? "---:" : "---"))),
            ...rows.map((row) => line(row.map(escapeMarkdown))),
          ].join("\n"),
        ]
      : []),
  ];
  return `${[`# ${escapeMarkdown(title)}`, ...sections.flatMap(section)].join("\n\n")}\n`;
}

/** Tables as a whole HTML document: no script, no outside file, everything escaped. */
export function tablesHtml({title, sections}: Tables): string {
  const cells = (tag: "th" | "td", row: readonly string[]) =>
    `<tr>${row.map((cell) => `<${tag}>${escapeHtml(cell)}</${tag}>`).join("")}</tr>`;
  const section = ({heading, sentences = [], columns = [], rows = []}: TableSection) =>
    `<section>
<h2>${escapeHtml(heading)}</h2>
${sentences.map((sentence) => `<p>${escapeHtml(sentence)}</p>\n`).join("")}${columns.length ? `<table>\n<thead>${cells("th", columns)}</thead>\n<tbody>${rows.map((row) => cells("td", row)).join("\n")}</tbody>\n</table>\n` : ""}</section>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<style>
body {font: 16px/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 44rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere}
table {border-collapse: collapse}
th, td {text-align: right; padding: .15rem .6rem; border-bottom: 1px solid #ccc; font-variant-numeric: tabular-nums}
th:first-child, td:first-child {text-align: left}
</style>
</head>
<body>
<h1>${escapeHtml(title)}</h1>
${sections.map(section).join("\n")}
</body>
</html>
`;
}
