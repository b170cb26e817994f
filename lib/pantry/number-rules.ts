import type {Part} from "./parts.ts";

/** Name as it was read: its words in order of the alphabet, and the numbers beside their units. */
export interface Numbered {
  readonly words: string;
  /** % */
  readonly percent?: number;
  readonly de?: number;
  /** °Bx: g of sugar in 100 g of syrup. */
  readonly brix?: number;
}

/** Something made of others, g in 100 g: less than none where it is what another row has too much of. */
export interface Made {
  readonly name: string;
  readonly of: readonly (readonly [name: string, grams: number])[];
  readonly uncertainty: Readonly<Partial<Record<Part | "dextroseEquivalent", number>>>;
  /** Dextrose equivalent of the glucose-syrup solids, where the row has another. */
  readonly de?: number;
}

/**
 * The rules, each with the range that it is meant for. Cream and milk are linear in their fat by the skim portion (H. D. Goff, Ice
 * Cream Technology, University of Guelph e-book: MSNF = 0.09 x (100 - fat)); cocoa powder is one cake with more or less of its
 * butter in it. Chocolate is cocoa mass, cocoa butter, whole milk powder and sugar: of the cocoa in dark chocolate 57 % is fat, in
 * the dark chocolates of USDA SR28 (19902 to 19904) 55 to 60; that 40 % of the cocoa in milk chocolate is mass, and that it has
 * 20 % milk powder and white chocolate 22, is from memory. Uncertainties are judged by the spread of those foods in the tables.
 */
export function madeOf({words, percent, de, brix}: Numbered): Made | undefined {
  const within = (value: number | undefined, least: number, most: number): value is number =>
    value !== undefined && value >= least && value <= most;
  const between = (one: string, at: number, other: string, to: number, x: number): Made["of"] => {
    const share = (100 * (x - at)) / (to - at);
    return [
      [other, share],
      [one, 100 - share],
    ];
  };
  switch (words) {
    case "cream":
      return within(percent, 9, 60)
        ? {
            name: `cream ${percent} %`,
            of: between("cream 18 %", 18, "cream 48 %", 48, percent),
            uncertainty: {milkFat: 1, milkProtein: 0.3, lactose: 0.4, milkSalts: 0.1, water: 1.2},
          }
        : undefined;
    case "milk":
      return within(percent, 0, 6)
        ? {
            name: `milk ${percent} %`,
            of: between("skimmed milk", 0.08, "whole milk", 3.25, percent),
            uncertainty: {milkFat: 0.1, milkProtein: 0.3, lactose: 0.3, milkSalts: 0.05, water: 0.5},
          }
        : undefined;
    case "cocoa":
    case "cocoa powder":
      return within(percent, 8, 26)
        ? {
            name: `cocoa powder ${percent} %`,
            of: between("cocoa powder 14 %", 13.7, "cocoa butter", 100, percent),
            uncertainty: {
              cocoaButter: 1,
              otherProtein: 3,
              fibre: 6,
              starch: 5,
              plantSalts: 2,
              otherCarbohydrate: 6,
              water: 2,
            },
          }
        : undefined;
    case "chocolate dark":
      if (!within(percent, 35, 99)) return undefined;
      return {
        name: `dark chocolate ${percent} %`,
        // Above 85 % there is less and less butter but that of the mass, 52 %.
        of: cocoaAndSugar(percent, percent <= 85 ? 0.57 : 0.57 - (0.047 * (percent - 85)) / 15),
        uncertainty: {cocoaButter: 4, sucrose: 3, otherProtein: 2, fibre: 3, starch: 2, otherCarbohydrate: 3},
      };
    case "chocolate milk":
      return within(percent, 25, 55)
        ? {
            name: `milk chocolate ${percent} %`,
            of: [
              ["cocoa mass", 0.4 * percent],
              ["cocoa butter", 0.6 * percent],
              ["whole milk powder", 20],
              ["sucrose", 80 - percent],
            ],
            uncertainty: {
              cocoaButter: 4,
              milkFat: 2,
              milkProtein: 2,
              lactose: 4,
              sucrose: 6,
              fibre: 1.5,
              otherProtein: 1,
            },
          }
        : undefined;
    case "chocolate white":
      return within(percent, 20, 40)
        ? {
            name: `white chocolate ${percent} %`,
            of: [
              ["cocoa butter", percent],
              ["whole milk powder", 22],
              ["sucrose", 78 - percent],
            ],
            uncertainty: {cocoaButter: 2, milkFat: 2, milkProtein: 2, lactose: 4, sucrose: 6},
          }
        : undefined;
    case "sugar syrup":
    case "syrup": {
      const strength = brix ?? (words === "syrup" ? undefined : percent);
      return within(strength, 1, 85)
        ? {
            name: `sugar syrup ${strength} %`,
            of: [
              ["sucrose", strength],
              ["water", 100 - strength],
            ],
            uncertainty: {sucrose: 0.5, water: 0.5},
          }
        : undefined;
    }
    case "glucose syrup":
      return within(de, 20, 75) && (percent === undefined || within(percent, 60, 97))
        ? syrup("glucose syrup", de, percent)
        : undefined;
    case "dried glucose syrup":
    case "glucose powder":
      return within(de, 20, 60) && percent === undefined ? syrup("dried glucose syrup", de, 95) : undefined;
    case "maltodextrin":
      return within(de, 5, 20) && percent === undefined ? syrup("maltodextrin", de, 95) : undefined;
    default:
      return undefined;
  }
}

/** Glucose syrup of a dextrose equivalent, 80 % solids unless said. */
function syrup(kind: string, de: number, solids = 80): Made {
  const said = solids === 80 || solids === 95 ? "" : ` ${solids} %`;
  return {
    name: `${kind} ${de} DE${said}`,
    of: [
      ["glucose syrup 42 DE", solids / 0.8],
      ["water", 100 - solids / 0.8],
    ],
    uncertainty: {dextroseEquivalent: 2, glucoseSyrupSolids: said ? 0.5 : 2, water: said ? 0.5 : 2},
    de,
  };
}

/** Dark chocolate of so much cocoa, % of the whole, of which a share is fat: cocoa mass has 52.31 % (USDA SR28, 19078). */
function cocoaAndSugar(cocoa: number, fat: number): Made["of"] {
  const mass = (cocoa * (1 - fat)) / (1 - 0.5231);
  return [
    ["cocoa mass", mass],
    ["cocoa butter", cocoa - mass],
    ["sucrose", 100 - cocoa],
  ];
}
