import type {Weights} from "../../../lib/balance/substitute/similarity-traits.ts";
import type {
  Alternative,
  SubstituteOptions,
  Substitution,
} from "../../../lib/balance/substitute/substitution-types.ts";
import type {Standard, StandardCheck} from "../../../lib/kitchen/label/standards.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {likelyName, nameChecks, nameTargets} from "./legal-names.ts";
import {type ShownMix, styleOf, type WeighedMix} from "../page/mixes.ts";
import {alikeOf} from "./alike.ts";
import type {Question} from "./question.ts";
import {type ReplaceSearch, wayName} from "./search.ts";
import {weighedRecipes} from "../views/weighed.ts";

/** Question that the page asks. */
interface Asked {
  readonly recipe: Recipe;
  readonly question: Question;
  readonly from: readonly Ingredient[];
  /** °C. */
  readonly freezer: number;
  readonly weights: Partial<Weights>;
  /** A legal name, `none`, or `usual` for what the recipe is sold as. */
  readonly name: Standard | "usual" | "none";
  /** %. */
  readonly overrun: number;
  readonly search: ReplaceSearch;
  /** The way that the cook chose. */
  readonly way: string | undefined;
}

/** Scene that the page shows of an answer. */
export interface ReplaceScene {
  readonly substitution: Substitution;
  readonly chosen: Alternative;
  readonly before: WeighedMix;
  readonly after: WeighedMix;
  readonly mixes: readonly [ShownMix<WeighedMix>, ShownMix<WeighedMix>];
  readonly freezer: number;
  readonly legalName: Standard | undefined;
  readonly checksBefore: readonly StandardCheck[];
  readonly checks: (alternative: Alternative) => readonly StandardCheck[];
}

/**
 * The answer as far as it is known; nothing while nothing is.
 *
 * @throws InputError for a mistake in the question
 */
export function replaceScene(asked: Asked): ReplaceScene | undefined {
  const {question, from, freezer, weights, overrun, search, way} = asked;
  const recipe = {...asked.recipe, overrun};
  const legalName =
    asked.name === "none" ? undefined : asked.name === "usual" ? likelyName(recipe, overrun) : asked.name;
  const {without, noneAlike, ...rest} = question;
  // What of it is not in the recipe is then not offered.
  const out = noneAlike ? [...without, ...alikeOf(without, recipe, from)] : without;
  const options: SubstituteOptions = {
    ...rest,
    without: out,
    left: out.length > 1 ? 0 : rest.left,
    keep: rest.keep.filter((name) => !out.includes(name)),
    from,
    freezer,
    weights,
    ...(legalName && {legalName: nameTargets(legalName, recipe)}),
  };
  const key = JSON.stringify([
    recipe,
    {...options, from: from.map(({name, price, stock}) => [name, price, stock])},
  ]);
  const substitution = search.ask(key, recipe, options)?.substitution;
  const chosen =
    substitution?.alternatives.find((one) => wayName(one) === way) ?? substitution?.alternatives[0];
  if (!substitution || !chosen) return undefined;
  search.follow(chosen);
  const [before, after] = weighedRecipes([substitution.before, chosen.recipe], freezer) as [
    WeighedMix,
    WeighedMix,
  ];
  const checks = (of: Recipe) => (legalName ? nameChecks(legalName, of, overrun) : []);
  return {
    substitution,
    chosen,
    before,
    after,
    mixes: [
      {label: "As it was", mix: before, style: styleOf(1)},
      {label: "Instead", mix: after, style: styleOf(0)},
    ],
    freezer,
    legalName,
    checksBefore: checks(substitution.before),
    checks: (alternative) => checks(alternative.recipe),
  };
}
