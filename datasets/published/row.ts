/** One published figure beside what the library computes. */
export interface ValidationRow {
  /** Part of the model that it checks, e.g. `solutions`. */
  readonly group: string;
  /** Whether the model was fitted to the figure, which then shows no more than that the fit is sound, or is held against it. */
  readonly use: "fitted" | "held";
  /** The figure in words. */
  readonly what: string;
  readonly published: number;
  readonly computed: number;
  /** computed - published. */
  readonly difference: number;
  /** Largest difference that is accepted, in the unit: the source's own error as far as it is known. */
  readonly tolerance: number;
  readonly unit: string;
  /** Key into `datasets/sources.csv`. */
  readonly source: string;
  /** Abscissa of a residual plot, where the row has one: °C. */
  readonly temperature?: number;
  /** Solute or method that a residual plot tells apart. */
  readonly series?: string;
}

/** Rows of the published tables, by file name without `.csv`: each row a record by column. */
export type PublishedTables = Readonly<Record<TableName, readonly Readonly<Record<string, string>>[]>>;

/** The tables that the validation reads from `datasets/`. */
export const TABLES = [
  "freezing_points",
  "solutes",
  "norrish",
  "ice_water_activity",
  "freezing_curve_example",
  "sucrose_equivalents",
  "milk_freezing_point",
  "hard_mixes",
  "texture_norms",
  "ice_cream_thermal",
  "measured_mixes",
  "firmness_checks",
  "firmness_fit",
] as const;

/** Name of a table. */
export type TableName = (typeof TABLES)[number];

/** A row with its difference worked out. */
export function compare(row: Omit<ValidationRow, "difference">): ValidationRow {
  return {...row, difference: row.computed - row.published};
}

/** Whether a row lies within its tolerance; one that could not be computed does not. */
export function holds({difference, tolerance}: ValidationRow): boolean {
  return Math.abs(difference) <= tolerance;
}
