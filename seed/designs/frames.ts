/** An outline within the box (-1, -1) to (1, 1), and how wide it is at a height. */
export interface Frame {
  said: string;
  /** Height over width is bound to this, where the shape has one. */
  aspect?: number;
  /** Half the width at y in (-1, 1), 0 to 1. */
  halfWidth(y: number): number;
  /** SVG path for a box of the given half width and half height about (0, 0). */
  path(a: number, b: number): string;
}

const f = (n: number): string => n.toFixed(3);

function roundedPath(a: number, b: number, r: number): string {
  return `M${f(-a + r)} ${f(-b)}H${f(a - r)}A${f(r)} ${f(r)} 0 0 1 ${f(a)} ${f(-b + r)}V${f(b - r)}A${f(r)} ${f(r)} 0 0 1 ${f(a - r)} ${f(b)}H${f(-a + r)}A${f(r)} ${f(r)} 0 0 1 ${f(-a)} ${f(b - r)}V${f(-b + r)}A${f(r)} ${f(r)} 0 0 1 ${f(-a + r)} ${f(-b)}Z`;
}

function polygon(points: readonly (readonly [number, number])[]): Frame["path"] {
  return (a, b) => `M${points.map(([x, y]) => `${f(x * a)} ${f(y * b)}`).join("L")}Z`;
}

const oval: Frame["path"] = (a, b) =>
  `M${f(-a)} 0A${f(a)} ${f(b)} 0 1 1 ${f(a)} 0A${f(a)} ${f(b)} 0 1 1 ${f(-a)} 0Z`;

const ROUND = (y: number): number => Math.sqrt(Math.max(0, 1 - y * y));

export const FRAMES = {
  none: { said: "", halfWidth: () => 1, path: (a, b) => roundedPath(a, b, Math.min(a, b) * 0.05) },
  rect: { said: "rectangle", halfWidth: () => 1, path: (a, b) => roundedPath(a, b, Math.min(a, b) * 0.04) },
  rounded: {
    said: "rounded rectangle",
    halfWidth: (y) => (Math.abs(y) < 0.75 ? 1 : 0.93),
    path: (a, b) => roundedPath(a, b, Math.min(a, b) * 0.36),
  },
  pill: {
    said: "rectangle with round ends",
    halfWidth: (y) => 0.86 + 0.14 * ROUND(y),
    path: (a, b) => roundedPath(a, b, Math.min(a, b)),
  },
  oval: { said: "oval", halfWidth: ROUND, path: oval },
  circle: { said: "circle", aspect: 1, halfWidth: ROUND, path: oval },
  shield: {
    said: "shield",
    halfWidth: (y) => (y < 0 ? 0.98 : Math.sqrt(Math.max(0, 1 - y * y * 0.98)) * 0.98),
    path: (a, b) =>
      `M${f(-a)} ${f(-b)}H${f(a)}V${f(-0.05 * b)}C${f(a)} ${f(b * 0.55)} ${f(a * 0.45)} ${f(b * 0.84)} 0 ${f(b)}C${f(-a * 0.45)} ${f(b * 0.84)} ${f(-a)} ${f(b * 0.55)} ${f(-a)} ${f(-0.05 * b)}Z`,
  },
  eared: {
    said: "shield with ears",
    halfWidth: (y) => (y < -0.7 ? 0.8 : y < 0.1 ? 0.86 : ROUND((y - 0.1) / 0.92) * 0.86),
    path: (a, b) =>
      `M${f(-a)} ${f(-b)}Q${f(-0.45 * a)} ${f(-0.82 * b)} 0 ${f(-b)}Q${f(0.45 * a)} ${f(-0.82 * b)} ${f(a)} ${f(-b)}Q${f(0.82 * a)} ${f(-0.55 * b)} ${f(0.9 * a)} ${f(-0.1 * b)}Q${f(0.95 * a)} ${f(0.65 * b)} 0 ${f(b)}Q${f(-0.95 * a)} ${f(0.65 * b)} ${f(-0.9 * a)} ${f(-0.1 * b)}Q${f(-0.82 * a)} ${f(-0.55 * b)} ${f(-a)} ${f(-b)}Z`,
  },
  lozenge: {
    said: "lozenge",
    halfWidth: (y) => 1 - Math.abs(y),
    path: polygon([
      [0, -1],
      [1, 0],
      [0, 1],
      [-1, 0],
    ]),
  },
  hexagon: {
    said: "hexagon",
    halfWidth: (y) => 1 - 0.3 * Math.abs(y),
    path: polygon([
      [-0.7, -1],
      [0.7, -1],
      [1, 0],
      [0.7, 1],
      [-0.7, 1],
      [-1, 0],
    ]),
  },
  octagon: {
    said: "octagon",
    halfWidth: (y) => (Math.abs(y) < 0.55 ? 1 : 1 - (Math.abs(y) - 0.55) * 0.8),
    path: polygon([
      [-0.66, -1],
      [0.66, -1],
      [1, -0.55],
      [1, 0.55],
      [0.66, 1],
      [-0.66, 1],
      [-1, 0.55],
      [-1, -0.55],
    ]),
  },
  clipped: {
    said: "rectangle with cut corners",
    halfWidth: (y) => (Math.abs(y) < 0.7 ? 1 : 0.93),
    path: (a, b) => {
      const c = Math.min(a, b) * 0.3;
      return `M${f(-a + c)} ${f(-b)}H${f(a - c)}L${f(a)} ${f(-b + c)}V${f(b - c)}L${f(a - c)} ${f(b)}H${f(-a + c)}L${f(-a)} ${f(b - c)}V${f(-b + c)}Z`;
    },
  },
  notched: {
    said: "rectangle with hollow corners",
    halfWidth: (y) => (Math.abs(y) < 0.66 ? 1 : 0.84),
    path: (a, b) => {
      const c = Math.min(a, b) * 0.32;
      return `M${f(-a + c)} ${f(-b)}H${f(a - c)}A${f(c)} ${f(c)} 0 0 0 ${f(a)} ${f(-b + c)}V${f(b - c)}A${f(c)} ${f(c)} 0 0 0 ${f(a - c)} ${f(b)}H${f(-a + c)}A${f(c)} ${f(c)} 0 0 0 ${f(-a)} ${f(b - c)}V${f(-b + c)}A${f(c)} ${f(c)} 0 0 0 ${f(-a + c)} ${f(-b)}Z`;
    },
  },
  arch: {
    said: "round-headed arch",
    halfWidth: (y) => (y > -0.1 ? 1 : ROUND((y + 0.1) / 0.9)),
    path: (a, b) =>
      `M${f(-a)} ${f(b)}V${f(-0.1 * b)}A${f(a)} ${f(0.9 * b)} 0 0 1 ${f(a)} ${f(-0.1 * b)}V${f(b)}Z`,
  },
  heart: {
    said: "heart",
    aspect: 0.95,
    halfWidth: (y) => (y < -0.6 ? 0.3 : y < -0.1 ? 0.92 : (1 - y) * 0.84),
    path: (a, b) =>
      `M0 ${f(b)}C${f(-0.4 * a)} ${f(0.55 * b)} ${f(-a)} ${f(0.2 * b)} ${f(-a)} ${f(-0.4 * b)}C${f(-a)} ${f(-1.15 * b)} ${f(-0.12 * a)} ${f(-1.15 * b)} 0 ${f(-0.55 * b)}C${f(0.12 * a)} ${f(-1.15 * b)} ${f(a)} ${f(-1.15 * b)} ${f(a)} ${f(-0.4 * b)}C${f(a)} ${f(0.2 * b)} ${f(0.4 * a)} ${f(0.55 * b)} 0 ${f(b)}Z`,
  },
  quatrefoil: {
    said: "quatrefoil",
    aspect: 1,
    halfWidth: (y) => (Math.abs(y) < 0.5 ? 0.98 : 0.46),
    path: (a, b) =>
      `M${f(-0.5 * a)} ${f(-0.5 * b)}A${f(0.5 * a)} ${f(0.5 * b)} 0 1 1 ${f(0.5 * a)} ${f(-0.5 * b)}A${f(0.5 * a)} ${f(0.5 * b)} 0 1 1 ${f(0.5 * a)} ${f(0.5 * b)}A${f(0.5 * a)} ${f(0.5 * b)} 0 1 1 ${f(-0.5 * a)} ${f(0.5 * b)}A${f(0.5 * a)} ${f(0.5 * b)} 0 1 1 ${f(-0.5 * a)} ${f(-0.5 * b)}Z`,
  },
  barrel: {
    said: "barrel",
    halfWidth: (y) => 1 - 0.14 * y * y,
    path: (a, b) =>
      `M${f(-0.84 * a)} ${f(-b)}H${f(0.84 * a)}Q${f(1.16 * a)} 0 ${f(0.84 * a)} ${f(b)}H${f(-0.84 * a)}Q${f(-1.16 * a)} 0 ${f(-0.84 * a)} ${f(-b)}Z`,
  },
  bell: {
    said: "bell",
    halfWidth: (y) => (y < -0.4 ? 0.5 : 0.62 + 0.3 * Math.max(0, y)),
    path: (a, b) =>
      `M0 ${f(-b)}C${f(0.5 * a)} ${f(-b)} ${f(0.62 * a)} ${f(-0.6 * b)} ${f(0.64 * a)} ${f(-0.1 * b)}C${f(0.66 * a)} ${f(0.4 * b)} ${f(0.8 * a)} ${f(0.6 * b)} ${f(a)} ${f(b)}H${f(-a)}C${f(-0.8 * a)} ${f(0.6 * b)} ${f(-0.66 * a)} ${f(0.4 * b)} ${f(-0.64 * a)} ${f(-0.1 * b)}C${f(-0.62 * a)} ${f(-0.6 * b)} ${f(-0.5 * a)} ${f(-b)} 0 ${f(-b)}Z`,
  },
  flag: {
    said: "swallow-tailed flag",
    halfWidth: () => 0.9,
    path: polygon([
      [-1, -1],
      [1, -1],
      [0.84, 0],
      [1, 1],
      [-1, 1],
      [-0.84, 0],
    ]),
  },
  keystone: {
    said: "keystone",
    halfWidth: (y) => 0.86 - 0.14 * y,
    path: polygon([
      [-1, -1],
      [1, -1],
      [0.68, 1],
      [-0.68, 1],
    ]),
  },
  triangle: {
    said: "triangle",
    aspect: 0.9,
    halfWidth: (y) => (y + 1) / 2,
    path: polygon([
      [0, -1],
      [1, 1],
      [-1, 1],
    ]),
  },
} as const satisfies Record<string, Frame>;

export type FrameName = keyof typeof FRAMES;

export function frameNamed(name: string): Frame {
  if (!(name in FRAMES))
    throw new Error(`frame: must be one of ${Object.keys(FRAMES).join(", ")}. Received "${name}".`);
  return FRAMES[name as FrameName];
}
