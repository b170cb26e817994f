import {describe, expect, test} from "vitest";
import {readFileSync} from "node:fs";
import * as fc from "fast-check";
import Papa from "papaparse";
import {InputError} from "../../lib/core/errors.ts";
import {misquoted, recordsOf} from "../../lib/io/csv/csv-records.ts";
import {numberIn, readCsv} from "../../lib/io/csv/csv.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";

/** The message of the InputError that the call throws. */
function complaint(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error("nothing was thrown");
}

describe("readCsv", () => {
  test("accepts a byte-order mark, CRLF, quotes, line breaks in quotes and blank rows, and keeps line numbers (RFC 4180)", () => {
    const table = readCsv('\uFEFFname,note\r\n"a ""b""","two\r\nlines"\r\n\r\n,\r\nc, d \r\n', "x.csv");
    expect(table.columns).toEqual(["name", "note"]);
    expect(table.rows.map((row) => row.line)).toEqual([2, 6]);
    expect(table.rows[0]?.cells.get("name")).toBe('a "b"');
    expect(table.rows[0]?.cells.get("note")).toBe("two\r\nlines");
    expect([...(table.rows[1]?.cells ?? [])]).toEqual([
      ["name", "c"],
      ["note", "d"],
    ]);
  });

  test("passes over a first line that names the delimiter, and counts it", () => {
    const table = readCsv("sep=;\r\nname;price\r\nmilk;1,20\r\n", "x.csv");
    expect(table.columns).toEqual(["name", "price"]);
    expect(numberIn(table, table.rows[0]!, "price")).toBe(1.2);
    expect(table.rows[0]!.place).toBe("x.csv, row 3");
  });

  test("reads the same cells as papaparse in every data file", () => {
    for (const file of ["ingredients.csv", "sources.csv", "tools/food-tables.csv", "tools/shelf.csv"]) {
      const text = readFileSync(new URL(`../../datasets/${file}`, import.meta.url), "utf8");
      const ours = readCsv(text, file);
      const {data: theirs, meta} = Papa.parse<Record<string, string>>(text.trimEnd(), {header: true});
      expect(ours.columns).toEqual(meta.fields);
      expect(ours.rows.map(({cells}) => ours.columns.map((column) => cells.get(column) ?? ""))).toEqual(
        theirs.map((row) => ours.columns.map((column) => row[column])),
      );
    }
  });

  test("refuses the quotes that papaparse finds malformed, and reads the same cells as it otherwise", () => {
    const tally = {refused: 0, read: 0};
    fc.assert(
      fc.property(fc.stringMatching(/^[ab",\n\r]{1,14}$/), (body) => {
        const text = `a,b\n${body}`;
        // Of a lone line break after the last row the two think differently; of two kinds of them papaparse takes one.
        fc.pre(
          !/[\r\n]$/.test(body) && !/\r/.test(body.replaceAll("\r\n", "")) && !/[^\r]\n/.test(` ${body}`),
        );
        const {data, errors} = Papa.parse<string[]>(text.replaceAll("\r\n", "\n"), {
          delimiter: ",",
          newline: "\n",
          fastMode: false,
        });
        const refused = errors.some(({type}) => type === "Quotes");
        const found = misquoted(text, ",", 1);
        expect(found !== undefined, JSON.stringify(text)).toBe(refused);
        tally[refused ? "refused" : "read"]++;
        if (refused) return;
        const ours = recordsOf(text.replaceAll("\r\n", "\n"), ",", "x.csv", 1, 100).map(({cells}) => cells);
        expect(ours).toEqual(data);
      }),
      {numRuns: 2000, seed: 1},
    );
    expect(Math.min(tally.refused, tally.read)).toBeGreaterThan(200);
  });

  test("reads decimal commas where semicolons delimit, and not elsewhere", () => {
    const table = readCsv("name;price_per_kg\nmilk;1,25\ncream;4.5\n");
    expect(table.rows.map((row) => numberIn(table, row, "price_per_kg"))).toEqual([1.25, 4.5]);
    const comma = readCsv('name,price_per_kg\nmilk,"1,25"\n', "p.csv");
    expect(complaint(() => comma.rows.map((row) => numberIn(comma, row, "price_per_kg")))).toBe(
      'p.csv, row 2, price_per_kg: a comma in a number, in a file whose cells are parted by commas (got "1,25"); write a decimal point and no sign for thousands, or part the cells by semicolons',
    );
  });

  test("offers semicolons where a row has too many cells", () => {
    expect(complaint(() => readCsv("name,price_per_kg,unit_g\nmilk,1,05,\n", "x.csv"))).toBe(
      'x.csv, row 2, column 4: 4 cells under 3 columns (got ""); give one cell a column; quote a cell that holds a comma, or part all cells by semicolons: then numbers may have decimal commas',
    );
    expect(complaint(() => readCsv("name;unit_g\nmilk;1;05\n", "x.csv"))).toContain(
      "quote a cell that holds a semicolon",
    );
  });

  test.each([
    ["an open quote", 'name,note\na,"b\nc,d\n', "x.csv, row 2, note: malformed quotes"],
    ["a blank after a quote", 'name,note\na,b\n"a" ,b\n', "x.csv, row 3, name: malformed quotes"],
    [
      "a quote opened in the third line",
      'name,note\na,b\n"a\r\nb",c\n"d",""e"\n',
      "x.csv, row 5, note: malformed quotes",
    ],
    ["text after a quote", 'name,note\na,b\n"a"x,b\n', "x.csv, row 3, name: malformed quotes"],
    ["too few cells", "name,unit_g,note\na,1\n", "x.csv, row 2, note: 2 cells under 3 columns"],
    [
      "too many cells",
      "name,note\na,b\na,b,c\n",
      'x.csv, row 3, column 3: 3 cells under 2 columns (got "c")',
    ],
    ["a repeated column", "name,note,name\n", 'x.csv, row 1, column 3: duplicate column (got "name")'],
    ["a column without a name", "name,,note\n", "x.csv, row 1, column 2: a column without a name"],
    ["nothing at all", "", "x.csv, row 1, column 1: no header"],
  ])("names row and column of %s", (_, text, message) => {
    expect(complaint(() => readCsv(text, "x.csv"))).toContain(message);
  });
});

describe("a number with something beside it", () => {
  const amount = "write the number alone";
  // Of each: the cell, the sign that parts the cells, and what is to be written instead.
  test.each([
    ["48,5 %", ";", `${amount}: 48,5 (g)`],
    ["48.5%", ",", `${amount}: 48.5 (g)`],
    ["48,5 %", ",", `${amount}: 48.5 (g)`],
    ["38,50 €", ";", `${amount}: 38,50 (g)`],
    ["€ 38.50", ",", `${amount}: 38.50 (g)`],
    ["ca. 12 g/100 g", ";", `${amount}: 12 (g)`],
    ["-5 g", ",", `${amount}: -5 (g)`],
    ["1.234,50 €", ";", `${amount}: 1234,50 (g)`],
    ["1.250 g", ";", "write 1250, or a decimal comma: 1,250"],
    ["2 kg", ";", `${amount} (g)`],
    ["<0,5", ";", `write 0, or the number alone: 0,5 (g)`],
    ["< 0.5 g", ",", `write 0, or the number alone: 0.5 (g)`],
    ["less than 0.1", ",", `write 0, or the number alone: 0.1 (g)`],
    ["traces", ";", `write 0, or the number alone (g)`],
    ["Tr", ",", `write 0, or the number alone (g)`],
    ["1.234,50", ";", "leave out the thousands point: 1234,50"],
    ["1.234.567", ";", "leave out the thousands point: 1234567"],
    ["1,234.50", ",", "leave out the thousands comma: 1234.50"],
    ["1.234,50", ",", "leave out the thousands point: 1234.50"],
    ["1 234,5", ";", "leave out the thousands blank: 1234,5"],
    ["1'234.5", ";", "leave out the thousands apostrophe: 1234,5"],
  ])("%s in a file parted by %s", (cell, delimiter, advice) => {
    const table = readCsv(`name${delimiter}stock_g\nmilk${delimiter}"${cell}"\n`, "p.csv");
    const message = complaint(() => numberIn(table, table.rows[0]!, "stock_g", {min: 0}, "g"));
    expect(message).toMatch(/^p\.csv, row 2, stock_g: /);
    expect(message).toContain(`(got "${cell}"); ${advice}`);
    expect(message.endsWith(advice)).toBe(true);
  });

  test("takes no number from a range, a sum, a fraction or words", () => {
    for (const cell of [
      "5-6",
      "5–6 g",
      "2 x 500 g",
      "1/2",
      "lots",
      "5 6 g",
      "1.2.3 g",
      "--5",
      "x".repeat(9000),
    ]) {
      const table = readCsv(`name;stock_g\nmilk;"${cell}"\n`, "p.csv");
      expect(complaint(() => numberIn(table, table.rows[0]!, "stock_g", {min: 0}, "g"))).toContain(
        "give a number of at least 0 g",
      );
    }
  });

  test("does not offer 0 where it would be refused", () => {
    const table = readCsv("name;unit_g\negg;<50\n", "p.csv");
    expect(complaint(() => numberIn(table, table.rows[0]!, "unit_g", {min: 1e-6}, "g"))).toMatch(
      /; write the number alone: 50 \(g\)$/,
    );
  });
});

describe("a nutrition label in a table", () => {
  const figures = "label_fat_g,label_carbohydrate_g,label_sugars_g,label_protein_g";
  test.each([
    [
      "no class",
      `name,label_class,${figures},label_salt_g\npaste,,60,17,5,15,0\n`,
      /^p\.csv, row 2, label_class: empty, beside the figures of a label; name the class .*: dairy, .*nut, /,
    ],
    [
      "no column for the class",
      `name,${figures},label_salt_g\npaste,60,17,5,15,0\n`,
      /^p\.csv, row 2: a label and neither a composition nor a column label_class; add the column .* nut, /,
    ],
    [
      "no column for a figure",
      `name,label class,${figures}\npaste,nut,60,17,5,15\n`,
      /^p\.csv, row 1: no column label_salt_g; add it, .* 0 if it says so$/,
    ],
    [
      "a figure under the column of a part",
      `name,label class,${figures},salt (g)\npaste,nut,60,17,5,15,0\n`,
      /^p\.csv, row 1: no column label_salt_g \(got "salt \(g\)"\); rename salt \(g\) to label_salt_g/,
    ],
    [
      "an empty figure",
      `name,label class,${figures},Label salt (g)\npaste,nut,60,17,5,15,\n`,
      /^p\.csv, row 2, Label salt \(g\): no figure; give it as the packet does, 0 if it says so$/,
    ],
    [
      "a column that forgets whose it is",
      "name,label class,protein g\npaste,nut,15\n",
      /^p\.csv, row 1, protein g: unknown column \(got "protein g"\); did you mean label_protein_g or /,
    ],
    [
      "a class misspelt",
      `name,label_class,${figures},label_salt_g\npaste,nuts,60,17,5,15,0\n`,
      /^p\.csv, row 2, label_class: unknown class \(got "nuts"\); did you mean nut\? If not, use dairy, /,
    ],
  ])("%s", (_, text, message) => {
    expect(complaint(() => readPantryCsv(text, "p.csv"))).toMatch(message);
  });

  test("needs no class where the composition is given", () => {
    expect(readPantryCsv("name,water_g,label_fat_g\nwater,100,0\n")[0]?.composition).toEqual({water: 100});
  });
});

describe("readPantryCsv", () => {
  test("reads shorthands, a price, portions, allergens and properties of one's own", () => {
    const [cream, syrup] = readPantryCsv(
      "name,fat_g,msnf_g,water_g,glucoseSyrupSolids_g,dextrose_equivalent,price_per_kg,stock_g,portions,allergens,property_co2\n" +
        "cream,40,5.4,54.6,,,4.2,900,cup=240; tablespoon = 15,Milk,310\n" +
        "syrup,,,20,80,42,,,,,\n",
    );
    expect(cream).toMatchObject({
      name: "cream",
      price: 4.2,
      stock: 900,
      portions: {cup: 240, tablespoon: 15},
      allergens: ["milk"],
      properties: {co2: 310},
    });
    // Goff's split of MSNF: 54 % lactose.
    expect(cream?.composition.milkFat).toBe(40);
    expect(cream?.composition.lactose).toBeCloseTo(5.4 * 0.54, 12);
    expect(syrup).toEqual({
      name: "syrup",
      composition: {water: 20, glucoseSyrupSolids: 80, dextroseEquivalent: 42},
    });
  });

  test("takes odd names as they come", () => {
    const names = ["__proto__", "result", "constructor", "<img src=x>", "???"];
    const odd = readPantryCsv(
      `name,water_g,portions\n${names.map((name) => `${name},100,__proto__=5`).join("\n")}\n`,
    );
    expect(odd.map((ingredient) => ingredient.name)).toEqual(names);
    expect(odd.map((ingredient) => Object.entries(ingredient.portions ?? {}))).toEqual(
      names.map(() => [["__proto__", 5]]),
    );
  });

  test.each([
    ["name,watter_g\na,100\n", "p.csv, row 1, watter_g: unknown column", "did you mean water_g"],
    ["water_g\n100\n", "p.csv, row 1: no column name", "add a column called name"],
    ["name,water_g\n,100\n", "p.csv, row 2, name: empty", "give the ingredient a name"],
    [
      "name,water_g\na,lots\n",
      'p.csv, row 2, water_g: not a finite number (got "lots")',
      "from 0 to 100 g per 100 g",
    ],
    ["name,water_g\na,-1\n", "p.csv, row 2, water_g: out of range (got -1)", "from 0 to 100"],
    ["name,water_g\na,NaN\n", 'p.csv, row 2, water_g: not a finite number (got "NaN")', "from 0 to 100"],
    ["name,water_g\na,90\n", "p.csv, row 2, a: the parts do not sum to 100 g (got 90)", "give every part"],
    ["name,glucoseSyrupSolids_g\na,100\n", "p.csv, row 2, a.dextroseEquivalent: missing", "give the DE"],
    ["name,water_g\na,100\n\nA,100\n", "p.csv, row 4, name: the name of row 2 again", "a name of its own"],
    [
      "name,water_g,allergens\na,100,milk; nut\n",
      'p.csv, row 2, allergens: unknown word (got "nut")',
      "nuts",
    ],
    ["name,water_g,grade\na,100,good\n", 'p.csv, row 2, grade: unknown word (got "good")', "measured"],
    ["name,water_g,portions\na,100,cup\n", 'p.csv, row 2, portions: not a portion (got "cup")', "cup=244"],
    ["name,water_g,portions\na,100,cup=0\n", "p.csv, row 2, portions: out of range (got 0)", "g"],
    ["name,water_g,unit_g\na,100,0\n", "p.csv, row 2, unit_g: out of range (got 0)", "g"],
    [
      "name,water_g,price_per_kg\na,100,-2\n",
      "p.csv, row 2, price_per_kg: out of range (got -2)",
      "money per kg",
    ],
  ])("says where, what and what to do: %j", (text, where, advice) => {
    const message = complaint(() => readPantryCsv(text, "p.csv"));
    expect(message).toContain(where);
    expect(message).toContain(advice);
    expect(message).not.toContain("\n");
  });
});

describe("readPricesCsv", () => {
  test("leaves an unknown price or stock absent", () => {
    expect(readPricesCsv("name;price_per_kg;stock_g\nmilk;1,05;4000\nplum;;\n", "p.csv")).toEqual([
      {name: "milk", price: 1.05, stock: 4000, place: "p.csv, row 2"},
      {name: "plum", place: "p.csv, row 3"},
    ]);
  });

  test.each([
    ["name,price\nmilk,1\n", "p.csv, row 1, price: unknown column", "price_per_kg"],
    [
      "name,price_per_kg\nmilk,1\nMilk,2\n",
      "p.csv, row 3, name: the name of row 2 again",
      "a name of its own",
    ],
    [
      "name,price_per_kg\nmilk,free\n",
      'p.csv, row 2, price_per_kg: not a finite number (got "free")',
      "money per kg",
    ],
    ["name,stock_g\n,1\n", "p.csv, row 2, name: empty", "name"],
    ["price_per_kg\n1\n", "p.csv, row 1: no column name", "add a column called name"],
  ])("says where, what and what to do: %j", (text, where, advice) => {
    const message = complaint(() => readPricesCsv(text, "p.csv"));
    expect(message).toContain(where);
    expect(message).toContain(advice);
  });
});
