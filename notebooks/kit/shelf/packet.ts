import {InputError} from "../../../lib/core/errors.ts";
import {decimal} from "../../../lib/core/format.ts";
import {mixDensity} from "../../../lib/kitchen/size/density.ts";
import {fromLabel, type IngredientClass, type LabelledIngredient} from "../../../lib/pantry/from-label.ts";
import type {Label} from "../../../lib/pantry/read-label.ts";

/** A figure of a packet. */
export type Figure =
  | "kilojoules"
  | "kilocalories"
  | "fat"
  | "saturates"
  | "carbohydrate"
  | "sugars"
  | "polyols"
  | "fibre"
  | "protein"
  | "salt"
  | "sodium"
  | "water"
  | "solids"
  | "alcohol"
  | "density"
  | "portion";

/** Entries that the cook has read off a packet. */
export interface Packet {
  readonly name: string;
  readonly class: IngredientClass;
  /** `EU`: carbohydrate without fibre, and salt in g. `US`: carbohydrate with fibre, and sodium in mg. */
  readonly law: "EU" | "US";
  readonly per: "100 g" | "100 ml" | "portion";
  /** g, but for energy, sodium (mg), alcohol (% vol) and density (g/ml); absent is not said. */
  readonly figures: Readonly<Partial<Record<Figure, number>>>;
}

/** Something amiss, beside the figure that it is about. */
export interface Slip {
  readonly figure: Figure | undefined;
  readonly words: string;
}

/** A packet as it is understood. */
export interface ReadPacket {
  /** The same per 100 g, where nothing is amiss. */
  readonly label?: Omit<Label, "name"> & {readonly class: IngredientClass};
  readonly read?: LabelledIngredient;
  /** Figures still to be read off. */
  readonly missing: readonly Figure[];
  readonly slips: readonly Slip[];
  /** Assumptions. */
  readonly taken: readonly string[];
}

/** g of salt to 1 mg of sodium: Regulation (EU) 1169/2011, Annex I, has salt as sodium x 2.5. */
const SALT_PER_SODIUM = 2.5 / 1000;

/** g/ml of ethanol at 20 °C (from memory). */
export const ETHANOL = 0.789;

/** So often density and composition are worked out from each other: they settle in three. */
const ROUNDS = 8;

const NEEDED = {
  EU: ["fat", "carbohydrate", "sugars", "protein", "salt"],
  US: ["fat", "sodium", "carbohydrate", "sugars", "protein"],
} as const satisfies Record<Packet["law"], readonly Figure[]>;

/** Reads a packet: per 100 g, and as the library reads a label of its class; what is amiss stands beside its figure. */
export function readPacket(packet: Packet): ReadPacket {
  const {law, per, figures} = packet;
  const missing: Figure[] = NEEDED[law].filter((figure) => figures[figure] === undefined);
  if (per === "portion" && figures.portion === undefined) missing.unshift("portion");
  const slips = ownSlips(packet);
  if (slips.length || missing.length) return {missing, slips, taken: []};
  const taken: string[] = [];
  let density = figures.density;
  const needsDensity = density === undefined && (per === "100 ml" || (figures.alcohol ?? 0) > 0);
  try {
    let {label, read} = readAt(packet, density ?? 1);
    // What a millilitre weighs follows from what is in it, and that from what a millilitre weighs.
    for (let round = needsDensity ? ROUNDS : 0; round > 0; round--) {
      density = mixDensity(read.ingredient.composition);
      ({label, read} = readAt(packet, density));
    }
    if (needsDensity) taken.push(`1 ml taken as ${decimal(density!, 2)} g, by what is in it`);
    const coarse = per === "portion" ? roundingOf(law, figures.portion!) : 0;
    if (coarse >= 1)
      taken.push(
        `figures of so small a portion are rounded: each may be off by ${decimal(coarse, coarse < 10 ? 1 : 0)} g in 100 g`,
      );
    return {label, read, missing, slips, taken};
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {missing, slips: [slipOf(error, packet)], taken};
  }
}

/** Half of the last digit of a portion's figures, g per 100 g: 0.1 g in the EU (from memory of its guidance), 1 g in the US (21 CFR 101.9(c)). */
function roundingOf(law: Packet["law"], portion: number): number {
  return ((law === "US" ? 0.5 : 0.05) * 100) / portion;
}

function readAt(
  packet: Packet,
  density: number,
): {label: NonNullable<ReadPacket["label"]>; read: LabelledIngredient} {
  const {name, law, per, figures} = packet;
  const factor = per === "100 g" ? 1 : per === "100 ml" ? 1 / density : 100 / figures.portion!;
  const scaled = (value: number | undefined) =>
    value === undefined ? undefined : Number((value * factor).toPrecision(6));
  const {
    fat,
    saturates,
    carbohydrate,
    sugars,
    polyols,
    fibre,
    protein,
    salt,
    sodium,
    kilojoules,
    kilocalories,
  } = figures;
  const alcohol =
    figures.alcohol === undefined
      ? undefined
      : Number(((figures.alcohol * ETHANOL) / density).toPrecision(6));
  const water =
    figures.water ?? (figures.solids === undefined ? undefined : 100 - figures.solids - (alcohol ?? 0));
  const optional = {
    saturates: scaled(saturates),
    fibre: scaled(fibre),
    polyols: scaled(polyols),
    alcohol,
    water,
    kilojoules: scaled(kilojoules),
    kilocalories: scaled(kilocalories),
  };
  const label = {
    class: packet.class,
    fat: scaled(fat)!,
    // A US label counts fibre to the carbohydrate.
    carbohydrate: scaled(law === "US" ? Math.max(0, carbohydrate! - (fibre ?? 0)) : carbohydrate)!,
    sugars: scaled(sugars)!,
    protein: scaled(protein)!,
    salt: scaled(law === "US" ? sodium! * SALT_PER_SODIUM : salt)!,
    ...(Object.fromEntries(
      Object.entries(optional).filter(([, value]) => value !== undefined),
    ) as Partial<Label>),
  };
  const {class: read, ...said} = label;
  return {label, read: fromLabel({...said, name: name.trim() || "it"}, read)};
}

/** Limits of what the library does not see: what a portion, a millilitre and a strength may be. */
const LIMITS: Readonly<Partial<Record<Figure, readonly [min: number, max: number, words: string]>>> = {
  portion: [0.1, 10_000, "g of a portion lie between 0.1 and 10 000: give its weight"],
  density: [0.1, 2, "g in a millilitre lie between 0.1 and 2: weigh 100 ml, and divide by 100"],
  alcohol: [0, 96, "a strength lies between 0 and 96 % vol: give it as the bottle does"],
  sodium: [0, 40_000, "sodium is in mg, at most 40 000: give it as the packet does"],
  solids: [0, 100, "solids lie between 0 and 100 g in 100 g: give them as the packet does"],
  water: [0, 100, "water lies between 0 and 100 g in 100 g: give it as the packet does"],
};

function ownSlips({law, per, figures}: Packet): Slip[] {
  const slips = (Object.entries(figures) as [Figure, number][]).flatMap(([figure, value]): Slip[] => {
    const [min, max, words] = LIMITS[figure] ?? [0, Infinity, "less than nothing: give 0 or more"];
    return value >= min && value <= max ? [] : [{figure, words: `${decimal(value, 2)}: ${words}.`}];
  });
  const {water, solids, portion} = figures;
  if (water !== undefined && solids !== undefined && Math.abs(water + solids - 100) > 1 && !figures.alcohol)
    slips.push({
      figure: "solids",
      words: `${solids} g of solids and ${water} g of water are not 100 g: check both, or give one.`,
    });
  if (per === "portion" && portion !== undefined && slips.length === 0) {
    const weighty = (
      [
        "fat",
        "carbohydrate",
        "sugars",
        "protein",
        "fibre",
        ...(law === "EU" ? (["salt"] as const) : []),
      ] as const
    ).find((figure) => (figures[figure] ?? 0) > portion);
    if (weighty)
      slips.push({
        figure: weighty,
        words: `${figures[weighty]} g in a portion of ${portion} g: are the figures per 100 g? Then choose that above.`,
      });
  }
  return slips;
}

/** The library's refusal beside the figure that it names, with both figures in it. */
function slipOf({place, problem, value, advice}: InputError, {law, per}: Packet): Slip {
  const named = /: (\w+)$/.exec(place)?.[1] as Figure | undefined;
  const figure = law === "US" && named === "salt" ? "sodium" : named;
  const got = typeof value === "number" ? ` (it is ${Number(value.toFixed(2))})` : "";
  const scaled = per === "100 g" ? "" : "In 100 g: ";
  const told = `${scaled}${problem}${got}. ${advice[0]!.toUpperCase()}${advice.slice(1)}`;
  const words = `${told[0]!.toUpperCase()}${told.slice(1)}`;
  return {
    figure: figure === undefined || !FIGURES.has(figure) ? undefined : figure,
    words: /[.?!]$/.test(words) ? words : `${words}.`,
  };
}

const FIGURES = new Set<string>([
  ...NEEDED.EU,
  ...NEEDED.US,
  "kilojoules",
  "kilocalories",
  "saturates",
  "polyols",
  "fibre",
  "water",
  "alcohol",
] satisfies Figure[]);
