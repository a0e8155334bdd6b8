import type { Region } from "#core/photographs/region";

/**
 * The CSS transform that lays a picture, shown one CSS pixel to one of its own, over a reference whose region fills
 * a box. Source: CSS Transforms Module Level 2, matrix3d, column by column.
 * @param homography nine numbers, row by row, from the picture's pixels to the reference's
 * @param scale CSS pixels of the box to one of the reference's
 */
export function warp(homography: readonly number[], region: Region, scale: number): string {
  const [a = 1, b = 0, c = 0, d = 0, e = 1, f = 0, g = 0, h = 0, i = 1] = homography;
  const right = [a, b, c].map((each, k) => scale * (each - region.x * ([g, h, i][k] ?? 0)));
  const down = [d, e, f].map((each, k) => scale * (each - region.y * ([g, h, i][k] ?? 0)));
  const columns = [0, 1, 2].map((k) => [right[k] ?? 0, down[k] ?? 0, 0, [g, h, i][k] ?? 0]);
  const [x, y, place] = columns.map((column) => column.map((each) => each / i));
  return `matrix3d(${[x, y, [0, 0, 1, 0], place].flat().join(",")})`;
}

/** The corners of a region as CSS clip-path, where the photograph is not turned though the region is. */
export function outline({ x, y, width, height, turn }: Region): string {
  const cos = Math.cos((-turn * Math.PI) / 180);
  const sin = Math.sin((-turn * Math.PI) / 180);
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([right = 0, down = 0]) => {
    const [u, v] = [(right * width) / 2, (down * height) / 2];
    return `${x + width / 2 + u * cos - v * sin}px ${y + height / 2 + u * sin + v * cos}px`;
  });
  return `polygon(${corners.join(",")})`;
}
