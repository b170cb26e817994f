import type {Change, Changes} from "../../balance/change/change-types.ts";
import type {Pulls} from "../../balance/change/pulls.ts";
import {printable} from "../../core/errors.ts";
import {decimal, grams, setDegrees, trueMinus} from "../../core/format.ts";
import type {Learned} from "../../freezing/learned.ts";
import type {RecipeDescription} from "../../kitchen/reading/describe-recipe.ts";
import type {Norm} from "../../kitchen/reading/norms.ts";
import {counterWait} from "../../kitchen/safety/counter-wait.ts";
import {counterWords, scoopsAt, TOO_LONG} from "../../kitchen/size/scoop-words.ts";
import {recipeComposition} from "../../pantry/recipe.ts";
import {fullName} from "../text/plain-name.ts";
import {right, wrapWords} from "./report-lines.ts";

/** Share of the strongest pull below which a pull is not mentioned. */
const WEAK = 0.1;

/** Value of a mix below which pulls at it are not mentioned. */
const NOTHING = 0.5;

/**
 * Description of a recipe and the changes that suit it, as a cook reads it: at most 80 columns.
 *
 * @param known calibration by the kitchen's own reports, if the verdict rests on it, and lines of the text that were left out
 */
export function descriptionText(
  description: RecipeDescription,
  {changes, nothingFor, unpriced, cutShort}: Changes,
  {learned, leftOut}: {readonly learned?: Learned; readonly leftOut: readonly string[]},
): string {
  const {recipe, batch, sentence, kind, norms, pulls, cautions} = description;
  const title = printable(`${recipe.name}, ${grams(batch)} g`);
  const article = /^[aeiou]/.test(kind.name) ? "An" : "A";
  return `${[
    `${wrapped(title)}\n${"=".repeat(Math.min(78, title.length))}`,
    wrapped([sentence, ...gapsSentence(leftOut)].join(" ")),
    [
      ...wrapWords(`${article} ${kind.name}. ${kind.because}`),
      ...normLines(norms),
      ...costLines(description),
    ].join("\n"),
    ["Which ingredient pulls which way, for its share of the mix:", ...pulls.flatMap(pullLines)].join("\n"),
    ...changes.map((change) => changeText(change, learned)),
    ...nothingFor.map(({towards, words}) => wrapped(`${capital(towards)}: ${words}.`)),
    ...(unpriced.length ? [wrapped(`Nothing cheaper is sought: no price for ${listed(unpriced)}.`)] : []),
    ...(cutShort ? ["Time was up before every way was tried; a better one may exist."] : []),
    ["To mind:", ...cautions.flatMap((caution) => wrapWords(printable(caution)))].join("\n"),
  ].join("\n\n")}\n`;
}

/** Lines that are quoted when they are left out; of more the number is said. */
const QUOTED = 6;

/** What is left out, for a verdict is of the rest alone. */
function gapsSentence(leftOut: readonly string[]): string[] {
  if (!leftOut.length) return [];
  const count = leftOut.length === 1 ? "one line" : `${leftOut.length} lines`;
  const quoted = leftOut.slice(0, QUOTED).map((text) => `“${printable(text)}”`);
  const more = leftOut.length > QUOTED ? ` and ${leftOut.length - QUOTED} more` : "";
  return [`All this is without ${count} that cannot be counted yet: ${quoted.join(", ")}${more}.`];
}

/** Each property of the kind's norms on a line, with the number of its source, and the sources below. */
function normLines(norms: readonly Norm[]): string[] {
  const sources = [...new Set(norms.map(sourceOf))];
  return [
    ...norms.map((norm) => {
      const {property, value, unit, lies, min, max} = norm;
      const name = fullName(property).padEnd(27);
      const its = unit === "sucrose = 100" ? "" : ` ${unit}`;
      const figure = value === undefined ? "none" : `${decimal(value, 1)}${its}`;
      const usual =
        min === undefined
          ? `${plain(max!)} or less`
          : max === undefined
            ? `${plain(min)} or more`
            : `${plain(min)} to ${plain(max)}`;
      return `  ${name} ${right(figure, 9)}  ${said(lies, unit)} ${usual} [${sources.indexOf(sourceOf(norm)) + 1}]`;
    }),
    ...sources.flatMap((source, i) => wrapWords(`[${i + 1}] ${source}`)),
  ];
}

function said(lies: Norm["lies"], unit: string): string {
  const cold = unit === "°C";
  const words = {
    below: cold ? "colder than usual" : "less than usual",
    within: "as usual",
    above: cold ? "warmer than usual" : "more than usual",
    none: "usual",
  };
  return words[lies].padEnd(17);
}

function sourceOf({source, where, read}: Norm): string {
  const how =
    read === undefined || read === "primary text"
      ? ""
      : ` (${read === "secondary quote" ? "as others quote it" : read})`;
  return `${source}${where === undefined ? "" : `, ${where}`}${how}`;
}

function costLines({cost, batch}: RecipeDescription): string[] {
  if (cost === undefined) return [];
  return [`  Costs ${decimal(cost, 2)}, ${decimal((cost * 1000) / batch, 2)} per kg.`];
}

function pullLines({what, mean, by}: Pulls): string[] {
  const strongest = Math.max(...by.map(({pull}) => Math.abs(pull)));
  const isMass = what === "fat" || what === "sweetness";
  if ((isMass && mean < NOTHING) || !(strongest > 0)) return [];
  const told = by.filter(({pull}) => Math.abs(pull) >= WEAK * strongest);
  const each = told.map(({ingredient, pull}) => `${printable(ingredient)} ${signed(pull)}`);
  return wrapWords(`${NAMES[what]}: ${each.join(", ")}`);
}

const NAMES: Readonly<Record<Pulls["what"], string>> = {
  ice: "ice in the freezer, %",
  firmness: "firmness, points (7 more are twice as hard)",
  sweetness: "sweetness",
  fat: "fat, %",
  cost: "cost per kg",
};

function changeText(
  {towards, reached, wanted, words, scoop, sweetness, cost, recipe}: Change,
  learned?: Learned,
): string {
  const {after} = scoop;
  const known = !scoop.before.unsure && !after.unsure;
  const wait =
    towards === "softer" && (after.verdict === "firm" || after.verdict === "hard")
      ? counterWait(recipeComposition(recipe), after, learned)
      : undefined;
  const figures = [
    ...(known ? [`scoops at ${scoopsAt(scoop.before)} -> ${scoopsAt(after)}`] : []),
    `sweetness ${decimal(sweetness.before, 1)} -> ${decimal(sweetness.after, 1)}`,
    ...(cost ? [`cost ${decimal(cost.before, 2)} -> ${decimal(cost.after, 2)}`] : []),
  ];
  return [
    wrapped(`${capital(towards)}: ${printable(words)}.`),
    ...(reached ? [] : wrapWords(`As near as it goes to a mix that ${wanted}.`)),
    ...wrapWords(`${figures.join("; ")}.`),
    ...(after.unsure
      ? []
      : wrapWords(
          `At ${setDegrees(after.freezer)} it ${IS[after.verdict]}${wait ? `: ${wait.tooLong ? TOO_LONG() : `give it ${counterWords(wait)}`}` : ""}.`,
        )),
  ].join("\n");
}

const IS = {
  "never hardens": "never hardens",
  soft: "is soft",
  scoops: "scoops",
  firm: "is firm",
  hard: "is hard",
} as const;

/** A sentence in lines, each beginning at the margin. */
function wrapped(text: string): string {
  return wrapWords(text)
    .map((line) => line.slice(2))
    .join("\n");
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}

function signed(value: number): string {
  const figure = trueMinus(decimal(value, 1));
  return value > 0 ? `+${figure}` : figure;
}

/** A limit as it is published, without further decimals. */
function plain(value: number): string {
  return trueMinus(String(value));
}

function listed(names: readonly string[]): string {
  const shown = names.slice(0, 5).map(printable);
  return `${shown.join(", ")}${names.length > shown.length ? " …" : ""}`;
}
