import type {Part} from "./parts.ts";
import type {Quantity} from "./quantities.ts";

/** A row of `datasets/doses.csv`. An ingredient counts where all hold that are given. Lists are parted by `; `. */
export interface DoseRow {
  readonly key: string;
  readonly name: string;
  /** g per 100 g of mix. */
  readonly limit: number;
  /** Quantity of an ingredient that counts; `mass` counts all of it. */
  readonly counts: Quantity | "mass";
  /** Only of an ingredient that has at least so much of it, or of `of`, g per 100 g: what is added as such. */
  readonly atLeast?: number;
  readonly of?: Part;
  /** Only of an ingredient of these groups, or, where it has no group, with one of `names`. */
  readonly groups?: string;
  /** Only of an ingredient one of whose names contains one of these. */
  readonly words?: string;
  /** Only of an ingredient one of whose names is one of these. */
  readonly names?: string;
  /** Targets whose least asks for what is counted; that of `of`, or of `counts`, by default. */
  readonly askedBy?: string;
  /** Absent where no publication gives the limit. */
  readonly source?: string;
}
