import type {Amount, Answer, Balanced, LimitSide} from "../../balance/mix/answer.ts";
import type {WeighableMix} from "../../balance/weigh/weighable.ts";
import {counterWait} from "../../kitchen/safety/counter-wait.ts";
import {outOfFreezer, whereItScoops} from "../../kitchen/size/scoop-words.ts";
import {expectOptions} from "../../core/shape.ts";
import {csvText} from "../text/escape.ts";
import {expectAnswer} from "../report/expect-answer.ts";
import type {Figure} from "../text/figure.ts";
import {rounded, roundedGrams} from "../text/rounded.ts";
import {shareDigits, shareUnit} from "../text/share-unit.ts";
import {type Tables, type TableSection, tablesHtml, tablesMarkdown} from "../text/tables.ts";
import {decimal, degrees, grams, setDegrees} from "../../core/format.ts";
import {objectiveFigures, objectiveSentence} from "../report/objective-words.ts";
import {fullName, plainName} from "../text/plain-name.ts";
import {amountsSection, conflictSections} from "./conflict-sections.ts";
import {firstWarnings} from "../../kitchen/product/first-warnings.ts";
import {mixCautions} from "../../kitchen/product/mix-cautions.ts";
import {doseCautions} from "../report/report-lines.ts";
import {weighFigures, weighSection} from "../report/weighable-sections.ts";

/** Extras that are written beside an answer. */
export interface AnswerExtras {
  /** The same mix in amounts to weigh and count, from `weighable`: it comes first, since it is the one to make. */
  readonly weighable?: WeighableMix;
}

/** Extras that may be given with an answer; prices and reliability belong to the report and are ignored here. */
const EXTRAS = ["weighable", "prices", "reliability"];

/**
 * An answer as Markdown (CommonMark with GitHub's tables), everything escaped; with a weighable mix that comes first.
 *
 * @example
 * ```ts
 * const brief = {name: "syrup", ingredients: ["water", "sucrose"], targets: {sugars: {equal: 30}}};
 * answerMarkdown(balance(brief, {pantry: includedPantry()})).split("\n")[0]; // => "# syrup"
 * ```
 */
export function answerMarkdown(answer: Answer, extras: AnswerExtras = {}): string {
  expectOptions(extras, EXTRAS, "extras");
  return tablesMarkdown(answerTables(answer, extras));
}

/**
 * An answer as a whole HTML document: no script, no outside file, everything escaped; with a weighable mix that comes first.
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["water", "sucrose"], targets: {sugars: {equal: 30}}};
 * answerHtml(balance(brief, {pantry: includedPantry()})).slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function answerHtml(answer: Answer, extras: AnswerExtras = {}): string {
  expectOptions(extras, EXTRAS, "extras");
  return tablesHtml(answerTables(answer, extras));
}

/**
 * An answer as CSV, one figure a row, with the columns `section`, `name`, `value`, `unit`: the amounts in g and in g per
 * 100 g, the shares, the freezing curve (named by its temperature) and the binding limits; for an infeasible brief, the conflict and
 * the least changes. No spreadsheet reads a name as a formula. Amounts are rounded to 0.1 g (0.01 g below 10 g), shares, ice and
 * money to 0.01, scoop temperatures to 0.1 °C; `answerJson` has every digit.
 *
 * With a weighable mix its rows come first: section `weigh` has the amounts in g, `count` the numbers of whole units,
 * `weighed` its mass and cost, `missed` its values where it misses a target.
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["water", "sucrose"], targets: {sugars: {equal: 30}}};
 * answerCsv(balance(brief, {pantry: includedPantry()})).split("\r\n")[0]; // => "section,name,value,unit"
 * ```
 */
export function answerCsv(answer: Answer, extras: AnswerExtras = {}): string {
  expectAnswer(answer);
  expectOptions(extras, EXTRAS, "extras");
  const {weighable} = extras;
  return csvText(
    ["section", "name", "value", "unit"],
    [...(weighable ? weighFigures(weighable) : []), ...figures(answer)],
  );
}

function figures(answer: Answer): Figure[] {
  if (answer.status === "infeasible") {
    const {targets, relaxations, amounts = []} = answer.conflict;
    return [
      ...targets.map((t): Figure => ["conflict", `${t.target} ${t.bound}`, t.limit, limitUnit(t)]),
      ...relaxations.map((t): Figure => [
        "change",
        `${t.target} ${t.bound}`,
        t.dropped ? "leave it out" : t.to,
        limitUnit(t),
      ]),
      ...amounts.flatMap(amountFigures),
    ];
  }
  if (answer.status !== "optimal") return [["answer", answer.status, answer.reason, ""]];
  const {amounts, cost, batch, shares, freezing, scoop, binding, beyondDoses} = answer;
  const known: Partial<typeof scoop> = scoop.unsure ? {} : scoop;
  return [
    ...firstWarnings(answer).map((warning): Figure => ["warning", scoop.verdict, warning, ""]),
    ...amounts.flatMap(amountFigures),
    ["batch", "mass", roundedGrams(batch), "g"],
    ["batch", "cost", to(2, cost), "money"],
    ...objectiveFigures(answer),
    ...Object.entries(shares).map(([name, value]): Figure => [
      "mix",
      name,
      to(shareDigits(name), value),
      shareUnit(name),
    ]),
    ["scoop", "temperature", to(1, known.temperature), "°C"],
    ["scoop", "low", to(1, known.low), "°C"],
    ["scoop", "high", to(1, known.high), "°C"],
    ["scoop", "error", to(1, known.error), "°C"],
    ["scoop", "overrun", scoop.overrun, "%"],
    ["scoop", "freezer", scoop.freezer, "°C"],
    ["scoop", "verdict", scoop.verdict, ""],
    ...(beyondDoses ?? []).map((d): Figure => ["beyond dose", d.name, to(2, d.has), "g per 100 g"]),
    ...freezing.curve.map((p): Figure => ["ice", `${p.temperature} °C`, to(2, p.ice), "g per 100 g"]),
    ...binding.map((b): Figure => ["binding", `${b.target} ${b.bound}`, b.limit, limitUnit(b)]),
  ];
}

/** A figure to so many decimals; `undefined` stays `undefined`. */
function to(digits: number, value: number | undefined): number | undefined {
  return value === undefined ? undefined : rounded(value, digits);
}

function amountFigures({ingredient, grams, percent}: Amount): Figure[] {
  return [
    ["amount", ingredient, roundedGrams(grams), "g"],
    ["share", ingredient, to(2, percent), "g per 100 g"],
  ];
}

/** A unit as it is printed: "%" for g per 100 g of mix. */
function printedUnit(unit: string): string {
  return unit === "g per 100 g" ? "%" : unit;
}

function limitUnit({on, target}: LimitSide): string {
  if (on.kind === "ingredient") return "g";
  if (on.kind === "rule") return on.rule === "maxIngredients" ? "" : on.rule === "ratio" ? "g per g" : "g";
  return on.kind === "dose" ? "g per 100 g" : shareUnit(target);
}

function answerTables(answer: Answer, {weighable}: AnswerExtras): Tables {
  expectAnswer(answer);
  if (answer.status === "infeasible")
    return {title: answer.name, sections: conflictSections(answer.conflict, answer.brief)};
  if (answer.status !== "optimal")
    return {title: answer.name, sections: [{heading: "No verified answer", sentences: [answer.reason]}]};
  const [exact, ...rest] = mixSections(answer);
  const made = weighable && weighSection(weighable);
  const warnings = firstWarnings(weighable ?? answer);
  const warned = (section: TableSection): TableSection =>
    warnings.length ? {...section, sentences: [...warnings, ...(section.sentences ?? [])]} : section;
  if (!made) return {title: answer.name, sections: [warned(exact), ...rest]};
  return {
    title: answer.name,
    sections: [warned(made), {...exact, heading: "The exact mix that this comes from"}, ...rest],
  };
}

function mixSections({
  amounts,
  batch,
  cost,
  shares,
  freezing,
  scoop,
  binding,
  beyondDoses,
  composition,
  objective,
  brief,
}: Balanced): [TableSection, ...TableSection[]] {
  const {initialFreezingPoint: point, curve} = freezing;
  const first = firstWarnings({composition, scoop});
  const even = curve.filter(({temperature}) => temperature % 2 === 0);
  return [
    {
      ...amountsSection("Ingredients", amounts),
      sentences: [
        `${grams(batch)} g${cost === undefined ? "" : `, cost ${decimal(cost, 2)} (${decimal((cost / batch) * 1000, 2)} per kg)`}`,
        objectiveSentence({...(objective && {objective})}),
        ...doseCautions(beyondDoses),
        ...mixCautions(composition).filter((caution) => !first.includes(caution)),
      ],
    },
    {
      heading: "The mix, in 100 g",
      columns: ["Quantity", "Value", "Unit"],
      rows: Object.entries(shares).map(([name, value]) => [
        fullName(name),
        decimal(value, shareDigits(name)),
        printedUnit(shareUnit(name)),
      ]),
    },
    {
      heading: "Freezing",
      sentences: [
        point === undefined
          ? "It does not freeze above −40 °C."
          : `Starts to freeze at ${degrees(point, 2)}.`,
        `${whereItScoops(scoop)} From a freezer at ${setDegrees(scoop.freezer)} ${outOfFreezer(scoop, counterWait(composition, scoop, brief?.learned))} (an estimate at ${decimal(scoop.overrun, 0)} % overrun).`,
      ],
      columns: ["Temperature, °C", "Ice, %", "Water that is ice, %"],
      rows: even.map((p) => [decimal(p.temperature, 0), decimal(p.ice, 1), decimal(p.frozen, 0)]),
    },
    {
      heading: "Limits that hold the mix",
      columns: ["Limit", "Bound", "Value", "Unit"],
      rows: binding.map((b) => [
        plainName(b.target),
        b.bound,
        decimal(b.limit, 2),
        printedUnit(limitUnit(b)),
      ]),
    },
  ];
}
