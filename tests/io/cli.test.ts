import {spawnSync} from "node:child_process";
import {existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {fileURLToPath, pathToFileURL} from "node:url";
import {build} from "esbuild";
import {afterAll, beforeAll, describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {main} from "../../lib/command/main.ts";
import {DERIVED} from "../../lib/pantry/quantities.ts";
import {dataset, demoPantry} from "../support/pantry.ts";
import {within} from "../support/within.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "mixwright-"));

afterAll(() => rmSync(folder, {recursive: true, force: true}));

interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** What the command says and ends with, without a process of its own; it reads and writes files like one. */
async function mixwright(args: readonly string[], input = ""): Promise<Run> {
  let [stdout, stderr] = ["", ""];
  const code = await main(args, {
    read: (path) => (path === "-" ? Buffer.from(input) : readFileSync(path)),
    write: (path, text) => writeFileSync(path, text),
    say: (text) => (stdout += text),
    note: (text) => (stderr += text),
    pantry: join(root, "datasets/ingredients.csv"),
    package: join(root, "package.json"),
  });
  return {code, stdout, stderr};
}

/** The command in one file, as if it lay where it lies: five processes start several times as fast as from the source. */
const bundle = join(root, `node_modules/.cache/cli-${process.pid}.mjs`);

beforeAll(() =>
  build({
    entryPoints: [join(root, "lib/cli.ts")],
    outfile: bundle,
    bundle: true,
    packages: "external",
    platform: "node",
    format: "esm",
    define: {"import.meta.url": JSON.stringify(pathToFileURL(join(root, "lib/cli.ts")))},
  }),
);

afterAll(() => rmSync(bundle, {force: true}));

/** The same in a process of its own, from the repository's folder. */
function started(args: readonly string[], input = ""): Run {
  const {status, stdout, stderr} = spawnSync(process.execPath, [bundle, ...args], {
    cwd: root,
    encoding: "utf8",
    input,
  });
  return {code: status, stdout, stderr};
}

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};

describe("a brief that can be met", () => {
  test("is answered with one JSON object of the shape that is promised", async () => {
    const {code, stdout, stderr} = await mixwright([
      "balance",
      "datasets/demo/pear-base.json",
      "--json",
      "--weighable",
      "--explain",
    ]);
    expect([code, stderr]).toEqual([0, ""]);
    const answer = JSON.parse(stdout);
    const brief = JSON.parse(dataset("demo/pear-base.json")) as BriefInput;
    const own = balance(brief, {pantry: demoPantry});
    expect(answer).toMatchObject(JSON.parse(JSON.stringify(own)));
    expect(answer.status).toBe("optimal");
    expect(Object.keys(answer.shares)).toEqual(
      expect.arrayContaining([...DERIVED, "scoopTemperature", "freezingPoint"]),
    );
    expect(answer.amounts[0]).toEqual({
      ingredient: "whole milk",
      grams: expect.any(Number),
      percent: expect.any(Number),
    });
    expect(answer.freezing.curve.at(-1)).toEqual({
      temperature: -30,
      ice: expect.any(Number),
      frozen: expect.any(Number),
    });
    expect(answer.scoop).toEqual({
      temperature: expect.any(Number),
      low: expect.any(Number),
      high: expect.any(Number),
      error: expect.any(Number),
      overrun: 30,
      freezer: -14,
      verdict: "scoops",
    });
    expect(answer.candidates.map(({name}: {name: string}) => name)).toEqual([
      "softest at -14 °C",
      "least sweet",
      "fewer ingredients",
    ]);
    const total = answer.amounts.reduce((sum: number, {grams}: {grams: number}) => sum + grams, 0);
    within(total, 5000, 1e-6, "sum of the amounts, g");
    expect(answer.weighable.missed).toEqual([]);
    expect(answer.prices.limits.length).toBeGreaterThan(3);
  });

  test("is answered with a report that fits 80 columns and says what a cook asks", async () => {
    const {code, stdout} = await mixwright(["balance", "datasets/demo/pear-base.json"]);
    expect(code).toBe(0);
    for (const words of [
      "whole milk",
      "in all",
      "per kg",
      "total solids",
      "starts to freeze at",
      "<- freezer",
      "Scoops at about",
      "What each limit costs",
      "Other mixes",
    ]) {
      expect(stdout).toContain(words);
    }
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
  });

  test("comes from standard input too, without a pantry of its own", async () => {
    const {code, stdout} = await mixwright(
      ["balance", "-", "--json"],
      JSON.stringify({ingredients: ["sugar", "water"], targets: {sugars: {equal: 20}}}),
    );
    expect(code).toBe(0);
    const answer = JSON.parse(stdout);
    within(answer.amounts[0].grams, 200, 1e-6, "sugar, g");
    expect(answer.cost).toBeUndefined();
  });

  test("draws its freezing curve", async () => {
    const picture = join(folder, "curve.svg");
    const {code} = await mixwright(["balance", "datasets/demo/pear-base.json", "--svg", picture]);
    expect(code).toBe(0);
    expect(readFileSync(picture, "utf8")).toMatch(/^<svg[^]*<\/svg>\s*$/);
  });
});

test("a brief that cannot be met ends with 1 and says why", async () => {
  const path = file("impossible.json", {ingredients: [milk, sugar], targets: {fat: {min: 10}}});
  const [text, json] = await Promise.all([
    mixwright(["balance", path]),
    mixwright(["balance", path, "--json"]),
  ]);
  expect([text.code, json.code, text.stderr]).toEqual([1, 1, ""]);
  expect(text.stdout).toMatch(/This cannot be met at all:\n {2}fat at least 10/);
  const {status, conflict} = JSON.parse(json.stdout);
  expect(status).toBe("infeasible");
  expect(conflict.targets).toEqual([
    {
      of: "target",
      path: "targets.fat",
      target: "fat",
      on: {kind: "measure", key: "fat", subject: {kind: "quantity", quantity: "fat"}},
      bound: "min",
      limit: 10,
    },
  ]);
  within(conflict.relaxations[0].to, 3.5, 1e-6, "fat that milk alone has");
});

test("a change that the report proposes holds as it is printed, to two decimals", async () => {
  const fatty = {name: "fatty milk", composition: {water: 86.661, milkFat: 4.339, msnf: 9}, price: 1};
  const brief = (fat: number) =>
    JSON.stringify({
      ingredients: [fatty, {name: "sugar", composition: {sucrose: 100}, price: 1}],
      targets: {fat: {min: fat}, sugars: {min: 14.3}},
    });
  const {code, stdout} = await mixwright(["balance", "-"], brief(5));
  expect(code).toBe(1);
  const change = Number(/fat at least 5: make it (\d+\.\d+)/.exec(stdout)?.[1]);
  // What is not sugar is milk: 85.7 % of 4.339 g is 3.7185 g, of which 3.72 would be too much.
  expect(change).toBe(3.71);
  expect((await mixwright(["balance", "-"], brief(change))).code).toBe(0);
});

test("a limit on an ingredient costs the same in the report as with --explain: per 100 g", async () => {
  const {stdout} = await mixwright(
    ["balance", "-", "--explain"],
    JSON.stringify({ingredients: [milk, {...sugar, min: 100}], targets: {}}),
  );
  // 100 g of sugar at 1.2 instead of milk at 1 in 1 kg: 0.02 more.
  expect(stdout).toMatch(/sugar at least 100 g +100 g more: \+0\.0200 per kg/);
  expect(stdout).toMatch(/sugar at least 100 g +\+0\.0200 /);
});

describe("a day with the command", () => {
  test("goes from brief to recipe, to the recipe without what ran out, to the sheet", async () => {
    const recipe = join(folder, "pear.csv");
    const sheet = join(folder, "sheet.html");
    const made = await mixwright([
      "balance",
      "datasets/demo/pear-base.json",
      "--weighable",
      "--recipe",
      recipe,
    ]);
    expect(made.code).toBe(0);
    const [replaced, printed] = await Promise.all([
      mixwright(["replace", recipe, "--without", "egg yolk", "--prices", "datasets/demo/prices.csv"]),
      mixwright(["sheet", recipe, "--grams", "10000", "--overrun", "30", "--html", sheet]),
    ]);
    expect([replaced.code, printed.code]).toEqual([0, 0]);
    expect(replaced.stdout).toMatch(/^Pear and ginger \(invented demo\) without egg yolk\n/);
    expect(replaced.stdout).toMatch(/egg yolk +153 g -> +0\.0 g/);
    expect(replaced.stdout).not.toMatch(/Not compared/);
    const page = readFileSync(sheet, "utf8").replaceAll("&nbsp;", " ");
    // The milk of the recipe, whose weighable amounts may be a gram or two off 5 kg, for 10 kg.
    const grams = [...readFileSync(recipe, "utf8").matchAll(/^[^,]+,([\d.]+),/gm)].map(([, mass]) =>
      Number(mass),
    );
    const total = grams.reduce((sum, mass) => sum + mass, 0);
    expect(page).toContain(`>${Math.round((10_000 * grams[0]!) / total)}<`);
    // The usual custard meets a published pair (21 CFR 135.3: 175 °F for 25 s), so no caution of raw egg is left.
    expect(page).toMatch(/Heat mix to 82 °C, hold 30 s.*Pasteurised: meets the UK .*US \(79\.4 °C, 25 s\)/s);
    expect(page).not.toMatch(/Raw egg/);
    const cold = await mixwright(["sheet", recipe, "--way", "cold"]);
    expect(cold.stdout).toMatch(/## Steps\n\n1\. \[ \] Pour .*Raw egg may carry salmonella/s);
  });
});

test("ingredients of one's own go from the brief to the recipe, to what ran out and to the sheet", async () => {
  const recipe = join(folder, "own.json");
  const paste = {name: "walnut paste of ours", composition: {water: 4, otherFat: 66, otherSolids: 30}};
  const made = await mixwright(
    ["balance", "-", "--recipe", recipe],
    JSON.stringify({
      ingredients: ["whole milk", "sugar", {...paste, price: 20, min: 80, allergens: ["nuts"]}],
      targets: {sugars: {equal: 15}},
      minimise: "fat",
    }),
  );
  expect([made.code, made.stderr]).toEqual([0, `wrote ${recipe}\n`]);
  const prices = file(
    "own-prices.csv",
    "name;price per kg\nwhole milk;1,05\nsugar;1\nwalnut paste of ours;22\n",
  );
  const [replaced, sheet, unpriced] = await Promise.all([
    mixwright(["replace", recipe, "--without", "Walnut paste of ours", "--left", "30"]),
    mixwright(["sheet", recipe, "--prices", prices]),
    mixwright(["sheet", recipe]),
  ]);
  expect([replaced.code, sheet.code]).toEqual([0, 0]);
  expect(replaced.stdout).toMatch(/^mix with only 30\.0 g of walnut paste of ours\n/);
  expect(sheet.stdout).toMatch(/walnut paste of ours \| 80\.0 g \|.*nuts/);
  // The brief's own price, 20, goes before the list's: 770 g of milk, 150 g of sugar and 80 g of paste.
  const [, cost] = /Ingredients cost: \*\*(\d+\.\d+), /.exec(sheet.stdout)!;
  within(Number(cost), 0.77 * 1.05 + 0.15 * 1 + 0.08 * 20, 0.01, "cost of the ingredients");
  expect(unpriced.stdout).not.toMatch(/cost/);
});

test("own ingredients come from a file or their label, and take their price and stock from the price list", async () => {
  const brief = file("labelled.json", {
    ingredients: [
      "whole milk",
      {
        name: "date syrup",
        label: {class: "syrup", fat: 0, carbohydrate: 71, sugars: 70, protein: 1, salt: 0.1},
      },
      "hazelnut paste of ours",
    ],
    targets: {sugars: {min: 15}, fat: {min: 10}},
  });
  const own = file(
    "own.csv",
    "name;label class;label fat (g);label carbohydrate (g);label sugars (g);label protein (g);label salt (g);allergens\n" +
      "hazelnut paste of ours;nut;62;9,5;4,5;14;0,01;nuts\n" +
      "Whole milk;dairy;3,8;4,7;4,7;3,4;0,1;milk\n",
  );
  const prices = file(
    "prices.csv",
    "name,price per kg,stock g\nwhole milk,1,\ndate syrup,6,230\nhazelnut paste of ours,30,\n",
  );
  const args = ["balance", brief, "--own", own, "--json"];
  const [priced, short] = await Promise.all([
    mixwright([...args, "--prices", prices]),
    mixwright([...args, "--prices", file("short.csv", "name,stock g\ndate syrup,100\n")]),
  ]);
  expect([priced.code, short.code]).toEqual([0, 1]);
  const answer = JSON.parse(priced.stdout);
  const grams = Object.fromEntries(
    answer.amounts.map((amount: {ingredient: string; grams: number}) => [amount.ingredient, amount.grams]),
  );
  within(
    answer.cost,
    (grams["Whole milk"] + 6 * grams["date syrup"] + 30 * grams["hazelnut paste of ours"]) / 1000,
    1e-9,
    "cost",
  );
  // Fat by the labels: 3.8 % of the milk and 62 % of the paste make 10 %.
  within(3.8 * grams["Whole milk"] + 62 * grams["hazelnut paste of ours"], 10 * 1000, 1, "fat, g per 100 kg");
  // 100 g of syrup in stock is 70 g of sugars of the 150 g wanted: the stock is what conflicts.
  expect(short.stdout).toMatch(/date syrup/);
});

describe("amounts for the scale", () => {
  // 16.54 % of sugar in 1 kg is 165.4 g: no scale of 10 g shows it.
  const brief = {
    name: "syrup",
    ingredients: [
      {...milk, price: 1},
      {...sugar, price: 2},
    ],
    targets: {sucrose: {equal: 16.54}},
  };

  test("stand first in every file, with their own cost and what they miss", async () => {
    const [csv, markdown, html] = ["weigh.csv", "weigh.md", "weigh.html"].map((name) => join(folder, name));
    const {code, stdout} = await mixwright([
      "balance",
      file("weigh.json", brief),
      "--weighable",
      "--scale",
      "10",
      "--csv",
      csv!,
      "--markdown",
      markdown!,
      "--html",
      html!,
    ]);
    expect(code).toBe(0);
    // 840 g of milk at 1 and 170 g of sugar at 2 are 1.18; 170 g of 1010 g are 16.83 %.
    const said = ["cost 1.18 for the batch, 1.17 per kg", "misses: sucrose exactly 16.54, comes to 16.83"];
    for (const words of ["To weigh and count: this is the one to make", ...said])
      expect(stdout).toContain(words);
    const [first, second] = readFileSync(markdown!, "utf8").split("\n## ").slice(1);
    for (const text of [first!, readFileSync(html!, "utf8").split("</section>")[0]!]) {
      expect(text).toMatch(/To weigh and count[^]*840[^]*170/);
      for (const words of said) expect(text).toContain(words);
      expect(text).not.toContain("165");
    }
    expect(second).toMatch(/^The exact mix[^]*\| sugar \| 165 \| 16\.54 \|/);
    const rows = readFileSync(csv!, "utf8").split(/\r?\n/);
    expect(rows.slice(1, 6)).toEqual([
      "weigh,milk,840,g",
      "weigh,sugar,170,g",
      "weighed,mass,1010,g",
      "weighed,cost,1.18,money",
      "missed,sucrose equal,16.83,g per 100 g",
    ]);
  });

  test("are not in files that were not asked for them", async () => {
    const markdown = join(folder, "exact.md");
    await mixwright(["balance", file("exact.json", brief), "--markdown", markdown]);
    expect(readFileSync(markdown, "utf8")).toMatch(/^# syrup\n\n## Ingredients\n/);
  });
});

test("one price list serves several briefs: what is not known here is ignored, a line each", async () => {
  const prices = file("all.csv", "name,price per kg\nskimed milk,1\nsugar,2\ncream,5\nzzzz qqqq,9\n");
  const cream = {name: "cream", composition: {water: 60, milkFat: 34, msnf: 6}};
  const {code, stdout, stderr} = await mixwright([
    "balance",
    file("some.json", {ingredients: [cream, "sugar"], targets: {sucrose: {equal: 10}}}),
    "--prices",
    prices,
    "--json",
  ]);
  expect(code).toBe(0);
  within(JSON.parse(stdout).cost, 0.9 * 5 + 0.1 * 2, 1e-9, "cost of 900 g of cream and 100 g of sugar");
  // "cream" could be several in the pantry, but here it is the brief's own.
  expect(stderr.trimEnd().split("\n")).toEqual([
    expect.stringMatching(
      /all\.csv, row 2, "skimed milk": no such ingredient here; ignored; did you mean ".*\?$/,
    ),
    `${prices}, row 5, "zzzz qqqq": no such ingredient here; ignored`,
  ]);
});

describe("what ran out", () => {
  const recipe = {
    name: "syrup",
    ingredients: [
      {...milk, grams: 800},
      {...sugar, grams: 150},
      {name: "dextrose", composition: {dextrose: 100}, grams: 50},
    ],
  };

  test("leaves a recipe that can be written and read again", async () => {
    const [json, csv] = [join(folder, "without.json"), join(folder, "without.csv")];
    const args = ["replace", file("syrup.json", recipe), "--without", "dextrose", "--recipe"];
    const [made] = await Promise.all([mixwright([...args, json]), mixwright([...args, csv])]);
    expect([made.code, made.stderr]).toEqual([0, `wrote ${json}\n`]);
    const written = JSON.parse(readFileSync(json, "utf8"));
    expect(written.name).toBe("syrup without dextrose");
    const grams = written.ingredients.map((line: {grams: number}) => line.grams);
    within(
      grams.reduce((sum: number, mass: number) => sum + mass, 0),
      1000,
      0.1,
      "mass, g",
    );
    expect(written.ingredients.map((line: {name: string}) => line.name)).not.toContain("dextrose");
    expect(grams.every((mass: number) => mass > 0)).toBe(true);
    expect(readFileSync(csv, "utf8")).toMatch(/^ingredient,g,percent,recipe\r?\nmilk,/);
    expect((await mixwright(["sheet", json])).stdout).toMatch(/^# syrup without dextrose\n/);
  });

  test("leaves no recipe where nothing can stand in, and says so", async () => {
    const alone = {name: "ice", ingredients: [{name: "spring water", composition: {water: 100}, grams: 100}]};
    const path = join(folder, "none.csv");
    const {code, stderr} = await mixwright([
      "replace",
      file("ice.json", alone),
      "--without",
      "spring water",
      "--recipe",
      path,
      "--pantry",
      file("empty.json", []),
    ]);
    expect([code, stderr]).toEqual([
      1,
      `${path}: not written, because nothing can stand in for spring water\n`,
    ]);
    expect(existsSync(path)).toBe(false);
  });
});

test("a brief that cannot be met writes neither recipe nor curve, and says so", async () => {
  const [recipe, curve] = [join(folder, "no.csv"), join(folder, "no.svg")];
  const {code, stderr} = await mixwright(
    ["balance", "-", "--recipe", recipe, "--svg", curve],
    JSON.stringify({ingredients: [milk, sugar], targets: {fat: {min: 10}}}),
  );
  expect(code).toBe(1);
  expect(stderr.split("\n")).toEqual([
    `${recipe}: not written, because no mix meets the brief`,
    `${curve}: not written, because no mix meets the brief`,
    "",
  ]);
  expect([recipe, curve].filter((path) => existsSync(path))).toEqual([]);
});

test("an own ingredient that replaces an included one keeps its other names and its group", async () => {
  const own = file("rich.json", [{name: "Whole milk", composition: {water: 85.5, milkFat: 5.5, msnf: 9}}]);
  const {code, stdout} = await mixwright(
    ["balance", "-", "--own", own, "--json"],
    JSON.stringify({ingredients: ["milk"], targets: {fat: {min: 5}}}),
  );
  expect(code).toBe(0);
  expect(JSON.parse(stdout).amounts[0].ingredient).toBe("Whole milk");
});

test("a mix that never hardens says so first, and meets no limit on the scoop temperature", async () => {
  const syrup = {name: "syrup", composition: {water: 30, sucrose: 70}};
  const brief = (targets: object) => JSON.stringify({ingredients: [syrup], targets});
  const {code, stdout} = await mixwright(["balance", "-"], brief({}));
  expect(code).toBe(0);
  expect(stdout.split("\n").find((line, i) => i > 1 && line.trim())).toMatch(/^ {2}Never hardens: /);
  expect(stdout).not.toContain("none °C");
  const limited = await mixwright(["balance", "-"], brief({scoopTemperature: {max: -1}}));
  expect(limited.code).toBe(1);
  expect(limited.stdout).toMatch(/This cannot be met at all:\n {2}scoop temperature at most −1\n/);
});

describe("a sheet", () => {
  const lines = [
    {...milk, group: "dairy", allergens: ["milk"], grams: 800},
    {...sugar, grams: 200},
  ];
  const sheetOf = (ingredients: readonly object[], ...options: string[]) =>
    mixwright(["sheet", "-", ...options], JSON.stringify({name: "plain", ingredients}));

  test("says the cost where every price is known, and with a price list which are missing", async () => {
    const prices = file("one.csv", "name,price per kg\nsugar,2\n");
    const [known, partly, missing] = await Promise.all([
      sheetOf(lines),
      sheetOf([...lines, {name: "salt", grams: 1}]),
      sheetOf([...lines, {name: "salt", grams: 1}], "--prices", prices),
    ]);
    // 800 g at 1 and 200 g at 1.2.
    expect(known.stdout).toContain("Ingredients cost: **1.04, 1.04 per kg**");
    expect(partly.stdout).not.toContain("cost");
    expect(missing.stdout).toContain("Ingredients cost: **not known: no price for salt**");
  });

  test("goes on to rest, churning and hardening, and names no machine that it does not know", async () => {
    const {stdout} = await sheetOf(lines);
    expect(stdout).toMatch(
      /Cool mix to 4 °C\n.*\n\d\. \[ \] Let it rest covered at 4 °C for 4 to 12 hours\n\d\. \[ \] Churn, draw at about −\d °C\n\d\. \[ \] Fill the tubs, label them, into the freezer at −18 °C at once\n\d\. \[ \] Leave it there until the core is at −15 °C\n/,
    );
    expect(stdout).not.toContain("Machine");
    expect(stdout).toContain("hold 30 s");
    expect(stdout).toMatch(/Held there for: [\\_]+ s\n/);
  });

  test("of a base that is stirred cold says nothing of heating", async () => {
    const {stdout} = await sheetOf(lines, "--way", "cold");
    expect(stdout).toContain("**cooling**: Keep it at 7.2 °C or below until frozen.");
    expect(stdout).not.toMatch(/[Aa]fter heating|of heating|Held there|Highest temperature|At or below/);
  });
});

describe("a process of its own", () => {
  test("ends with 0, the answer to what comes by a pipe, and the file that it is told to write", async () => {
    const recipe = join(folder, "started.csv");
    const args = ["balance", "-", "--recipe", recipe];
    const brief = JSON.stringify({ingredients: ["sugar", "water"], targets: {sugars: {equal: 20}}});
    const run = started(args, brief);
    const written = readFileSync(recipe, "utf8");
    expect([run.code, run.stderr]).toEqual([0, `wrote ${recipe}\n`]);
    expect(run.stdout).toMatch(/sucrose +200 g/);
    expect(written).toMatch(/^ingredient,g,percent,recipe\r?\nsucrose,200,/);
    // What a process does, the command does without one: the other tests need none.
    expect(await mixwright(args, brief)).toEqual(run);
    expect(readFileSync(recipe, "utf8")).toBe(written);
  });

  test("ends with 1 where no mix meets the brief, and writes no file", () => {
    const recipe = join(folder, "not-made.csv");
    const {code, stdout, stderr} = started(
      ["balance", "-", "--recipe", recipe],
      JSON.stringify({ingredients: [milk, sugar], targets: {fat: {min: 10}}}),
    );
    expect(code).toBe(1);
    expect(stdout).toMatch(/This cannot be met at all:\n {2}fat at least 10/);
    expect(stderr).toBe(`${recipe}: not written, because no mix meets the brief\n`);
    expect(existsSync(recipe)).toBe(false);
  });

  test("ends with 2 and one line on stderr for a mistake", () => {
    const {code, stdout, stderr} = started(["balance", join(folder, "nowhere.json")]);
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/^.*nowhere\.json: no such file or folder; check the path\n$/);
  });

  test("has the version of the package", async () => {
    const {version} = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    expect(started(["--version"]).stdout).toBe(`${version}\n`);
    expect((await mixwright(["--version"])).stdout).toBe(`${version}\n`);
  });
});

describe("a mistake ends with 2 and one line on stderr", () => {
  test.each<[string, () => string[], RegExp]>([
    ["no file", () => ["balance", join(folder, "nowhere.json")], /nowhere\.json: no such file/],
    ["a folder", () => ["balance", folder], /a folder, not a file/],
    [
      "no JSON",
      () => ["balance", file("broken.json", '{"ingredients": [')],
      /broken\.json, line 1, column \d+: not valid JSON/,
    ],
    [
      "an unknown key",
      () => ["balance", file("key.json", {ingredients: [milk], tragets: {}})],
      /did you mean targets/,
    ],
    [
      "a pantry that is not there",
      () => ["balance", file("pantry.json", {pantry: "gone.csv", ingredients: ["milk"]})],
      /gone\.csv: no such file/,
    ],
    ["an unknown option", () => ["balance", "x.json", "--jsno"], /--jsno.*see mixwright --help/],
    ["an unknown command", () => ["blend", "x.json"], /command: unknown \(got "blend"\)/],
    [
      "nothing to replace",
      () => ["replace", file("r.csv", "ingredient,g\nmilk,100\n")],
      /--without: missing/,
    ],
    [
      "an ingredient the recipe lacks",
      () => ["replace", file("r2.csv", "ingredient,g\nmilk,100\n"), "--without", "honey"],
      /honey/,
    ],
    [
      "a recipe row without an amount",
      () => ["sheet", file("r3.csv", "ingredient,g\nmilk,100\nsugar,\n")],
      /row 3, g: no amount/,
    ],
    [
      "an unknown way of making",
      () => ["sheet", file("r4.csv", "ingredient,g\nmilk,100\n"), "--way", "boil"],
      /--way: unknown \(got "boil"\); use custard, scald, pot, cold/,
    ],
    [
      "an option of another command",
      () => ["sheet", file("r5.csv", "ingredient,g\nmilk,100\n"), "--left", "4"],
      /--left: not an option of sheet; leave it out; it belongs to replace/,
    ],
    [
      "a recipe where a brief is wanted",
      () => ["balance", file("r6.csv", "ingredient,g\nmilk,100\n")],
      /r6\.csv: a CSV file; give a brief in JSON; a recipe goes to replace or sheet/,
    ],
    [
      "a composition beside a label",
      () => [
        "balance",
        file("both.json", {
          ingredients: [
            {...milk, label: {class: "syrup", fat: 0, carbohydrate: 71, sugars: 70, protein: 1, salt: 0.1}},
          ],
        }),
      ],
      /ingredients\[0\] "milk": label: given beside composition; give one of them/,
    ],
    [
      "a label that does not add up",
      () => [
        "balance",
        file("label.json", {
          ingredients: [
            {
              name: "paste",
              label: {
                class: "syrup",
                fat: 60,
                carbohydrate: 71,
                sugars: 70,
                protein: 1,
                salt: 0.1,
              },
            },
          ],
        }),
      ],
      /ingredients\[0\]: label "paste": the figures do not sum to 100 g/,
    ],
    [
      "an own ingredient without a figure of its label",
      () => [
        "balance",
        file("simple.json", {ingredients: ["paste"]}),
        "--own",
        file("paste.csv", "name,label_class,label_fat_g\npaste,nut,60\n"),
      ],
      /paste\.csv, row 1: no column label_carbohydrate_g/,
    ],
    [
      "a scale of 0",
      () => ["balance", file("scale.json", {ingredients: [milk]}), "--weighable", "--scale", "0"],
      /--scale/,
    ],
  ])("%s", async (_what, args, says) => {
    const {code, stdout, stderr} = await mixwright(args());
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(stderr).not.toMatch(/\bat .*\.[jt]s:\d+/);
  });
});

describe("the kitchen's own reports", () => {
  const mix = {
    name: "vanilla",
    ingredients: [
      {name: "whole milk", grams: 640},
      {name: "cream 40 %", grams: 160},
      {name: "sucrose", grams: 160},
      {name: "skimmed milk powder", grams: 40},
    ],
  };
  const brief = {
    ingredients: ["whole milk", "cream 40 %", "sugar"],
    targets: {fat: {equal: 8}, sweetness: {min: 14}},
    minimise: "sugars",
  };
  const reports = (name: string, found: string, freezer: number) =>
    file(
      name,
      Array.from({length: 3}, () => ({recipe: "vanilla-made.json", freezer, found})),
    );
  // Written once: the tests read them side by side.
  const recipe = file("vanilla-made.json", mix);
  const plain = file("plain.json", brief);
  const hard = reports("hard.json", "too hard", -9);
  const soft = reports("soft.json", "too soft", -15);
  const scoopAfter = async (more: readonly string[]) => {
    const {code, stdout, stderr} = await mixwright(["balance", plain, "--json", ...more]);
    expect([code, stderr]).toEqual([0, ""]);
    return JSON.parse(stdout).scoop as {temperature: number; error: number};
  };

  test("shift where a tub scoops: too hard, warmer; too soft, colder; and the report says by how many", async () => {
    const [book, harder, softer] = await Promise.all([
      scoopAfter([]),
      scoopAfter(["--learned", hard]),
      scoopAfter(["--learned", soft]),
    ]);
    expect(harder.temperature).toBeGreaterThan(book.temperature + 1);
    expect(softer.temperature).toBeLessThan(book.temperature - 1);
    const {stdout} = await mixwright(["balance", plain, "--learned", hard]);
    expect(stdout).toContain("Scooping (estimated at 30 % overrun, with 3 reports of your own)");
  });

  test("reach the sheet too", async () => {
    const sheet = async (...more: string[]) =>
      JSON.parse((await mixwright(["sheet", recipe, "--json", ...more])).stdout) as unknown;
    const taught = await sheet("--learned", hard);
    expect(JSON.stringify(taught)).not.toBe(JSON.stringify(await sheet()));
  });

  test.each([
    ["a recipe that is not there", [{recipe: "gone.json", freezer: -18, found: "right"}], /gone\.json/],
    [
      "a finding that is none",
      [{recipe: "vanilla-made.json", freezer: -18, found: "hard"}],
      /\[0\]\.found: .*did you mean too hard/,
    ],
    [
      "a freezer above zero",
      [{recipe: "vanilla-made.json", freezer: 4, found: "right"}],
      /\[0\]\.freezer: .*4/,
    ],
    ["no list", {recipe: "vanilla-made.json"}, /not a list/],
    ["nothing reported", [], /reports nothing reported\.json/],
  ])("%s is refused in one line", async (what, content, says) => {
    const name = `reports ${what}.json`;
    const {code, stdout, stderr} = await mixwright(["balance", plain, "--learned", file(name, content)]);
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  });
});
