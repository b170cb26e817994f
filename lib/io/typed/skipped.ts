import {amountFirst} from "./amount.ts";
import type {TextRow} from "./text-rows.ts";

/** Section of a text. */
export type Section = "ingredients" | "method";

/** Reason why a line is no ingredient. */
export type Skipped = "heading" | "method" | "total" | "note";

const METHOD =
  /^(?:the )?(?:method|directions?|instructions?|preparation|procedure|steps|process|to make|how to make\b.*|what to do)\s*:?$/i;
const INGREDIENTS =
  /^(?:ingredients?|you(?:'|’)?ll need|you will need|shopping list|what you need)\b[^\d]*:?$/i;
const FOR = /^(?:for )?(?:the |your )?[\p{L}\s'’-]{2,60}:$/iu;
const FOR_THE = /^for (?:the )?[\p{L}\s'’-]{2,60}$/iu;
const TOTAL = /^(?:in all|total|sum|batch|altogether|yields?|makes|serves|servings?|portions?)\b/i;
const NOTE =
  /^(?:(?:prep(?:aration)?|cook(?:ing)?|churn(?:ing)?|chill(?:ing)?|total|freezing|ready in)\s*(?:time)?\s*:|notes?\b|tips?\b|source\b|from\b|recipe (?:by|from)|cost\b|price\b|least cost|not used|rating|keywords|difficulty|also:|#|https?:|www\.)/i;
const VERB =
  /^(?:heat|whisk|beat|add|stir|pour|mix|combine|chill|churn|freeze|bring|cook|simmer|strain|remove|cool|place|put|melt|fold|blend|warm|boil|sieve|let|leave|cover|transfer|meanwhile|once|when|then|serve|scrape|split|soak|dissolve|toast|infuse|return|temper|age|weigh|preheat|discard|turn|keep|scoop|allow|gradually|slowly|carefully|gently|continue|set|spoon|press|rest|store|take|make|line|scald|separate|divide|in an?|into|after|while|using|to serve|enjoy)\b/i;

/** Longest line that can belong to a list, words; a longer one is a step of the method. */
const LONG = 14;

/**
 * Reason why a line is no ingredient (none for a line that may be one), and the section of it and of the lines that follow. A line that
 * begins with an amount is skipped only in a method.
 *
 * @param first whether nothing came before it
 */
export function skippedLine(
  {text, cells, columns}: TextRow,
  section: Section,
  first: boolean,
): {readonly why?: Skipped; readonly section: Section} {
  // A row under a heading of columns is no prose; only the row of the total is no ingredient.
  if (columns) return cells?.some((cell) => TOTAL.test(cell)) ? {why: "total", section} : {section};
  const bare = text.replace(/^[#*_\s]+|[#*_\s]+$/g, "");
  if (METHOD.test(bare)) return {why: "heading", section: "method"};
  if (INGREDIENTS.test(bare) || FOR.test(bare) || FOR_THE.test(bare))
    return {why: "heading", section: "ingredients"};
  if (section === "method") return {why: "method", section};
  if (TOTAL.test(bare)) return {why: "total", section};
  if (NOTE.test(bare)) return {why: "note", section};
  const unnumbered = bare.replace(/^(?:step )?\(?\d{1,2}[.):]\s+/i, "");
  const words = unnumbered.split(/\s+/).length;
  const step = VERB.test(unnumbered) && !amountFirst(unnumbered) && (words > 3 || /[.!]$/.test(bare));
  if (step || (words > LONG && /[.!]$/.test(bare))) return {why: "method", section};
  if (first && !/[\d½⅓⅔¼¾⅛\t|;]/u.test(bare) && !amountFirst(bare)) return {why: "heading", section};
  if (text.startsWith("#") && !/\d/.test(bare)) return {why: "heading", section};
  return {section};
}
