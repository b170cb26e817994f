import {parseHTML} from "linkedom";
import Papa from "papaparse";
import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import {freezingCurve} from "../../lib/freezing/curve.ts";
import {answerJson} from "../../lib/io/document/answer-json.ts";
import {answerCsv, type AnswerExtras, answerHtml, answerMarkdown} from "../../lib/io/document/answer-out.ts";
import {freezingCurveSvg} from "../../lib/io/document/curve-svg.ts";
import {recipeHtml, recipeMarkdown} from "../../lib/io/document/recipe-out.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";

/** Names that a spreadsheet, a browser or a Markdown reader might act on. */
const HOSTILE = [
  "=HYPERLINK(1)",
  "@x",
  "+1",
  "<script>alert(1)</script>",
  "a|b",
  "[a](javascript:x)",
  '"><img src=x>',
];

const answer = balance({
  name: "<b>mix</b> | =1",
  ingredients: [
    {name: "water", composition: {water: 100}, price: 0},
    ...HOSTILE.map((name, i) => ({name, composition: {sucrose: 100}, price: 1 + i / 10, max: 30})),
  ],
  targets: {sugars: {equal: 12}},
});
const impossible = balance({
  ingredients: [{name: "<i>water</i>", composition: {water: 100}, price: 0}],
  targets: {sugars: {min: 12}},
});
const recipe = {
  name: "<u>recipe</u>",
  lines: HOSTILE.map((name) => ({ingredient: {name, composition: {water: 100}}, grams: 50})),
};

describe("an answer as data", () => {
  test("is the same after JSON", () => {
    for (const each of [answer, impossible]) expect(JSON.parse(answerJson(each))).toEqual(each);
  });

  test("is CSV that no spreadsheet runs (OWASP, CSV injection), with every figure to what a reader needs", () => {
    const rows = Papa.parse<string[]>(answerCsv(answer)).data;
    expect(rows[0]).toEqual(["section", "name", "value", "unit"]);
    for (const cell of rows.flat()) expect(cell).toMatch(/^(?![=+@\t\r])(?:-?[\d.e-]+$|[^-]|-?\d.*°C$|$)/);
    const amounts = rows.filter(([section]) => section === "amount").map((row) => Number(row[2]));
    expect(amounts).toEqual([880, 30, 30, 30, 30, 0, 0, 0]);
    // 15 digits of a solver are no figure: amounts to 0.1 g, below 10 g to 0.01; shares and ice to 0.01.
    const long = rows.filter(([section, , value]) => section !== "binding" && /\.\d{3}/.test(value ?? ""));
    expect(long).toEqual([]);
    const conflict = Papa.parse<string[]>(answerCsv(impossible)).data;
    expect(conflict).toContainEqual(["conflict", "sugars min", "12", "g per 100 g"]);
  });
});

describe("an answer or a recipe as a page", () => {
  test.each([
    ["answer", answerHtml(answer)],
    ["conflict", answerHtml(impossible)],
    ["recipe", recipeHtml(recipe)],
  ])("HTML of the %s holds no element from a name", (_, html) => {
    const {document} = parseHTML(html);
    const tags = new Set([...document.querySelectorAll("body *")].map((element) => element.localName));
    const own = ["h1", "h2", "section", "p", "table", "thead", "tbody", "tr", "th", "td"];
    expect([...tags].filter((tag) => !own.includes(tag))).toEqual([]);
  });

  test("shows names as they are", () => {
    const {document} = parseHTML(recipeHtml(recipe));
    const cells = [...document.querySelectorAll("section:first-of-type td:first-child")];
    expect(cells.map((cell) => cell.textContent)).toEqual(HOSTILE);
  });

  test.each([
    ["answer", answerMarkdown(answer)],
    ["conflict", answerMarkdown(impossible)],
    ["recipe", recipeMarkdown(recipe)],
  ])("Markdown of the %s keeps its tables and has no HTML or link from a name", (_, markdown) => {
    expect(markdown).not.toMatch(/<[a-z]/i);
    expect(markdown).not.toMatch(/(?<!\\)\]\(/);
    const torn: string[] = [];
    let columns = 0;
    for (const line of markdown.split("\n")) {
      if (!line.startsWith("|")) columns = 0;
      else {
        const bars = line.match(/(?<!\\)\|/g)!.length;
        if (columns !== 0 && bars !== columns) torn.push(line);
        columns = bars;
      }
    }
    expect(torn).toEqual([]);
    expect(markdown).toContain("| --- |");
  });
});

describe("the freezing curve as a picture", () => {
  const curve = freezingCurve({water: 64, sucrose: 16, milkFat: 8, lactose: 6, milkProtein: 5, milkSalts: 1});

  test("has axes with units, the freezer and the dipping band, and no script", async () => {
    const svg = await freezingCurveSvg(curve, {freezer: -20, title: 'a "b" <script> & c\u0001'});
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    expect(svg).toContain('aria-label="a &quot;b&quot; &lt;script&gt; &amp; c "');
    for (const label of ["Temperature (°C)", "Ice (g per 100 g of mix)", "dipping", "freezer −20 °C"])
      expect(svg).toContain(label);
    expect(svg).not.toContain("<script");
  });

  test("draws the curve to scale: the line passes through the ice that the curve has at the coldest point", async () => {
    const svg = await freezingCurveSvg(curve);
    const {document} = parseHTML(svg);
    const line = document.querySelector("[aria-label=line] path")!.getAttribute("d")!;
    const last = line.split("L").at(-1)!.split(",").map(Number);
    const tick = (axis: string, text: string) => {
      const label = [...document.querySelectorAll(`[aria-label="${axis}-axis tick label"] text`)].find(
        (node) => node.textContent === text,
      )!;
      const [x, y] = /translate\(([\d.]+),([\d.]+)\)/
        .exec(label.getAttribute("transform")!)!
        .slice(1)
        .map(Number);
      return axis === "x" ? x! : y!;
    };
    const perGram = (tick("y", "0") - tick("y", "50")) / 50;
    expect(tick("x", "−30")).toBeCloseTo(last[0]!, 0);
    expect((tick("y", "0") - last[1]!) / perGram).toBeCloseTo(curve.at(-1)!.ice, 1);
  });

  test("draws a mix that does not freeze, and refuses a freezer that is none", async () => {
    expect(await freezingCurveSvg([])).toContain("</svg>");
    await expect(freezingCurveSvg(curve, {freezer: 5})).rejects.toThrow(/freezer: out of range \(got 5\)/);
  });
});

describe("a weighable mix beside an answer", () => {
  test("is refused where it is none", () => {
    const weighable = {} as NonNullable<AnswerExtras["weighable"]>;
    for (const write of [answerCsv, answerHtml, answerMarkdown])
      expect(() => write(answer, {weighable})).toThrow(/^weighable mix: not a weighable mix/);
  });

  test("runs nothing either, whatever its names", () => {
    const brief = readBrief(
      {
        ingredients: HOSTILE.map((name) => ({
          name,
          composition: {water: 70, sucrose: 30},
          unit: 20,
          group: "egg",
        })),
      },
      pantryOf([]),
    );
    const weighed = weighable(
      brief,
      HOSTILE.map(() => 140),
    );
    expect(Object.keys(weighed.counts)).toEqual(HOSTILE);
    const {document} = parseHTML(answerHtml(answer, {weighable: weighed}));
    expect(document.querySelector("h2")?.textContent).toBe("To weigh and count");
    expect(document.querySelectorAll("section:first-of-type td:first-child")).toHaveLength(HOSTILE.length);
    expect(document.querySelectorAll("script, img, a")).toHaveLength(0);
    const rows = Papa.parse<string[]>(answerCsv(answer, {weighable: weighed})).data;
    const cells = rows.filter(([section]) => section === "weigh" || section === "count").flat();
    expect(cells.length).toBe(4 * 2 * HOSTILE.length);
    expect(cells.filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
  });
});
