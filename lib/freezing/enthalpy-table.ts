/** Thermal properties of the inside of a body, by temperature in °C. */
export interface Material {
  /** Enthalpy of a volume, kJ/m³; rises with temperature. */
  readonly enthalpy: (temperature: number) => number;
  /** W/(m K). */
  readonly conductivity: (temperature: number) => number;
}

/** Properties at some enthalpies, which rise; straight lines between them. */
export interface Table {
  readonly enthalpies: Float64Array;
  readonly temperatures: Float64Array;
  readonly conductivities: Float64Array;
  /** Integral of conductivity over temperature, W/m. */
  readonly integrals: Float64Array;
  /** Difference of the outermost enthalpies, kJ/m³. */
  readonly range: number;
}

/** Table of a material, finer where its enthalpy or conductivity bends. */
export function tabulate({enthalpy, conductivity}: Material, coldest: number, warm: number): Table {
  const warmest = Math.max(warm, coldest + 0.1);
  const at = (t: number) => ({t, h: enthalpy(t), k: conductivity(t)});
  type Point = ReturnType<typeof at>;
  const points = [at(coldest)];
  const range = enthalpy(warmest) - points[0]!.h;
  const add = (from: Point, to: Point): void => {
    const middle = at((from.t + to.t) / 2);
    const bends =
      Math.abs(middle.h - (from.h + to.h) / 2) > 1e-5 * range ||
      Math.abs(middle.k - (from.k + to.k) / 2) > 1e-3 * middle.k;
    if (bends && to.t - from.t > (warmest - coldest) / 4000) {
      add(from, middle);
      add(middle, to);
    } else points.push(middle, to);
  };
  for (let i = 1; i <= 32; i++) add(points.at(-1)!, at(coldest + ((warmest - coldest) * i) / 32));
  let integral = 0;
  return {
    enthalpies: Float64Array.from(points, ({h}) => h),
    temperatures: Float64Array.from(points, ({t}) => t),
    conductivities: Float64Array.from(points, ({k}) => k),
    integrals: Float64Array.from(points, ({t, k}, i) => {
      const before = points[i - 1] ?? {t, k};
      return (integral += ((t - before.t) * (k + before.k)) / 2);
    }),
    range,
  };
}

/** Place in a table below an enthalpy; the first or the last but one where the enthalpy is outside. */
export function placeOf({enthalpies}: Table, enthalpy: number): number {
  let low = 0;
  for (let high = enthalpies.length - 1; high - low > 1;) {
    const middle = (low + high) >> 1;
    if (enthalpies[middle]! <= enthalpy) low = middle;
    else high = middle;
  }
  return low;
}

export function slopeAt({enthalpies}: Table, list: Float64Array, place: number): number {
  return (list[place + 1]! - list[place]!) / (enthalpies[place + 1]! - enthalpies[place]!);
}

export function valueAt(table: Table, list: Float64Array, enthalpy: number, at = placeOf(table, enthalpy)) {
  return list[at]! + (enthalpy - table.enthalpies[at]!) * slopeAt(table, list, at);
}
