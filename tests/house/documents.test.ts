import {execFileSync} from "node:child_process";
import {existsSync, readdirSync, readFileSync} from "node:fs";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {buildSync} from "esbuild";
import {describe, expect, test} from "vitest";
import {balance} from "../../lib/index.ts";
import {realPantry} from "../support/pantry.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (name: string) => readFileSync(join(root, name), "utf8");

/** Fenced blocks of a language in a document, in order. */
function blocks(document: string, language: string): string[] {
  return [...document.matchAll(new RegExp(`\`\`\`${language}\\n([^]*?)\`\`\``, "g"))].map(
    (match) => match[1]!,
  );
}

describe("README.md", () => {
  const readme = read("README.md");

  test("its use of the library prints what it says", () => {
    const [code] = blocks(readme, "ts");
    const [printed] = blocks(readme, "text");
    // In one piece it starts several times as fast as from the source.
    const {outputFiles} = buildSync({
      stdin: {contents: code!, loader: "ts", resolveDir: root},
      alias: {mixwright: join(root, "lib/index.ts")},
      bundle: true,
      packages: "external",
      platform: "node",
      format: "esm",
      write: false,
    });
    const input = outputFiles[0]!.text;
    const output = execFileSync(process.execPath, ["--input-type=module"], {
      cwd: root,
      encoding: "utf8",
      input,
    });
    expect(output).toBe(printed);
  });

  test("its brief can be balanced", () => {
    const [brief] = blocks(readme, "json");
    expect(balance(JSON.parse(brief!), {pantry: realPantry}).status).toBe("optimal");
  });
});

test("README.md asks the questions of the home page, in its order, and names the same pages", () => {
  const onHome = [
    ...read("notebooks/index.html").matchAll(/<a href="\.\/[^"]*">([^<]+)<\/a>\s*<p><em>([^<]+)\.<\/em>/g),
  ];
  const inReadme = [...read("README.md").matchAll(/^- \*\*(.+?)\*\* _(.+?):_/gm)];
  expect(onHome.length).toBeGreaterThan(10);
  expect(inReadme.map(([, ...said]) => said)).toEqual(onHome.map(([, ...said]) => said));
});

test("README.md counts the pantry as it is", () => {
  const [, counted] = /pantry of (\d+) ingredients/.exec(read("README.md"))!;
  expect(Number(counted)).toBe(realPantry.ingredients.length);
});

test("the drawing of the house in DEVELOPERS.md shows each room once", () => {
  const [drawing] = blocks(read("DEVELOPERS.md"), "text");
  for (const floor of ["io", "kitchen", "balance", "lp"]) {
    const [, after] = drawing!.split(new RegExp(`\\b${floor} {2,}`));
    const words = after!.split("\n")[0]!.split(/[<|\s]+/);
    const rooms = readdirSync(join(root, "lib", floor), {withFileTypes: true}).filter((entry) =>
      entry.isDirectory(),
    );
    expect(rooms.length).toBeGreaterThan(3);
    for (const {name} of rooms)
      expect(
        words.filter((word) => word === name),
        `${floor}: ${name}`,
      ).toHaveLength(1);
  }
});

test("no document holds the marks of an unfinished merge", () => {
  for (const name of ["README.md", "DEVELOPERS.md"]) expect(read(name)).not.toMatch(/^(<{7}|={7}|>{7})/m);
});

describe("licences", () => {
  test("README.md has the MIT licence whole, word for word (SPDX MIT)", () => {
    const plain = read("README.md").replace(/\n> ?/g, " ").replace(/\s+/g, " ");
    for (const clause of [
      /Copyright \(c\) \d{4} .+? Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files/,
      /to use, copy, modify, merge, publish, distribute, sublicense, and\/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions: The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software\./,
      /WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT\. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY/,
    ])
      expect(plain).toMatch(clause);
  });

  test("DEVELOPERS.md gives each dependency the licence that its package.json has", () => {
    const table = read("DEVELOPERS.md").split("## Dependencies")[1]!;
    const {dependencies} = JSON.parse(read("package.json")) as {dependencies: Record<string, string>};
    for (const name of Object.keys(dependencies)) {
      const {license} = JSON.parse(read(`node_modules/${name}/package.json`)) as {license: string};
      const row = table.split("\n").find((line) => line.split(/[| (]+/)[1] === name);
      expect(row?.split("|")[2]?.trim(), name).toBe(license);
    }
  });
});

describe.each(["README.md", "DEVELOPERS.md"])("%s", (name) => {
  const document = read(name);
  const {scripts} = JSON.parse(read("package.json")) as {scripts: Record<string, string>};

  test("names only files that are there", () => {
    const links = [...document.matchAll(/\]\(([^)#:]+)\)/g)].map((match) => match[1]!);
    const paths = [...document.matchAll(/`((?:lib|tests|datasets|notebooks)\/[\w./-]+)`/g)].map(
      (match) => match[1]!,
    );
    expect([...links, ...paths].filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  test("names only scripts that are there", () => {
    const named = [...document.matchAll(/npm (?:run (?:-s )?)?([a-z]+(?::[a-z]+)?)/g)].map(
      (match) => match[1]!,
    );
    expect(
      named.filter((script) => !(script in scripts) && !["ci", "run", "pack", "install"].includes(script)),
    ).toEqual([]);
  });
});
