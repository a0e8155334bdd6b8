/** Frames, small devices, crowns and strokes, as SVG paths round the origin. */

const f = (n) => n.toFixed(2);
const polygon = (points) => `M${points.map(([x, y]) => `${f(x)} ${f(y)}`).join("L")}Z`;
const round = (n, radius) => Array.from({ length: n }, (_, i) => radius(i)).map((r, i, all) => {
  const t = (2 * Math.PI * i) / all.length - Math.PI / 2;
  return [r * Math.cos(t), r * Math.sin(t)];
});
const ellipse = (w, h) => `M${f(-w)} 0A${f(w)} ${f(h)} 0 1 1 ${f(w)} 0A${f(w)} ${f(h)} 0 1 1 ${f(-w)} 0Z`;
const lobes = (n, r, part) => {
  const centre = r * (1 - part);
  return round(n, () => centre).map(([x, y]) => `M${f(x - r * part)} ${f(y)}a${f(r * part)} ${f(r * part)} 0 1 1 ${f(2 * r * part)} 0a${f(r * part)} ${f(r * part)} 0 1 1 ${f(-2 * r * part)} 0Z`).join("") + ellipse(centre, centre);
};

/**
 * Each frame: the half width and half height it likes, its outline for a given half size, and the part of
 * it that content may fill. `solid` frames are unions of discs that only make sense filled; what a frame
 * `holds` is one simple thing, or something wide, where there is no room for more.
 */
export const frames = {
  circle: { sizes: [60, 60], room: [0.66, 0.66], path: ellipse },
  oval: { sizes: [61, 44], room: [0.7, 0.62], path: ellipse },
  upright: { sizes: [44, 61], room: [0.62, 0.7], path: ellipse },
  rectangle: { sizes: [61, 36], room: [0.86, 0.78], path: (w, h) => polygon([[-w, -h], [w, -h], [w, h], [-w, h]]) },
  strip: { sizes: [61, 20], room: [0.9, 0.76], holds: "wide", path: (w, h) => polygon([[-w, -h], [w, -h], [w, h], [-w, h]]) },
  square: { sizes: [56, 56], room: [0.84, 0.84], path: (w, h) => polygon([[-w, -h], [w, -h], [w, h], [-w, h]]) },
  cushion: { sizes: [60, 44], room: [0.8, 0.74], path: (w, h) => { const r = Math.min(w, h) * 0.5; return `M${f(-w + r)} ${f(-h)}H${f(w - r)}Q${f(w)} ${f(-h)} ${f(w)} ${f(-h + r)}V${f(h - r)}Q${f(w)} ${f(h)} ${f(w - r)} ${f(h)}H${f(-w + r)}Q${f(-w)} ${f(h)} ${f(-w)} ${f(h - r)}V${f(-h + r)}Q${f(-w)} ${f(-h)} ${f(-w + r)} ${f(-h)}Z`; } },
  shield: { sizes: [52, 60], room: [0.7, 0.62], path: (w, h) => `M${f(-w)} ${f(-h)}H${f(w)}V${f(h * 0.05)}C${f(w)} ${f(h * 0.55)} ${f(w * 0.45)} ${f(h * 0.85)} 0 ${f(h)}C${f(-w * 0.45)} ${f(h * 0.85)} ${f(-w)} ${f(h * 0.55)} ${f(-w)} ${f(h * 0.05)}Z` },
  spade: { sizes: [50, 60], room: [0.7, 0.6], path: (w, h) => `M0 ${f(-h)}Q${f(w * 0.5)} ${f(-h * 0.75)} ${f(w)} ${f(-h * 0.85)}Q${f(w * 1.05)} ${f(h * 0.5)} 0 ${f(h)}Q${f(-w * 1.05)} ${f(h * 0.5)} ${f(-w)} ${f(-h * 0.85)}Q${f(-w * 0.5)} ${f(-h * 0.75)} 0 ${f(-h)}Z` },
  lozenge: { sizes: [60, 60], room: [0.56, 0.54], holds: "simple", path: (w, h) => polygon([[0, -h], [w, 0], [0, h], [-w, 0]]) },
  wide: { sizes: [61, 40], room: [0.6, 0.52], holds: "wide", path: (w, h) => polygon([[0, -h], [w, 0], [0, h], [-w, 0]]) },
  hexagon: { sizes: [60, 60], room: [0.66, 0.66], path: (w, h) => polygon(round(6, () => 1).map(([x, y]) => [x * w, y * h])) },
  octagon: { sizes: [60, 56], room: [0.68, 0.68], path: (w, h) => polygon([[-w, -h * 0.42], [-w * 0.42, -h], [w * 0.42, -h], [w, -h * 0.42], [w, h * 0.42], [w * 0.42, h], [-w * 0.42, h], [-w, h * 0.42]]) },
  canted: { sizes: [60, 38], room: [0.8, 0.74], path: (w, h) => polygon([[-w + 9, -h], [w - 9, -h], [w, -h + 9], [w, h - 9], [w - 9, h], [-w + 9, h], [-w, h - 9], [-w, -h + 9]]) },
  scallop: { sizes: [60, 60], room: [0.62, 0.62], path: (w) => polygon(round(72, (i) => w * (0.95 + 0.05 * Math.cos((i * 2 * Math.PI * 12) / 72)))) },
  serrated: { sizes: [61, 61], room: [0.62, 0.62], path: (w) => polygon(round(48, (i) => (i % 2 ? w : w * 0.9))) },
  vesica: { sizes: [36, 61], room: [0.66, 0.56], holds: "simple", path: (w, h) => `M0 ${f(-h)}Q${f(2 * w)} 0 0 ${f(h)}Q${f(-2 * w)} 0 0 ${f(-h)}Z` },
  arch: { sizes: [46, 60], room: [0.72, 0.68], path: (w, h) => `M${f(-w)} ${f(h)}V${f(-h + w)}A${f(w)} ${f(w)} 0 0 1 ${f(w)} ${f(-h + w)}V${f(h)}Z` },
  ribbon: { sizes: [61, 30], room: [0.84, 0.56], holds: "wide", path: (w, h) => `M${f(-w)} ${f(-h * 0.5)}Q0 ${f(-h * 1.3)} ${f(w)} ${f(-h * 0.5)}L${f(w * 0.88)} ${f(h * 0.2)}L${f(w)} ${f(h)}Q0 ${f(h * 0.3)} ${f(-w)} ${f(h)}L${f(-w * 0.88)} ${f(h * 0.2)}Z` },
  triangle: { sizes: [61, 55], room: [0.46, 0.42], holds: "simple", path: (w, h) => polygon([[0, -h], [w, h], [-w, h]]) },
  heart: { sizes: [58, 56], room: [0.6, 0.52], holds: "simple", path: (w, h) => `M0 ${f(h)}C${f(-w * 1.4)} ${f(-h * 0.1)} ${f(-w * 0.8)} ${f(-h * 1.35)} 0 ${f(-h * 0.55)}C${f(w * 0.8)} ${f(-h * 1.35)} ${f(w * 1.4)} ${f(-h * 0.1)} 0 ${f(h)}Z` },
  trefoil: { sizes: [60, 60], room: [0.56, 0.5], solid: true, path: (w) => lobes(3, w, 0.48) },
  quatrefoil: { sizes: [60, 60], room: [0.6, 0.6], solid: true, path: (w) => lobes(4, w, 0.42) },
  cinquefoil: { sizes: [60, 60], room: [0.6, 0.6], solid: true, path: (w) => lobes(5, w, 0.36) },
};

const star = (n, inner) => polygon(round(2 * n, (i) => (i % 2 ? inner : 1)).map(([x, y]) => [x, y]));

/** Small signs of half size 1. */
export const devices = {
  star5: star(5, 0.42), star6: star(6, 0.5), star4: star(4, 0.36), star8: star(8, 0.6),
  dot: ellipse(0.7, 0.7), ring: `${ellipse(0.9, 0.9)}${ellipse(0.55, 0.55)}`, diamond: polygon([[0, -1], [0.7, 0], [0, 1], [-0.7, 0]]),
  cross: "M-.28-1H.28V-.28H1V.28H.28V1H-.28V.28H-1V-.28H-.28Z",
  pate: "M-.15-.15L-.5-1H.5L.15-.15L1-.5V.5L.15.15L.5 1H-.5L-.15.15L-1 .5V-.5Z",
  saltire: polygon([[-1, -0.7], [-0.7, -1], [0, -0.3], [0.7, -1], [1, -0.7], [0.3, 0], [1, 0.7], [0.7, 1], [0, 0.3], [-0.7, 1], [-1, 0.7], [-0.3, 0]]),
  crescent: "M.5-.9A1 1 0 1 0 .5 .9A.75 .75 0 1 1 .5-.9Z", bar: "M-1-.2H1V.2H-1Z",
  heart: "M0 1C-1.4-.1-.8-1.35 0-.55C.8-1.35 1.4-.1 0 1Z", triangle: polygon([[0, -1], [1, 0.8], [-1, 0.8]]),
  quatrefoil: lobes(4, 1, 0.42), trefoil: lobes(3, 1, 0.46), lozenges: "M-.5-.6L0 0L-.5.6L-1 0ZM.5-.6L1 0L.5.6L0 0Z",
  leaf: "M0-1Q.9 0 0 1Q-.9 0 0-1Z", dash: "M-.6-.15H.6V.15H-.6Z", colon: `M-.25-.75H.25V-.25H-.25ZM-.25.25H.25V.75H-.25Z`,
};

/** A crown of `points` points within width 2 and height 1.4, with or without balls and arches. */
export function crown(points, balls, band) {
  const top = [];
  for (let i = 0; i < points; i++) {
    const x = -1 + (2 * i) / (points - 1);
    const high = -0.55 - 0.2 * (1 - Math.abs(x));
    top.push([x * 1.02, high]);
    if (i < points - 1) top.push([x + 1 / (points - 1), -0.1]);
  }
  const body = polygon([[-0.8, 0.3], ...top, [0.8, 0.3]]);
  const knobs = balls ? top.filter((_, i) => i % 2 === 0).map(([x, y]) => `M${f(x - 0.13)} ${f(y - 0.1)}a.13 .13 0 1 1 .26 0a.13 .13 0 1 1 -.26 0Z`).join("") : "";
  return `${body}${knobs}${band ? "M-.8 .42H.8V.62H-.8Z" : ""}`;
}

/** A merchant's or mason's mark: a staff and strokes that meet it or each other. */
export function strokesOf(random) {
  const grid = () => [random.whole(5) * 0.5 - 1, random.whole(5) * 0.5 - 1];
  const lines = [];
  if (random.chance(0.55)) lines.push("M0-1V1");
  const count = 1 + random.whole(5);
  for (let i = 0; i < count; i++) {
    const [x1, y1] = grid();
    const [x2, y2] = random.chance(0.35) ? [-x1, y1] : grid();
    if (x1 === x2 && y1 === y2) continue;
    const bend = random.chance(0.4);
    const [mx, my] = [(x1 + x2) / 2 + random.between(-0.9, 0.9), (y1 + y2) / 2 + random.between(-0.9, 0.9)];
    lines.push(bend ? `M${x1} ${y1}Q${f(mx)} ${f(my)} ${x2} ${y2}` : `M${x1} ${y1}L${x2} ${y2}`);
  }
  if (lines.length < 2) lines.push("M-1 .5H1");
  if (random.chance(0.25)) {
    const r = random.pick([0.2, 0.3, 0.45]);
    const [x, y] = grid();
    lines.push(`M${f(x - r)} ${y}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0`);
  }
  return lines;
}
