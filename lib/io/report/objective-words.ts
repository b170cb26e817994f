import type {Balanced, Objective} from "../../balance/mix/answer.ts";
import {decimal} from "../../core/format.ts";
import type {Figure} from "../text/figure.ts";
import {plainName} from "../text/plain-name.ts";
import {rounded} from "../text/rounded.ts";

/** Sentence on the objective, with its value, or on the lack of one. */
export function objectiveSentence({objective}: Pick<Balanced, "objective">): string {
  if (!objective)
    return "Nothing was minimised: this is one of the mixes that meet the brief. Give every ingredient a price for the cheapest, or name what to minimise.";
  const {name, sense} = objective;
  return `${sense === "minimise" ? "Least" : "Most"} ${plainName(name)} that the brief allows: ${objectiveValue(objective)}.`;
}

/** The value of the objective, with its unit. */
export function objectiveValue({name, value, unit}: Objective): string {
  if (unit === "money per kg") return `${decimal(value, 2)} per kg`;
  const figure = decimal(value, Math.abs(value) < 10 ? 3 : 2);
  return name === "sweetness" ? `${figure} (${unit})` : `${figure} ${unit}`;
}

/** Figures of the objective: section `minimised` or `maximised`. */
export function objectiveFigures({objective}: Pick<Balanced, "objective">): Figure[] {
  if (!objective) return [["minimised", "nothing", undefined, ""]];
  const {name, value, unit, sense} = objective;
  return [[`${sense}d`, name, rounded(value, unit === "money per kg" ? 2 : 4), unit]];
}
