/** The starting points, by key. */
export const STARTING_KEYS = [
  "custard",
  "white",
  "gelato",
  "sorbet",
  "oat",
  "coconut",
  "chocolate",
  "nut",
  "spirit",
  "no added sugar",
  "high protein",
] as const;

/** A starting point. */
export type StartingKey = (typeof STARTING_KEYS)[number];
