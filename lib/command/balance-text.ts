import type {Answer} from "../balance/mix/answer.ts";
import type {Brief} from "../balance/brief/brief.ts";
import type {Options} from "./arguments.ts";
import type {extras} from "./extras.ts";
import {
  candidatesInFull,
  checkText,
  pricesText,
  reliabilityText,
  weighableText,
} from "../io/report/further-sections.ts";
import {textReport} from "../io/report/report.ts";

/** The whole report on a brief: the answer, then what the options ask for. */
export function balanceText(
  answer: Answer,
  brief: Brief,
  more: Partial<ReturnType<typeof extras>>,
  options: Options,
): string {
  const optimal = answer.status === "optimal";
  const sections = [
    textReport(answer, brief).trimEnd(),
    options.candidates && optimal && candidatesInFull(answer.candidates),
    more.weighable && weighableText(more.weighable),
    more.prices && pricesText(more.prices),
    options.explain && optimal && checkText(answer),
    more.reliability && reliabilityText(more.reliability),
  ];
  return `${sections.filter(Boolean).join("\n\n")}\n`;
}
