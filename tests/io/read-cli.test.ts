import {existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {afterAll, describe, expect, test} from "vitest";
import {main} from "../../lib/command/main.ts";
import {describeRecipe, staplesIn, suggestChanges} from "../../lib/substitute.ts";
import {COOKS} from "../support/changes.ts";
import {realPantry} from "../support/pantry.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "mixwright-read-"));

afterAll(() => rmSync(folder, {recursive: true, force: true}));

/** What `mixwright read` says and ends with; it reads and writes files like a process. */
function read(args: readonly string[], input = "") {
  return run(["read", ...args], input);
}

/** What a command says and ends with. */
async function run(args: readonly string[], input = "") {
  let [stdout, stderr] = ["", ""];
  const code = await main([...args], {
    read: (path) => (path === "-" ? Buffer.from(input) : readFileSync(path)),
    write: (path, text) => writeFileSync(path, text),
    say: (text) => (stdout += text),
    note: (text) => (stderr += text),
    pantry: join(root, "datasets/ingredients.csv"),
    package: join(root, "package.json"),
  });
  return {code, stdout, stderr};
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const CUSTARD = "ingredient,g\nwhole milk,515\ndouble cream,300\negg yolk,108\nsugar,150\n";
const PRICES = ["--prices", join(root, "datasets/demo/prices.csv")];

describe("a recipe as a cook writes it", () => {
  const TYPED = "Vanilla custard\n500 ml whole milk\n300 g double cream\n6 large egg yolks\n150g sugar\n";

  test("is read like one in CSV, with a note on what was taken for granted", async () => {
    const {code, stdout, stderr} = await read([file("custard.txt", TYPED), "--json"]);
    expect(code).toBe(0);
    const {recipe} = JSON.parse(stdout);
    // Milk of 1.031 g/ml; a large yolk as 30 % of an egg of 68 g.
    expect(recipe.lines.map(({grams}: {grams: number}) => Number(grams.toFixed(6)))).toEqual([
      515.5, 300, 122.4, 150,
    ]);
    expect(recipe.name).toBe("Vanilla custard");
    const untitled = await read([file("my ice.txt", "500 g milk\n100 g sugar\n"), "--json"]);
    expect(JSON.parse(untitled.stdout).recipe.name).toBe("my ice");
    expect(stderr).toMatch(/custard\.txt: line 4: 6 large egg yolks: one taken as 20\.4 g.*EU size large/);
  });

  test("comes by a pipe; a line that nobody can read is left out with a word", async () => {
    const {code, stdout, stderr} = await read(["-"], `${TYPED}200 g cream\n`);
    expect([code, stdout.split("\n")[0]]).toEqual([0, "Vanilla custard, 1088 g"]);
    expect(stderr).toMatch(/line 6 is left out: 200 g cream: which cream: .*cream 36 %/);
    // The verdict is of the rest, and says so itself: it may be all that is kept of the answer.
    const [, verdict = ""] = stdout.split("\n\n");
    expect(verdict.replaceAll("\n", " ")).toMatch(
      /at −18 °C.* All this is without one line that cannot be counted yet: “200 g cream”\.$/,
    );
    const many = await read(["-"], `${TYPED}${"2 g stardust\n".repeat(9)}`);
    expect(many.stdout.replaceAll("\n", " ")).toMatch(
      /without 9 lines .*(“2 g stardust”, ){5}“2 g stardust” and 3 more\./,
    );
    expect((await read(["-"], TYPED)).stdout).not.toContain("cannot be counted");
    expect(JSON.parse((await read(["-", "--json"], `${TYPED}200 g cream\n`)).stdout)).toMatchObject({
      leftOut: ["200 g cream"],
    });
  });

  test("is refused for a sheet, or a swap, while a line is in question; and where there is none", async () => {
    const path = file("gap.txt", `${TYPED}200 g cream\n`);
    for (const command of [["sheet"], ["replace", "--without", "sugar"]]) {
      const {code, stderr} = await run([command[0]!, path, ...command.slice(1)]);
      expect([code, stderr]).toEqual([
        2,
        expect.stringMatching(/line 6: which cream: .*answer it in the line/),
      ]);
    }
    const none = await read([file("none.txt", "Method\nStir.\n")]);
    expect([none.code, none.stderr]).toEqual([2, expect.stringContaining("no ingredient was found")]);
  });
});

describe("a recipe is read", () => {
  test("as one JSON object, the same as the library's functions say", async () => {
    const {code, stdout, stderr} = await read([file("custard.csv", CUSTARD), "--json"]);
    expect([code, stderr]).toEqual([0, ""]);
    const answer = JSON.parse(stdout);
    for (const key of [
      "recipe",
      "composition",
      "shares",
      "freezing",
      "scoop",
      "kind",
      "norms",
      "pulls",
      "changes",
    ])
      expect(Object.keys(answer)).toContain(key);
    const bare = {
      ...COOKS.custard,
      lines: COOKS.custard.lines.map(({ingredient: {price: _price, stock: _stock, ...rest}, grams}) => ({
        ingredient: rest,
        grams,
      })),
    };
    const {sentence, kind} = describeRecipe(bare);
    expect([answer.sentence, answer.kind]).toEqual([sentence, kind]);
    const {changes} = suggestChanges(bare, {from: staplesIn(realPantry)});
    expect(answer.changes.map((change: {words: string}) => change.words)).toEqual(
      changes.map(({words}) => words),
    );
    expect(answer.unpriced).toEqual(["whole milk", "cream 48 %", "egg yolk", "sucrose"]);
  });

  test("in sentences of at most 80 columns, the first of them first", async () => {
    const {stdout} = await read([file("custard.csv", CUSTARD), ...PRICES]);
    const lines = stdout.split("\n");
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    expect(lines.slice(0, 4)).toEqual([
      "custard, 1073 g",
      "===============",
      "",
      expect.stringMatching(/^Hard at −18 °C: give it \d+ minutes on the counter, or change it\.$/),
    ]);
    for (const says of [
      /An egg custard ice cream\. It has 4\.8 % yolk solids\./,
      /fat +17\.7 % +more than usual +3 to 14 \[1\]/,
      /egg yolk solids +4\.8 % +as usual +1\.4 or more \[2\]/,
      /\[1\] McGee, On Food and Cooking \(2004\)/,
      /US law, 21 CFR 135\.110/,
      /^Softer: add /m,
      /^Cheaper: add /m,
      /^Less sweet: add /m,
      /scoops at −9\.3 °C -> −1\d\.\d °C; sweetness 14\.5 -> 1\d\.\d; cost 3\.35 -> \d\.\d\d\./,
      /Raw egg\s+may carry salmonella/,
    ])
      expect(stdout).toMatch(says);
  });

  test("without a scoop temperature, before or after a change, where none is to be trusted", async () => {
    const {stdout} = await read(["-"], "600 ml double cream\n397 g condensed milk\n1 tbsp vanilla extract\n");
    expect(stdout).toMatch(/^Where it scoops is not known: /m);
    expect(stdout).toMatch(/^Less sweet: [^]*?\n {2}sweetness 1\d\.\d -> 1\d\.\d\.$/m);
    for (const figure of ["scoops at", "scoop temperature", "not known ->", "At −18 °C"])
      expect(stdout).not.toContain(figure);
  });

  test("with a word on a goal that nothing gets nearer", async () => {
    const {stdout} = await read(["-"], "472 g banana\n500 ml milk\n200 g cream 36 %\n120 g sugar\n");
    expect(stdout.replaceAll("\n", " ")).toContain(
      "Softer: nothing gets it to where it scoops at −18 °C without being noticed more than that is worth.",
    );
    expect(stdout).not.toMatch(/nothing to change/i);
  });

  test("for another freezer, with a number below 0 apart from its option or tied to it", async () => {
    const path = file("custard.csv", CUSTARD);
    const [apart, tied] = await Promise.all([
      read([path, "--freezer", "-12", "--overrun", "60", "--json"]),
      read([path, "--freezer=-12", "--overrun=60", "--json"]),
    ]);
    expect(apart).toEqual(tied);
    expect(JSON.parse(apart.stdout).scoop).toMatchObject({freezer: -12, overrun: 60});
  });

  test("from standard input, with what is locked as it was", async () => {
    const {code, stdout} = await read(["-", "--json", "--lock", "sugar", "--lock", "double cream"], CUSTARD);
    expect(code).toBe(0);
    for (const {amounts} of JSON.parse(stdout).changes)
      for (const {ingredient, change} of amounts)
        expect(["sucrose", "cream 48 %"].includes(ingredient) ? change : 0).toBe(0);
  });

  test("with what a price list names as the shelf, and the cost", async () => {
    const prices = file(
      "prices.csv",
      "name,price per kg\nwhole milk,1\ncream 48 %,5\negg yolk,9\nsugar,1.1\ndextrose,2\n",
    );
    const {stdout} = await read([file("custard.csv", CUSTARD), "--prices", prices, "--json"]);
    const answer = JSON.parse(stdout);
    expect(answer.cost).toBeCloseTo(0.515 + 1.5 + 0.972 + 0.165, 9);
    const newcomers = answer.changes.flatMap((change: {newcomers: string[]}) => change.newcomers);
    expect([...new Set(newcomers)]).toEqual(["dextrose monohydrate"]);
  });
});

describe("--take", () => {
  test.each([
    ["softer", "csv"],
    ["less sweet", "json"],
  ])("%s writes the changed recipe as %s, which is read again", async (take, ending) => {
    const path = file("custard.csv", CUSTARD);
    const out = join(folder, `${take.replace(" ", "-")}.${ending}`);
    const {code, stdout, stderr} = await read([path, "--take", take, "--recipe", out, "--json"]);
    expect([code, stderr]).toEqual([0, `wrote ${out}\n`]);
    const change = JSON.parse(stdout).changes.find((one: {towards: string}) => one.towards === take);
    const again = JSON.parse((await read([out, "--json"])).stdout);
    expect(again.batch).toBeCloseTo(1073, 6);
    expect(again.scoop.temperature).toBeCloseTo(change.scoop.after.temperature, 6);
    expect(again.recipe.name).toBe(`custard, ${take}`);
  });

  test("ends with 1 and writes nothing where there is no such change", async () => {
    const out = join(folder, "none.csv");
    const {code, stdout, stderr} = await read([
      file("custard.csv", CUSTARD),
      "--take",
      "firmer",
      "--recipe",
      out,
    ]);
    expect([code, stderr]).toEqual([
      1,
      `${out}: not written, because there is no change that makes it firmer\n`,
    ]);
    expect(stdout).toMatch(/^Softer: /m);
    expect(existsSync(out)).toBe(false);
  });
});

describe("mistakes are told in a line, with 2", () => {
  test.each([
    ["no file", () => [], /FILE: missing; name it, e\.g\. mixwright read mix\.json/],
    ["one that is not there", () => ["gone.csv"], /gone\.csv: no such file or folder; check the path/],
    [
      "a warm freezer",
      () => [file("a.csv", CUSTARD), "--freezer", "18"],
      /--freezer: no number in range \(got "18"\); give a number from -40 to -0\.01/,
    ],
    [
      "too much air",
      () => [file("a.csv", CUSTARD), "--overrun", "-5"],
      /--overrun: no number in range \(got "-5"\)/,
    ],
    [
      "an unknown change",
      () => [file("a.csv", CUSTARD), "--take", "harder", "--recipe", join(folder, "x.csv")],
      /--take: unknown change \(got "harder"\); use softer, firmer, cheaper, "less sweet"/,
    ],
    [
      "a change that goes nowhere",
      () => [file("a.csv", CUSTARD), "--take", "softer"],
      /--recipe: missing; name the file/,
    ],
    [
      "a file for no change",
      () => [file("a.csv", CUSTARD), "--recipe", join(folder, "x.csv")],
      /--take: missing; say which change to write/,
    ],
    [
      "a lock that is not there",
      () => [file("a.csv", CUSTARD), "--lock", "chalk"],
      /--lock: not in the recipe/,
    ],
    ["an option of replace", () => [file("a.csv", CUSTARD), "--left", "4"], /--left: not an option of read/],
    ["no amounts", () => [file("empty.csv", "ingredient,g\n")], /empty\.csv/],
    ["no mass", () => [file("none.csv", "ingredient,g\nmilk,0\n")], /recipe: has no mass/],
    ["no time", () => [file("a.csv", CUSTARD), "--deadline", "0"], /--deadline: no number in range/],
  ])("%s", async (_what, args, says) => {
    const {code, stdout, stderr} = await read(args());
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  });

  test("names that would move a terminal are shown and not obeyed", async () => {
    const evil = "milk\u001b[2J of ours";
    const recipe = {
      name: "evil\u001b]0;x\u0007",
      ingredients: [
        {name: evil, grams: 700, composition: {water: 88, milkFat: 4, msnf: 8}},
        {name: "sugar", grams: 300},
      ],
    };
    const {code, stdout} = await read([file("evil.json", JSON.stringify(recipe))]);
    expect(code).toBe(0);
    // eslint-disable-next-line no-control-regex
    expect(stdout).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  });
});
