import {SHORTHANDS} from "./composition.ts";
import type {Guess, LabelRule, Split} from "./label-rule.ts";
import type {Part} from "./parts.ts";

const all = (part: Part): Split => ({[part]: [1, 0]});
const guess = (of: Guess["of"], value: number, spread: number): Guess => ({of, share: [value, spread]});

/** Minerals and lactose per g of milk protein: 8 and 54 to 38 g in MSNF (see `SHORTHANDS`). */
const MILK = {
  minerals: SHORTHANDS.msnf.milkSalts! / SHORTHANDS.msnf.milkProtein!,
  lactose: SHORTHANDS.msnf.lactose! / SHORTHANDS.msnf.milkProtein!,
};

const dairy: LabelRule = {
  fat: all("milkFat"),
  protein: all("milkProtein"),
  sugars: all("lactose"),
  rest: all("lactose"),
  minerals: {milkSalts: guess("protein", MILK.minerals, 0.05)},
  // 43 mg of sodium to 3.15 g of protein in whole milk (USDA SR28, NDB 01077), times 2.5.
  ownSalt: 0.034,
};

const plant: Omit<LabelRule, "sugars"> = {
  fat: all("otherFat"),
  protein: all("otherProtein"),
  rest: {otherCarbohydrate: [0.75, 0.25], starch: [0.25, 0.25]},
  minerals: {plantSalts: guess("solids", 0.035, 0.035)},
  ownSalt: 0.005,
};

const egg: LabelRule = {
  ...plant,
  fat: all("eggFat"),
  sugars: {dextrose: [0.75, 0.25], sucrose: [0.25, 0.25]},
  rest: {otherCarbohydrate: [1, 0.15]},
  minerals: {plantSalts: guess("protein", 0.027, 0.012), otherSolids: guess("protein", 0.042, 0.045)},
  ownSalt: 0,
};

const fruit: LabelRule = {
  ...plant,
  sugars: {
    sucrose: [0.24, 0.42],
    dextrose: [0.37, 0.28],
    fructose: [0.38, 0.28],
    galactose: [0.005, 0.03],
    maltose: [0.005, 0.04],
  },
  rest: {otherCarbohydrate: [0.6, 0.4], starch: [0.4, 0.4]},
  ownSalt: 0.1,
  acids: [1.2, 1.2],
  fibre: guess("solids", 0.18, 0.2),
};

const chocolate: LabelRule = {
  ...plant,
  fat: {cocoaButter: [0.98, 0.03], milkFat: [0.02, 0.03]},
  protein: {otherProtein: [0.97, 0.05], milkProtein: [0.03, 0.05]},
  sugars: {sucrose: [0.98, 0.02], lactose: [0.02, 0.02]},
  rest: {otherCarbohydrate: [0.75, 0.25], starch: [0.25, 0.25]},
  minerals: {plantSalts: guess("protein", 0.31, 0.06)},
  fibre: guess("protein", 1.35, 0.3),
};

const grain: LabelRule = {
  ...plant,
  sugars: {sucrose: [0.94, 0.06], dextrose: [0.03, 0.03], fructose: [0.03, 0.03]},
  rest: {starch: [0.92, 0.08], otherCarbohydrate: [0.08, 0.08]},
  minerals: {plantSalts: guess("solids", 0.006, 0.004)},
  ownSalt: 0,
  fibre: guess("solids", 0.03, 0.02),
};

const drink: LabelRule = {
  ...plant,
  sugars: {sucrose: [0.7, 0.4], dextrose: [0.07, 0.1], fructose: [0.23, 0.35]},
  rest: {otherCarbohydrate: [0.75, 0.25], starch: [0.25, 0.25]},
  // The added calcium of a fortified drink is insoluble.
  minerals: {plantSalts: guess("solids", 0.04, 0.04), otherSolids: guess("solids", 0.06, 0.06)},
  ownSalt: 0,
  fibre: guess("solids", 0.05, 0.1),
};

/**
 * The rule of each class of ingredient.
 *
 * Values and spreads of split or guessed figures are rounded so that they cover most foods of the class in the
 * published tables behind `datasets/ingredients.csv` (USDA SR28 2015, CoFID 2021, CIQUAL 2020); a test tells how many.
 */
export const LABEL_RULES = {
  /** Milk, cream, butter and their powders, nothing added. */
  dairy,
  whey: {...dairy, minerals: {milkSalts: guess("protein", 0.78, 0.16)}, ownSalt: 0.21},
  /** Yoghurt, buttermilk, soured cream, crème fraîche, nothing added. */
  "fermented dairy": {
    ...dairy,
    sugars: {lactose: [0.88, 0.13], galactose: [0.12, 0.13]},
    rest: {organicAcids: [0.7, 0.3], starch: [0.15, 0.15], otherCarbohydrate: [0.15, 0.3]},
    minerals: {milkSalts: guess("protein", 0.15, 0.1)},
  },
  "lactose-free dairy": {
    ...dairy,
    sugars: {dextrose: [0.5, 0.1], galactose: [0.5, 0.1]},
    rest: all("otherCarbohydrate"),
  },
  /** Condensed milk, milk jam, sweetened yoghurt. */
  "sweetened dairy": {
    ...dairy,
    sugars: {sucrose: [0.96, 0.05], dextrose: [0.02, 0.03], fructose: [0.02, 0.03]},
    lactose: [1.1, 0.5],
    rest: all("otherCarbohydrate"),
    minerals: {milkSalts: guess("protein", 0.23, 0.04)},
  },
  /** Fresh cheese: cream cheese, mascarpone, ricotta. */
  cheese: {
    ...dairy,
    rest: {organicAcids: [0.75, 0.25], starch: [0.15, 0.2], otherCarbohydrate: [0.1, 0.2]},
    minerals: {milkSalts: guess("protein", 0.095, 0.045)},
    ownSalt: 0.015,
  },
  egg,
  "sugared egg": {...egg, sugars: {sucrose: [0.97, 0.03], dextrose: [0.03, 0.03]}},
  /** Soya, almond and other drinks; sugars as added, or as in the bean. */
  "plant drink": drink,
  /** Drinks whose starch enzymes have turned to maltose and dextrose. */
  "oat or rice drink": {...drink, sugars: {dextrose: [0.45, 0.25], maltose: [0.55, 0.25]}},
  coconut: {
    ...plant,
    fat: all("coconutFat"),
    sugars: {sucrose: [0.88, 0.2], fructose: [0.1, 0.18], dextrose: [0.02, 0.04]},
    ownSalt: 0.03,
    minerals: {plantSalts: guess("protein", 0.32, 0.16)},
    fibre: guess("protein", 0.6, 1),
  },
  /** Fresh or frozen fruit, purée or juice, nothing added. */
  fruit,
  "dried fruit": {...fruit, minerals: {plantSalts: guess("solids", 0.027, 0.013)}, acids: [1.3, 1.3]},
  jam: {
    ...fruit,
    sugars: {sucrose: [0.3, 0.3], dextrose: [0.35, 0.2], fructose: [0.25, 0.15], maltose: [0.1, 0.1]},
    minerals: {plantSalts: guess("solids", 0.004, 0.004)},
    acids: [0.6, 0.5],
    fibre: guess("solids", 0.015, 0.015),
  },
  "cocoa powder": {
    ...chocolate,
    fat: all("cocoaButter"),
    protein: all("otherProtein"),
    sugars: all("sucrose"),
    rest: {otherCarbohydrate: [0.5, 0.25], starch: [0.5, 0.25]},
    minerals: {plantSalts: guess("solids", 0.095, 0.035)},
    fibre: guess("protein", 1.75, 0.2),
  },
  /** Dark chocolate and cocoa mass. */
  "dark chocolate": chocolate,
  "milk chocolate": {
    ...chocolate,
    fat: {cocoaButter: [0.82, 0.08], milkFat: [0.18, 0.08]},
    protein: {milkProtein: [0.72, 0.15], otherProtein: [0.28, 0.15]},
    sugars: all("sucrose"),
    lactose: [1.7, 0.5],
    minerals: {milkSalts: guess("protein", 0.15, 0.05), plantSalts: guess("protein", 0.09, 0.05)},
    ownSalt: 0.026,
    fibre: guess("protein", 0.45, 0.2),
  },
  "white chocolate": {
    ...chocolate,
    fat: {cocoaButter: [0.82, 0.08], milkFat: [0.18, 0.08]},
    protein: all("milkProtein"),
    sugars: all("sucrose"),
    lactose: [1.7, 0.5],
    minerals: {milkSalts: guess("protein", MILK.minerals, 0.06)},
    ownSalt: 0.034,
    fibre: guess("protein", 0, 0.1),
  },
  /** Nuts, seeds and their pastes, sweetened or not. */
  nut: {
    ...plant,
    sugars: {sucrose: [0.86, 0.14], dextrose: [0.07, 0.09], fructose: [0.05, 0.07], maltose: [0.02, 0.03]},
    rest: {otherCarbohydrate: [0.5, 0.5], starch: [0.5, 0.5]},
    minerals: {plantSalts: guess("protein", 0.15, 0.07)},
    fibre: guess("protein", 0.6, 0.5),
  },
  /** White, brown and icing sugar. */
  sugar: {
    ...plant,
    sugars: {sucrose: [0.985, 0.015], dextrose: [0.008, 0.01], fructose: [0.007, 0.01]},
    minerals: {plantSalts: guess("solids", 0.002, 0.003)},
  },
  /** Cane, beet and maple syrup, treacle. */
  syrup: {
    ...plant,
    sugars: {sucrose: [0.6, 0.4], dextrose: [0.2, 0.2], fructose: [0.2, 0.2]},
    rest: all("otherCarbohydrate"),
    minerals: {plantSalts: guess("solids", 0.025, 0.025)},
  },
  honey: {
    ...plant,
    sugars: {
      fructose: [0.51, 0.1],
      dextrose: [0.42, 0.1],
      maltose: [0.03, 0.03],
      sucrose: [0.02, 0.03],
      galactose: [0.02, 0.03],
    },
    rest: all("otherCarbohydrate"),
    minerals: {plantSalts: guess("solids", 0.003, 0.002)},
  },
  /** Glucose syrup and maltodextrin, liquid or dried: the dextrose equivalent follows from the sugars. */
  "glucose syrup": {
    ...plant,
    sugars: all("glucoseSyrupSolids"),
    rest: all("glucoseSyrupSolids"),
    minerals: {plantSalts: guess("solids", 0.002, 0.002)},
  },
  /** Spirits, and liqueurs without cream. */
  spirit: {
    ...plant,
    sugars: {sucrose: [0.68, 0.32], dextrose: [0.15, 0.15], fructose: [0.12, 0.12], maltose: [0.05, 0.06]},
    minerals: {plantSalts: guess("solids", 0.002, 0.002)},
  },
  "cream liqueur": {
    ...dairy,
    sugars: all("sucrose"),
    lactose: [0.8, 0.7],
    rest: all("otherCarbohydrate"),
    minerals: {milkSalts: guess("protein", 0.17, 0.06)},
    ownSalt: 0.08,
  },
  wine: {
    ...plant,
    sugars: {fructose: [0.55, 0.12], dextrose: [0.45, 0.12]},
    rest: {glycerol: [0.5, 0.4], otherCarbohydrate: [0.5, 0.4]},
    minerals: {plantSalts: guess("solids", 0.065, 0.045)},
    acids: [0.6, 0.2],
  },
  starch: {
    ...grain,
    rest: all("starch"),
    minerals: {plantSalts: guess("solids", 0.001, 0.001)},
    fibre: guess("solids", 0.01, 0.01),
  },
  /** Oils and fats; coconut fat when at least three quarters of it is saturated. */
  oil: {...grain, fibre: guess("solids", 0, 0)},
  biscuit: grain,
} as const satisfies Record<string, LabelRule>;
