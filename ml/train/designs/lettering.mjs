/** Letters as outlines from open fonts, so that a drawing never depends on what a machine has installed. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import opentype from "opentype.js";
import { sources } from "./emblems.mjs";

const THICKEN = 0.5; // hairlines thinner than a pixel would break up
const here = new URL(".", import.meta.url);
const loaded = new Map();
const filesOf = (family) => new URL(`../node_modules/@fontsource/${family}/files/`, here);

function load(path) {
  let font = loaded.get(path.href);
  if (!font) {
    const bytes = readFileSync(path);
    font = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    loaded.set(path.href, font);
  }
  return font;
}

/** Every face of the split's families: up to three weights each, lightest, regular and heaviest. */
export function facesOf(split) {
  return sources.fonts[split].flatMap((family) => {
    const weights = readdirSync(filesOf(family))
      .map((file) => new RegExp(`^${family}-latin-(\\d+)-normal\\.woff$`).exec(file)?.[1])
      .filter(Boolean)
      .sort((a, b) => a - b);
    const chosen = new Set([weights[0], weights.includes("400") ? "400" : weights[0], weights.at(-1)]);
    return [...chosen].map((weight) => `${family}/latin-${weight}`);
  });
}

/** Faces of scripts other than the Latin, for seals. */
export function sealFacesOf(split) {
  return sources.seals[split].flatMap(({ family, subsets }) =>
    subsets
      .filter((subset) => existsSync(new URL(`${family}-${subset}-400-normal.woff`, filesOf(family))))
      .map((subset) => `${family}/${subset}-400`),
  );
}

function fontOf(face) {
  const [family, rest] = face.split("/");
  return load(new URL(`${family}-${rest}-normal.woff`, filesOf(family)));
}

/** Characters that a face can draw, without spaces, marks and Latin letters. */
export function charactersOf(face) {
  const font = fontOf(face);
  const characters = [];
  for (let i = 0; i < font.glyphs.length; i++) {
    const glyph = font.glyphs.get(i);
    if (glyph.unicode > 0x370 && glyph.advanceWidth > 0 && /\p{L}/u.test(String.fromCodePoint(glyph.unicode)))
      characters.push(String.fromCodePoint(glyph.unicode));
  }
  return characters;
}

/** Glyph outlines of a line: paths in a 100-unit em with the pen's position, and the line's box. */
export function lineOf(face, text, spacing = 0) {
  const font = fontOf(face);
  const scale = 100 / font.unitsPerEm;
  let pen = 0;
  const glyphs = [];
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (const character of text) {
    const glyph = font.charToGlyph(character);
    const advance = (glyph.advanceWidth ?? font.unitsPerEm / 2) * scale + spacing;
    const path = glyph.getPath(0, 0, 100);
    const b = path.getBoundingBox();
    if (path.commands.length > 0) {
      box.left = Math.min(box.left, pen + b.x1);
      box.right = Math.max(box.right, pen + b.x2);
      box.top = Math.min(box.top, b.y1);
      box.bottom = Math.max(box.bottom, b.y2);
    }
    glyphs.push({ d: path.toPathData(1), pen, advance });
    pen += advance;
  }
  if (!Number.isFinite(box.left)) throw new Error(`${face} draws nothing for "${text}"`);
  return { glyphs, width: pen, ...box };
}

/** A line fitted into a box round the origin: as high as it may be, narrowed down to 0.62 before it shrinks. */
export function drawLine(face, text, width, height, ink, spacing) {
  const line = lineOf(face, text, spacing);
  const high = height / (line.bottom - line.top);
  const wide = width / (line.right - line.left);
  const sx = Math.min(high, wide);
  const sy = Math.min(high, sx / 0.62);
  const dx = -(line.left + line.right) / 2;
  const dy = -(line.top + line.bottom) / 2;
  const paths = line.glyphs.map((g) => `<path transform="translate(${g.pen.toFixed(1)} 0)" d="${g.d}"/>`).join("");
  const thicken = (THICKEN / Math.min(sx, sy)).toFixed(2);
  return `<g fill="${ink}" stroke="${ink}" stroke-width="${thicken}" transform="scale(${sx.toFixed(4)} ${sy.toFixed(4)}) translate(${dx.toFixed(1)} ${dy.toFixed(1)})">${paths}</g>`;
}

/**
 * A line bent along the inside of a circle round the origin. `middle` is the angle of its middle in degrees, clockwise
 * from the top; `inward` sets it to be read from below. It is condensed to at most `most` degrees.
 */
export function drawRing(face, text, radius, height, middle, inward, most, ink) {
  const line = lineOf(face, text, 6);
  const size = height / 72;
  const base = inward ? radius : radius - height;
  const full = ((line.width * size) / radius) * (180 / Math.PI);
  const squeeze = Math.min(1, most / full);
  return line.glyphs
    .map((g) => {
      const along = ((g.pen + g.advance / 2 - line.width / 2) / line.width) * full * squeeze;
      const turn = inward ? middle - along : middle + along;
      const place = inward ? `rotate(${(turn - 180).toFixed(2)}) translate(0 ${base.toFixed(2)})` : `rotate(${turn.toFixed(2)}) translate(0 ${(-base).toFixed(2)})`;
      return `<path fill="${ink}" stroke="${ink}" stroke-width="${(THICKEN / size).toFixed(2)}" transform="${place} scale(${(size * squeeze).toFixed(4)} ${size.toFixed(4)}) translate(${(-g.advance / 2).toFixed(1)} 0)" d="${g.d}"/>`;
    })
    .join("");
}
