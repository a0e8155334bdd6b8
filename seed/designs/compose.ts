import { drawDetail } from "./detail.ts";
import { FRAMES, type FrameName, frameNamed } from "./frames.ts";
import { type Row, readRow, setOnCircle } from "./row.ts";
import { type Face, isFace } from "./typeface.ts";

/** A mark as designed: drawings in millimetres about its middle. */
export interface Design {
  width: number;
  height: number;
  /** The ground of the mark as SVG, filled with `F`; empty where the mark has no ground. */
  field: string;
  /** What stands on the ground, in order, each in one ink. */
  device: { drawing: string; ink: number }[];
  words: string;
  emblem: string;
  frame: string;
}

interface Settings {
  face: Face;
  spacing: number;
  gap: number;
  pad: number;
}

const f = (n: number): string => n.toFixed(3);

/** Splits off a trailing `^2`: the number of the ink. */
function inked(text: string): [string, number] {
  const match = /^(.*?)\s*\^(\d)$/s.exec(text);
  return match ? [(match[1] ?? "").trim(), Number(match[2])] : [text, 1];
}

function border(path: (inset: number) => string, kind: string): string {
  switch (kind) {
    case "none":
      return "";
    case "line":
      return `<path fill="none" stroke="F" stroke-width=".13" d="${path(0.28)}"/>`;
    case "double":
      return `<path fill="none" stroke="F" stroke-width=".2" d="${path(0.22)}"/><path fill="none" stroke="F" stroke-width=".09" d="${path(0.5)}"/>`;
    case "bead":
      return `<path fill="none" stroke="F" stroke-width=".3" stroke-linecap="round" stroke-dasharray="0 .46" d="${path(0.3)}"/>`;
    case "cable":
      return `<path fill="none" stroke="F" stroke-width=".34" stroke-dasharray=".3 .16" d="${path(0.3)}"/>`;
    case "heavy":
      return `<path fill="none" stroke="F" stroke-width=".34" d="${path(0.2)}"/>`;
    default:
      throw new Error(`border: must be none, line, double, bead, cable or heavy. Received "${kind}".`);
  }
}

const BORDER_SAID: Record<string, string> = {
  none: "",
  line: "",
  double: "double-lined ",
  bead: "beaded ",
  cable: "corded ",
  heavy: "heavy-lined ",
};

function stack(rows: readonly Row[], gap: number): { tops: number[]; height: number } {
  const tops: number[] = [];
  let y = 0;
  for (const row of rows) {
    tops.push(y);
    y += row.height + gap;
  }
  return { tops, height: y - gap };
}

function plural(name: string): string {
  const [head = "", ...rest] = name.split(" of ");
  const many = /(?:ch|s)$/.test(head) ? `${head}es` : `${head}s`;
  return [many, ...rest].join(" of ");
}

function countEmblems(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  const NUMBER = ["", "", "two", "three", "four", "five", "six", "seven", "eight"];
  return [...counts].map(([name, n]) => (n === 1 ? name : `${NUMBER[n] ?? n} ${plural(name)}`)).join(", ");
}

interface Fitted {
  a: number;
  b: number;
  shift: number;
}

/** The smallest frame about the rows, trying them a little higher or lower. */
function fit(rows: readonly Row[], gap: number, name: FrameName | string, pad: number): Fitted {
  const frame = frameNamed(name);
  const { tops, height } = stack(rows, gap);
  const width = Math.max(...rows.map((row) => row.width));
  let best: Fitted | undefined;
  for (const lift of [0, -0.08, 0.08, -0.16, 0.16, -0.24, 0.24, 0.32]) {
    for (let grow = 1; grow < 3; grow += 0.02) {
      let a = (width / 2 + pad) * grow;
      let b = (height / 2 + pad) * grow;
      const aspect = "aspect" in frame ? frame.aspect : undefined;
      if (aspect !== undefined) {
        a = Math.max(a, b / aspect);
        b = a * aspect;
      }
      if (name === "shield" || name === "eared") b = Math.max(b, a * 1.08);
      const shift = lift * b;
      const fits = rows.every((row, i) => {
        const top = (tops[i] ?? 0) - height / 2 + shift;
        return [top - pad * 0.5, top + row.height + pad * 0.5].every(
          (y) => Math.abs(y) < b && frame.halfWidth(y / b) * a >= row.width / 2 + pad * 0.55,
        );
      });
      if (fits) {
        if (!best || a * b < best.a * best.b * 0.97) best = { a, b, shift };
        break;
      }
    }
  }
  if (!best) throw new Error(`frame: must have room for the rows. Received "${name}".`);
  return best;
}

interface Part {
  a: number;
  b: number;
  field: string;
  device: { drawing: string; ink: number }[];
  words: string[];
  emblems: string[];
  said: string;
}

function rowsOf(segments: readonly string[], settings: Settings): { rows: Row[]; inks: number[] } {
  const read = segments.map(inked);
  const first = read.map(([text]) =>
    /--|==/.test(text) ? undefined : readRow(text, settings.face, settings.spacing, 1),
  );
  const widest = Math.max(...first.map((row) => (row?.words ? row.width : 0)));
  const rows = read.map(([text]) => readRow(text, settings.face, settings.spacing, widest || 6));
  return { rows, inks: read.map(([, ink]) => ink) };
}

function placeRows(
  rows: readonly Row[],
  inks: readonly number[],
  gap: number,
  shift: number,
): { drawing: string; ink: number }[] {
  const { tops, height } = stack(rows, gap);
  return rows.map((row, i) => ({
    ink: inks[i] ?? 1,
    drawing: `<g transform="translate(0 ${f((tops[i] ?? 0) - height / 2 + row.height / 2 + shift)})">${row.drawing}</g>`,
  }));
}

function panel(head: string, segments: readonly string[], settings: Settings): Part {
  const [name = "none", edge = "none"] = head.split("/");
  const frame = frameNamed(name);
  const { rows, inks } = rowsOf(segments, settings);
  const room = settings.pad + (edge === "none" ? 0 : 0.4);
  const { a, b, shift } = fit(rows, settings.gap, name, name === "none" && edge === "none" ? 0.05 : room);
  const edging = border((inset) => frame.path(a - inset, b - inset), edge);
  return {
    a,
    b,
    field: name === "none" ? "" : `<path fill="F" d="${frame.path(a, b)}"/>`,
    device: [...(edging ? [{ drawing: edging, ink: 1 }] : []), ...placeRows(rows, inks, settings.gap, shift)],
    words: rows.map((row) => row.words).filter(Boolean),
    emblems: rows.flatMap((row) => row.emblems),
    said: frame.said ? `${BORDER_SAID[edge] ?? ""}${frame.said}` : "",
  };
}

/** A ring of words about a middle; the radius is 10 capitals of the smallest ring. */
function roundel(edge: string, segments: readonly string[], settings: Settings): Part {
  const ring = { top: "", bottom: "" };
  const inks = { top: 1, bottom: 1 };
  const rest: string[] = [];
  for (const segment of segments) {
    const match = /^(top|bottom)\s+"([^"]+)"(?:\s*\^(\d))?$/.exec(segment);
    if (!match) {
      rest.push(segment);
      continue;
    }
    const side = match[1] === "top" ? "top" : "bottom";
    ring[side] = match[2] ?? "";
    inks[side] = Number(match[3] ?? 1);
  }
  const size = 1;
  const angleAt = (text: string, radius: number): number =>
    text ? setOnCircle(text, settings.face, radius, size, settings.spacing, false).angle : 0;
  let radius = 4.2;
  while (radius < 14) {
    const top = angleAt(ring.top, radius);
    const bottom = angleAt(ring.bottom, radius);
    if (top + bottom < (ring.top && ring.bottom ? 5.3 : 4.6) && top < 4.4 && bottom < 3.4) break;
    radius += 0.1;
  }
  const edging = edge === "none" ? 0.45 : 0.95;
  const outer = radius + 0.5 + edging;
  const inner = radius - 0.95;
  const device: { drawing: string; ink: number }[] = [];
  const circle = FRAMES.circle;
  if (edge !== "none")
    device.push({ drawing: border((inset) => circle.path(outer - inset, outer - inset), edge), ink: 1 });
  device.push({ drawing: `<circle r="${f(inner)}" fill="none" stroke="F" stroke-width=".12"/>`, ink: 1 });
  for (const side of ["top", "bottom"] as const) {
    if (ring[side])
      device.push({
        drawing: setOnCircle(ring[side], settings.face, radius, size, settings.spacing, side === "bottom")
          .drawing,
        ink: inks[side],
      });
  }
  if (ring.top && !ring.bottom)
    device.push({ drawing: `<circle cy="${f(radius)}" r=".28" fill="F"/>`, ink: 1 });
  const words: string[] = [ring.top];
  const emblems: string[] = [];
  if (rest.length > 0) {
    const { rows, inks: rowInks } = rowsOf(rest, settings);
    const fitted = fit(rows, settings.gap, "circle", 0.3);
    const scale = (inner * 0.97) / fitted.a;
    const placed = placeRows(rows, rowInks, settings.gap, fitted.shift);
    device.push(
      ...placed.map((part) => ({
        ...part,
        drawing: `<g transform="scale(${f(scale)})">${part.drawing}</g>`,
      })),
    );
    words.push(...rows.map((row) => row.words));
    emblems.push(...rows.flatMap((row) => row.emblems));
  }
  words.push(ring.bottom);
  return {
    a: outer,
    b: outer,
    field: `<circle r="${f(outer)}" fill="F"/>`,
    device,
    words: words.filter(Boolean),
    emblems,
    said: `${BORDER_SAID[edge] ?? ""}circle`,
  };
}

/** Separate small punches in a row, as on plated wares. */
function punches(segments: readonly string[], settings: Settings): Part {
  const parts = segments.map((segment) => {
    const match = /^([a-z]+(?:\/[a-z]+)?):\s*(.*)$/s.exec(segment);
    if (!match) throw new Error(`punch: must be "frame: row". Received "${segment}".`);
    return panel(match[1] ?? "", (match[2] ?? "").split(" ; "), settings);
  });
  const tall = Math.max(...parts.map((part) => part.b));
  const gap = tall * 0.35;
  const scaled = parts.map((part) => ({ part, scale: tall / part.b }));
  const width =
    scaled.reduce((sum, { part, scale }) => sum + part.a * 2 * scale, 0) + gap * (parts.length - 1);
  let x = -width / 2;
  let field = "";
  const device: { drawing: string; ink: number }[] = [];
  for (const { part, scale } of scaled) {
    const at = `translate(${f(x + part.a * scale)} 0) scale(${f(scale)})`;
    field += `<g transform="${at}">${part.field}</g>`;
    device.push(
      ...part.device.map((piece) => ({
        ink: piece.ink,
        drawing: `<g transform="${at}">${piece.drawing}</g>`,
      })),
    );
    x += part.a * 2 * scale + gap;
  }
  const shapes = [...new Set(parts.map((part) => part.said))];
  return {
    a: width / 2,
    b: tall,
    field,
    device,
    words: [parts.flatMap((part) => part.words).join(" · ")],
    emblems: parts.flatMap((part) => part.emblems),
    said: `${["", "one", "two", "three", "four", "five", "six"][parts.length]} punches in a row: ${shapes.join(", ")}`,
  };
}

/**
 * Reads a design such as
 * `panel 14 shield/bead | @anvil | "T·BODKIN" | font cinzel` or `roundel 22 bead | top "AUNSBY" | @key`.
 * The number is the width in millimetres. Errors name the part, the rule and what was received.
 */
export function composeDesign(text: string): Design {
  const [head = "", ...rest] = text.split("|").map((segment) => segment.trim());
  const [layout, size, shape = "none"] = head.split(/\s+/);
  const width = Number(size);
  if (!(width > 0))
    throw new Error(
      `design width: must be a number of millimetres above 0. Received "${size}" in "${text}".`,
    );
  if (layout === "detail") return drawDetail(shape, width);
  const settings: Settings = { face: "cinzel", spacing: 0.08, gap: 0.45, pad: 0.5 };
  const segments: string[] = [];
  for (const segment of rest) {
    const option = /^(font|space|gap|pad)\s+([a-z0-9.-]+)$/.exec(segment);
    if (!option) segments.push(segment);
    else if (option[1] === "font") {
      const face = option[2] ?? "";
      if (!isFace(face)) throw new Error(`font: must be a face that the demo reserves. Received "${face}".`);
      settings.face = face;
    } else if (option[1] === "space") settings.spacing = Number(option[2]);
    else if (option[1] === "gap") settings.gap = Number(option[2]);
    else settings.pad = Number(option[2]);
  }
  const part =
    layout === "panel"
      ? panel(shape, segments, settings)
      : layout === "roundel"
        ? roundel(shape, segments, settings)
        : layout === "punches"
          ? punches(segments, settings)
          : undefined;
  if (!part) throw new Error(`design layout: must be panel, roundel or punches. Received "${layout}".`);
  const scale = width / (part.a * 2);
  const toMillimetres = (drawing: string): string =>
    drawing ? `<g transform="scale(${scale.toFixed(5)})">${drawing}</g>` : "";
  return {
    width,
    height: Math.round(part.b * 2 * scale * 10) / 10,
    field: toMillimetres(part.field),
    device: part.device.map((piece) => ({ ink: piece.ink, drawing: toMillimetres(piece.drawing) })),
    words: part.words.join(" / "),
    emblem: countEmblems(part.emblems),
    frame: part.said,
  };
}
