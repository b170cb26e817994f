import {type Material, placeOf, slopeAt, type Table, tabulate, valueAt} from "./enthalpy-table.ts";

/** A body that heat enters from all sides. */
export interface Body {
  /** Shortest way from the core to the surface, m. */
  readonly depth: number;
  /**
   * Surface × depth / volume: 1 for a slab, 2 for a long cylinder, 3 for a sphere or a cube. Bodies in between are
   * treated as layers whose area is (distance from the core) to the power of (dimension − 1), which have the right volume,
   * surface and depth.
   */
  readonly dimension: number;
}

/** Air around a body. */
export interface Surroundings {
  /** °C. */
  readonly temperature: number;
  /** Heat transfer from the surface, W/(m² K). */
  readonly coefficient: number;
}

/** State of a body while heat flows. */
export interface Progress {
  /** s. */
  readonly time: number;
  /** °C at the core, i.e. in the innermost layer. */
  readonly core: number;
  /** °C of the outermost layer. */
  readonly surface: number;
  /** °C that the body would have throughout, after its heat had spread. */
  readonly mean: number;
  /** Heat that has crossed the surface since the start, kJ per m³ of body. */
  readonly heatIn: number;
  /** Gain in enthalpy of all layers since the start, kJ per m³ of body. */
  readonly heatGained: number;
}

/** Number of layers from core to surface. */
const LAYERS = 24;
/** Longest time that is followed, a week, s: a body that has not arrived by then never will. */
const LONGEST = 7 * 24 * 3600;
/** Shortest step that is tried, s: one that does not settle by then never will. */
const SHORTEST = 1e-30;
/** Largest error of one step, as a share of the enthalpy that the farthest layer still has to gain or lose. */
const TOLERANCE = 3e-4;

/**
 * Lets heat flow between a body and the air until a condition holds.
 *
 * The enthalpy method: each layer's enthalpy changes by the heat that crosses its faces, so the heat balance is exact,
 * and its temperature follows from its enthalpy, so melting needs no special case. Between two layers flows the
 * difference of their integrals of conductivity over temperature (Kirchhoff's transformation). Steps of the implicit
 * Euler method, stable at any length: one long step against two short ones gives the error, which sets the length, and
 * extrapolated from both the result is of second order (E. Hairer and G. Wanner, Solving Ordinary Differential Equations II,
 * chapter IV; from memory).
 *
 * @param start temperature throughout at the start, °C
 * @param done condition to stop at; one that goes on holding until the end of a step is not missed
 * @throws Error for a material whose properties are no numbers, or whose enthalpy does not rise
 * @returns the state when the condition first held, its time precise to 1e-5 of it; `undefined` if it does not within a week
 */
export function letHeatFlow(
  material: Material,
  body: Body,
  air: Surroundings,
  start: number,
  done: (progress: Progress) => boolean,
): Progress | undefined {
  const table = tabulate(material, Math.min(start, air.temperature), Math.max(start, air.temperature));
  const layers = layersOf(body);
  const total = layers.volumes.reduce((a, b) => a + b, 0);
  const [first, last] = [material.enthalpy(start), material.enthalpy(air.temperature)];
  const euler = implicitEuler(table, layers, air);
  const step = (from: Float64Array, seconds: number) => {
    const state = euler(euler(from, seconds / 2), seconds / 2);
    const long = euler(from, seconds);
    let [error, scale] = [0, 1e-3 * table.range];
    for (let i = 0; i < LAYERS; i++) {
      error = Math.max(error, Math.abs(state[i]! - long[i]!));
      scale = Math.max(scale, Math.abs(from[i]! - last));
    }
    return {state: state.map((d, i) => 2 * d - long[i]!), error: error / scale};
  };
  const progressAt = (time: number, state: Float64Array): Progress => {
    const held = layers.volumes.reduce((sum, volume, i) => sum + volume * state[i]!, 0) / total;
    const [core, surface, mean] = [state[0]!, state[LAYERS - 1]!, held].map((enthalpy) =>
      valueAt(table, table.temperatures, enthalpy),
    ) as [number, number, number];
    return {time, core, surface, mean, heatIn: state[LAYERS]! / total, heatGained: held - first};
  };
  // The layers' enthalpies, core first, and at the end the heat that has crossed the surface, kJ per m² of it.
  let state: Float64Array = new Float64Array(LAYERS + 1).fill(first, 0, LAYERS);
  let progress = progressAt(0, state);
  if (done(progress)) return progress;
  for (let [time, seconds] = [0, 1]; time < LONGEST;) {
    seconds = Math.min(seconds, LONGEST - time);
    const next = step(state, seconds);
    // A step that was given up has an error that is not a number.
    const change = 0.8 * Math.sqrt(TOLERANCE / next.error) || 0;
    if (change < 0.8) {
      seconds *= Math.max(0.2, change);
      if (seconds < SHORTEST)
        throw new Error("a material's enthalpy and conductivity must be numbers above 0");
      continue;
    }
    progress = progressAt(time + seconds, next.state);
    if (done(progress)) {
      for (let short = 0; seconds - short > 1e-5 * (time + seconds);) {
        const middle = (short + seconds) / 2;
        const between = progressAt(time + middle, step(state, middle).state);
        if (done(between)) [seconds, progress] = [middle, between];
        else short = middle;
      }
      return progress;
    }
    state = next.state;
    time += seconds;
    seconds *= Math.min(4, change);
  }
  return undefined;
}

/** Outer faces and volumes of the layers, core first, per m² of the body's surface. */
function layersOf({depth, dimension}: Body) {
  const shares = Array.from({length: LAYERS}, (_, i) => [i / LAYERS, (i + 1) / LAYERS] as const);
  return {
    faces: shares.map(([, outer]) => outer ** (dimension - 1)),
    volumes: shares.map(([inner, outer]) => (depth / dimension) * (outer ** dimension - inner ** dimension)),
    thickness: depth / LAYERS,
  };
}

/**
 * Implicit Euler step of some seconds: the flows are those at its end, which Newton's method finds. Each correction solves one
 * system of three diagonals, eliminated from the core and put back from the surface (Thomas's algorithm).
 *
 * @returns the new state; one of NaN where twelve corrections do not settle it
 */
function implicitEuler(
  table: Table,
  {faces, volumes, thickness}: ReturnType<typeof layersOf>,
  air: Surroundings,
) {
  /** W/m² into the outermost layer at each enthalpy of it. */
  const inflows = table.conductivities.map(
    (k, i) => (air.temperature - table.temperatures[i]!) / (thickness / 2 / k + 1 / air.coefficient),
  );
  const [integrals, slopes] = [new Float64Array(LAYERS), new Float64Array(LAYERS)];
  const [above, change] = [new Float64Array(LAYERS), new Float64Array(LAYERS)];
  return (from: Float64Array, seconds: number): Float64Array => {
    const state = from.slice();
    for (let correction = 0; correction < 12; correction++) {
      let place = 0;
      for (let i = 0; i < LAYERS; i++) {
        place = placeOf(table, state[i]!);
        integrals[i] = valueAt(table, table.integrals, state[i]!, place);
        slopes[i] = slopeAt(table, table.integrals, place);
      }
      const inflow = valueAt(table, inflows, state[LAYERS - 1]!, place);
      const inflowSlope = slopeAt(table, inflows, place);
      // Heat through a layer's inner face in this step, kJ, and how it changes with the enthalpies on both sides.
      let [inner, byInside, byLayer] = [0, 0, 0];
      for (let i = 0; i < LAYERS; i++) {
        const outermost = i === LAYERS - 1;
        const weight = (seconds * faces[i]!) / 1000 / (outermost ? 1 : thickness);
        const outer = weight * (outermost ? inflow : integrals[i + 1]! - integrals[i]!);
        const outerByLayer = weight * (outermost ? inflowSlope : -slopes[i]!);
        const outerByOutside = outermost ? 0 : weight * slopes[i + 1]!;
        const pivot = volumes[i]! + byLayer - outerByLayer + (i && byInside * above[i - 1]!);
        const gap = volumes[i]! * (from[i]! - state[i]!) + outer - inner;
        change[i] = (gap - (i && byInside * change[i - 1]!)) / pivot;
        above[i] = outerByOutside / pivot;
        inner = outer;
        byInside = outerByLayer;
        byLayer = outerByOutside;
      }
      let largest = 0;
      for (let i = LAYERS - 1; i >= 0; i--) {
        if (i < LAYERS - 1) change[i]! += above[i]! * change[i + 1]!;
        state[i]! += change[i]!;
        largest = Math.max(largest, Math.abs(change[i]!));
      }
      state[LAYERS] = from[LAYERS]! + inner + byInside * change[LAYERS - 1]!;
      if (largest <= 1e-6 * table.range) return state;
    }
    return state.fill(NaN);
  };
}
