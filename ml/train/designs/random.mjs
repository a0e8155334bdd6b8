/** Seeded random numbers: the same seed draws the same design on every machine (mulberry32). */

/**
 * @param {number} seed whole number
 * @returns {{unit: () => number, between: (a: number, b: number) => number, whole: (n: number) => number,
 *   chance: (p: number) => boolean, pick: <T>(from: readonly T[]) => T, weighted: <T>(from: readonly (readonly [number, T])[]) => T}}
 */
export function randomFrom(seed) {
  let state = seed | 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (n) => Math.floor(unit() * n);
  return {
    unit,
    between: (a, b) => a + unit() * (b - a),
    whole,
    chance: (p) => unit() < p,
    pick: (from) => from[whole(from.length)],
    weighted: (from) => {
      let left = unit() * from.reduce((sum, [weight]) => sum + weight, 0);
      for (const [weight, value] of from) {
        left -= weight;
        if (left < 0) return value;
      }
      return from[from.length - 1][1];
    },
  };
}

/** A seed of its own for design `index` of a run, so that designs can be drawn in any order. */
export function seedOf(runSeed, index) {
  let h = Math.imul(runSeed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(index + 1, 0xc2b2ae35);
  h ^= h >>> 15;
  h = Math.imul(h, 0x27d4eb2f);
  return h ^ (h >>> 13);
}
