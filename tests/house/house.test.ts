import {spawnSync} from "node:child_process";
import {cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {basename, dirname, join} from "node:path";
import {fileURLToPath} from "node:url";
import {describe, expect, test} from "vitest";
import {ENTRIES} from "../support/library.ts";
import {publicFunctions, publicNames} from "../support/public-api.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** What the linter says of some files under the rules of this repository. */
function lint(files: Record<string, string>, format?: string): string {
  const folder = mkdtempSync(join(tmpdir(), "house-"));
  cpSync(join(root, ".oxlintrc.json"), join(folder, ".oxlintrc.json"));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), {recursive: true});
    writeFileSync(join(folder, path), text);
  }
  const {stdout} = spawnSync(
    process.execPath,
    [
      join(root, "node_modules/oxlint/bin/oxlint"),
      "--deny-warnings",
      ...(format ? ["--format", format] : []),
      ".",
    ],
    {cwd: folder, encoding: "utf8"},
  );
  return stdout;
}

/** Those of some files, each with what it imports, that the linter refuses for it. */
function importing(files: Readonly<Record<string, string>>): string[] {
  const texts = Object.entries(files).map(([file, target]) => [
    file,
    `import {b} from "${target}";\nexport const a = b;\n`,
  ]);
  const said = lint(Object.fromEntries(texts) as Record<string, string>, "unix");
  return Object.keys(files)
    .filter((file) => new RegExp(`${file.replace(".", "\\.")}.*no-restricted-imports`).test(said))
    .sort();
}

const FLOORS = ["core", "pantry", "lp", "freezing", "balance", "kitchen", "io"];

/** The rooms of a floor from the lowest to the highest; those of one list never meet. */
const ROOMS: Readonly<Record<string, readonly (string | readonly string[])[]>> = {
  lp: ["program", "proof", "engines", "solve", "explain"],
  balance: [
    "measure",
    "brief",
    "program",
    "read",
    "mix",
    "explain",
    ["weigh", "trade-off", "substitute"],
    "change",
  ],
  kitchen: ["sugar", "size", "cooking", "product", "label", ["ripple", "safety"], "reading", "begin", "day"],
  io: ["text", "json", "csv", "typed", "report", "document"],
};

/** Of rooms in order, each with one that it may not import. */
function forbidden(rooms: readonly (string | readonly string[])[]): (readonly [string, string])[] {
  return rooms.flatMap((here, i) => [
    ...[here].flat().flatMap((one) => [rooms[i + 1] ?? []].flat().map((next) => [one, next] as const)),
    ...(typeof here === "string"
      ? []
      : here.flatMap((one) => here.filter((other) => other !== one).map((other) => [one, other] as const))),
  ]);
}

describe("the linter keeps the rooms", () => {
  const pairs = Object.entries(ROOMS).flatMap(([floor, rooms]) =>
    forbidden(rooms).map(([room, other]) => [`lib/${floor}`, room, other] as const),
  );
  const KIT = [
    "words",
    "keep",
    "page",
    "controls",
    "views",
    [
      "design",
      "replace",
      "trade-offs",
      "ripple",
      "batch-day",
      "trust",
      "reading",
      "book",
      "shelf",
      "compare",
      "begin",
    ],
  ];
  const kit = forbidden(KIT).map(([room, other]) => ["notebooks/kit", room, other] as const);

  test("in one sitting: what a room may not import is refused, each by its own file", () => {
    const cases = [...pairs, ...kit];
    expect(cases.length).toBeGreaterThan(60);
    const files = Object.fromEntries(
      cases.flatMap(([place, room, other]) => [
        [`${place}/${room}/to-${other}.ts`, `import {b} from "../${other}/b.ts";\nexport const a = b;\n`],
        [`${place}/${other}/b.ts`, "export const b = 1;\n"],
      ]),
    );
    const said = lint(files, "unix");
    const passed = cases.filter(
      ([place, room, other]) =>
        !new RegExp(`${place}/${room}/to-${other}\\.ts.*no-restricted-imports`).test(said),
    );
    expect(passed).toEqual([]);
  });

  test("no room is left out: each folder is one of those above", () => {
    const folders = (place: string) =>
      readdirSync(new URL(`../../${place}`, import.meta.url), {withFileTypes: true})
        .filter((entry) => entry.isDirectory())
        .map(({name}) => name);
    for (const [floor, rooms] of Object.entries(ROOMS))
      expect(folders(`lib/${floor}`).sort()).toEqual(rooms.flat().sort());
    const rooms = new Set([...KIT.flat(), "site", "styles"]);
    expect(folders("notebooks/kit").filter((name) => !rooms.has(name))).toEqual([]);
  });

  test("a room before it, and a lower floor, may be imported", () => {
    const said = lint({
      "lib/balance/mix/a.ts":
        'import {b} from "../brief/b.ts";\nimport {c} from "../../lp/solve/c.ts";\nexport const a = b + c;\n',
      "lib/balance/brief/b.ts": "export const b = 1;\n",
      "lib/lp/solve/c.ts": "export const c = 1;\n",
      "lib/balance/a.ts": 'import {b} from "../core/b.ts";\nexport const a = b;\n',
      "lib/core/b.ts": "export const b = 1;\n",
    });
    expect(said).toMatch(/0 errors/);
  });

  test("a room may not import a higher floor, nor the kit the tests", () => {
    const files = {
      "lib/balance/mix/a.ts": "../../kitchen/size/b.ts",
      "lib/lp/solve/a.ts": "../../pantry/b.ts",
      "lib/kitchen/day/a.ts": "../../io/text/b.ts",
      "lib/io/text/a.ts": "../../command/b.ts",
      "notebooks/kit/trust/a.ts": "../../../tests/b.ts",
    };
    expect(importing(files)).toEqual(Object.keys(files).sort());
  });
});

describe("the linter keeps the house", () => {
  test("no floor may import the next one, and freezing and lp never meet", () => {
    // Pantry may import neither lp nor freezing, and these two never meet.
    const files = Object.fromEntries([
      ...FLOORS.slice(0, -1).map((floor, i) => [`lib/${floor}/a.ts`, `../../${FLOORS[i + 1]!}/b.ts`]),
      ["lib/freezing/to-lp.ts", "../lp/b.ts"],
    ]);
    expect(importing(files)).toEqual(Object.keys(files).sort());
  });

  test("no floor may import an entry of the package, each by its own file", () => {
    const places = FLOORS.flatMap((floor) =>
      floor in ROOMS ? (ROOMS[floor] ?? []).flat().map((room) => `${floor}/${room}`) : [floor],
    );
    const said = lint(
      {
        ...Object.fromEntries(
          places.map((place) => [
            `lib/${place}/a.ts`,
            `import {b} from "${place.includes("/") ? "../.." : ".."}/explore.ts";\nexport const a = b;\n`,
          ]),
        ),
        "lib/explore.ts": "export const b = 1;\n",
      },
      "unix",
    );
    const passed = places.filter(
      (place) => !new RegExp(`lib/${place}/a\\.ts.*no-restricted-imports`).test(said),
    );
    expect(places.length).toBeGreaterThan(25);
    expect(passed).toEqual([]);
  });

  test("cycles, a clock, the console and an expectation that asserts nothing are refused", () => {
    const said = lint(
      {
        "lib/core/a.ts": 'import {b} from "./b.ts";\nexport const a = (): number => b();\n',
        "lib/core/b.ts": 'import {a} from "./a.ts";\nexport const b = (): number => a();\n',
        "lib/core/now.ts": "export const now = (): number => Date.now();\n",
        "lib/core/say.ts": 'export const say = (): void => console.log("x");\n',
        "tests/a.test.ts": 'import {expect, test} from "vitest";\ntest("x", () => {\n  expect(1);\n});\n',
      },
      "unix",
    );
    for (const refused of [
      /core\/a\.ts.*no-cycle/,
      /core\/now\.ts.*no-restricted-globals/,
      /core\/say\.ts.*no-console/,
      /a\.test\.ts.*valid-expect/,
    ])
      expect(said).toMatch(refused);
  });

  test("a test is called test, and expects something on every way through", () => {
    const head = 'import {expect, it, test} from "vitest";\n';
    const said = lint(
      {
        "tests/it.test.ts": `${head}it("x", () => expect(1).toBe(1));\ntest("y", () => expect(1).toBe(1));\n`,
        "tests/if.test.ts": `${head}test("x", () => {\n  if (Date.now() > 1) expect(1).toBe(1);\n});\n`,
      },
      "unix",
    );
    expect(said.match(/it\.test\.ts.*\[Error\/.*/g)).toEqual([expect.stringContaining("consistent-test-it")]);
    expect(said).toMatch(/if\.test\.ts.*no-conditional-expect/);
  });
});

test("a floor is a room or holds rooms, and no file is an index of its folder", () => {
  for (const floor of FLOORS) {
    const entries = readdirSync(join(root, "lib", floor), {withFileTypes: true});
    const rooms = entries.filter((entry) => entry.isDirectory()).map(({name}) => name);
    expect(rooms.sort()).toEqual((ROOMS[floor] ?? []).flat().sort());
    // balance.ts is what its rooms are for.
    const beside = entries.filter((entry) => !entry.isDirectory()).map(({name}) => name);
    expect(rooms.length > 0 ? beside : []).toEqual(floor === "balance" ? ["balance.ts"] : []);
    for (const room of rooms)
      expect(
        readdirSync(join(root, "lib", floor, room), {withFileTypes: true}).every((entry) => entry.isFile()),
      ).toBe(true);
  }
  const files = readdirSync(join(root, "lib"), {recursive: true, encoding: "utf8"});
  expect(files.filter((file) => basename(file) === "index.ts")).toEqual(["index.ts"]);
});

test("every entry of the package names what it exports, and no name stands in two", () => {
  const entries = readdirSync(join(root, "lib")).filter((file) => file.endsWith(".ts") && file !== "cli.ts");
  expect(entries.map((file) => `mixwright/${basename(file, ".ts")}`.replace("/index", "")).sort()).toEqual(
    Object.keys(ENTRIES).sort(),
  );
  for (const file of entries)
    expect(readFileSync(join(root, "lib", file), "utf8"), file).not.toMatch(/export \*/);
  const names = publicNames.map(({name}) => name);
  expect(names.length).toBeGreaterThan(300);
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
});

test("what is one thing to do in steps is two functions that take the same: the one and its twin for `inChunks`", () => {
  const taken = new Map(
    publicFunctions.map(({name, declaration}) => [
      name,
      declaration.parameters.map(({type, questionToken, initializer}) => [
        type?.getText(),
        Boolean(questionToken ?? initializer),
      ]),
    ]),
  );
  const steps = publicFunctions.filter(({declaration}) => declaration.asteriskToken).map(({name}) => name);
  expect(steps.length).toBeGreaterThan(5);
  for (const name of steps) {
    expect(name).toMatch(/Steps$/);
    expect(taken.get(name.replace(/Steps$/, "")), name).toEqual(taken.get(name));
  }
});

test("nothing in the library is left to chance", () => {
  const files = readdirSync(join(root, "lib"), {recursive: true, encoding: "utf8"})
    .filter((file) => file.endsWith(".ts"))
    .map((file) => join("lib", file));
  expect(files.length).toBeGreaterThan(200);
  expect(files.filter((file) => readFileSync(join(root, file), "utf8").includes("Math.random"))).toEqual([]);
});
