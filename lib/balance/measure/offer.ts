/** Controls of a measure on the pages. The ends and steps of sliders are what cooks ask for (common practice, no source). */
export interface Offer<S> {
  /** Its key in a brief's targets and in an address. */
  readonly key: string;
  /** Subject for a freezer at a temperature, °C. */
  readonly subject: (freezer: number) => S;
  /** A slider for its limits. */
  readonly target?: {
    readonly label: string;
    readonly from: number;
    readonly to: number;
    readonly step: number;
  };
  /** An axis to weigh it against others. */
  readonly axis?: {
    readonly name: string;
    /** The direction that is better, unless the cook says otherwise. */
    readonly better: "minimise" | "maximise";
    /** 1 by default. */
    readonly digits?: number;
    /** Names of the mix with least and with most of it; least and most of its name by default. */
    readonly ends?: readonly [least: string, most: string];
  };
}
