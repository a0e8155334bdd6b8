/** What a mark is made of, as plain data: a frame and parts in the compositions that the trade sees. */
import { ornamentOf } from "./ornaments.mjs";
import { devices, frames, strokesOf } from "./shapes.mjs";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
const SYLLABLES = "ba ber cor dal el fen gar hol im jor kel lund mar nes or pel quar ros sten tor ul ver wick yar zel ton ham ley man son mer stedt berg da li no ra su vi go ske bru cha dre fri gle mo ny pa thi wes".split(" ");
const frameNames = Object.keys(frames);
const deviceNames = Object.keys(devices);
const FULL = { w: 61, h: 61 };

export const letter = (random) => LETTERS[random.whole(26)];

export function word(random) {
  let text = "";
  const count = 1 + random.whole(3);
  for (let i = 0; i <= count; i++) text += random.pick(SYLLABLES);
  return random.chance(0.6) ? text.toUpperCase() : text[0].toUpperCase() + text.slice(1);
}

export function initials(random, most = 3) {
  const count = 1 + random.whole(most);
  const join = random.weighted([[6, ""], [2, "."], [1, "&"], [1, "+"]]);
  const text = Array.from({ length: count }, () => letter(random)).join(count > 1 ? join : "");
  return join === "." && random.chance(0.5) ? `${text}.` : text;
}

const number = (random) => random.weighted([
  [3, () => String(1 + random.whole(99))], [3, () => String(1000 + random.whole(999))],
  [1, () => `No ${1 + random.whole(400)}`], [1, () => `${random.pick([750, 800, 835, 900, 925, 950])}`],
  [1, () => `${letter(random)}${1 + random.whole(99)}`],
])();

const small = (random, x, y, size) => ({ kind: "device", device: random.pick(deviceNames), x, y, size });
/** An emblem of the split's sets or, for the share that `from` says, a shape invented on the spot. */
const emblem = (random, from, x, y, size) => {
  if (from.ornaments && random.chance(from.ornaments)) return { kind: "ornament", shapes: ornamentOf(random), x, y, size: size * 0.5, turn: 0 };
  const look = from.colours ? random.whole(3) : 0;
  return { kind: "emblem", emblem: random.pick(from.emblemNames), x, y, size, flip: random.chance(0.3), turn: 0, look };
};
const line = (random, from, text, x, y, w, h) => ({ kind: "line", text, face: random.pick(from.faces), x, y, w, h, spacing: random.chance(0.25) ? random.between(4, 26) : 0 });

const alone = (r, from, room) => [emblem(r, from, 0, 0, 2 * Math.min(room.w, room.h) * r.between(0.85, 1.02))];
const lettered = (r, from, { w, h }) => [line(r, from, initials(r), 0, 0, 2 * w, 2 * h * r.between(0.7, 1))];
const stroked = (r, from, { w, h }) => {
  const strokes = { kind: "strokes", lines: strokesOf(r), x: 0, y: 0, size: Math.min(w, h) * 0.92, width: r.between(0.09, 0.24), cap: r.pick(["butt", "round", "square"]) };
  if (r.chance(0.75)) return [strokes];
  return [{ ...strokes, y: -h * 0.25, size: Math.min(w, h) * 0.7 }, line(r, from, initials(r, 2), 0, h * 0.75, 2 * w, h * 0.45)];
};

/** What fits a frame with room for one thing, and one that is wide and low. */
const limited = {
  simple: [[5, alone], [4, lettered], [1.5, stroked]],
  wide: [[4, lettered], [4, (r, from, { w, h }) => [line(r, from, r.chance(0.8) ? word(r) : number(r), 0, 0, 2 * w, 2 * h)]], [1, alone]],
};

const compositions = [
  [22, alone],
  [13, (r, from, { w, h }) => {
    const share = r.between(0.5, 0.68);
    const above = r.chance(0.3);
    const text = r.chance(0.5) ? word(r) : initials(r);
    const tall = 2 * h * (1 - share) * 0.82;
    const s = above ? -1 : 1;
    return [emblem(r, from, 0, -s * h * (1 - share), 2 * h * share * 0.98), line(r, from, text, 0, s * (h - tall / 2), 2 * w, tall)];
  }],
  [12, lettered],
  [10, (r, from, { w, h }) => {
    const count = 1 + r.whole(3);
    const one = line(r, from, word(r), 0, 0, 2 * w, 1);
    const tall = (2 * h) / count;
    return Array.from({ length: count }, (_, i) => ({
      ...one, text: r.chance(0.72) ? word(r) : r.chance(0.5) ? number(r) : `${word(r)} & ${word(r)}`,
      y: -h + tall * (i + 0.5), h: Math.min(tall * 0.78, 30), face: r.chance(0.8) ? one.face : r.pick(from.faces),
    }));
  }],
  [15, (r, from, room) => {
    const radius = Math.min(room.w, room.h) * 1.02;
    const tall = radius * r.between(0.22, 0.34);
    const face = r.pick(from.faces);
    const inner = radius - tall * 1.35;
    const parts = [{ kind: "ring", text: r.chance(0.6) ? `${word(r)} ${word(r)}` : word(r), face, radius, height: tall, middle: 0, inward: false, most: 210 }];
    if (r.chance(0.55)) parts.push({ kind: "ring", text: r.chance(0.6) ? word(r) : number(r), face, radius, height: tall, middle: 180, inward: true, most: 110 });
    else parts.push(small(r, 0, radius - tall * 0.5, tall * 0.4));
    if (r.chance(0.3)) parts.push({ kind: "circle", radius: inner + tall * 0.12, width: r.between(1.2, 2.6) });
    const heart = r.weighted([[6, "emblem"], [3, "initials"], [1, "number"], [1, "device"]]);
    if (heart === "emblem") parts.push(emblem(r, from, 0, 0, inner * 1.5));
    else if (heart === "device") parts.push(small(r, 0, 0, inner * 0.7));
    else parts.push(line(r, from, heart === "number" ? number(r) : initials(r, 2), 0, 0, inner * 1.4, inner * 1.1));
    return parts;
  }],
  [8, (r, from, { w, h }) => {
    const size = Math.min(2 * h, w * 1.1);
    const face = r.pick(from.faces);
    const side = (text, x) => ({ kind: "line", text, face, x, y: 0, w: (w - size / 2) * 0.9, h: h * 1.1, spacing: 0 });
    const x = (w + size / 2) / 2;
    return [emblem(r, from, 0, 0, size), side(letter(r), -x), side(letter(r), x)];
  }],
  [3, (r, from, { w, h }) => {
    const one = emblem(r, from, 0, 0, 1.9 * Math.min(w, h));
    const same = r.chance(0.6);
    const two = same ? { ...one } : emblem(r, from, 0, 0, one.size);
    const turn = r.between(35, 50);
    return [{ ...one, flip: false, turn }, { ...two, flip: same, turn: -turn }];
  }],
  [4, (r, from, { w, h }) => {
    const size = Math.min(w * 0.98, 2 * h);
    return [emblem(r, from, -w / 2, 0, size), emblem(r, from, w / 2, 0, size)];
  }],
  [6, (r, from, room) => {
    const count = r.pick([2, 3, 3, 4, 5, 6, 8]);
    const reach = Math.min(room.w, room.h);
    const size = Math.min(reach * 0.95, (reach * 3.4) / count);
    const one = r.chance(0.7) ? emblem(r, from, 0, 0, size) : small(r, 0, 0, size * 0.42);
    const turned = r.chance(0.7);
    const start = r.chance(0.7) ? 0 : 180 / count;
    const parts = Array.from({ length: count }, (_, i) => {
      const a = start + (360 * i) / count;
      const t = (a * Math.PI) / 180;
      return { ...one, x: (reach - size / 2) * Math.sin(t), y: -(reach - size / 2) * Math.cos(t), turn: turned ? a : 0 };
    });
    if (r.chance(0.35)) parts.push(small(r, 0, 0, reach * 0.16));
    return parts;
  }],
  [5, (r, from, { w, h }) => {
    const crown = { kind: "crown", points: r.pick([3, 5, 5, 7]), balls: r.chance(0.6), band: r.chance(0.5), x: 0, y: -h * 0.62, size: Math.min(w * 0.75, h * 0.5) };
    return [crown, r.chance(0.6) ? line(r, from, initials(r), 0, h * 0.38, 2 * w, h * 1.15) : emblem(r, from, 0, h * 0.36, h * 1.28)];
  }],
  [6, stroked],
  [5, (r, from, { w, h }) => {
    if (from.sealFaces.length === 0) return [line(r, from, letter(r), 0, 0, 2 * w, 2 * h)];
    const [columns, rows] = r.pick([[1, 1], [1, 1], [1, 2], [2, 2], [2, 2], [2, 3], [1, 3]]);
    const face = r.pick(from.sealFaces);
    const cell = Math.min((2 * w) / columns, (2 * h) / rows);
    return Array.from({ length: columns * rows }, (_, i) => ({
      kind: "line", text: r.pick(from.charactersOf(face)), face, spacing: 0, w: cell * 0.9, h: cell * 0.9,
      x: ((i % columns) - (columns - 1) / 2) * cell, y: (Math.floor(i / columns) - (rows - 1) / 2) * cell,
    }));
  }],
  [3, (r, from, { w, h }) => {
    const face = r.pick(from.faces);
    return [line(r, { faces: [face] }, number(r), 0, -h * 0.25, 2 * w, h * 1.2), line(r, { faces: [face] }, word(r), 0, h * 0.7, 2 * w, h * 0.5)];
  }],
  [3, (r, from, { w, h }) => {
    const face = r.pick(from.faces);
    const at = (text, x, y) => ({ kind: "line", text, face, x, y, w: w * 1.5, h: h * 1.5, spacing: 0 });
    return [at(letter(r), -w * 0.22, -h * 0.18), at(letter(r), w * 0.22, h * 0.18)];
  }],
  [3, (r, from, { w, h }) => {
    const size = Math.min(w, h);
    return [emblem(r, from, 0, 0, size * 1.25), ...[0, 1, 2, 3].slice(0, r.pick([2, 4])).map((i, _, all) => {
      const a = all.length === 4 ? i * 90 + 45 : i * 180 + 90;
      const t = (a * Math.PI) / 180;
      return small(r, size * 0.98 * Math.sin(t) * (all.length === 4 ? 1 : 0.9), -size * 0.98 * Math.cos(t), size * 0.16);
    })];
  }],
];

function frameOf(random, names) {
  const name = random.pick(names);
  const [w, h] = frames[name].sizes;
  const grow = random.between(0.86, 1);
  return {
    name, w: w * (random.chance(0.4) ? grow : 1), h: h * (random.chance(0.5) ? grow : 1),
    dark: frames[name].solid || random.chance(0.42), width: random.between(1.6, 6),
    line: random.weighted([[7, "plain"], [1, "beads"], [1, "rope"]]), double: random.chance(0.28),
  };
}

function contentOf(random, from, room, frame) {
  const choice = limited[frame && frames[frame.name].holds] ?? compositions;
  return random.weighted(choice)(random, from, room);
}

/** Two or three small punches in a row, each with a frame and one thing in it. */
function rowOf(random, from) {
  const count = 2 + random.whole(2);
  const step = 124 / count;
  return Array.from({ length: count }, (_, i) => {
    const frame = frameOf(random, ["circle", "square", "shield", "upright", "arch", "hexagon", "lozenge", "octagon", "canted"]);
    const k = step / 2 / 61;
    const scale = (step / 2 - 2) / Math.max(frame.w, frame.h * 0.8);
    const [rw, rh] = frames[frame.name].room;
    const room = { w: frame.w * rw, h: frame.h * rh };
    const inside = random.chance(0.5) ? [emblem(random, from, 0, 0, 2 * Math.min(room.w, room.h))] : [line(random, from, random.chance(0.7) ? initials(random, 2) : number(random), 0, 0, 2 * room.w, 2 * room.h)];
    return { frame: { ...frame, width: frame.width + 2 * (1 - k), double: false }, parts: inside, x: (i - (count - 1) / 2) * step, y: 0, scale };
  });
}

/**
 * A whole design: punches (most have one), each a frame or none round its parts.
 * `from` holds emblemNames, faces, sealFaces and charactersOf.
 */
export function compose(random, from) {
  if (random.chance(0.045)) return { punches: rowOf(random, from) };
  const frame = random.chance(0.58) ? frameOf(random, frameNames) : null;
  const [rw, rh] = frame ? frames[frame.name].room : [1, 1];
  const inset = frame && !frame.dark ? frame.width + (frame.double ? 5 : 0) : frame?.double ? 5 : 0;
  const room = frame ? { w: (frame.w - inset) * rw, h: (frame.h - inset) * rh } : FULL;
  return { punches: [{ frame, parts: contentOf(random, from, room, frame), x: 0, y: 0, scale: 1 }] };
}
