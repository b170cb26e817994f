/** Lesson of a kitchen's own reports about when its tubs scoop. Plain data, to be kept in a file. */
export interface Learned {
  /** Reports that it rests on. */
  readonly reports: number;
  /** Firmness by which the reference is shifted, g per 100 g: above 0, this kitchen scoops what the book calls firm. */
  readonly shift: number;
  /** Share of the earlier spread that is left: 1 with no reports. */
  readonly narrowing: number;
  /** Scatter of the ln of hardness from batch to batch. */
  readonly scatter: number;
}
