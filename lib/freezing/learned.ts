/** What a kitchen's own reports have taught about when its tubs scoop. Plain data, to be kept in a file. */
export interface Learned {
  /** Reports that it rests on. */
  readonly reports: number;
  /** Firmness by which the reference is shifted, g per 100 g: above 0, this kitchen scoops what the book calls firm. */
  readonly shift: number;
  /** What is left of the spread that was there before: 1 with no reports. */
  readonly narrowing: number;
  /** Scatter of the ln of hardness from batch to batch. */
  readonly scatter: number;
}
