import type {LimitsInput} from "../../../lib/balance/brief/brief-schema.ts";
import {isFlavour} from "../../../lib/pantry/flavour-groups.ts";
import {baseComponent, makeProduct, rippleComponent} from "../../../lib/kitchen/product/product.ts";
import {countedBulky, productFacts} from "../../../lib/kitchen/label/product-facts.ts";
import {checkStandard, type Standard, type StandardCheck} from "../../../lib/kitchen/label/standards.ts";
import {quantityOf} from "../../../lib/pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../../lib/pantry/recipe.ts";

/** Demands of a legal name on the whole mix, as far as weighted sums can say them. */
export interface NameTargets {
  readonly name: Standard;
  readonly targets: Readonly<Record<string, LimitsInput>>;
}

/**
 * A legal name as targets for the whole mix, the flavours (fruit, nuts, cocoa, spices) in it counting as bulky and staying as
 * they are. Sources as in `checkStandard`, which has the last word: the steps of the US scale for milk solids-not-fat are here
 * the straight line that they lie above.
 */
export function nameTargets(name: Standard, recipe: Recipe): NameTargets {
  const bulky = flavoursOf(recipe);
  const share = recipeMass(bulky) / recipeMass(recipe);
  // Cocoa, fruit and nuts count for more than they weigh, of milk fat and milk solids.
  const counted = Math.min(0.99, Math.max(share, countedBulky(bulky.lines) / recipeMass(recipe)));
  const left = 1 - counted;
  const [rest, own] = [1 - share, share > 0 ? recipeComposition(bulky) : {}];
  const foreign = ["cocoaButter", "coconutFat", "otherFat"] as const;
  switch (name) {
    case "US ice cream":
    case "US goat's milk ice cream":
    case "US frozen custard":
      return {
        name,
        targets: {
          milkFat: {min: Math.max(10 * left, share > 0 ? 8 : 10)},
          milkSolids: {min: Math.max(20 * left, share > 0 ? 16 : 20)},
          ...(share > 0 ? {} : {msnf: {min: 6}}),
          // Below the limit, not on it.
          eggYolkSolids:
            name === "US frozen custard" ? {min: Math.max(1.12, 1.4 * rest)} : {max: 1.399 * rest},
        },
      };
    case "US mellorine":
      return {
        name,
        targets: {
          fat: {min: Math.max(4.8, 6 * rest)},
          protein: {min: Math.max(2.2, 2.7 * rest)},
        },
      };
    case "US water ice":
      return {name, targets: {milkSolids: {max: 0}, eggFat: {max: 0}}};
    case "US sherbet":
      return {name, targets: {milkFat: {min: 1, max: 2}, msnf: {min: 1}, milkSolids: {min: 2, max: 5}}};
    case "UK ice cream":
      return {name, targets: {fat: {min: 5}, milkProtein: {min: 2.5}}};
    case "UK dairy ice cream":
      return {
        name,
        targets: {
          milkFat: {min: 5},
          milkProtein: {min: 2.5},
          ...Object.fromEntries(foreign.map((fat) => [fat, {max: share * quantityOf(own, fat)}])),
        },
      };
  }
}

/** A recipe against a legal name, rule by rule, its flavours counting as bulky. */
export function nameChecks(name: Standard, recipe: Recipe, overrun: number): StandardCheck[] {
  const bulky = flavoursOf(recipe);
  const percent = (100 * recipeMass(bulky)) / recipeMass(recipe);
  const rest = {
    name: "mix",
    lines: recipe.lines.filter((line) => !bulky.lines.includes(line) && line.grams > 0),
  };
  if (percent > 95 || !rest.lines.length) return [];
  const product = makeProduct(recipe.name, [
    baseComponent(rest, 100 - percent),
    ...(percent > 0 ? [rippleComponent(bulky, percent)] : []),
  ]);
  return checkStandard(name, productFacts(product, overrun));
}

/** The strictest UK name that a recipe meets as it is: what it is likely to be sold as. */
export function likelyName(recipe: Recipe, overrun: number): Standard | undefined {
  const names: readonly Standard[] = ["UK dairy ice cream", "UK ice cream"];
  return names.find((name) => {
    const checks = nameChecks(name, recipe, overrun);
    return checks.length > 0 && checks.every(({met}) => met);
  });
}

function flavoursOf({lines}: Recipe): Recipe {
  return {name: "flavours", lines: lines.filter(({ingredient, grams}) => isFlavour(ingredient) && grams > 0)};
}
