import type {IngredientClass} from "../../../lib/pantry/from-label.ts";
import type {Allergen} from "../../../lib/pantry/ingredient.ts";
import type {Figure} from "./packet.ts";

/** Classes of food, in a cook's words. */
export const CLASS_WORDS: Readonly<Record<IngredientClass, string>> = {
  dairy: "milk, cream, butter, milk powder: nothing added",
  whey: "whey, whey powder",
  "fermented dairy": "yoghurt, buttermilk, soured cream",
  "lactose-free dairy": "lactose-free milk and cream",
  "sweetened dairy": "condensed milk, milk jam, sweet yoghurt",
  cheese: "fresh cheese: mascarpone, ricotta, cream cheese",
  egg: "egg, yolk, egg powder",
  "sugared egg": "egg or yolk with sugar",
  "plant drink": "soya, almond and other plant drinks",
  "oat or rice drink": "oat drink, rice drink",
  coconut: "coconut milk, cream, desiccated coconut",
  fruit: "fruit, purée, juice: nothing added",
  "dried fruit": "dried fruit",
  jam: "jam, sweetened fruit",
  "cocoa powder": "cocoa powder",
  "dark chocolate": "dark chocolate, cocoa mass",
  "milk chocolate": "milk chocolate",
  "white chocolate": "white chocolate",
  nut: "nuts, seeds, their pastes and pralines",
  sugar: "sugar: white, brown, icing",
  syrup: "cane, beet, maple and other syrups",
  honey: "honey",
  "glucose syrup": "glucose syrup, maltodextrin",
  spirit: "spirit, liqueur without cream",
  "cream liqueur": "cream liqueur",
  wine: "wine, fortified wine",
  starch: "starch, custard powder",
  oil: "oil, fat, margarine without milk",
  biscuit: "biscuit, cake, flour, cereal",
};

/** The fourteen allergens of Regulation (EU) 1169/2011, Annex II. */
export const ALLERGEN_WORDS: Readonly<Record<Allergen, string>> = {
  gluten: "cereals with gluten",
  crustaceans: "crustaceans",
  eggs: "eggs",
  fish: "fish",
  peanuts: "peanuts",
  soya: "soya",
  milk: "milk, lactose too",
  nuts: "nuts",
  celery: "celery",
  mustard: "mustard",
  sesame: "sesame",
  sulphites: "sulphites, above 10 mg in a kg",
  lupin: "lupin",
  molluscs: "molluscs",
};

/** The cereals and nuts that Annex II names one by one, points 1 and 8. */
export const KINDS: Readonly<Partial<Record<Allergen, readonly string[]>>> = {
  gluten: ["wheat", "rye", "barley", "oats", "spelt", "khorasan"],
  nuts: [
    "almonds",
    "hazelnuts",
    "walnuts",
    "cashews",
    "pecan nuts",
    "Brazil nuts",
    "pistachio nuts",
    "macadamia nuts",
  ],
};

/** A figure's name on the label, and its unit. */
export const FIGURE_WORDS: Readonly<Record<Figure, readonly [label: string, unit: string]>> = {
  kilojoules: ["Energy", "kJ"],
  kilocalories: ["Energy", "kcal"],
  fat: ["Fat", "g"],
  saturates: ["of which saturates", "g"],
  carbohydrate: ["Carbohydrate", "g"],
  sugars: ["of which sugars", "g"],
  polyols: ["of which polyols", "g"],
  fibre: ["Fibre", "g"],
  protein: ["Protein", "g"],
  salt: ["Salt", "g"],
  sodium: ["Sodium", "mg"],
  water: ["Water, if it is said", "g in 100 g"],
  solids: ["Solids, if they are said", "g in 100 g"],
  alcohol: ["Alcohol", "% vol"],
  density: ["One millilitre weighs", "g"],
  portion: ["One portion is", "g"],
};

/** The figures in the order in which each law prints them. */
export const ORDER: Readonly<Record<"EU" | "US", readonly Figure[]>> = {
  EU: [
    "kilojoules",
    "kilocalories",
    "fat",
    "saturates",
    "carbohydrate",
    "sugars",
    "polyols",
    "fibre",
    "protein",
    "salt",
  ],
  US: ["kilocalories", "fat", "saturates", "sodium", "carbohydrate", "fibre", "sugars", "polyols", "protein"],
};

/** Names of some of them in the law of the United States. */
export const US_WORDS: Readonly<Partial<Record<Figure, string>>> = {
  kilocalories: "Calories",
  fat: "Total fat",
  saturates: "Saturated fat",
  carbohydrate: "Total carbohydrate",
  fibre: "Dietary fiber",
  sugars: "Total sugars",
  polyols: "Sugar alcohol",
  portion: "One serving is",
};

/** Further lines that a packet may have. */
export const FURTHER: readonly Figure[] = ["alcohol", "water", "solids", "density"];
