import type {
  Alternative,
  SubstituteOptions,
  Substitution,
} from "../../../lib/balance/substitute/substitution-types.ts";
import {substitute, substituteSteps} from "../../../lib/balance/substitute/substitute.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {changed} from "../controls/control.ts";
import {longRun} from "../page/long-run.ts";

/** Time that a hand must rest before the whole shelf is looked through again, ms. */
const REST = 250;

/** An amount that counts as moved, g per 100 g of mix. */
const MOVED = 0.005;

/** Result so far. */
export interface Found {
  readonly substitution: Substitution;
  /** Whether the whole shelf was looked through; otherwise the way that was chosen last, at the present numbers. */
  readonly complete: boolean;
}

/** The search for what to take instead: a control that tells when it has found something. */
export interface ReplaceSearch {
  readonly element: HTMLElement;
  /**
   * Answer to a question as far as it is known at once.
   *
   * @param key the same for the same question
   * @throws InputError for a mistake in the question
   */
  ask(key: string, recipe: Recipe, options: SubstituteOptions): Found | undefined;
  /** Remembers the way that the cook looks at, to follow it while a slider moves. */
  follow(alternative: Alternative): void;
}

/** A search in chunks. While a number moves, the way last looked at is worked out at once, and all others when the hand rests. */
export function replaceSearch(): ReplaceSearch {
  const run = longRun();
  let asked: string | undefined;
  let recipeBefore: Recipe | undefined;
  let withoutBefore: string | undefined;
  let found: Found | undefined;
  let followed: Alternative | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  return {
    element: run.element,
    follow(alternative) {
      followed = alternative;
    },
    ask(key, recipe, options) {
      if (key === asked) return found;
      clearTimeout(timer);
      run.stop();
      // A way of another recipe, which may still be shown while the search for this one goes on, is none of this.
      if (recipe !== recipeBefore || String(options.without) !== withoutBefore) followed = undefined;
      [asked, recipeBefore, withoutBefore, found] = [key, recipe, String(options.without), undefined];
      const look = () =>
        run.start({
          words: "Looking along the shelf …",
          steps: substituteSteps(recipe, options),
          done: (substitution) => {
            found = {substitution, complete: true};
            if (asked === key) changed(run.element);
          },
        });
      try {
        if (followed)
          found = {substitution: substitute(recipe, narrowed(options, followed)), complete: false};
        // A mistake in the question shows itself before the first step.
        else substituteSteps(recipe, options).next();
      } catch (error) {
        // Asked once more, it is said once more.
        asked = undefined;
        throw error;
      }
      timer = setTimeout(look, followed ? REST : 0);
      return found;
    },
  };
}

/** The same question with nothing but what one way of answering it moves. */
function narrowed(options: SubstituteOptions, {amounts, recipe}: Alternative): SubstituteOptions {
  const batch = amounts.reduce((total, {before}) => total + before, 0);
  const newcomers = new Set(amounts.filter(({before}) => before === 0).map(({ingredient}) => ingredient));
  return {
    ...options,
    from: recipe.lines.flatMap(({ingredient}) => (newcomers.has(ingredient.name) ? [ingredient] : [])),
    keep: amounts.flatMap(({ingredient, before, change}) =>
      before > 0 && !options.without.includes(ingredient) && Math.abs(change) * 100 < MOVED * batch
        ? [ingredient]
        : [],
    ),
  };
}

/** A way to replace something, as the address names it. */
export function wayName({kind, by}: Alternative): string {
  return `${kind}: ${[...by].sort().join(" + ")}`;
}
