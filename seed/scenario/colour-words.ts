const WORDS: readonly (readonly [string, number, number, number])[] = [
  ["black", 28, 26, 26],
  ["black", 38, 40, 48],
  ["black", 34, 36, 40],
  ["white", 246, 244, 238],
  ["cream", 238, 226, 198],
  ["grey", 140, 140, 138],
  ["red", 165, 42, 36],
  ["dark red", 92, 30, 38],
  ["orange", 200, 100, 35],
  ["brown", 110, 66, 32],
  ["dark brown", 58, 32, 20],
  ["tan", 196, 160, 108],
  ["yellow", 222, 178, 60],
  ["gold", 168, 134, 58],
  ["green", 48, 108, 66],
  ["dark green", 34, 56, 38],
  ["blue", 42, 72, 138],
  ["dark blue", 30, 42, 80],
  ["blue-green", 32, 92, 98],
  ["violet", 66, 40, 80],
];

/** The nearest word of the trade for a colour written `#rrggbb`. */
export function sayColour(hex: string): string {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  let best = "";
  let least = Number.POSITIVE_INFINITY;
  for (const [word, wr, wg, wb] of WORDS) {
    const distance = 2 * (r - wr) ** 2 + 4 * (g - wg) ** 2 + 3 * (b - wb) ** 2;
    if (distance < least) {
      least = distance;
      best = word;
    }
  }
  return best;
}
