import {readdirSync, readFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {csvParse} from "d3-dsv";
import {describe, expect, test} from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (path: string) => readFileSync(root + path, "utf8");
const filesIn = (folder: string, ending: string) =>
  readdirSync(root + folder, {recursive: true, encoding: "utf8"})
    .filter((name) => name.endsWith(ending))
    .map((name) => `${folder}/${name}`);

const sources = csvParse(read("datasets/sources.csv"));
const keys = new Set(sources.map(({key}) => key));
const everything = sources.map((row) => Object.values(row).join(" ")).join("\n");

const TABLES = ["datasets", "datasets/tools"].flatMap((folder) =>
  readdirSync(root + folder)
    .filter((name) => name.endsWith(".csv") && name !== "sources.csv")
    .map((name) => `${folder}/${name}`),
);

/** Columns of a table that hold keys of sources. */
const KEYED = /^source$|^source_(?!id$|row$)/;

describe.each(TABLES)("%s", (path) => {
  const table = csvParse(read(path));
  const columns = table.columns.filter((column) => KEYED.test(column));

  test("names a source in every row, and none that sources.csv lacks", () => {
    // On the shelf of the tools, what comes from a table of foods has its source there.
    const known = path.includes("/tools/") ? new Set([...keys, ""]) : keys;
    const cited = table.flatMap((row) => columns.flatMap((column) => (row[column] ?? "").split(/;\s*/)));
    expect([...new Set(cited)].filter((key) => !known.has(key))).toEqual([]);
    expect(cited.length).toBeGreaterThan(0);
  });
});

/** Comments and texts of the library and of the tools that make its tables. */
const CODE = [...filesIn("lib", ".ts"), ...filesIn("datasets/tools", ".ts")];
const comments = (text: string) => text.match(/\/\*\*[^]*?\*\/|\/\/ .*$/gm)?.join("\n") ?? "";

/** What follows initials without being a surname: words of journals. */
const JOURNALS = new Set(["Dairy", "Phys", "Food", "Meteorol", "Colloid", "Infect"]);

/** A file less the examples of its doc comments, whose numbers are grams and no years. */
const withoutExamples = (text: string) => text.replaceAll(/@example[^]*?(?=\n \* @|\*\/)/g, "");

describe("sources.csv", () => {
  test("has each key once, with a title and a licence or the want of one", () => {
    expect(keys.size).toBe(sources.length);
    expect(sources.filter(({title}) => title === "")).toEqual([]);
    const unlicensed = sources.filter(({licence}) => licence === "").map(({key}) => key);
    expect(unlicensed).toEqual(["common-practice", "from-memory"]);
  });

  test("says what to write where a licence asks for attribution", () => {
    const asking = sources.filter(({licence}) => /Open Government|Etalab/.test(licence!));
    expect(asking.length).toBeGreaterThan(1);
    expect(asking.filter(({attribution}) => attribution === "")).toEqual([]);
  });

  test.each(CODE)("has every author that %s names", (path) => {
    const named = [...read(path).matchAll(/(?:(?<![°\p{L}])[A-Z]\. ?)+(?:Van )?(\p{Lu}[\p{L}-]+)/gu)].map(
      ([, name]) => name!,
    );
    expect(named.filter((name) => !JOURNALS.has(name) && !everything.includes(name))).toEqual([]);
  });

  test.each(CODE)("has every year, law, article and association that %s cites", (path) => {
    const text = comments(withoutExamples(read(path)));
    const years = [...text.matchAll(/[(, ]((?:18|19|20)\d\d)(?=[),;]| \()/g)].map(([, year]) => year!);
    const works = [
      ...text.matchAll(/\bPMC\d+|\d+ CFR \d+|\b1169\/2011\b|SI \d{4}\/\d+|[A-Z]\w+ \w+ Association\b/g),
    ].map(([work]) => work);
    expect([...years, ...works].filter((cited) => !everything.includes(cited))).toEqual([]);
  });

  test("the checks see what they should: Arbuckle, Young and a regulation are named somewhere", () => {
    const all = CODE.map(read).join("\n");
    for (const name of [
      "W. S. Arbuckle",
      "PMC10346066",
      "Corn Refiners Association",
      "21 CFR 135",
      "1169/2011",
    ])
      expect(all, name).toContain(name);
  });
});
