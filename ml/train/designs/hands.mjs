/**
 * Marks drawn by hand each time: painters' and potters' signs, chalked and incised ones. One sign is a few strokes;
 * each hand draws them again, near enough: other slant, other proportions, a shaken point, a stroke longer or shorter.
 */

const f = (n) => n.toFixed(3);

/** A sign: strokes of 2 to 5 points in a square of half side 1. */
export function signOf(random) {
  const count = random.weighted([[2, 1], [4, 2], [4, 3], [2, 4], [1, 5]]);
  const strokes = [];
  const point = () => [random.between(-0.95, 0.95), random.between(-0.95, 0.95)];
  const touching = () => {
    const stroke = random.pick(strokes);
    return [...random.pick(stroke.points)];
  };
  for (let i = 0; i < count; i++) {
    const n = random.weighted([[5, 2], [5, 3], [2, 4], [1, 5]]);
    const kind = random.weighted([[4, "curve"], [3, "line"], [2, "loop"], [0.6, "dot"]]);
    const start = strokes.length && random.chance(0.55) ? touching() : point();
    if (kind === "dot" && i > 0) { strokes.push({ kind, points: [point()] }); continue; }
    if (kind === "loop") { strokes.push({ kind, points: [start, [random.between(0.2, 0.6), random.between(0.2, 0.6)]], from: random.between(0, 6.3), sweep: random.between(3.4, 6.6) * (random.chance(0.5) ? 1 : -1) }); continue; }
    const points = [start];
    while (points.length < n) {
      const last = points[points.length - 1];
      const next = random.chance(0.2) && strokes.length ? touching() : point();
      if (Math.hypot(next[0] - last[0], next[1] - last[1]) > 0.35) points.push(next);
    }
    strokes.push({ kind, points });
  }
  return strokes;
}

/** Catmull-Rom through the points, or straight lines. */
function pathOf(points, straight) {
  if (straight || points.length < 3) return `M${points.map(([x, y]) => `${f(x)} ${f(y)}`).join("L")}`;
  let d = `M${f(points[0][0])} ${f(points[0][1])}`;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b, c, e] = [points[Math.max(0, i - 1)], points[i], points[i + 1], points[Math.min(points.length - 1, i + 2)]];
    d += `C${f(b[0] + (c[0] - a[0]) / 6)} ${f(b[1] + (c[1] - a[1]) / 6)} ${f(c[0] - (e[0] - b[0]) / 6)} ${f(c[1] - (e[1] - b[1]) / 6)} ${f(c[0])} ${f(c[1])}`;
  }
  return d;
}

/** The strokes of a sign as one hand draws them, as paths. `shake` 0 draws the sign itself. */
function drawn(random, sign, shake) {
  const g = () => (random.unit() + random.unit() + random.unit() - 1.5) * 1.15;
  const [slant, wide, tall, tilt] = [g() * 0.2 * shake, 1 + g() * 0.14 * shake, 1 + g() * 0.14 * shake, g() * 0.12 * shake];
  const hand = ([x, y]) => {
    const [u, v] = [x * wide + y * slant, y * tall];
    return [u * Math.cos(tilt) - v * Math.sin(tilt), u * Math.sin(tilt) + v * Math.cos(tilt)];
  };
  const width = random.between(0.05, 0.19);
  const paths = sign.map((stroke) => {
    const [ox, oy, grow] = [g() * 0.07 * shake, g() * 0.07 * shake, 1 + g() * 0.1 * shake];
    if (stroke.kind === "dot") { const [x, y] = hand([stroke.points[0][0] + ox, stroke.points[0][1] + oy]); return `M${f(x)} ${f(y)}l.001 0`; }
    let points = stroke.points;
    if (stroke.kind === "loop") {
      const [[cx, cy], [rx, ry]] = stroke.points;
      const sweep = stroke.sweep * (1 + g() * 0.08 * shake);
      points = Array.from({ length: 9 }, (_, i) => { const t = stroke.from + (sweep * i) / 8; return [cx + rx * (Math.cos(t) - Math.cos(stroke.from)), cy + ry * (Math.sin(t) - Math.sin(stroke.from))]; });
    }
    const [mx, my] = points.reduce(([a, b], [x, y]) => [a + x / points.length, b + y / points.length], [0, 0]);
    const loose = stroke.kind === "loop" ? 0.04 : 0.075;
    const moved = points.map(([x, y]) => hand([mx + (x - mx) * grow + ox + g() * loose * shake, my + (y - my) * grow + oy + g() * loose * shake]));
    return pathOf(moved, stroke.kind === "line");
  });
  return { width, paths };
}

/** SVG of 122 units round the middle holding the drawn sign, centred and filled as its strokes ask for. */
export function handOf(random, sign, shake) {
  const { width, paths } = drawn(random, sign, shake);
  const numbers = paths.flatMap((d) => [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]));
  const [xs, ys] = [numbers.map((n) => n[0]), numbers.map((n) => n[1])];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = 50 / Math.max(0.5, (x1 - x0) / 2, (y1 - y0) / 2);
  return `<g transform="scale(${f(scale)}) translate(${f(-(x0 + x1) / 2)} ${f(-(y0 + y1) / 2)})" fill="none" stroke="#000" stroke-width="${f((width * 50) / scale)}" stroke-linecap="round" stroke-linejoin="round">${paths.map((d) => `<path d="${d}"/>`).join("")}</g>`;
}
