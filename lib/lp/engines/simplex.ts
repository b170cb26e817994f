import {checkTime, type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Basis} from "../proof/vertex.ts";

/**
 * Primal simplex for programs with limits on both sides, on a dense dictionary: basic = table . nonbasic.
 *
 * The second engine, for what the first leaves unfinished: it starts from any basis, needs no perturbed costs, no box and no
 * split variables, and stops at a basis that proves an optimum, a conflict or a ray. While limits are violated it minimises the
 * sum of violations. Dantzig's rule, and Bland's after a run of steps without progress, so that it ends.
 *
 * Source: V. Chvátal, Linear Programming (1983), chapters 3 (Bland's rule) and 8 (bounded variables).
 *
 * @param start a basis to start from; a singular one is mended
 * @throws OutOfTime before the first step after the deadline
 */
export function primalSimplex(program: DenseProgram, start?: Basis, deadline: Deadline = NO_DEADLINE): Basis {
  const state = new Dictionary(program);
  if (start) state.enter(start, deadline);
  state.settle();
  const {columns: n, rows: m} = program;
  let stalled = 0;
  for (let step = 0; step < 50 * (n + m) + 1000; step++) {
    checkTime(deadline);
    const progress = state.step(stalled > 2 * (n + m));
    if (progress === undefined) break;
    stalled = progress ? 0 : stalled + 1;
  }
  return state.basis();
}

/** Violation that the ratio test tolerates, and price that counts as none: finer than the final judgement. */
const TOLERANCE = 1e-10;
/** Smallest coefficient to pivot on. */
const PIVOT = 1e-9;

class Dictionary {
  readonly n: number;
  readonly m: number;
  readonly table: Float64Array;
  /** Limits, costs and values of the variables, then of the rows' sums. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly cost: Float64Array;
  readonly value: Float64Array;
  readonly basic: Int32Array;
  readonly nonbasic: Int32Array;
  readonly weight: Float64Array;
  readonly price: Float64Array;

  constructor({columns: n, rows: m, matrix, lower, upper, rowLower, rowUpper, cost}: DenseProgram) {
    this.n = n;
    this.m = m;
    this.table = matrix.slice();
    this.lower = Float64Array.of(...lower, ...rowLower);
    this.upper = Float64Array.of(...upper, ...rowUpper);
    this.cost = new Float64Array(n + m);
    this.cost.set(cost);
    this.nonbasic = Int32Array.from({length: n}, (_, j) => j);
    this.basic = Int32Array.from({length: m}, (_, i) => n + i);
    this.value = Float64Array.from({length: n + m}, (_, v) => this.nearestLimit(v));
    this.weight = new Float64Array(m);
    this.price = new Float64Array(n);
  }

  nearestLimit(v: number): number {
    const [low, high] = [this.lower[v]!, this.upper[v]!];
    return low > -Infinity ? low : high < Infinity ? high : 0;
  }

  /** Brings a given basis in, as far as it is regular. */
  enter(start: Basis, deadline: Deadline): void {
    const {n, m} = this;
    for (let v = 0; v < n + m; v++) {
      if (start[v] === AT_UPPER && this.upper[v]! < Infinity) this.value[v] = this.upper[v]!;
    }
    for (let q = 0; q < n; q++) {
      if (start[this.nonbasic[q]!] !== BASIC) continue;
      let p = -1;
      let largest = 1e-7;
      for (let i = 0; i < m; i++) {
        if (this.basic[i]! < n || start[this.basic[i]!] === BASIC) continue;
        const size = Math.abs(this.table[i * n + q]!);
        if (size > largest) [largest, p] = [size, i];
      }
      if (p < 0) continue;
      checkTime(deadline);
      this.pivot(p, q);
    }
  }

  /** Values of the basic quantities from those of the nonbasic ones. */
  settle(): void {
    const {n, m, table, value, basic, nonbasic} = this;
    for (let i = 0, k = 0; i < m; i++) {
      let total = 0;
      for (let j = 0; j < n; j++, k++) total += table[k]! * value[nonbasic[j]!]!;
      value[basic[i]!] = total;
    }
  }

  /** One step; whether it made progress, or `undefined` where none is left to make. */
  step(bland: boolean): boolean | undefined {
    const q = this.entering(this.priceAll(), bland);
    if (q < 0) return undefined;
    const direction = this.price[q]! < 0 ? 1 : -1;
    const {row, length} = this.leaving(q, direction, bland);
    if (length === Infinity) return undefined;
    const {n, m, table, value, basic, nonbasic} = this;
    const v = nonbasic[q]!;
    value[v]! += direction * length;
    for (let i = 0; i < m; i++) value[basic[i]!]! += table[i * n + q]! * direction * length;
    if (row < 0) value[v] = direction > 0 ? this.upper[v]! : this.lower[v]!;
    else {
      const out = basic[row]!;
      const [low, high] = [this.lower[out]!, this.upper[out]!];
      value[out] = Math.abs(value[out]! - low) <= Math.abs(value[out]! - high) ? low : high;
      this.pivot(row, q);
    }
    return length * Math.abs(this.price[q]!) > 1e-12;
  }

  /** Prices of the nonbasic quantities: of the violations while there are any, then of the objective; which of the two. */
  priceAll(): boolean {
    const {n, m, table, weight, price, basic, nonbasic, lower, upper, value} = this;
    let violated = false;
    for (let i = 0; i < m; i++) {
      const v = basic[i]!;
      weight[i] = value[v]! < lower[v]! - TOLERANCE ? -1 : value[v]! > upper[v]! + TOLERANCE ? 1 : 0;
      if (weight[i] !== 0) violated = true;
    }
    if (!violated) for (let i = 0; i < m; i++) weight[i] = this.cost[basic[i]!]!;
    for (let j = 0; j < n; j++) price[j] = violated ? 0 : this.cost[nonbasic[j]!]!;
    for (let i = 0; i < m; i++) {
      const w = weight[i]!;
      if (w !== 0) for (let j = 0, k = i * n; j < n; j++, k++) price[j]! += w * table[k]!;
    }
    return violated;
  }

  /** The nonbasic quantity to move: the best priced, or by Bland's rule the first; -1 for none. */
  entering(violated: boolean, bland: boolean): number {
    const {n, price, nonbasic, lower, upper, value} = this;
    let [best, q] = [violated ? 1e-9 : TOLERANCE, -1];
    for (let j = 0; j < n; j++) {
      const size = Math.abs(price[j]!);
      if (size <= best && !(bland && size > TOLERANCE)) continue;
      const v = nonbasic[j]!;
      const room = price[j]! < 0 ? upper[v]! - value[v]! : value[v]! - lower[v]!;
      if (room <= 0) continue;
      if (bland) {
        if (q < 0 || v < nonbasic[q]!) q = j;
      } else [best, q] = [size, j];
    }
    return q;
  }

  /** The row that stops a move, -1 where the moved quantity meets its own other limit first, and the length of the move. */
  leaving(q: number, direction: number, bland: boolean): {row: number; length: number} {
    const {n, m, table, basic, nonbasic, lower, upper} = this;
    const v = nonbasic[q]!;
    const own = upper[v]! - lower[v]!;
    let reach = own;
    for (let i = 0; i < m; i++) {
      const speed = direction * table[i * n + q]!;
      if (Math.abs(speed) > PIVOT)
        reach = Math.min(reach, (this.room(basic[i]!, speed) + TOLERANCE) / Math.abs(speed));
    }
    let [row, largest, length] = [-1, 0, own];
    for (let i = 0; i < m; i++) {
      const speed = direction * table[i * n + q]!;
      const size = Math.abs(speed);
      if (size <= PIVOT) continue;
      const ratio = Math.max(0, this.room(basic[i]!, speed)) / size;
      if (ratio > reach) continue;
      if (bland ? row < 0 || basic[i]! < basic[row]! : size > largest)
        [row, largest, length] = [i, size, ratio];
    }
    return {row, length};
  }

  /** Distance that a basic quantity may move this way before a limit is met; one that is beyond a limit stops where it comes back. */
  room(v: number, speed: number): number {
    const [low, high, value] = [this.lower[v]!, this.upper[v]!, this.value[v]!];
    if (speed > 0)
      return value < low - TOLERANCE ? low - value : value > high + TOLERANCE ? Infinity : high - value;
    return value > high + TOLERANCE ? value - high : value < low - TOLERANCE ? Infinity : value - low;
  }

  pivot(p: number, q: number): void {
    const {n, m, table, basic, nonbasic} = this;
    const at = p * n;
    const inverse = 1 / table[at + q]!;
    for (let j = 0; j < n; j++) table[at + j]! *= -inverse;
    table[at + q] = inverse;
    for (let i = 0; i < m; i++) {
      const factor = table[i * n + q]!;
      if (i === p || factor === 0) continue;
      for (let j = 0, k = i * n; j < n; j++, k++) table[k]! += factor * table[at + j]!;
      table[i * n + q] = factor * inverse;
    }
    [basic[p], nonbasic[q]] = [nonbasic[q]!, basic[p]!];
  }

  basis(): Basis {
    const basis = new Uint8Array(this.n + this.m).fill(BASIC);
    for (const v of this.nonbasic) {
      const [low, high, value] = [this.lower[v]!, this.upper[v]!, this.value[v]!];
      basis[v] = value === low ? AT_LOWER : value === high ? AT_UPPER : AT_ZERO;
    }
    return basis;
  }
}
