import {escapeHtml, escapeMarkdown} from "./escape.ts";
import {FACES, PALETTE} from "./palette.ts";

/** A document: a title, then sections of sentences and tables. */
export interface Tables {
  readonly title: string;
  readonly sections: readonly TableSection[];
}

/** A heading with sentences, a table, or both. */
export interface TableSection {
  readonly heading: string;
  readonly sentences?: readonly string[];
  /** SVG that goes below the sentences unchanged, so its texts must be escaped already. */
  readonly picture?: string;
  /** Headings of the columns; all but the first hold numbers. */
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
  const section = ({heading, sentences = [], picture = "", columns = [], rows = []}: TableSection) =>
    `<section>
<h2>${escapeHtml(heading)}</h2>
${sentences.map((sentence) => `<p>${escapeHtml(sentence)}</p>\n`).join("")}${picture}${columns.length ? `<table>\n<thead>${cells("th", columns)}</thead>\n<tbody>${rows.map((row) => cells("td", row)).join("\n")}</tbody>\n</table>\n` : ""}</section>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${escapeHtml(title)}</h1>
${sections.map(section).join("\n")}
</body>
</html>
`;
}

const {ink, soft, line, strongLine} = PALETTE;
const STYLE = `
@page {size: A4; margin: 14mm 13mm}
html {color-scheme: light}
body {font: 18px/1.5 ${FACES.serif}; color: ${ink}; background: #fff; max-width: 44rem; margin: 0 auto; padding: 20px 16px 48px; overflow-wrap: anywhere}
h1 {margin: 0; padding: 22px 0 0; border-top: 3px double ${strongLine}; font-size: 40px; font-weight: 400; line-height: 1.05; letter-spacing: -.02em}
h2 {margin: 34px 0 6px; font-size: 25px; font-weight: 500; line-height: 1.2}
p {margin: 0 0 8px; max-width: 62ch}
table {border-collapse: collapse; width: 100%; margin-top: 8px; font: 15px/1.3 ${FACES.sans}; font-feature-settings: "tnum", "lnum"}
th, td {text-align: right; vertical-align: baseline; padding: 6px 0 6px 12px; border-bottom: 1px solid ${line}}
th {font-weight: 550; color: ${soft}; border-color: ${strongLine}}
th:first-child, td:first-child {padding-left: 0; text-align: left}
svg {display: block; width: 100%; height: auto; margin: 12px 0; font: 13px ${FACES.sans}}
@media print {body {padding: 0; font-size: 10.5pt} h1 {font-size: 26pt} h2 {margin-top: 20px; font-size: 15pt; break-after: avoid} table {font-size: 9.5pt} tr, svg {break-inside: avoid} * {print-color-adjust: exact}}
`;
