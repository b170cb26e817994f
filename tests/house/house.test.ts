import {spawnSync} from "node:child_process";
import {cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {dirname, join} from "node:path";
import {fileURLToPath} from "node:url";
import {describe, expect, test} from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** What the linter says of some files under the rules of this repository. */
function lint(files: Record<string, string>): string {
  const folder = mkdtempSync(join(tmpdir(), "house-"));
  cpSync(join(root, ".oxlintrc.json"), join(folder, ".oxlintrc.json"));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), {recursive: true});
    writeFileSync(join(folder, path), text);
  }
  const {stdout} = spawnSync(
    process.execPath,
    [join(root, "node_modules/oxlint/bin/oxlint"), "--deny-warnings", "."],
    {cwd: folder, encoding: "utf8"},
  );
  return stdout;
}

const FLOORS = ["core", "pantry", "lp", "freezing", "balance", "kitchen", "io"];

describe("the linter keeps the house", () => {
  test.each(FLOORS.slice(0, -1).map((floor, i) => [floor, FLOORS[i + 1]!] as const))(
    "%s may not import %s",
    (floor, above) => {
      // Pantry may import neither lp nor freezing, and these two never meet.
      const said = lint({
        [`lib/${floor}/a.ts`]: `import {b} from "../../${above}/b.ts";\nexport const a = b;\n`,
        [`lib/${above}/b.ts`]: "export const b = 1;\n",
      });
      expect(said).toContain("no-restricted-imports");
    },
  );

  test("freezing and lp never meet", () => {
    expect(
      lint({"lib/freezing/a.ts": 'export {b} from "../lp/b.ts";\n', "lib/lp/b.ts": "export const b = 1;\n"}),
    ).toContain("no-restricted-imports");
  });

  test("a lower floor may be imported", () => {
    expect(
      lint({
        "lib/balance/a.ts": 'import {b} from "../core/b.ts";\nexport const a = b;\n',
        "lib/core/b.ts": "export const b = 1;\n",
      }),
    ).toMatch(/0 errors/);
  });

  test("cycles, a clock, the console and an expectation that asserts nothing are refused", () => {
    expect(
      lint({
        "lib/core/a.ts": 'import {b} from "./b.ts";\nexport const a = (): number => b();\n',
        "lib/core/b.ts": 'import {a} from "./a.ts";\nexport const b = (): number => a();\n',
      }),
    ).toContain("no-cycle");
    expect(lint({"lib/core/a.ts": "export const now = (): number => Date.now();\n"})).toContain(
      "no-restricted-globals",
    );
    expect(lint({"lib/core/a.ts": 'export const say = (): void => console.log("x");\n'})).toContain(
      "no-console",
    );
    expect(
      lint({
        "tests/a.test.ts": 'import {expect, test} from "vitest";\ntest("x", () => {\n  expect(1);\n});\n',
      }),
    ).toContain("valid-expect");
  });
});

test("the floors are flat, and no file is an index of its folder", () => {
  for (const floor of FLOORS) {
    const entries = readdirSync(join(root, "lib", floor), {withFileTypes: true});
    expect(
      entries.filter((entry) => entry.isDirectory() || entry.name === "index.ts").map(({name}) => name),
    ).toEqual([]);
  }
  expect(readFileSync(join(root, "lib/index.ts"), "utf8")).not.toMatch(/export \*/);
});

test("nothing in the library is left to chance", () => {
  const files = FLOORS.flatMap((floor) =>
    readdirSync(join(root, "lib", floor)).map((file) => join("lib", floor, file)),
  );
  expect(files.filter((file) => readFileSync(join(root, file), "utf8").includes("Math.random"))).toEqual([]);
});
