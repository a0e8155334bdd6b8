import type { Grey } from "../square.ts";

/** Where a point of the wanted picture lies in the given one, both counted in pixels from the corner. */
export type Places = (x: number, y: number) => readonly [number, number];

/**
 * Makes a picture by looking every pixel up in another, bilinearly; past its edge the edge goes on.
 * @param fine looks so many times so many points up for a pixel and takes their mean, for pictures that get smaller
 */
export function resample(picture: Grey, width: number, height: number, places: Places, fine = 1): Grey {
  const values = new Float32Array(width * height);
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0; x < width; x++, to++) {
      let sum = 0;
      for (let j = 0; j < fine; j++)
        for (let i = 0; i < fine; i++) sum += at(picture, places(x + (i + 0.5) / fine, y + (j + 0.5) / fine));
      values[to] = sum / (fine * fine);
    }
  return { values, width, height };
}

function at({ values, width, height }: Grey, [u, v]: readonly [number, number]): number {
  const x = Math.min(width - 1, Math.max(0, u - 0.5));
  const y = Math.min(height - 1, Math.max(0, v - 0.5));
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const right = Math.min(width - 1, left + 1);
  const bottom = Math.min(height - 1, top + 1);
  const [fx, fy] = [x - left, y - top];
  const pixel = (column: number, row: number) => values[row * width + column] ?? 0;
  const above = pixel(left, top) * (1 - fx) + pixel(right, top) * fx;
  const below = pixel(left, bottom) * (1 - fx) + pixel(right, bottom) * fx;
  return above * (1 - fy) + below * fy;
}
