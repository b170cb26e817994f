import type {CurvePoint} from "../../freezing/curve.ts";
import type {Scooping} from "../../freezing/scoop.ts";
import type {Check} from "../../lp/program/program.ts";
import type {DoseOver} from "../../pantry/doses.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Brief} from "../brief/brief.ts";
import type {Subject} from "../measure/measures.ts";
import type {OpenedPacks} from "../program/packs.ts";
import type {RuleReference} from "../program/row-origin.ts";

/** One line of a balanced mix. */
export interface Amount {
  readonly ingredient: string;
  /** g in the batch. */
  readonly grams: number;
  /** g per 100 g of mix. */
  readonly percent: number;
}

/**
 * The thing that a limit is on, for code: a measure of the mix by its key in `targets` (`subject` has its temperatures too), an
 * ingredient by name and place in the brief, a rule or a dose by its key. `kind` tells them apart.
 */
export type LimitReference =
  | {readonly kind: "measure"; readonly key: string; readonly subject: Subject}
  | {readonly kind: "ingredient"; readonly ingredient: string; readonly index: number}
  | RuleReference
  | {readonly kind: "dose"; readonly dose: string};

/** One side of a limit of a brief, told apart from all others by `path` and `bound`: names may be shared. */
export interface LimitSide {
  /** Kind of limit: on a property of the mix, an amount of an ingredient, a practical rule, a dose. */
  readonly of: "target" | "ingredient" | "rule" | "dose";
  /**
   * Path in the brief: `targets.fat`, `targets.ice[0]`, `ingredients[2]`, `ingredients[2].ratio`, `maxIngredients`,
   * `doses.salt`; `beside the brief: cost` for a limit that no brief states.
   */
  readonly path: string;
  /** Its name: that of the target, ingredient or dose, or the rule in words. */
  readonly target: string;
  /** The same for code, which then need not read `path` or `target`. */
  readonly on: LimitReference;
  readonly bound: "min" | "max" | "equal";
  /** The limit in per cent of the batch, where the cook gave it so. */
  readonly percent?: number;
  /** True for a dose that the cook set or asked for outright, instead of the customary one. */
  readonly own?: true;
}

/** A limit that the mix meets exactly, with its price. */
export interface Binding extends LimitSide {
  /** The limit, in the target's unit (g for an ingredient, g per 100 g for a dose). */
  readonly limit: number;
  /** Whether the limit is what there is of an ingredient. */
  readonly inStock?: true;
  /**
   * Change of what is optimised (money per kg of mix, when that is cost) if the limit rises by one unit. Absent where
   * whole amounts are asked for: a mix in steps has no such price.
   */
  readonly price?: number;
}

/** One side of a limit that takes part in a conflict. */
export interface ConflictingLimit extends LimitSide {
  readonly limit: number;
  /** Whether the limit is what there is of an ingredient. */
  readonly inStock?: true;
}

/** Move of a limit that is needed so that all can be met: `withRelaxations` makes it. */
export interface Relaxation extends LimitSide {
  readonly from: number;
  /** The new limit, as it is to be shown and applied: rounded to the hundredth that leaves more room. */
  readonly to: number;
  /** The new limit in per cent of the batch, where the cook gave it so. */
  readonly toPercent?: number;
  /** Whether the limit is what there is of an ingredient, so that more of it has to be there. */
  readonly inStock?: true;
  /** True where no temperature that a brief may ask for would do, so that the limit is removed. */
  readonly dropped?: true;
}

/** Why no mix exists, and the nearest one that does. */
export interface Conflict {
  /** A smallest set of limits that cannot hold together: without any one of them the rest can. */
  readonly targets: readonly ConflictingLimit[];
  /** Whether there are other conflicts besides: without one of these limits the brief still cannot be met. */
  readonly more?: true;
  /** One of these other conflicts: the limits that still cannot hold together `without` one of those named. */
  readonly behind?: {readonly without: ConflictingLimit; readonly targets: readonly ConflictingLimit[]};
  /** The least change that lets all limits of the brief be met; empty where none was found. */
  readonly relaxations: readonly Relaxation[];
  /** Whether such a change was found, cannot exist, or may exist and was not searched for to the end. */
  readonly relaxation: "found" | "impossible" | "not searched to the end";
  /** The mix that results from that change. */
  readonly amounts?: readonly Amount[];
  /** Best value that these ingredients can reach, where one target alone cannot be met with them. */
  readonly reach?: {readonly target: string; readonly best: number};
  /** Ingredients of the pantry of which any one would make the brief possible: what nearly every kitchen has, then what is of a kind with what is there. */
  readonly openers: readonly string[];
  /**
   * Whether time ran out before all of this was known: some of the limits named may then not be needed for the conflict, and a
   * least change or an opener may be missing.
   */
  readonly cutShort?: true;
}

/** Everything about one mix. */
export interface MixReport {
  /** Doses that the mix goes beyond, since the cook asked for more or wanted no limits; absent where there are none. */
  readonly beyondDoses?: readonly DoseOver[];
  readonly amounts: readonly Amount[];
  /** Money for the batch; absent where an ingredient used has no price. */
  readonly cost?: number;
  /** Money for the batch with every opened pack paid in full; absent where no pack or a price is not known. */
  readonly outlay?: number;
  /** Packs that the batch opens, of the ingredients whose pack is known. */
  readonly packs?: readonly OpenedPacks[];
  /** g per 100 g of mix. */
  readonly composition: Composition;
  /** Every quantity of the brief and every derived one, in its unit, by name. */
  readonly shares: Readonly<Record<string, number>>;
  readonly freezing: {
    /** °C; absent for a mix that does not freeze above -40 °C. */
    readonly initialFreezingPoint?: number;
    readonly curve: readonly CurvePoint[];
  };
  /** Scoop temperature, and the verdict in the freezer of the brief. */
  readonly scoop: Scooping;
}

/** Objective of a brief, made smallest or largest, with its value in a mix. */
export interface Objective {
  /** As targets are named: `cost`, `hard phase at -18 °C`; with `wholePacks`, `cost with whole packs`. */
  readonly name: string;
  readonly value: number;
  /** `money per kg` for a cost. */
  readonly unit: string;
  readonly sense: "minimise" | "maximise";
}

/** A balanced mix, verified. */
export interface Balanced extends MixReport {
  readonly status: "optimal";
  readonly name: string;
  readonly batch: number;
  /** The checked brief that it answers, for all that takes one. JSON and copies do not have it. */
  readonly brief?: Brief;
  /** Objective of the brief; absent where it has no prices and names nothing, so that nothing was optimised. A candidate has its own value of it. */
  readonly objective?: Objective;
  readonly binding: readonly Binding[];
  /** Whether the prices in `binding` are one choice among several. */
  readonly degenerate: boolean;
  /** Engine that found the mix; `check` says how exactly the mix meets the brief. */
  readonly engine: string;
  readonly check: Check;
}

/** Answer to a brief, by its status. */
export type Answer =
  | (Balanced & {
      readonly candidates: readonly Balanced[];
      /** Whether time ran out before all candidates were looked for; the mix itself is proved all the same. */
      readonly candidatesCutShort?: true;
    })
  | {
      readonly status: "infeasible";
      readonly name: string;
      /** As in a balanced mix. */
      readonly brief?: Brief;
      readonly conflict: Conflict;
      readonly candidates: readonly [];
    }
  | {
      readonly status: "unbounded";
      readonly name: string;
      /** As in a balanced mix. */
      readonly brief?: Brief;
      readonly reason: string;
      readonly candidates: readonly [];
    }
  | {
      readonly status: "undecided";
      readonly name: string;
      /** As in a balanced mix. */
      readonly brief?: Brief;
      readonly reason: string;
      /** The best mix found that keeps every limit of the brief; a better one may exist. Absent where none was found. */
      readonly best?: MixReport;
      readonly candidates: readonly [];
    };
