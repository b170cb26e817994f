/**
 * A seeded source of numbers from 0 (included) to 1 (excluded), so that a simulation repeats exactly.
 *
 * Generator: mulberry32 (T. Ettinger, public domain), period 2^32; good for simulation, not for secrets.
 *
 * @param seed any integer; other numbers are cut to 32 bits
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
