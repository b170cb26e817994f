import type {Answer, Balanced, Binding, MixReport} from "../../balance/mix/answer.ts";
import type {Brief, Target} from "../../balance/brief/brief.ts";
import {briefOf, type BriefSource} from "../../balance/read/brief-of.ts";
import {counterWait} from "../../kitchen/safety/counter-wait.ts";
import {outOfFreezer, scoopsAt, whereItScoops} from "../../kitchen/size/scoop-words.ts";
import {firstWarnings} from "../../kitchen/product/first-warnings.ts";
import {mixCautions} from "../../kitchen/product/mix-cautions.ts";
import {subjectName, unitOf} from "../../balance/measure/of-subject.ts";
import {printable} from "../../core/errors.ts";
import {expectAnswer} from "./expect-answer.ts";
import {conflictText} from "./report-conflict.ts";
import {
  amountLines,
  cell,
  decimals,
  doseCautions,
  limitName,
  NAME_WIDTH,
  priceUnit,
  right,
  titleLines,
  wrap,
  wrapWords,
} from "./report-lines.ts";
import {decimal, degrees, grams, setDegrees} from "../../core/format.ts";
import {objectiveSentence} from "./objective-words.ts";
import {fullName, plainName} from "../text/plain-name.ts";
import {shareDigits} from "../text/share-unit.ts";
import {costText} from "./weighable-sections.ts";

/** Temperatures of the small curve, °C. */
const CURVE_AT = [-4, -6, -8, -10, -12, -14, -16, -18, -20, -25];

/**
 * An answer as a cook reads it at the bench: a plain text of at most 80 columns.
 *
 * @param answer the answer to print
 * @param source the brief that it answers, for its targets and freezer: the one that the answer holds by default
 *
 * @example
 * ```ts
 * const written = {name: "milk ice", ingredients: ["whole milk", "sucrose"], targets: {sugars: {equal: 12}}};
 * const pantry = includedPantry();
 * textReport(balance(written, {pantry})).split("\n")[0]; // => "milk ice, 1000 g"
 * ```
 */
export function textReport(answer: Answer, source: BriefSource = answer): string {
  expectAnswer(answer);
  const brief = briefOf(source);
  if (answer.status === "infeasible")
    return `${titleLines(brief)}\n\n${conflictText(answer.conflict, brief)}\n`;
  if (answer.status !== "optimal") return unansweredText(answer, brief);
  return [
    titleLines(brief),
    firstText(answer),
    amountsTable(answer),
    targetsTable(answer, brief),
    freezingText(answer, brief),
    scoopText(answer, brief),
    cautionsText(answer),
    bindingText(answer, brief),
    candidatesText(answer),
    answer.candidatesCutShort && "Other candidates were not searched to the end: the time limit came before.",
  ]
    .filter(Boolean)
    .join("\n\n")
    .concat("\n");
}

/** Report without a proved answer: the reason, the next step, and the best mix found. */
function unansweredText(answer: Extract<Answer, {status: "unbounded" | "undecided"}>, brief: Brief): string {
  const title = [titleLines(brief), `No verified answer: ${answer.reason}.`];
  if (answer.status === "unbounded") return `${title.join("\n\n")}\n`;
  const {best} = answer;
  const advice =
    "Allow more time (--deadline in the command, deadline in the library), or ask\n" +
    "for less: fewer ingredients, steps or rules.";
  const mix = best && {...best, batch: brief.batch};
  return [
    ...title,
    ...(mix
      ? [
          "The best mix found so far keeps every limit; a better one may exist:",
          firstText(mix),
          amountsTable(mix),
          targetsTable(mix, brief),
          freezingText(mix, brief),
          scoopText(mix, brief),
          cautionsText(mix),
        ].filter(Boolean)
      : []),
    advice,
  ]
    .join("\n\n")
    .concat("\n");
}

function firstText(mix: MixReport): string {
  return firstWarnings(mix).flatMap(wrapWords).join("\n");
}

function amountsTable({
  amounts,
  batch,
  cost,
  outlay,
  packs,
  objective,
}: MixReport & Pick<Partial<Balanced>, "objective"> & {readonly batch: number}): string {
  const unused = amounts
    .filter((amount) => amount.percent <= 1e-4)
    .map((amount) => printable(amount.ingredient));
  return [
    ...amountLines({amounts, batch}),
    `  ${costText(cost, batch) ?? "cost not known: an ingredient in it has no price"}`,
    ...(packs ?? []).map(
      ({ingredient, packs: opened, left}) =>
        `  opens ${opened} of ${printable(ingredient)}, ${grams(left)} g left`,
    ),
    ...(outlay === undefined ? [] : [`  with whole packs paid: ${decimal(outlay, 2)}`]),
    ...wrapWords(objectiveSentence({...(objective && {objective})})),
    ...(unused.length ? [`  not used: ${unused.join(", ")}`] : []),
  ].join("\n");
}

function targetsTable({shares}: MixReport, brief: Brief): string {
  const wanted = new Map<string, Target[]>();
  for (const target of brief.targets) {
    const name = subjectName(target.subject);
    wanted.set(name, [...(wanted.get(name) ?? []), target]);
  }
  const lines = [...wanted].map(([name, targets]) => {
    const {short} = unitOf(targets[0]!.subject);
    const unit = short === "sucrose = 100" ? `(${short})` : short;
    const value = shares[name];
    const [figure, its] = value === undefined ? ["none", ""] : [decimal(value, shareDigits(name)), unit];
    return `  ${cell(fullName(name))} ${right(figure, 9)} ${its.padEnd(15)} ${targets.map(wish).join(", ")}`;
  });
  const others = Object.entries(shares)
    .filter(([name, value]) => !wanted.has(name) && value > 0.005)
    .map(([name, value]) => `${fullName(name)} ${decimal(value, 1)}`);
  const also = others.length ? wrap(`also: ${others.join(", ")}`) : [];
  if (!lines.length && !also.length) return "";
  return ["The mix, in 100 g, and what was asked for", ...lines, ...also].join("\n");
}

/** A target's limits in words. */
function wish({min, max}: Target): string {
  const n = (value: number) => decimal(value, decimals(value));
  if (min !== undefined && min === max) return `exactly ${n(min)}`;
  if (min !== undefined && max !== undefined) return `${n(min)} to ${n(max)}`;
  return min === undefined ? `at most ${n(max!)}` : `at least ${n(min)}`;
}

function freezingText({freezing, composition}: MixReport, brief: Brief): string {
  const {initialFreezingPoint: point, curve} = freezing;
  if (point === undefined) return "Freezing\n  It does not freeze above −40 °C.";
  const bars = CURVE_AT.flatMap((at) => {
    const here = curve.find(({temperature}) => Math.abs(temperature - at) < 1e-9);
    if (!here) return [];
    const bar = "#".repeat(Math.round(here.frozen / 4)).padEnd(25, ".");
    return [
      `  ${right(degrees(at, 0), 7)}  ${bar} ${right(`${decimal(here.frozen, 0)} %`, 5)}  ${right(decimal(here.ice, 1), 5)} g ice in 100 g${at === brief.freezer ? "  <- freezer" : ""}`,
    ];
  });
  return [
    `Freezing (water ${decimal(composition.water ?? 0, 1)} %; starts to freeze at ${degrees(point, 2)})`,
    "  share of the water that is ice",
    ...bars,
  ].join("\n");
}

function counted(reports: number): string {
  return reports === 1 ? "a report" : `${reports} reports`;
}

function scoopText({scoop, composition}: MixReport, {learned}: Brief): string {
  const advice = outOfFreezer(scoop, counterWait(composition, scoop, learned));
  return [
    `Scooping (estimated at ${decimal(scoop.overrun, 0)} % overrun${learned?.reports ? `, with ${counted(learned.reports)} of your own` : ""})`,
    ...wrapWords(whereItScoops(scoop)),
    ...wrapWords(`From a freezer at ${setDegrees(scoop.freezer)} ${advice}.`),
  ].join("\n");
}

/** Cautions: doses beyond the customary that the cook asked for, and what the composition calls for by itself. */
function cautionsText({beyondDoses, composition, scoop}: MixReport): string {
  const first = firstWarnings({composition, scoop});
  const further = mixCautions(composition).filter((caution) => !first.includes(caution));
  return [...doseCautions(beyondDoses), ...further.flatMap(wrapWords)].join("\n");
}

function bindingText({binding, degenerate}: Balanced, brief: Brief): string {
  if (!binding.length) return "";
  const lines = binding.map((limit) =>
    `  ${limitName(limit).padEnd(NAME_WIDTH + 9)} ${priceText(limit, brief)}`.trimEnd(),
  );
  const more = degenerate
    ? ["  (several limits meet at this mix: each price holds in one direction only)"]
    : [];
  return ["What each limit costs: what one more of it would change", ...lines, ...more].join("\n");
}

/** Effect of a limit one point higher (an ingredient: 100 g, a dose: 0.1 %). */
function priceText({price, of}: Binding, {aim}: Brief): string {
  if (price === undefined || !aim) return "";
  const {units, words} = priceUnit({of});
  const change = price * units;
  if (Math.abs(change) < 5e-5) return "changes nothing";
  const what = aim.subject.kind === "cost" ? "per kg" : plainName(subjectName(aim.subject));
  return `${words} more: ${change > 0 ? "+" : ""}${decimal(change, 4)} ${what}`;
}

function candidatesText({candidates}: Extract<Answer, {status: "optimal"}>): string {
  if (!candidates.length) return "";
  const line = ({name, cost, batch, scoop, shares}: Balanced) =>
    `  ${cell(name)} ${right(cost === undefined ? "–" : decimal((cost / batch) * 1000, 2), 9)} ${right(scoopsAt(scoop), 11)} ${right(decimal(shares.sweetness ?? 0, 1), 10)}`;
  return [
    `${"Other mixes that meet the brief".padEnd(NAME_WIDTH + 2)}    per kg   scoops at  sweetness`,
    ...candidates.map(line),
  ].join("\n");
}
