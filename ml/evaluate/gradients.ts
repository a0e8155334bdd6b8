/** Pixels of a side of the picture that is described. */
export const GRADIENTS_SIDE = 128;
const CELL = 8;
const CELLS = GRADIENTS_SIDE / CELL;
const BINS = 9;
const CLIP = 0.2;

/**
 * Histogram of oriented gradients after Dalal and Triggs, CVPR 2005, in their default form: [-1 0 1]
 * gradients without smoothing, 9 unsigned orientations, cells of 8 x 8 pixels, votes of the gradient's
 * magnitude shared linearly among neighbouring cells and orientations, blocks of 2 x 2 cells that overlap by
 * one, L2-Hys normalisation with clipping at 0.2. Left out: the Gaussian weight inside a block.
 * @param picture 128 x 128 grey values, on any scale
 * @returns 15 * 15 * 4 * 9 numbers of unit length (all 0 for a picture without any gradient)
 */
export function describeGradients(picture: Float32Array): Float32Array {
  const cells = vote(picture);
  const blocks = CELLS - 1;
  const out = new Float32Array(blocks * blocks * 4 * BINS);
  for (let r = 0, to = 0; r < blocks; r++)
    for (let c = 0; c < blocks; c++)
      for (const [dr, dc] of [
        [0, 0],
        [0, 1],
        [1, 0],
        [1, 1],
      ] as const) {
        const from = ((r + dr) * CELLS + c + dc) * BINS;
        out.set(cells.subarray(from, from + BINS), to);
        to += BINS;
      }
  for (let at = 0; at < out.length; at += 4 * BINS) normaliseBlock(out.subarray(at, at + 4 * BINS));
  scaleToUnit(out, 1e-12);
  return out;
}

function vote(picture: Float32Array): Float32Array {
  const cells = new Float32Array(CELLS * CELLS * BINS);
  const at = (x: number, y: number): number =>
    picture[
      Math.min(GRADIENTS_SIDE - 1, Math.max(0, y)) * GRADIENTS_SIDE +
        Math.min(GRADIENTS_SIDE - 1, Math.max(0, x))
    ] ?? 0;
  for (let y = 0; y < GRADIENTS_SIDE; y++)
    for (let x = 0; x < GRADIENTS_SIDE; x++) {
      const gx = at(x + 1, y) - at(x - 1, y);
      const gy = at(x, y + 1) - at(x, y - 1);
      const magnitude = Math.hypot(gx, gy);
      if (magnitude === 0) continue;
      const angle = ((Math.atan2(gy, gx) + Math.PI) / Math.PI) % 1;
      // Centres of cells and bins lie at half numbers.
      const [b, s, t] = [angle * BINS - 0.5, (x + 0.5) / CELL - 0.5, (y + 0.5) / CELL - 0.5];
      for (const [bin, wb] of neighbours(b))
        for (const [column, ws] of neighbours(s))
          for (const [row, wt] of neighbours(t)) {
            if (column < 0 || row < 0 || column >= CELLS || row >= CELLS) continue;
            const to = (row * CELLS + column) * BINS + ((bin + BINS) % BINS);
            cells[to] = (cells[to] ?? 0) + magnitude * wb * ws * wt;
          }
    }
  return cells;
}

function neighbours(position: number): readonly (readonly [number, number])[] {
  const lower = Math.floor(position);
  const share = position - lower;
  return [
    [lower, 1 - share],
    [lower + 1, share],
  ];
}

function normaliseBlock(block: Float32Array): void {
  scaleToUnit(block, 1e-3);
  for (const [i, value] of block.entries()) block[i] = Math.min(value, CLIP);
  scaleToUnit(block, 1e-3);
}

function scaleToUnit(values: Float32Array, softening: number): void {
  const length = Math.sqrt(values.reduce((sum, v) => sum + v * v, softening * softening));
  for (const [i, value] of values.entries()) values[i] = value / length;
}
