/** One figure of an answer as CSV: `value` as it is, `unit` empty where there is none. */
export type Figure = readonly [
  section: string,
  name: string,
  value: number | string | undefined,
  unit: string,
];
