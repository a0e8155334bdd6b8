import { type FrameName, frameNamed } from "./frames.ts";
import { type Row, readRow } from "./row.ts";
import type { Face } from "./typeface.ts";

/** What holds for all of a design. */
export interface Settings {
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

export function border(path: (inset: number) => string, kind: string): string {
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

export const BORDER_SAID: Record<string, string> = {
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

interface Fitted {
  a: number;
  b: number;
  shift: number;
}

/** The smallest frame about the rows, trying them a little higher or lower. */
export function fit(rows: readonly Row[], gap: number, name: FrameName | string, pad: number): Fitted {
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

/** A part of a design, in capitals about its middle. */
export interface Part {
  a: number;
  b: number;
  field: string;
  device: { drawing: string; ink: number }[];
  words: string[];
  emblems: string[];
  said: string;
}

export function rowsOf(segments: readonly string[], settings: Settings): { rows: Row[]; inks: number[] } {
  const read = segments.map(inked);
  const first = read.map(([text]) =>
    /--|==/.test(text) ? undefined : readRow(text, settings.face, settings.spacing, 1),
  );
  const widest = Math.max(...first.map((row) => (row?.words ? row.width : 0)));
  const rows = read.map(([text]) => readRow(text, settings.face, settings.spacing, widest || 6));
  return { rows, inks: read.map(([, ink]) => ink) };
}

export function placeRows(
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

/** Rows in a frame. */
export function panel(head: string, segments: readonly string[], settings: Settings): Part {
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
