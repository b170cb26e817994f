import {readFileSync, readdirSync} from "node:fs";
import {describe, expect, test} from "vitest";
import type {Answer} from "../../lib/balance/mix/answer.ts";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import type {Brief} from "../../lib/balance/brief/brief.ts";
import {mixOf, reportOf} from "../../lib/balance/mix/mix-report.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {degrees, tenth} from "../../lib/core/format.ts";
import {seededRandom} from "../../lib/core/random.ts";
import type {Verdict} from "../../lib/freezing/scoop.ts";
import {temperingTime} from "../../lib/freezing/tub.ts";
import {answerCsv, answerHtml, answerMarkdown} from "../../lib/io/document/answer-out.ts";
import {answerJson} from "../../lib/io/document/answer-json.ts";
import {batchSheetHtml} from "../../lib/io/document/batch-sheet-html.ts";
import {batchSheetMarkdown} from "../../lib/io/document/batch-sheet-markdown.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {batchSheet} from "../../lib/kitchen/day/batch-sheet.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {counterWait, temperSentence} from "../../lib/kitchen/safety/counter-wait.ts";
import {firstWarnings} from "../../lib/kitchen/product/first-warnings.ts";
import {noDessert} from "../../lib/kitchen/product/no-dessert.ts";
import {
  duration,
  outOfFreezer,
  scoopsAgainst,
  scoopsAt,
  scoopsClause,
  softWarning,
  verdictAgainst,
  whereItScoops,
} from "../../lib/kitchen/size/scoop-words.ts";
import {demoPantry, realPantry} from "../support/pantry.ts";
import {verdictsIn} from "../support/verdicts-in.ts";

type Optimal = Extract<Answer, {status: "optimal"}>;

/** Whatever is said of one mix, in every form: no two statements that differ. */
function expectOneVerdict(answer: Optimal, brief: Brief): void {
  const {scoop, composition, amounts} = answer;
  const {verdict, low = -40, high, temperature, freezer} = scoop;
  const product = makeProduct(brief.name, [
    baseComponent({
      name: brief.name,
      lines: amounts.flatMap(({grams}, j) =>
        grams > 0.01 ? [{ingredient: brief.ingredients[j]!.ingredient, grams}] : [],
      ),
    }),
  ]);
  const sheet = batchSheet(product, {grams: 1000}, {freezer: brief.freezer});
  const told = textReport(answer, brief);
  const wait = counterWait(composition, scoop);
  for (const text of [
    told,
    answerHtml(answer),
    answerMarkdown(answer),
    batchSheetHtml(sheet),
    batchSheetMarkdown(sheet),
    `${outOfFreezer(scoop, wait)} ${softWarning(scoop) ?? ""}`,
  ])
    expect(verdictsIn(text), text).toEqual(scoop.unsure === "no ice" ? [] : [verdict]);
  // The band, as it stands in the answer and as it is printed.
  expect(verdict === "scoops").toBe(high !== undefined && tenth(freezer) >= low && tenth(freezer) <= high);
  expect(temperature === undefined).toBe(verdict === "never hardens");
  const at = temperature === undefined ? undefined : tenth(temperature);
  expect(at === undefined || (at >= low && at <= high!)).toBe(true);
  const printed = scoop.unsure
    ? /It holds no ice|Where it scoops is not known/
    : temperature === undefined
      ? /never gets as hard/
      : new RegExp(`Scoops at about ${degrees(temperature)}`);
  for (const text of [told, answerHtml(answer), whereItScoops(scoop)])
    expect(text.replaceAll(/\s+/g, " ")).toMatch(printed);
  expect(scoopsClause(scoop)).toContain(
    scoop.unsure
      ? {"no ice": "no ice", "unlike any": "no scoop temperature"}[scoop.unsure]
      : temperature === undefined
        ? "never"
        : degrees(temperature),
  );
  expect(sheet.figures.find(({label}) => label.startsWith("Scoops"))?.value).toBe(scoopsAt(scoop));
  expect((JSON.parse(answerJson(answer)) as Optimal).scoop).toEqual(scoop);
  // Tempering: none just where it scoops or is soft, and no more than an hour of it.
  const tub = {shape: "box", length: 16, width: 10.5, height: 6} as const;
  const time = temperingTime(composition, tub, {freezer, airTemperature: 20});
  expect(time !== undefined && time.minutes > 0).toBe(verdict === "firm" || verdict === "hard");
  const isHard = (verdict === "firm" || verdict === "hard") && scoop.unsure !== "no ice";
  expect(wait?.minutes).toBe(isHard ? time!.minutes : undefined);
  const waits = isHard && time!.minutes <= 60;
  expect(/Temper at/.test(temperSentence(scoop, time, 20))).toBe(waits);
  const stays = isHard && !waits;
  expect(temperSentence(scoop, time, 20).includes("does not soften it")).toBe(stays);
  for (const text of [
    told,
    answerHtml(answer),
    answerMarkdown(answer),
    batchSheetHtml(sheet),
    batchSheetMarkdown(sheet),
  ]) {
    const plain = text
      .replaceAll(/\u00a0|&nbsp;/g, " ")
      .replaceAll(/\s+/g, " ")
      .replaceAll("\\", "");
    expect(/(minutes?|hours) at 20 °C/.test(plain), plain).toBe(waits);
    expect(plain.includes("an hour on the counter, as long as a tub should stand, does not soften it")).toBe(
      stays,
    );
  }
  // What is not fit for the freezer says so first.
  const unfit = firstWarnings(answer).length > 0;
  expect(unfit).toBe(
    !["scoops", "firm"].includes(verdict) ||
      noDessert(composition) !== undefined ||
      scoop.unsure === "no ice",
  );
  const first = /^(Soft in|Never hardens|Too hard for|(Fat|A paste|Ice|A drink), not)/;
  expect(first.test(told.split("\n")[3]!.trim())).toBe(unfit);
  expect(answerCsv(answer).split("\n")[1]!.startsWith("warning,")).toBe(unfit);
}

describe("one verdict", () => {
  const demos = readdirSync("datasets/demo").filter((file) => /^(?!recipe).*-base\.json$/.test(file));

  test.each(demos)("in all that is said of %s and of its candidates", (file) => {
    const {
      pantry: _,
      prices: __,
      ...input
    } = JSON.parse(readFileSync(`datasets/demo/${file}`, "utf8")) as BriefInput;
    const brief = readBrief(input, demoPantry);
    const answer = balance(input, {pantry: demoPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    for (const mix of [answer, ...answer.candidates]) expectOneVerdict({...mix, candidates: []}, brief);
  });

  test("in all that is said of 60 mixes by chance", () => {
    const next = seededRandom(7);
    const names = [
      "whole milk",
      "cream 40 %",
      "sucrose",
      "dextrose",
      "water",
      "cocoa butter",
      "egg yolk",
      "vodka",
    ];
    const freezers = [-18, -15, -12.5, -17.96, -22, -30];
    const seen = new Map<Verdict, number>();
    for (let i = 0; i < 60; i++) {
      const freezer = freezers[i % freezers.length]!;
      const brief = readBrief({name: "mix by chance", batch: 1000, freezer, ingredients: names}, realPantry);
      const raw = names.map((_, j) => [6, 2, 1.6, 0.8, 3, 0.3, 0.5, 0.4][j]! * next() ** 2);
      const total = raw.reduce((sum, value) => sum + value, 0);
      const report = reportOf(
        mixOf(
          brief,
          raw.map((value) => value / total),
        ),
      );
      expectOneVerdict(
        {
          ...report,
          status: "optimal",
          name: brief.name,
          batch: 1000,
          binding: [],
          degenerate: false,
          engine: "none",
          check: {residual: 0, fraction: 0},
          candidates: [],
        },
        brief,
      );
      seen.set(report.scoop.verdict, (seen.get(report.scoop.verdict) ?? 0) + 1);
    }
    expect([...seen.keys()].sort()).toEqual(["firm", "hard", "never hardens", "scoops", "soft"]);
  }, 300_000);

  test("is as before only where what is printed is", () => {
    const at = (temperature: number) => ({temperature, low: -17, high: -11});
    expect(scoopsAgainst(at(-15.349), at(-15.251))).toBe("It scoops at −15.3 °C, as before.");
    expect(scoopsAgainst(at(-15.349), at(-15.351))).toBe(
      "It scoops at −15.3 °C, where it was −15.4 °C before.",
    );
    expect(scoopsAgainst({}, {})).toContain("as before");
    expect(scoopsAgainst({}, at(-15))).toContain("now never");
    expect(scoopsAgainst(at(-15), {})).toContain("never got");
    const scoop = {...at(-15), freezer: -18, overrun: 30, verdict: "firm"} as const;
    expect(verdictAgainst(scoop, scoop)).toBe("At −18 °C it is still firm.");
    expect(verdictAgainst({...scoop, verdict: "scoops"}, {...scoop, verdict: "scoops"})).toBe(
      "At −18 °C it still scoops.",
    );
    expect(verdictAgainst(scoop, {...scoop, verdict: "soft"})).toBe(
      "At −18 °C it is firm; before it was soft.",
    );
  });

  test("gives times that read well", () => {
    expect([0.2, 1.4, 12.3, 89.4, 90, 150].map(duration)).toEqual([
      "1 minute",
      "1 minute",
      "12 minutes",
      "89 minutes",
      "1.5 hours",
      "2.5 hours",
    ]);
  });
});

describe("a mix that never hardens", () => {
  const ingredients = [
    {name: "water", price: 0.1},
    {name: "sucrose", price: 1},
    {name: "fructose", price: 0.01},
  ];

  test("meets no upper limit on the scoop temperature or the freezing point", () => {
    for (const target of ["scoopTemperature", "freezingPoint"] as const) {
      // Fructose all but gives itself away: the cheapest would be syrup.
      const answer = balance({ingredients, targets: {[target]: {max: -5}}}, {pantry: realPantry});
      if (answer.status !== "optimal") throw new Error(answer.status);
      expect(answer.shares[target]).toBeLessThanOrEqual(-5 + 1e-6);
    }
  });

  test("is named in the conflict where nothing can freeze", () => {
    const answer = balance(
      {ingredients: [{name: "sucrose", price: 1}], targets: {scoopTemperature: {max: -14}}},
      {pantry: realPantry},
    );
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.conflict.targets).toMatchObject([{target: "scoopTemperature", bound: "max", limit: -14}]);
  });
});

describe("candidates", () => {
  test.each([
    ["cost", undefined],
    ["another aim", "co2"],
  ])("with %s as the aim: none is worse in the freezer, none more than 15 %% off", (_, minimise) => {
    const co2: Record<string, number> = {water: 0.001, sucrose: 0.08, dextrose: 0.12, "cream 40 %": 0.9};
    const ingredients = Object.entries(co2).map(([name, value], i) => ({
      name,
      price: [0.01, 1, 2.5, 5][i]!,
      properties: {co2: value},
    }));
    const answer = balance<string>(
      {ingredients, targets: {fat: {min: 6}, sugars: {min: 12, max: 30}}, ...(minimise && {minimise})},
      {pantry: realPantry},
    );
    if (answer.status !== "optimal") throw new Error(answer.status);
    const {objective} = answer;
    expect(objective).toMatchObject(
      minimise
        ? {name: "co2", unit: "per 100 g", sense: "minimise"}
        : {name: "cost", unit: "money per kg", sense: "minimise"},
    );
    expect(answer.candidates.length).toBeGreaterThan(0);
    const order: Verdict[] = ["never hardens", "soft", "scoops", "firm", "hard"];
    const worth = (verdict: Verdict) => Math.abs(order.indexOf(verdict) - 2);
    for (const mix of answer.candidates) {
      expect(worth(mix.scoop.verdict)).toBeLessThanOrEqual(worth(answer.scoop.verdict));
      expect(mix.objective!.value).toBeLessThanOrEqual(objective!.value * 1.15 + 1e-9);
      expect(mix.objective!.name).toBe(objective!.name);
    }
  });

  test("the softest still holds its shape", () => {
    const {
      pantry: _,
      prices: __,
      ...input
    } = JSON.parse(readFileSync("datasets/demo/pear-base.json", "utf8")) as BriefInput;
    const answer = balance(input, {pantry: demoPantry});
    const softest = answer.candidates.find(({name}) => name.startsWith("softest"));
    expect(softest?.scoop.verdict).toBe("scoops");
  });
});

describe("what is optimised", () => {
  test("is said to be nothing where there are no prices", () => {
    const input: BriefInput = {ingredients: ["water", "sucrose"], targets: {sugars: {min: 20}}};
    const answer = balance(input, {pantry: realPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    expect(answer).not.toHaveProperty("objective");
    for (const text of [
      textReport(answer, readBrief(input, realPantry)),
      answerHtml(answer),
      answerMarkdown(answer),
    ])
      expect(text).toContain("Nothing was minimised");
    expect(answerCsv(answer)).toContain("minimised,nothing");
  });

  test("stands in report and files with its value", () => {
    const input: BriefInput = {
      ingredients: ["water", "sucrose", "dextrose"],
      targets: {sugars: {equal: 20}},
      maximise: {ice: {at: -18}},
    };
    const answer = balance(input, {pantry: realPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    const {name, value, unit, sense} = answer.objective!;
    expect([name, unit, sense]).toEqual(["ice at -18 °C", "g per 100 g", "maximise"]);
    expect(value).toBeCloseTo(answer.freezing.curve.find(({temperature}) => temperature === -18)!.ice, 9);
    const sentence = `Most ice at −18 °C that the brief allows: ${value.toFixed(2)} g per 100 g.`;
    expect(textReport(answer, readBrief(input, realPantry)).replaceAll(/\s+/g, " ")).toContain(sentence);
    expect(answerHtml(answer)).toContain(sentence);
    expect(answerCsv(answer)).toContain("maximised,ice at -18 °C,");
  });
});
