// Type-checks the cells: writes each notebook as a TypeScript file with the same line numbers, runs the compiler
// over them and the kit, and names the notebook in the messages.
import {spawnSync} from "node:child_process";
import {mkdirSync, readFileSync, rmSync, writeFileSync} from "node:fs";
import {basename, join} from "node:path";
import {NOTEBOOKS} from "./notebooks.ts";

const OUT = ".notebooks-check";
const OPEN = /<script\b[^>]*\btype="text\/(x-typescript|markdown|html)"/;
const CLOSE = /^\s*<\/script>/;

/** A notebook's cells as TypeScript: code as it is, prose as templates, so that its `${…}` are checked too. */
function asTypeScript(notebook: string): string {
  let kind = "";
  const lines = notebook.split("\n").map((line) => {
    const open = OPEN.exec(line);
    if (open) {
      kind = open[1] === "x-typescript" ? "code" : "prose";
      return kind === "code" ? ";" : ";md`";
    }
    if (CLOSE.test(line)) {
      const end = kind === "prose" ? "`;" : ";";
      kind = "";
      return end;
    }
    if (kind === "prose") return line.replace(/`/g, "\\`");
    return kind === "code" ? line : "";
  });
  return `${lines.join("\n")}\nexport {};\n`;
}

rmSync(OUT, {recursive: true, force: true});
mkdirSync(`${OUT}/notebooks`, {recursive: true});
for (const path of NOTEBOOKS) {
  writeFileSync(`${OUT}/notebooks/${basename(path, ".html")}.ts`, asTypeScript(readFileSync(path, "utf8")));
}
const tsc = spawnSync(
  join("node_modules", ".bin", "tsc"),
  ["-p", "notebooks/kit/tsconfig.json", "--pretty", "false"],
  {encoding: "utf8", shell: process.platform === "win32"},
);
rmSync(OUT, {recursive: true, force: true});
process.stdout.write(
  (tsc.stdout + tsc.stderr).replace(/\S*\.notebooks-check\/notebooks\/([\w.-]+)\.ts/g, "notebooks/$1.html"),
);
process.exitCode = tsc.status ?? 1;
