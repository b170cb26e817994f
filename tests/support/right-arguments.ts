import type {LinearProgram} from "../../lib/lp.ts";
import {library} from "./library.ts";
import {milk, sugar} from "./custard.ts";
import {realPantry} from "./pantry.ts";

const written = {
  ingredients: [
    {name: "whole milk", price: 1},
    {name: "sucrose", price: 1},
  ],
  targets: {sugars: {equal: 15}},
};
const brief = library.readBrief(written, realPantry);
const answer = library.balance(written, {pantry: realPantry});
if (answer.status !== "optimal") throw new Error("no answer");
const recipe = {
  name: "syrup",
  lines: [milk, sugar].map((ingredient) => ({ingredient: {...ingredient, price: 1}, grams: 100})),
};
const product = library.makeProduct("custard", [library.baseComponent(recipe)]);
const shelf = library.pantryOf(realPantry.ingredients.slice(0, 40));
const {composition} = milk;
const tub = {shape: "box", length: 20, width: 16, height: 10} as const;
const program: LinearProgram = {
  variables: [{name: "x", cost: 1}],
  rows: [{name: "least", coefficients: [1], lower: 1}],
};
const log = [
  {minutes: 0, temperature: 70},
  {minutes: 10, temperature: 72},
];

/** A right argument by the type of a parameter. */
const BY_TYPE: Readonly<Record<string, unknown>> = {
  Composition: composition,
  Recipe: recipe,
  "readonly Recipe[]": [recipe, recipe],
  Product: product,
  Pantry: realPantry,
  Brief: brief,
  BriefSource: brief,
  BriefInput: written,
  RecipeSource: recipe,
  Answer: answer,
  Balanced: answer,
  LinearProgram: program,
  Outcome: library.solve(program),
  Ingredient: milk,
  "readonly Ingredient[]": [milk, sugar],
  "readonly [Ingredient, Ingredient]": [milk, {...sugar, composition: {milkFat: 82, water: 18}}],
  "readonly RecipeLine[]": recipe.lines,
  "readonly Portion[]": [{composition, grams: 1}],
  "readonly Reading[]": log,
  "readonly Component[]": product.components,
  "readonly CurvePoint[]": library.freezingCurve(composition),
  "readonly ShelfEntry[]": [{name: "sucrose", price: 2, place: "list"}],
  "readonly Amount[]": answer.amounts,
  "readonly Relaxation[]": [
    {
      target: "sugars",
      bound: "equal",
      from: 15,
      to: 16,
      of: "target",
      path: "targets.sugars",
      on: {kind: "measure", key: "sugars", subject: {kind: "quantity", quantity: "sugars"}},
    },
  ],
  "readonly Particulates[]": [{density: 1.2, percent: 10}],
  BatchSheet: library.batchSheet(product, {grams: 500}),
  ScaleTo: {grams: 1000},
  Tubs: {tubs: 2, tubMillilitres: 500, overrun: 30},
  Machine: {fillLimit: 1000},
  TradeOffAxes: {x: "cost", y: "sugars"},
  RegionAxes: {x: "cost", y: "sugars"},
  Grid: {columns: 2, rows: 2},
  Tub: tub,
  TemperingOptions: {freezer: -18, airTemperature: 20, airSpeed: 1, overrun: 30},
  StandingOptions: {freezer: -18, minutes: 5, airTemperature: 20, airSpeed: 1, overrun: 30},
  FirmnessOptions: {overrun: 30},
  "readonly FirmnessReport[]": [{composition, temperature: -18, overrun: 30, found: "right"}],
  HardeningOptions: {draw: -5, core: -15, airTemperature: -25, airSpeed: 1, overrun: 30},
  CurveRange: {from: -5, to: -20, step: 1},
  Quantity: "fat",
  NutrientKey: "sodium",
  Part: "sucrose",
  EquivalenceMix: library.equivalenceMix(composition),
  Label: {name: "cream", fat: 30, carbohydrate: 3, sugars: 3, protein: 2.5, salt: 0.1},
  IngredientClass: "dairy",
  SolveOptions: {maxNodes: 10, timeLimit: 1000},
  BalanceOptions: {
    pantry: realPantry,
    place: "brief",
    deadline: 5000,
    now: () => 0,
    signal: new AbortController().signal,
    candidates: false,
    search: {maxNodes: 10},
  },
  // A small shelf: each of some hundred calls looks through it.
  SubstituteOptions: {without: "sugar", from: shelf, freezer: -18, batch: 200, left: 0},
  ChangeOptions: {freezer: -18, overrun: 30, from: [], locked: ["whole milk"]},
  DescribeOptions: {freezer: -18, overrun: 30},
  SweepOptions: {pantry: realPantry, place: "brief"},
  CandidateOptions: {margin: 0.2, apart: 0.5},
  ChunkOptions: {size: 2},
  SimulationOptions: {batches: 20, seed: 1},
  Spread: {parts: new Map(), weighing: 1},
  "Spread | SpreadInput": {weighing: 1},
  AmountsInput: answer.amounts,
  "BriefInput<Own>": written,
  "BriefInput<string>": written,
  CoolingOptions: {grams: 1000, from: 80, to: 5, watts: 500},
  CookTo: {brix: 30},
  CookOptions: {inversion: 0.2},
  Cooked: library.cookDown(recipe, {brix: 60}),
  RippleBrief: {
    name: "ripple",
    ingredients: [
      {ingredient: {...milk, price: 1}, min: 50},
      {ingredient: {...sugar, price: 1}, min: 50},
    ],
    brix: {min: 50, max: 70},
  },
  Process: {steps: [{heat: ["whole milk", "sugar"], to: 80, holdSeconds: 30}]},
  Making: {way: "pot", to: 82},
  Selling: {grams: 1000, overrun: 30, tubMillilitres: 500, portionMillilitres: 60},
  "Readonly<Record<string, Pack>>": {},
  "Readonly<Record<string, LabelName>>": {},
  "readonly string[]": [],
  SheetOptions: {freezer: -18, overrun: 30, cost: true},
  MadeSheetOptions: {draw: -5, tubMillilitres: 500, overrun: 30},
  "Readonly<Record<string, number>>": {salt: 1},
  ProductFactsDetails: {fruit: false, wheyPercentOfMsnf: 0},
  Standard: "US ice cream",
  ProductFacts: library.productFacts(product, 50),
  Day: {
    composition,
    gramsPerRun: 1000,
    runs: 1,
    churn: {from: 5, draw: -5, watts: 300},
    tub,
    overrun: 30,
    freezer: {temperature: -25},
  },
  TimedRun: {composition, grams: 1000, from: 5, draw: -5, minutes: 15},
  Nutrition: library.nutritionOf(product),
  StartingKey: "sorbet",
  StartingOptions: {grams: 2000, freezer: -14, flavour: "mango"},
  FlavourKind: "fruit",
  LabelLaw: "EU",
  WayOfSale: "prepacked",
  ListStyle: "EU",
  ListOptions: {style: "EU", leaveOutWater: true},
  StatementOptions: {law: "US", serving: 100},
  EuPanelOptions: {portion: 60, portions: 8},
  UsPanelOptions: {overrun: 30, container: 500},
  StickerOptions: {law: "EU", quantity: {grams: 500}, made: "2026-07-01", portion: 60, overrun: 30},
  EuPanel: library.euPanel(product),
  UsPanel: library.usPanel(product),
  Sticker: library.stickerOf(product),
  StickerSize: {width: 90, height: 60, smallPack: false},
  AnswerExtras: {},
  CurvePicture: {freezer: -18, title: "curve", width: 640},
  "readonly number[]": [1, 1],
};

/** Right arguments by function and the name of a parameter, where the type alone does not say. */
const BY_NAME: Readonly<Record<string, unknown>> = {
  "readBrief.input": written,
  "readComposition.input": {water: 88, milkFat: 3.5, msnf: 8.5},
  "readIngredient.input": milk,
  "readRecipe.input": {name: "syrup", ingredients: [{name: "sucrose", grams: 100}]},
  "readRecipeJson.text": JSON.stringify({name: "syrup", ingredients: [{name: "sucrose", grams: 100}]}),
  "readRecipeCsv.text": "ingredient,g\nsucrose,100\n",
  "readPantryCsv.text": "name,sucrose\nsugar,100\n",
  "readPantryJson.text": JSON.stringify([milk]),
  "readPricesCsv.text": "name,price\nsucrose,2\n",
  "readMeasure.text": "3 eggs",
  "gramsOf.text": "100 g",
  "gramsOf.ingredient": milk,
  "sweep.path": "targets.sugars.equal",
  "sweepSteps.path": "targets.sugars.equal",
  "sweep.values": [14, 15],
  "sweepSteps.values": [14, 15],
  "inUnit.size": {grams: 5},
  "findIngredient.name": "sucrose",
  "quidPercent.name": "sugar",
  "substitute.recipe": recipe,
  "recipeOf.amounts": answer.amounts,
  "weighable.amounts": answer.amounts,
  "reliability.amounts": answer.amounts,
  "heldBy.dextroseEquivalent": 42,
  "heatShock.warm": -14,
  "inChunks.steps": (function* () {
    yield {done: 1, total: 1};
    return 1;
  })(),
  "irreducibleConflict.program": {
    variables: [{name: "x", cost: 1, upper: 0}],
    rows: [{name: "least", coefficients: [1], lower: 1}],
  },
  "leastRelaxation.weight": () => 1,
  "leastRelaxation.most": () => 10,
  "irreducibleConflict.isHard": () => false,
  "mixDensityAt.temperature": 20,
  "enthalpy.temperature": -18,
  "checkHold.temperature": 72,
  "heatToRemove.from": 5,
};

/** Right numbers by the name of a parameter. */
const NUMBERS: Readonly<Record<string, number>> = {
  temperature: -18,
  warm: -14,
  cold: -18,
  freezer: -18,
  core: -15,
  from: 5,
  to: -5,
  scale: 1,
  share: 0.5,
  brix: 50,
  index: 1.4,
  percent: 40,
  grams: 1000,
  density: 1.1,
  mixDensity: 1.1,
  overrun: 30,
  mixGrams: 110,
  frozenGrams: 80,
  millilitres: 500,
  seconds: 20,
  reference: 70,
  z: 7.5,
  warmest: 10,
  watts: 500,
  cost: 3,
  margin: 60,
  tax: 10,
  milkFat: 12,
  factor: 2,
  step: 5,
};

/** A right argument for a parameter of a public function. */
export function rightArgument(owner: string, name: string, type: string): unknown {
  const key = `${owner}.${name}`;
  if (Object.hasOwn(BY_NAME, key)) return BY_NAME[key];
  if (type === "string") return name === "unit" ? "g" : "place";
  if (type === "number") return NUMBERS[name];
  return BY_TYPE[type];
}
