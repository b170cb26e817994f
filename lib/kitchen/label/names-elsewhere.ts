import {sum} from "../../core/numbers.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {type Product, productComposition, productDensity, productLines} from "../product/product.ts";
import {NAMES_TABLE} from "./names-table.ts";
import {productFacts} from "./product-facts.ts";

/** Verdict on a product under a name that a country outside the UK and the US reserves. */
export interface NameElsewhere {
  readonly country: string;
  readonly name: string;
  /** True where all conditions hold that could be checked. */
  readonly met: boolean;
  /** The conditions that do not hold, in words. */
  readonly below: readonly string[];
  readonly source: string;
}

const WORDS: Readonly<Record<string, string>> = {
  milkFat: "milk fat",
  milkProtein: "milk protein",
  milkSolids: "milk solids",
  msnf: "milk solids-not-fat",
  totalSolids: "total solids",
  eggYolk: "egg yolk",
  solidsPerLitre: "solids of a litre",
};

/**
 * The names that other countries reserve for ices, and whether a product meets what could be checked of each. All were read where
 * others quote them, not in the laws and codes themselves, so none says that a product fails: ask your authority. No legal advice.
 *
 * Sources: `datasets/reserved_names.csv`.
 *
 * @param overrun % of the churned mix's volume, 0 to 300
 * @throws InputError for an overrun outside its range, or a product without a churned component
 *
 * @example
 * ```ts
 * const names = ["whole milk", "cream 40 %", "skimmed milk powder"];
 * const lines = names.map((name) => ({ingredient: findIngredient(includedPantry(), name), grams: 100}));
 * const product = makeProduct("cream ice", [baseComponent({name: "cream ice", lines})]);
 * namesElsewhere(product, 30)
 *   .filter(({country, met}) => country === "France" && met)
 *   .map(({name}) => name); // => ["glace à l'eau", "glace au lait", "crème glacée"]
 * ```
 */
export function namesElsewhere(product: Product, overrun: number): NameElsewhere[] {
  const composition = productComposition(product);
  const density = productDensity(product, overrun);
  const {fruitPercent = 0, fruitKind} = productFacts(product, overrun);
  const lines = productLines(product);
  const used = (is: RegExp) =>
    Math.min(100, sum(lines.filter(({ingredient}) => is.test(ingredient.name)).map(({grams}) => grams)));
  const found = (quantity: string): number => {
    switch (quantity) {
      case "fruit":
        return fruitPercent;
      case "milk":
        return used(/\bmilk$/i);
      case "eggYolk":
        return used(/\begg yolk\b/i);
      case "weight":
        return 1000 * density;
      case "solidsPerLitre":
        return 10 * density * quantityOf(composition, "totalSolids");
      default:
        return quantityOf(composition, quantity as "milkFat");
    }
  };
  const names = new Map<string, {country: string; name: string; below: string[]; source: string}>();
  for (const {country, name, quantity, min, minSour, max, where} of NAMES_TABLE) {
    const key = `${country}: ${name}`;
    const one = names.get(key) ?? {country, name, below: [], source: `${where}, as quoted by others`};
    names.set(key, one);
    const least = fruitKind === "citrus" ? (minSour ?? min) : min;
    const value = found(quantity);
    const unit = quantity === "weight" || quantity === "solidsPerLitre" ? "g/l" : "%";
    const said = `${WORDS[quantity] ?? quantity} ${value.toFixed(unit === "%" ? 1 : 0)} ${unit}`;
    if (least !== undefined && value < least - 1e-9) one.below.push(`${said}, at least ${least}`);
    if (max !== undefined && value > max + 1e-9) one.below.push(`${said}, at most ${max}`);
  }
  return [...names.values()].map((one) => ({...one, met: one.below.length === 0}));
}
