import type {Answer} from "../../balance/mix/answer.ts";
import {expectAnswer} from "../report/expect-answer.ts";

/**
 * An answer as JSON text: `JSON.parse` gives the answer back, every number to its last digit.
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["water", "sucrose"], targets: {sugars: {equal: 30}}};
 * JSON.parse(answerJson(balance(brief, {pantry: includedPantry()}))).status; // => "optimal"
 * ```
 */
export function answerJson(answer: Answer): string {
  expectAnswer(answer);
  return `${JSON.stringify(answer)}\n`;
}
