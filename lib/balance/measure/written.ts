import * as z from "zod/mini";

/**
 * Forms in which a cook writes the subject of a target: `limits` and `temperature` by their key alone (a temperature, no weighted sum,
 * cannot be an aim), `at` as a list of limits at a temperature, `swing` as a list of limits between two.
 */
export type Written = "limits" | "temperature" | "at" | "swing";

/** The data of a subject that is written so, beside its kind. */
export interface WrittenData {
  readonly limits: unknown;
  readonly temperature: unknown;
  readonly at: {readonly at: number};
  readonly swing: {readonly from: number; readonly to: number};
}

const finite = () => z.number();
/** A temperature that a brief may speak of, °C. */
export const temperatureSchema = () => z.number().check(z.gte(-40), z.lte(-0.01));

const limits = {min: z.optional(finite()), max: z.optional(finite()), equal: z.optional(finite())};
const at = {at: temperatureSchema()};
const swing = {from: temperatureSchema(), to: temperatureSchema()};

export const limitsSchema = z.strictObject(limits);
export const atSchema = z.strictObject({at: temperatureSchema(), ...limits});
export const swingSchema = z.strictObject({from: temperatureSchema(), to: temperatureSchema(), ...limits});

/** Measures written at temperatures: their schemas as a target and as an aim or axis, their keys, an example and what is wanted. */
export const AT_TEMPERATURES = {
  at: {
    target: z.array(atSchema),
    wish: () => z.strictObject(at),
    keys: ["at"],
    example: '{"at": -18}',
    needs: "needs a temperature",
  },
  swing: {
    target: z.array(swingSchema),
    wish: () => z.strictObject(swing),
    keys: ["from", "to"],
    example: '{"from": -18, "to": -14}',
    needs: "needs two temperatures",
  },
} as const;

/** True for a form that is written with temperatures. */
export function isAtTemperatures(written: Written): written is keyof typeof AT_TEMPERATURES {
  return written === "at" || written === "swing";
}
