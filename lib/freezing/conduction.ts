/** Thermal properties of the inside of a body, by temperature in °C. */
export interface Material {
  /** Enthalpy of a volume, kJ/m³; rises with temperature. */
  readonly enthalpy: (temperature: number) => number;
  /** W/(m K). */
  readonly conductivity: (temperature: number) => number;
}

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
/** Number of enthalpies at which temperature and conductivity are kept. */
const STATES = 1500;
/** Longest time that is followed, a week, s: a body that has not arrived by then never will. */
const LONGEST = 7 * 24 * 3600;

/**
 * Lets heat flow between a body and the air until a condition holds.
 *
 * The enthalpy method: each layer's enthalpy changes by the heat that crosses its faces, so the heat balance is exact,
 * and its temperature follows from its enthalpy, so melting needs no special case. Explicit steps, kept stable by the
 * smallest heat capacity and the largest conductivity.
 *
 * @param start temperature throughout at the start, °C
 * @param done condition to stop at
 * @returns the state when the condition first held; `undefined` if it does not within a week
 */
export function letHeatFlow(
  material: Material,
  body: Body,
  air: Surroundings,
  start: number,
  done: (progress: Progress) => boolean,
): Progress | undefined {
  const states = tabulate(material, Math.min(start, air.temperature), Math.max(start, air.temperature));
  const {areas, volumes, thickness} = layersOf(body);
  const total = volumes.reduce((a, b) => a + b, 0);
  const first = material.enthalpy(start);
  const enthalpies = new Float64Array(LAYERS).fill(first);
  const step = stableStep(states, areas, volumes, thickness, air.coefficient);
  const temperatures = new Float64Array(LAYERS);
  const conductivities = new Float64Array(LAYERS);
  let crossed = 0;
  for (let time = 0; time <= LONGEST; time += step) {
    let held = 0;
    for (let i = 0; i < LAYERS; i++) {
      const at = states.index(enthalpies[i]!);
      temperatures[i] = states.value(states.temperatures, at);
      conductivities[i] = states.value(states.conductivities, at);
      held += enthalpies[i]! * volumes[i]!;
    }
    const progress: Progress = {
      time,
      core: temperatures[0]!,
      surface: temperatures[LAYERS - 1]!,
      mean: states.value(states.temperatures, states.index(held / total)),
      heatIn: crossed / total,
      heatGained: held / total - first,
    };
    if (done(progress)) return progress;
    for (let i = 0; i < LAYERS; i++) {
      const outer = i === LAYERS - 1;
      const resistance =
        thickness / 2 / conductivities[i]! +
        (outer ? 1 / air.coefficient : thickness / 2 / conductivities[i + 1]!);
      const difference = (outer ? air.temperature : temperatures[i + 1]!) - temperatures[i]!;
      const heat = (step * areas[i + 1]! * difference) / resistance / 1000;
      enthalpies[i]! += heat / volumes[i]!;
      if (outer) crossed += heat;
      else enthalpies[i + 1]! -= heat / volumes[i + 1]!;
    }
  }
  return undefined;
}

/** Faces and volumes of the layers, core first, per m² of the body's surface. */
function layersOf({depth, dimension}: Body): {areas: number[]; volumes: number[]; thickness: number} {
  const at = (i: number) => i / LAYERS;
  const areas = Array.from({length: LAYERS + 1}, (_, i) => (i === 0 ? 0 : at(i) ** (dimension - 1)));
  const volumes = Array.from(
    {length: LAYERS},
    (_, i) => (depth / dimension) * (at(i + 1) ** dimension - at(i) ** dimension),
  );
  return {areas, volumes, thickness: depth / LAYERS};
}

interface States {
  readonly temperatures: Float64Array;
  readonly conductivities: Float64Array;
  /** Position of an enthalpy in the lists, with a fraction. */
  readonly index: (enthalpy: number) => number;
  readonly value: (list: Float64Array, at: number) => number;
  /** Smallest rise of enthalpy by temperature, kJ/(m³ K). */
  readonly smallestCapacity: number;
  readonly largestConductivity: number;
}

/** Temperature and conductivity at equally spaced enthalpies, so that they are found without a search. */
function tabulate({enthalpy, conductivity}: Material, coldest: number, warmest: number): States {
  const [low, high] = [enthalpy(coldest), enthalpy(warmest)];
  const space = (high - low) / (STATES - 1);
  const temperatures = new Float64Array(STATES);
  const fine = 2 * STATES;
  let [at, below, here] = [0, low, coldest];
  for (let i = 1; i <= fine; i++) {
    const next = coldest + ((warmest - coldest) * i) / fine;
    const above = enthalpy(next);
    for (; at < STATES && low + at * space <= above + space * 1e-9; at++) {
      temperatures[at] =
        above > below ? here + ((next - here) * (low + at * space - below)) / (above - below) : next;
    }
    [below, here] = [above, next];
  }
  let smallestCapacity = Infinity;
  for (let i = 1; i < STATES; i++) {
    smallestCapacity = Math.min(smallestCapacity, space / (temperatures[i]! - temperatures[i - 1]!));
  }
  const conductivities = temperatures.map(conductivity);
  return {
    temperatures,
    conductivities,
    index: (d) => Math.min(STATES - 1, Math.max(0, (d - low) / space)),
    value: (list, place) => {
      const whole = Math.min(STATES - 2, Math.floor(place));
      return list[whole]! + (place - whole) * (list[whole + 1]! - list[whole]!);
    },
    smallestCapacity,
    largestConductivity: Math.max(...conductivities),
  };
}

/** Longest stable time step, s: in it no layer may take up more than brings it to its neighbours. */
function stableStep(
  {smallestCapacity, largestConductivity}: States,
  areas: readonly number[],
  volumes: readonly number[],
  thickness: number,
  coefficient: number,
): number {
  const inside = largestConductivity / thickness;
  const outside = 1 / (thickness / 2 / largestConductivity + 1 / coefficient);
  let shortest = Infinity;
  for (let i = 0; i < LAYERS; i++) {
    const out = areas[i + 1]! * (i === LAYERS - 1 ? outside : inside);
    shortest = Math.min(shortest, (1000 * smallestCapacity * volumes[i]!) / (areas[i]! * inside + out));
  }
  return 0.5 * shortest;
}
