import {existsSync, readdirSync, readFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {csvParse} from "d3-dsv";
import type {IndexHtmlTransformContext, Plugin} from "vite";
import {escapeHtml} from "../../../lib/io/text/escape.ts";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const read = (path: string) => readFileSync(root + path, "utf8");

/** The package that a module or a file belongs to, if any: `@observablehq/plot` of `…/node_modules/@observablehq/plot/src/index.js`. */
export function packageOf(path: string): string | undefined {
  return /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path.replaceAll("\\", "/"))?.[1];
}

/** Folds what a page must say of what it holds below it: sources of the data, and the licences of its fonts and of its code. */
export function notices(): Plugin {
  return {
    name: "notices",
    transformIndexHtml: {
      order: "post",
      handler: (page, context) => page.replace("</main>", () => `${fold(bundled(context))}</main>`),
    },
  };
}

/** Packages whose code the page's own chunks hold; while it is served there are none yet, and the fonts alone are named. */
function bundled({bundle, chunk}: IndexHtmlTransformContext): string[] {
  const names = new Set(fonts());
  const seen = new Set<string>();
  const walk = (file: string | undefined) => {
    const piece = file === undefined ? undefined : bundle?.[file];
    if (piece?.type !== "chunk" || seen.has(piece.fileName)) return;
    seen.add(piece.fileName);
    for (const id of piece.moduleIds) names.add(packageOf(id) ?? "");
    for (const next of [...piece.imports, ...piece.dynamicImports]) walk(next);
  };
  walk(chunk?.fileName);
  return [...names]
    .filter((name) => name !== "" && existsSync(`${root}node_modules/${name}/package.json`))
    .sort();
}

function fonts(): string[] {
  return [...read("notebooks/kit/styles/fonts.css").matchAll(/url\("((?:@[\w-]+\/)?[\w-]+)/g)].map(
    ([, name]) => name!,
  );
}

/** The fold itself. */
export function fold(packages: readonly string[]): string {
  const data = csvParse(read("datasets/sources.csv")).filter(({attribution}) => attribution);
  const source = ({title, licence, attribution}: Record<string, string>) =>
    `<li>${escapeHtml(title!)}: ${escapeHtml(attribution!)} (${escapeHtml(licence!)})</li>`;
  return [
    `<details class="code notices"><summary>Sources and licences</summary>`,
    "<p>Compositions of ingredients are worked out from published tables, those of the United States’ Department of Agriculture in the public domain, and:</p>",
    `<ul>${data.map((row) => source(row as Record<string, string>)).join("")}</ul>`,
    "<p>The page itself, and the fonts and code that it holds:</p>",
    licence("mixwright, MIT", mit()),
    ...packages.map((name) => {
      const {version, license} = JSON.parse(read(`node_modules/${name}/package.json`)) as Record<
        string,
        string
      >;
      return licence(`${name} ${version}, ${license ?? "licence as below"}`, textOf(name));
    }),
    "</details>",
  ].join("\n");
}

function licence(summary: string, text: string): string {
  return `<details><summary>${escapeHtml(summary)}</summary><pre>${escapeHtml(text.trim())}</pre></details>`;
}

/** The licence as the package's own file has it. */
function textOf(name: string): string {
  const folder = `node_modules/${name}`;
  const file = readdirSync(root + folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  return file === undefined ? "The package has no licence file of its own." : read(`${folder}/${file}`);
}

/** The project's own, as README.md quotes it. */
function mit(): string {
  return [...read("README.md").matchAll(/^> ?(.*)$/gm)].map(([, line]) => line).join("\n");
}
