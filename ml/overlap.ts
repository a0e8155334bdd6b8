/** An upright box in pixels. */
export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Intersection over union of two boxes: 1 when they are the same, 0 when they share no area. */
export function overlap(a: Box, b: Box): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  if (across <= 0 || down <= 0) return 0;
  const both = across * down;
  return both / (a.width * a.height + b.width * b.height - both);
}

/** The upright box round a box that is turned about its own centre. */
export function uprightBox({ x, y, width, height }: Box, degrees: number): Box {
  const cos = Math.abs(Math.cos((degrees * Math.PI) / 180));
  const sin = Math.abs(Math.sin((degrees * Math.PI) / 180));
  const across = width * cos + height * sin;
  const down = width * sin + height * cos;
  return { x: x + (width - across) / 2, y: y + (height - down) / 2, width: across, height: down };
}
