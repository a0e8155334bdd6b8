/** A near twin of a design: one thing changed, as between variants of one maker's mark. */
import { letter } from "./compose.mjs";
import { ornamentOf } from "./ornaments.mjs";
import { devices, frames } from "./shapes.mjs";

const other = (random, from, than) => {
  let found = random.pick(from);
  for (let i = 0; i < 20 && found === than; i++) found = random.pick(from);
  return found;
};

function changeText(random, part) {
  const at = [...part.text].map((c, i) => [c, i]).filter(([c]) => /[A-Za-z0-9]/.test(c)).map(([, i]) => i);
  if (at.length === 0) return null;
  const i = random.pick(at);
  const old = part.text[i];
  let next = /\d/.test(old) ? String((Number(old) + 1 + random.whole(8)) % 10) : letter(random);
  while (next.toUpperCase() === old.toUpperCase()) next = letter(random);
  if (/[a-z]/.test(old)) next = next.toLowerCase();
  return { ...part, text: part.text.slice(0, i) + next + part.text.slice(i + 1) };
}

const changes = {
  line: changeText,
  ring: changeText,
  emblem: (random, part, from) => ({ ...part, emblem: other(random, from.emblemNames, part.emblem) }),
  device: (random, part) => ({ ...part, device: other(random, Object.keys(devices), part.device) }),
  crown: (random, part) => ({ ...part, points: other(random, [3, 5, 7, 9], part.points) }),
  strokes: (_random, part) => (part.lines.length > 2 ? { ...part, lines: part.lines.slice(0, -1) } : null),
  circle: () => null,
  ornament: (random, part) => {
    if (part.shapes.length < 2 || random.chance(0.4)) return { ...part, shapes: ornamentOf(random) };
    const at = random.whole(part.shapes.length);
    return { ...part, shapes: part.shapes.filter((_, i) => i !== at) };
  },
};

const names = Object.keys(frames);

/** @returns a changed copy of `design`, or null where the change drawn does not apply to it */
export function vary(random, design, from) {
  const at = random.whole(design.punches.length);
  const punch = design.punches[at];
  const replaced = (next) => ({ punches: design.punches.map((p, i) => (i === at ? { ...punch, ...next } : p)) });
  const what = random.weighted([[6, "part"], [2, "frame"], [2, "added"]]);
  if (what === "frame") {
    if (!punch.frame) return null;
    if (random.chance(0.5)) return replaced({ frame: { ...punch.frame, double: !punch.frame.double } });
    return replaced({ frame: { ...punch.frame, name: other(random, names, punch.frame.name) } });
  }
  if (what === "added") {
    if (punch.frame || design.punches.length > 1) return null;
    const device = { kind: "device", device: random.pick(Object.keys(devices)), x: random.pick([-50, 0, 50]), y: random.pick([-52, 52]), size: random.between(6, 10) };
    return replaced({ parts: [...punch.parts, device] });
  }
  const i = random.whole(punch.parts.length);
  const part = changes[punch.parts[i].kind](random, punch.parts[i], from);
  return part && replaced({ parts: punch.parts.map((p, k) => (k === i ? part : p)) });
}

/** The same mark cut again by another hand: every part a little elsewhere, larger, smaller, leaner. */
export function recut(random, design) {
  const about = (n) => n * random.between(0.93, 1.07);
  const near = (n) => n + random.between(-2.5, 2.5);
  const part = (old) => ({
    ...old,
    ...("x" in old && { x: near(old.x), y: near(old.y) }),
    ...("size" in old && { size: about(old.size) }),
    ...("w" in old && { w: about(old.w), h: about(old.h) }),
    ...("radius" in old && { radius: old.radius * random.between(0.95, 1.02) }),
    ...("height" in old && { height: about(old.height), middle: old.middle + random.between(-7, 7) }),
    ...("width" in old && { width: old.width * random.between(0.7, 1.4) }),
    ...("turn" in old && { turn: old.turn + random.between(-4, 4) }),
  });
  const frame = (old) => old && { ...old, w: Math.min(61, about(old.w)), h: Math.min(61, about(old.h)), width: old.width * random.between(0.65, 1.5) };
  return { punches: design.punches.map((punch) => ({ ...punch, frame: frame(punch.frame), parts: punch.parts.map(part) })) };
}
