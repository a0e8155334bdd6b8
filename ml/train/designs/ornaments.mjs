/** Invented shapes: rosettes, whorls, sprays, knots, charges of plain geometry. Each within a circle of radius 1. */

const f = (n) => n.toFixed(3);
const at = (t, r) => [r * Math.sin(t), -r * Math.cos(t)];
const p = ([x, y]) => `${f(x)} ${f(y)}`;

/** One petal from radius `from` to `to` at angle 0, as a closed path whose halves mirror each other. */
function petal(random, from, to, reach) {
  const wide = reach * random.between(0.45, 1.25);
  const lean = random.between(0.2, 0.8);
  const tip = random.pick(["point", "round", "notch", "flat"]);
  const [a, b] = [from + (to - from) * lean * 0.5, from + (to - from) * (0.5 + lean * 0.5)];
  const inner = random.chance(0.5) ? 0 : wide * 0.3;
  const side = (s) => ({ base: [s * inner, -from], c1: [s * wide, -a], c2: [s * wide, -b] });
  const [l, r] = [side(-1), side(1)];
  const top = { point: [[0, -to]], round: [[-wide * 0.2, -to * 0.97], [wide * 0.2, -to * 0.97]], notch: [[-wide * 0.35, -to], [0, -to * 0.86], [wide * 0.35, -to]], flat: [[-wide * 0.5, -to * 0.95], [wide * 0.5, -to * 0.95]] }[tip];
  return `M${p(l.base)}C${p(l.c1)} ${p(l.c2)} ${p(top[0])}${top.slice(1).map((q) => `L${p(q)}`).join("")}C${p(r.c2)} ${p(r.c1)} ${p(r.base)}Z`;
}

const turned = (d, n, start = 0) => Array.from({ length: n }, (_, i) => ({ d, turn: start + (360 * i) / n }));
const disc = (r) => ({ d: `M${f(-r)} 0a${f(r)} ${f(r)} 0 1 1 ${f(2 * r)} 0a${f(r)} ${f(r)} 0 1 1 ${f(-2 * r)} 0Z`, turn: 0 });
const bare = (shape) => ({ ...shape, light: true });

function rosette(random) {
  const n = random.pick([3, 4, 5, 5, 6, 6, 7, 8, 8, 10, 12, 16]);
  const reach = Math.tan(Math.PI / n);
  const from = random.between(0, 0.35);
  const d = petal(random, from, 1, Math.min(0.9, reach));
  const shapes = turned(d, n);
  if (random.chance(0.6)) shapes.push(...turned(petal(random, from + 0.15, random.between(0.7, 0.9), Math.min(0.5, reach * 0.5)), n, random.chance(0.7) ? 0 : 180 / n).map(bare));
  if (random.chance(0.35)) shapes.push(...turned(petal(random, 0.1, random.between(0.4, 0.62), Math.min(0.4, reach * 0.6)), n, random.pick([0, 180 / n])));
  if (random.chance(0.6)) shapes.push(bare(disc(from + 0.1)), disc(from * 0.8 + 0.03));
  return shapes;
}

/** Bodies that chase each other round the middle. */
function whorl(random) {
  const n = random.pick([2, 3, 3, 4, 5, 6]);
  const bend = random.between(0.5, 1.6) * (random.chance(0.5) ? 1 : -1);
  const thick = random.between(0.5, 0.95) * Math.min(1, 2.2 / n);
  const head = at(0, random.between(0.3, 0.5));
  const [tip, c1, c2] = [at(bend * 1.4, 1), at(bend * 0.5, 1.05), at(bend * 0.9, 0.55)];
  const s = Math.sign(bend);
  const d = `M${p([head[0] - s * thick * 0.3, head[1]])}C${p(at(-s * thick * 0.8, 0.95))} ${p(c1)} ${p(tip)}C${p(c2)} ${p([head[0] + s * thick * 0.5, head[1] * 0.6])} ${p([head[0] + s * thick * 0.25, head[1] * 0.4])}Q${p([head[0], head[1] * 0.2])} ${p([head[0] - s * thick * 0.3, head[1]])}Z`;
  const shapes = turned(d, n);
  if (random.chance(0.4)) shapes.push(disc(random.between(0.08, 0.2)));
  return shapes;
}

/** A stem with leaves or ears to both sides. */
function spray(random) {
  const count = 2 + random.whole(4);
  const bend = random.between(-0.4, 0.4);
  const leaf = petal(random, 0, random.between(0.35, 0.6), random.between(0.1, 0.24));
  const spread = random.between(30, 75);
  const shapes = [{ d: `M-.035 1Q${f(bend)} 0 -.02 -.75L.02 -.75Q${f(bend + 0.07)} 0 .035 1Z`, turn: 0 }];
  for (let i = 0; i < count; i++) {
    const t = (i + 0.6) / count;
    const y = 0.8 - 1.45 * t;
    const x = bend * 2 * t * (1 - t);
    const size = 1.15 - 0.45 * t;
    for (const s of [-1, 1]) if (random.chance(0.93)) shapes.push({ d: leaf, turn: s * spread, x, y, size });
  }
  if (random.chance(0.8)) shapes.push({ d: petal(random, 0, 0.4, 0.2), turn: 0, x: 0, y: -0.62, size: 1 });
  return shapes;
}

/** Rings, bars and lobes drawn as bands that cross. */
function knot(random) {
  const n = random.pick([2, 3, 3, 4, 4, 5, 6, 8]);
  const r = random.between(0.3, 0.6);
  const w = random.between(0.07, 0.18);
  const off = Math.min(1 - r, random.between(0.25, 0.6));
  const kind = random.pick(["ring", "square", "lens"]);
  return Array.from({ length: n }, (_, i) => {
    const t = (2 * Math.PI * i) / n;
    const [x, y] = at(t, off);
    const band = (radius) => (kind === "ring" ? disc(radius).d : kind === "square" ? `M${f(-radius)} ${f(-radius)}H${f(radius)}V${f(radius)}H${f(-radius)}Z` : `M0 ${f(-radius * 1.2)}Q${f(radius * 1.3)} 0 0 ${f(radius * 1.2)}Q${f(-radius * 1.3)} 0 0 ${f(-radius * 1.2)}Z`);
    return { d: band(r * 0.9) + band(Math.max(0.05, r * 0.9 - w)), turn: (360 * i) / n, x, y, size: 1 };
  });
}

/** A closed outline that nobody named: a few random radii, smoothed, often mirrored, with light cuts inside. */
function shape(random) {
  const n = 4 + random.whole(5);
  const mirrored = random.chance(0.7);
  const radii = Array.from({ length: mirrored ? n * 2 - 2 : n * 2 }, () => random.between(0.3, 1));
  if (mirrored) for (let i = 1; i < n - 1; i++) radii[radii.length - i] = radii[i];
  const points = radii.map((r, i) => at((2 * Math.PI * i) / radii.length, r));
  const soft = random.chance(0.6);
  const middle = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const d = soft
    ? `M${p(middle(points[points.length - 1], points[0]))}${points.map((q, i) => `Q${p(q)} ${p(middle(q, points[(i + 1) % points.length]))}`).join("")}Z`
    : `M${points.map(p).join("L")}Z`;
  const shapes = [{ d, turn: 0 }];
  const cuts = random.whole(4);
  for (let i = 0; i < cuts; i++) {
    const [x, y] = [random.between(-0.35, 0.35), random.between(-0.45, 0.45)];
    const cut = { d: random.pick([disc(0.5).d, petal(random, -0.5, 0.6, 0.3), "M-.7-.07H.7V.07H-.7Z"]), turn: random.pick([0, 0, 45, 90, random.between(0, 180)]), y, size: random.between(0.12, 0.4), light: true };
    shapes.push({ ...cut, x: mirrored ? 0 : x });
    if (mirrored && random.chance(0.6)) shapes[shapes.length - 1] = { ...cut, x: Math.abs(x) + 0.08 }, shapes.push({ ...cut, x: -Math.abs(x) - 0.08, turn: -cut.turn });
  }
  return shapes;
}

/** Plain charges of a shield: bars, chevrons, chequers, bends, a cross, cut by a circle. */
function charge(random) {
  const n = 2 + random.whole(4);
  const w = 2 / (2 * n - 1);
  const rows = (make) => Array.from({ length: n }, (_, i) => make(-1 + 2 * w * i));
  const kind = random.pick(["bars", "chevrons", "chequy", "lozenges", "waves", "rays"]);
  const d = {
    bars: () => rows((y) => `M-1 ${f(y)}H1V${f(y + w)}H-1Z`).join(""),
    chevrons: () => rows((y) => `M-1 ${f(y + 0.35)}L0 ${f(y - 0.25)}L1 ${f(y + 0.35)}V${f(y + 0.35 + w)}L0 ${f(y - 0.25 + w)}L-1 ${f(y + 0.35 + w)}Z`).join(""),
    chequy: () => { const s = 2 / (n + 1); let out = ""; for (let i = 0; i <= n; i++) for (let k = i % 2; k <= n; k += 2) out += `M${f(-1 + k * s)} ${f(-1 + i * s)}h${f(s)}v${f(s)}h${f(-s)}Z`; return out; },
    lozenges: () => { const s = 2 / n; let out = ""; for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) out += `M${f(-1 + (k + 0.5) * s)} ${f(-1 + i * s)}l${f(s * 0.42)} ${f(s * 0.5)}l${f(-s * 0.42)} ${f(s * 0.5)}l${f(-s * 0.42)} ${f(-s * 0.5)}Z`; return out; },
    waves: () => rows((y) => `M-1 ${f(y)}q.25 -.3 .5 0t.5 0t.5 0t.5 0v${f(w)}q-.25 .3 -.5 0t-.5 0t-.5 0t-.5 0Z`).join(""),
    rays: () => Array.from({ length: 2 * n }, (_, i) => { const t = (Math.PI * i) / n; const h = Math.PI / (n * random.pick([4, 5])); return `M0 0L${p(at(t - h, 1))}L${p(at(t + h, 1))}Z`; }).join(""),
  }[kind]();
  return [{ d, turn: random.pick([0, 0, 0, 45, 90]), size: random.between(0.7, 0.9) }];
}

const kinds = [[5, rosette], [2, whorl], [3, spray], [2, knot], [4, shape], [2, charge]];

/** @returns {{d: string, turn: number, x?: number, y?: number, size?: number, light?: boolean}[]} drawn in order */
export const ornamentOf = (random) => random.weighted(kinds)(random);

/** SVG of an ornament of radius `size` in one ink; what is `light` is drawn in the other. */
export function drawOrnament(shapes, size, ink) {
  const other = ink === "#fff" ? "#000" : "#fff";
  return shapes.map((s) => `<path fill="${s.light ? other : ink}" fill-rule="evenodd" transform="translate(${f((s.x ?? 0) * size)} ${f((s.y ?? 0) * size)}) rotate(${f(s.turn)}) scale(${f(size * (s.size ?? 1))})" d="${s.d}"/>`).join("");
}
