/** A grey picture, row by row, 0 (black) to 1 (white): width x height numbers. */
export type Grey = { readonly values: Float32Array; readonly width: number; readonly height: number };

/** A linear map from the coordinates of the wanted square, whose centre is 0, into a picture. */
export type Axes = {
  readonly centreX: number;
  readonly centreY: number;
  /** Picture pixels to the right and down for one step to the right in the square. */
  readonly rightX: number;
  readonly rightY: number;
  /** Picture pixels to the right and down for one step down in the square. */
  readonly downX: number;
  readonly downY: number;
};

/**
 * Resizes a rectangle of a picture to size x size with an antialiased triangle filter: the weights are those
 * of Pillow's BILINEAR (Pillow 11, src/libImaging/Resample.c, precompute_coeffs), whose support ends at the
 * rectangle's own edges. Past the picture's edge the picture is mirrored, its edge pixel repeated.
 * @returns size * size numbers
 */
export function resize(
  picture: Grey,
  box: { left: number; top: number; width: number; height: number },
  size: number,
): Float32Array {
  const across = taps(box.left, box.width, size);
  const down = taps(box.top, box.height, size);
  const firstRow = down.first[0] ?? 0;
  const rows = Math.max(...down.first) + down.reach - firstRow;
  const columns = foldedIndices(across, picture.width);
  const narrowed = new Float32Array(rows * size);
  for (let r = 0; r < rows; r++) {
    const start = fold(firstRow + r, picture.height) * picture.width;
    for (let i = 0; i < size; i++) {
      let sum = 0;
      const at = i * across.reach;
      for (let k = 0; k < across.reach; k++)
        sum += (across.weights[at + k] ?? 0) * (picture.values[start + (columns[at + k] ?? 0)] ?? 0);
      narrowed[r * size + i] = sum;
    }
  }
  const out = new Float32Array(size * size);
  for (let j = 0; j < size; j++) {
    const row = (down.first[j] ?? 0) - firstRow;
    for (let k = 0; k < down.reach; k++) {
      const weight = down.weights[j * down.reach + k] ?? 0;
      if (weight === 0) continue;
      const from = (row + k) * size;
      for (let i = 0; i < size; i++)
        out[j * size + i] = (out[j * size + i] ?? 0) + weight * (narrowed[from + i] ?? 0);
    }
  }
  return out;
}

/**
 * Samples a turned square of a picture bilinearly at size x size points, one step apart.
 * @returns a picture of size x size
 */
export function sample(picture: Grey, axes: Axes, size: number): Grey {
  const { values, width, height } = picture;
  const out = new Float32Array(size * size);
  for (let j = 0, to = 0; j < size; j++) {
    const v = j + 0.5 - size / 2;
    // The first sample of the row, in coordinates whose whole numbers are pixel centres.
    const rowX = axes.centreX + axes.downX * v + axes.rightX * (0.5 - size / 2) - 0.5;
    const rowY = axes.centreY + axes.downY * v + axes.rightY * (0.5 - size / 2) - 0.5;
    for (let i = 0; i < size; i++, to++) {
      const x = rowX + axes.rightX * i;
      const y = rowY + axes.rightY * i;
      let left = Math.floor(x);
      let upper = Math.floor(y);
      const fx = x - left;
      const fy = y - upper;
      let right = left + 1;
      let lower = upper + 1;
      if (left < 0 || upper < 0 || right >= width || lower >= height) {
        left = fold(left, width);
        right = fold(right, width);
        upper = fold(upper, height);
        lower = fold(lower, height);
      }
      const above = mix(values[upper * width + left] ?? 0, values[upper * width + right] ?? 0, fx);
      const below = mix(values[lower * width + left] ?? 0, values[lower * width + right] ?? 0, fx);
      out[to] = mix(above, below, fy);
    }
  }
  return { values: out, width: size, height: size };
}

/** A square picture turned 90 degrees clockwise, number for number. */
export function quarterTurn(picture: Float32Array): Float32Array {
  const side = Math.sqrt(picture.length);
  const out = new Float32Array(picture.length);
  for (let j = 0; j < side; j++)
    for (let i = 0; i < side; i++) out[j * side + i] = picture[(side - 1 - i) * side + j] ?? 0;
  return out;
}

const mix = (a: number, b: number, share: number): number => a + (b - a) * share;

/** An index past an edge, folded back with the edge pixel repeated: ... 1 0 | 0 1 2 | 2 1 ... */
function fold(index: number, size: number): number {
  const around = ((index % (2 * size)) + 2 * size) % (2 * size);
  return around < size ? around : 2 * size - 1 - around;
}

type Taps = { readonly first: Int32Array; readonly reach: number; readonly weights: Float32Array };

function taps(start: number, length: number, size: number): Taps {
  const scale = length / size;
  const support = Math.max(1, scale);
  const lowest = Math.round(start);
  const highest = Math.max(lowest + 1, Math.round(start + length));
  const reach = Math.min(Math.ceil(support) * 2 + 1, highest - lowest);
  const first = new Int32Array(size);
  const weights = new Float32Array(size * reach);
  for (let i = 0; i < size; i++) {
    const centre = start + (i + 0.5) * scale;
    const from = Math.max(lowest, Math.floor(centre - support + 0.5));
    const to = Math.min(highest, Math.floor(centre + support + 0.5));
    first[i] = from;
    let sum = 0;
    for (let k = from; k < to; k++) sum += Math.max(0, 1 - Math.abs((k + 0.5 - centre) / support));
    for (let k = from; k < to; k++)
      weights[i * reach + k - from] = Math.max(0, 1 - Math.abs((k + 0.5 - centre) / support)) / sum;
  }
  return { first, reach, weights };
}

function foldedIndices({ first, reach }: Taps, size: number): Int32Array {
  const out = new Int32Array(first.length * reach);
  for (let i = 0; i < first.length; i++)
    for (let k = 0; k < reach; k++) out[i * reach + k] = fold((first[i] ?? 0) + k, size);
  return out;
}
