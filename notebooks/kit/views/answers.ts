import type {Answer} from "../../../lib/balance/mix/answer.ts";
import {InputError} from "../../../lib/core/errors.ts";
import {mistakeOf} from "../words/mistakes.ts";
import {type ShownMix, styleOf} from "../page/mixes.ts";

/** A brief's answer, or what is amiss with the brief: on a page a mistake is shown, not thrown. */
export type PageAnswer = Answer | {readonly status: "mistaken"; readonly message: string};

/** Asks for an answer; a mistake in the brief becomes a message. */
export function answered(ask: () => Answer): PageAnswer {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {status: "mistaken", message: mistakeOf(error)};
  }
}

/** The mixes of an answer, best first, each with a short name and a style; none where there is no mix. */
export function mixesOf(answer: PageAnswer): ShownMix[] {
  if (answer.status !== "optimal") return [];
  return [
    {label: "Cheapest", mix: answer, style: styleOf(0)},
    ...answer.candidates.map((mix) => {
      const n = CANDIDATES.findIndex(({name}) => mix.name.startsWith(name));
      return {label: CANDIDATES[n]?.label ?? mix.name, mix, style: styleOf(n + 1)};
    }),
  ];
}

/** Properties that no further mix could have, in words: the candidates that an answer lacks. */
export function missingFrom(answer: PageAnswer): string[] {
  if (answer.status !== "optimal") return [];
  return CANDIDATES.flatMap(({name, wish}) =>
    wish && !answer.candidates.some((mix) => mix.name.startsWith(name)) ? [wish] : [],
  );
}

/** The library's candidates by how their names begin: short for a table's head, each with its own style. */
const CANDIDATES: readonly {readonly name: string; readonly label: string; readonly wish?: string}[] = [
  {name: "softest", label: "Softest", wish: "softer"},
  {name: "least sweet", label: "Least sweet", wish: "less sweet"},
  {name: "fewer ingredients", label: "Fewer ingredients"},
  {name: "closest", label: "Closest"},
];
