/** A near twin of a design: one thing changed, as between variants of one maker's mark. */
import { letter } from "./compose.mjs";
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
