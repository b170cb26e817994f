/** One figure of an answer as CSV: `value` unrounded, `unit` empty where there is none. */
export type Figure = readonly [
  section: string,
  name: string,
  value: number | string | undefined,
  unit: string,
];
