import { emblemDrawing, sayEmblem } from "./emblems.ts";
import { type Face, lettersOf } from "./typeface.ts";

/** A piece of a design about its own middle; y down, capitals 1 high. */
export interface Row {
  width: number;
  height: number;
  /** SVG with `fill="F"` and `fill="G"` standing for figure and ground. */
  drawing: string;
  words: string;
  emblems: string[];
}

const f = (n: number): string => n.toFixed(3);

/** A text set in one line about its middle. */
function setLine(text: string, face: Face, spacing: number): Row {
  const letters = lettersOf(text, face);
  const width = letters.reduce((sum, letter) => sum + letter.advance, 0) + spacing * (letters.length - 1);
  let x = -width / 2;
  let drawing = "";
  for (const letter of letters) {
    if (letter.outline) drawing += `<path transform="translate(${f(x)} .5)" d="${letter.outline}"/>`;
    x += letter.advance + spacing;
  }
  return { width, height: 1, drawing: `<g fill="F">${drawing}</g>`, words: text, emblems: [] };
}

/** A text along a circle of the given radius; `inward` letters have their feet to the centre. */
export function setOnCircle(
  text: string,
  face: Face,
  radius: number,
  size: number,
  spacing: number,
  below: boolean,
): { drawing: string; angle: number } {
  const letters = lettersOf(text, face);
  const steps = letters.map((letter) => (letter.advance + spacing) * size);
  const angle = steps.reduce((sum, step) => sum + step, 0) / radius;
  let at = -angle / 2;
  let drawing = "";
  letters.forEach((letter, i) => {
    const step = steps[i] ?? 0;
    const middle = at + step / 2 / radius;
    const degrees = (middle * 180) / Math.PI;
    const turn = below
      ? `rotate(${f(-degrees)}) translate(0 ${f(radius)})`
      : `rotate(${f(degrees)}) translate(0 ${f(-radius)})`;
    if (letter.outline)
      drawing += `<path transform="${turn} scale(${f(size)}) translate(${f(-letter.advance / 2)} ${below ? 0.5 : 0.5})" d="${letter.outline}"/>`;
    at += step / radius;
  });
  return { drawing: `<g fill="F">${drawing}</g>`, angle };
}

function setEmblem(name: string, height: number): Row {
  const s = height / 512;
  return {
    width: height,
    height,
    drawing: `<g fill="F" color="F" transform="scale(${s.toFixed(5)}) translate(-256 -256)">${emblemDrawing(name).replaceAll("currentColor", "F")}</g>`,
    words: "",
    emblems: [sayEmblem(name)],
  };
}

/** Pieces side by side, as one row. */
function sideBySide(pieces: readonly Row[], gap: number): Row {
  const width = pieces.reduce((sum, piece) => sum + piece.width, 0) + gap * (pieces.length - 1);
  let x = -width / 2;
  let drawing = "";
  for (const piece of pieces) {
    drawing += `<g transform="translate(${f(x + piece.width / 2)} 0)">${piece.drawing}</g>`;
    x += piece.width + gap;
  }
  return {
    width,
    height: Math.max(...pieces.map((piece) => piece.height)),
    drawing,
    words: pieces
      .map((piece) => piece.words)
      .filter(Boolean)
      .join(" "),
    emblems: pieces.flatMap((piece) => piece.emblems),
  };
}

function enlarge(row: Row, scale: number): Row {
  if (scale === 1) return row;
  return {
    ...row,
    width: row.width * scale,
    height: row.height * scale,
    drawing: `<g transform="scale(${f(scale)})">${row.drawing}</g>`,
  };
}

function arched(text: string, face: Face, spacing: number): Row {
  const flat = setLine(text, face, spacing);
  const radius = flat.width * 0.72;
  const set = setOnCircle(text, face, radius, 1, spacing, false);
  const half = set.angle / 2;
  const sagitta = radius * (1 - Math.cos(half));
  const height = sagitta + 1.15;
  return {
    ...flat,
    width: 2 * (radius + 0.5) * Math.sin(half),
    height,
    drawing: `<g transform="translate(0 ${f(radius + 0.55 - height / 2)})">${set.drawing}</g>`,
  };
}

function barred(line: Row, ribbon: boolean): Row {
  const a = line.width / 2 + 0.5;
  const b = 0.86;
  const cut = line.drawing.replaceAll('"F"', '"G"');
  const tail = 0.9;
  const path = ribbon
    ? `M${f(-a - tail)} ${f(-b + 0.3)}H${f(-a)}V${f(-b)}H${f(a)}V${f(-b + 0.3)}H${f(a + tail)}L${f(a + tail - 0.5)} .3L${f(a + tail)} ${f(b + 0.3)}H${f(a)}V${f(b)}H${f(-a)}V${f(b + 0.3)}H${f(-a - tail)}L${f(-a - tail + 0.5)} .3Z`
    : `M${f(-a)} ${f(-b)}H${f(a)}V${f(b)}H${f(-a)}Z`;
  const edges = ribbon
    ? `<path fill="none" stroke="G" stroke-width=".1" d="M${f(-a)} ${f(-b)}V${f(b)}M${f(a)} ${f(-b)}V${f(b)}"/>`
    : "";
  return {
    ...line,
    width: (a + (ribbon ? tail : 0)) * 2,
    height: b * 2 + (ribbon ? 0.3 : 0),
    drawing: `<path fill="F" d="${path}"/>${edges}${cut}`,
  };
}

/**
 * One row of a design's writing, e.g. `1.4:"HALL" @anvil "& SON"`, `arc "BEST WARE"`, `bar "No. 4"`,
 * `ribbon "1881"`, `--` (a rule). `widest` is what a rule spans.
 */
export function readRow(text: string, face: Face, spacing: number, widest: number): Row {
  const scaled = /^(\d*\.?\d+):(.*)$/s.exec(text);
  const scale = scaled ? Number(scaled[1]) : 1;
  const body = (scaled?.[2] ?? text).trim();
  if (body === "--" || body === "==") {
    const half = (widest * scale) / 2;
    const drawing =
      body === "--"
        ? `<path fill="F" d="M${f(-half)} -.07H${f(half)}V.07H${f(-half)}Z"/>`
        : `<path fill="F" d="M${f(-half)} -.2H${f(half)}V-.08H${f(-half)}ZM${f(-half)} .08H${f(half)}V.2H${f(-half)}Z"/>`;
    return { width: 0, height: body === "--" ? 0.14 : 0.4, drawing, words: "", emblems: [] };
  }
  const special = /^(arc|bar|ribbon)\s+"([^"]+)"$/.exec(body);
  if (special) {
    const content = special[2] ?? "";
    if (special[1] === "arc") return enlarge(arched(content, face, spacing), scale);
    return enlarge(barred(setLine(content, face, spacing), special[1] === "ribbon"), scale);
  }
  const items = [...body.matchAll(/"([^"]+)"|@([a-z0-9-]+)(?:\*(\d))?/g)];
  if (items.length === 0)
    throw new Error(`design row: must hold "words" or @emblem. Received ${JSON.stringify(text)}.`);
  const mixed = items.some((item) => item[1] !== undefined);
  const pieces = items.flatMap((item): Row[] => {
    if (item[1] !== undefined) return [setLine(item[1], face, spacing)];
    const one = setEmblem(item[2] ?? "", mixed ? 1.5 : Math.min(5, Math.max(2.6, widest * 0.42)));
    return Array.from({ length: Number(item[3] ?? 1) }, () => one);
  });
  return enlarge(sideBySide(pieces, mixed ? 0.35 : 0.3), scale);
}
