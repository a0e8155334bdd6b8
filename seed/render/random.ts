/** A stream of numbers that is the same on every machine for the same name. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
  /** True with the given chance. */
  chance(probability: number): boolean;
  /** One of the given values. */
  pick<T>(values: readonly T[]): T;
  /** A 32-bit whole number, to seed something else. */
  seed(): number;
}

/** FNV-1a, 32 bits: a seed out of a name. */
function hashName(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) {
    hash ^= name.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

/** A stream seeded by a name or number (mulberry32: 32 bits of state, enough for pictures). */
export function randomFrom(seed: number | string): Random {
  let state = typeof seed === "string" ? hashName(seed) : seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (probability) => next() < probability,
    pick: <T>(values: readonly T[]): T => {
      const value = values[Math.floor(next() * values.length)];
      if (value === undefined) throw new Error("pick: needs at least one value. Received none.");
      return value;
    },
    seed: () => Math.floor(next() * 4294967296),
  };
}
