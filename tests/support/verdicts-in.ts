import type {Verdict} from "../../lib/freezing/scoop.ts";

/** What states a verdict, each by words of its own. */
const SAID: readonly (readonly [Verdict, RegExp])[] = [
  ["scoops", /scoops straight (away|from the freezer)/],
  ["soft", /\b(it is soft|Soft in a freezer)\b/],
  ["firm", /it is firm/],
  ["hard", /too hard (to scoop|for a freezer)/i],
  ["never hardens", /never (gets as hard|hardens)/i],
];

/** The verdicts that a text states. */
export function verdictsIn(text: string): Verdict[] {
  const plain = text.replaceAll("&nbsp;", " ").replaceAll(/\s+/g, " ").replaceAll("\\", "");
  return SAID.flatMap(([verdict, words]) => (words.test(plain) ? [verdict] : []));
}
