import type {AimInput} from "../../balance/brief/brief-input.ts";
import type {WAYS_OF_MAKING} from "../cooking/base-process.ts";
import type {KindName} from "../reading/kind-names.ts";
import type {FlavourKind} from "./flavours.ts";
import type {StartingKey} from "./starting-keys.ts";

/** A recipe to start from: its name, its description, and the way it is made. */
export interface StartingPoint {
  readonly key: StartingKey;
  readonly name: string;
  /** Description, a sentence. */
  readonly like: string;
  /** The kind whose norms it is compared with. */
  readonly kind: KindName;
  readonly way: keyof typeof WAYS_OF_MAKING;
  /** Kind of flavour that the cook chooses, with the first choice. */
  readonly flavour?: {readonly kind: FlavourKind; readonly first: string};
  /** Aim within its limits, mostly the least sweetness. */
  readonly aim: {readonly minimise: AimInput} | {readonly maximise: AimInput};
}

/** Aim for the least sweet mix within the limits, which has glucose syrup and dextrose: they soften a mix with less sweetness than sugar. */
const LEAST_SWEET = {minimise: "sweetness"} as const;

/** The starting points, the commonest first. Their limits, each with its source, stand in `starting-table.ts`. */
export const STARTING_POINTS: readonly StartingPoint[] = [
  {
    key: "custard",
    name: "Custard base",
    like: "Yolks, milk and cream, cooked: round, yellow, carries vanilla, caramel and spices.",
    kind: "egg custard ice cream",
    way: "custard",
    aim: LEAST_SWEET,
  },
  {
    key: "white",
    name: "White base",
    like: "Milk and cream without eggs: clean and white, lets fruit, mint and coffee speak.",
    kind: "ice cream",
    way: "pot",
    aim: LEAST_SWEET,
  },
  {
    key: "gelato",
    name: "Milk gelato",
    like: "Mostly milk, little cream: light, cool and quick to melt.",
    kind: "gelato",
    way: "pot",
    aim: LEAST_SWEET,
  },
  {
    key: "sorbet",
    name: "Fruit sorbet",
    like: "Fruit, sugar and water, nothing else: choose the fruit.",
    kind: "sorbet",
    way: "pot",
    flavour: {kind: "fruit", first: "raspberry"},
    aim: LEAST_SWEET,
  },
  {
    key: "oat",
    name: "Oat base",
    like: "Oat drink with coconut and sunflower oil: mild, a little of porridge, no milk.",
    kind: "dairy-free ice cream",
    way: "pot",
    aim: LEAST_SWEET,
  },
  {
    key: "coconut",
    name: "Coconut base",
    like: "Coconut milk, sugar and water: rich, white and fragrant, no milk; its fat sets hard in the cold.",
    kind: "dairy-free ice cream",
    way: "pot",
    aim: LEAST_SWEET,
  },
  {
    key: "chocolate",
    name: "Chocolate",
    like: "Dark chocolate and cocoa in milk and cream: deep, dense, firmer than a plain base.",
    kind: "chocolate ice cream",
    way: "pot",
    aim: LEAST_SWEET,
  },
  {
    key: "nut",
    name: "Nut",
    like: "Nut paste in milk: the nuts bring the fat; choose which.",
    kind: "nut ice cream",
    way: "pot",
    flavour: {kind: "nut", first: "roasted hazelnuts"},
    aim: LEAST_SWEET,
  },
  {
    key: "spirit",
    name: "With a spirit",
    like: "A custard with rum or whisky: the alcohol keeps the tub soft, so that it needs less sugar.",
    kind: "egg custard ice cream",
    way: "custard",
    flavour: {kind: "spirit", first: "spirit 40 % vol"},
    aim: LEAST_SWEET,
  },
  {
    key: "no added sugar",
    name: "No added sugar",
    like: "A custard with sugar alcohols: no sugar goes in, that of the milk stays; less sweet and harder than others.",
    kind: "egg custard ice cream",
    way: "custard",
    aim: {maximise: "sweetness"},
  },
  {
    key: "high protein",
    name: "High protein",
    like: "Skimmed milk, skyr and milk protein: lean, a little sour, at least a fifth of its energy is protein.",
    kind: "light ice cream",
    way: "pot",
    aim: LEAST_SWEET,
  },
];
