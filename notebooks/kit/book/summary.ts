import {setDegrees} from "../../../lib/core/format.ts";
import {InputError} from "../../../lib/core/errors.ts";
import {scooping} from "../../../lib/freezing/scoop.ts";
import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import {kindOf} from "../../../lib/kitchen/reading/kind.ts";
import {counterWait} from "../../../lib/kitchen/safety/counter-wait.ts";
import {scoopsClause, TOO_LONG} from "../../../lib/kitchen/size/scoop-words.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {recipeComposition} from "../../../lib/pantry/recipe.ts";
import type {RecipeContent} from "../keep/kept-recipe.ts";
import {tabMemory} from "../words/tab-memory.ts";

/** Freezer of a recipe that says none, °C. */
const USUAL_FREEZER = -18;

const VERDICTS = {
  scoops: "it scoops",
  firm: "it is firm",
  hard: "it is hard",
  soft: "it is soft",
  "never hardens": "it never hardens",
} as const;

/** One sentence on a recipe: what kind it is and at which temperature it scoops. */
export async function summaryOf(
  {text, freezer = USUAL_FREEZER, overrun}: RecipeContent,
  pantry: Pantry,
): Promise<string> {
  try {
    const {recipe, lines} = await readTypedRecipe(text, pantry);
    if (!recipe.lines.length)
      return text.trim() ? "Nothing in it is understood yet." : "Nothing is written in it yet.";
    const air = recipe.overrun ?? overrun;
    const composition = recipeComposition(recipe);
    const scoop = scooping(composition, freezer, air === undefined ? {} : {overrun: air});
    const kind = kindOf(recipe, freezer).name;
    // A granita is to be hard, and nobody waits for it.
    const hard = kind !== "granita" && counterWait(composition, scoop)?.tooLong ? `, and ${TOO_LONG()}` : "";
    const asking = lines.filter((line) => "question" in line).length;
    const gaps = asking
      ? ` ${asking === 1 ? "One line is" : `${asking} lines are`} left out until you answer.`
      : "";
    return `${kind[0]!.toUpperCase()}${kind.slice(1)}: ${scoopsClause(scoop)}; at ${setDegrees(freezer)} ${VERDICTS[scoop.verdict]}${hard}.${gaps}`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return "It cannot be read as a recipe: open it to see why.";
  }
}

/** Sentences on recipes, each worked out once for the tab, and only when it is asked for. */
export interface Summaries {
  /** The sentence, if it is known. */
  known(recipe: RecipeContent): string | undefined;
  /** Works it out in its turn, one at a time; the last asked for comes first. */
  ask(recipe: RecipeContent, tell: (sentence: string) => void): void;
}

const MEMORY = "summaries";

/** Most sentences that the tab remembers. */
const MOST = 2000;

/** The sentences of this tab. */
export function summaries(pantry: Pantry): Summaries {
  const known = remembered();
  const asked = new Map<
    string,
    {readonly recipe: RecipeContent; readonly tell: (sentence: string) => void}
  >();
  let working = false;
  const work = async () => {
    working = true;
    for (let next = [...asked].at(-1); next; next = [...asked].at(-1)) {
      const [key, {recipe, tell}] = next;
      asked.delete(key);
      const sentence = known.get(key) ?? (await summaryOf(recipe, pantry));
      known.set(key, sentence);
      tell(sentence);
      // The page has its turn.
      await new Promise((resolve) => setTimeout(resolve));
    }
    working = false;
    tabMemory.set(MEMORY, JSON.stringify([...known].slice(-MOST)));
  };
  return {
    known: (recipe) => known.get(keyOf(recipe)),
    ask(recipe, tell) {
      asked.set(keyOf(recipe), {recipe, tell});
      if (!working) void work();
    },
  };
}

/** Fingerprint of all that the sentence depends on: two of the same would need texts made to collide. */
function keyOf({text, freezer, overrun}: RecipeContent): string {
  const all = `${freezer} ${overrun} ${text}`;
  let [a, b] = [0x811c9dc5, 5381];
  for (let i = 0; i < all.length; i++) {
    const code = all.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = (Math.imul(b, 33) + code) | 0;
  }
  return `${(a >>> 0).toString(36)}${(b >>> 0).toString(36)}${all.length.toString(36)}`;
}

function remembered(): Map<string, string> {
  try {
    const list = JSON.parse(tabMemory.get(MEMORY) ?? "[]") as unknown;
    const pairs = Array.isArray(list) ? (list as unknown[]) : [];
    return new Map(
      pairs.filter(
        (pair): pair is [string, string] =>
          Array.isArray(pair) &&
          pair.length === 2 &&
          pair.every((part) => typeof part === "string" && part.length < 500),
      ),
    );
  } catch {
    return new Map();
  }
}
