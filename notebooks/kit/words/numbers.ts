import {decimal, setDegrees} from "../../../lib/core/format.ts";

/** A limit as the cook set it: at most two decimals, none for their own sake. */
export function limit(value: number): string {
  return decimal(value, (String(Number(value.toFixed(2))).split(".")[1] ?? "").length);
}

/** A limit in words: `at most 60`. */
export function bounded(bound: "min" | "max" | "equal", value: number): string {
  return `${BOUND[bound]} ${limit(value)}`;
}

const BOUND = {min: "at least", max: "at most", equal: "exactly"} as const;

/** A temperature as the cook set it, that no line breaks before its unit. */
export function setting(temperature: number): string {
  return setDegrees(temperature).replace(" ", "\u00a0");
}

/** Words in which no line breaks before a unit. */
export function unbroken(text: string): string {
  return text.replaceAll(/ (?=[°%g](?:[ ,.:;)]|C|$))/g, "\u00a0");
}
