/** A design as SVG, and SVG as a 128 x 128 one-bit picture. */
import { Resvg } from "@resvg/resvg-js";
import { drawEmblem } from "./emblems.mjs";
import { drawOrnament } from "./ornaments.mjs";
import { drawLine, drawRing } from "./lettering.mjs";
import { crown, devices, frames } from "./shapes.mjs";

export const PIXELS = 128;
export const PACKED = (PIXELS * PIXELS) / 8;

const place = (part, inside) => `<g transform="translate(${part.x.toFixed(2)} ${part.y.toFixed(2)}) rotate(${(part.turn ?? 0).toFixed(2)})${part.flip ? " scale(-1 1)" : ""}">${inside}</g>`;

const painters = {
  emblem: (part, ink, from) => place(part, drawEmblem(from.emblems.get(part.emblem), part.size, ink, part.look)),
  ornament: (part, ink) => place(part, drawOrnament(part.shapes, part.size, ink)),
  line: (part, ink) => place(part, drawLine(part.face, part.text, part.w, part.h, ink, part.spacing)),
  ring: (part, ink) => drawRing(part.face, part.text, part.radius, part.height, part.middle, part.inward, part.most, ink),
  device: (part, ink) => place(part, `<path fill="${ink}" fill-rule="evenodd" transform="scale(${part.size.toFixed(2)})" d="${devices[part.device]}"/>`),
  crown: (part, ink) => place(part, `<path fill="${ink}" transform="scale(${part.size.toFixed(2)})" d="${crown(part.points, part.balls, part.band)}"/>`),
  strokes: (part, ink) => place(part, `<g transform="scale(${part.size.toFixed(2)})" fill="none" stroke="${ink}" stroke-width="${part.width.toFixed(3)}" stroke-linecap="${part.cap}">${part.lines.map((d) => `<path d="${d}"/>`).join("")}</g>`),
  circle: (part, ink) => `<circle r="${part.radius.toFixed(2)}" fill="none" stroke="${ink}" stroke-width="${part.width.toFixed(2)}"/>`,
};

function drawFrame(frame) {
  const outline = frames[frame.name].path;
  const stroke = (d, width, ink) => {
    const dash = frame.line === "beads" ? `stroke-linecap="round" stroke-dasharray="0 ${(width * 1.7).toFixed(2)}"` : frame.line === "rope" ? `stroke-dasharray="${(width * 1.1).toFixed(2)} ${(width * 0.6).toFixed(2)}"` : "";
    return `<path fill="none" stroke="${ink}" stroke-width="${width.toFixed(2)}" ${dash} d="${d}"/>`;
  };
  if (frame.dark) {
    const inner = frame.double ? stroke(outline(frame.w - 5, frame.h - 5), 1.8, "#fff") : "";
    return `<path fill="#000" d="${outline(frame.w, frame.h)}"/>${frames[frame.name].solid ? "" : inner}`;
  }
  const half = frame.width / 2;
  const second = frame.double ? `<path fill="none" stroke="#000" stroke-width="1.6" d="${outline(frame.w - frame.width - 3, frame.h - frame.width - 3)}"/>` : "";
  return stroke(outline(frame.w - half, frame.h - half), frame.width, "#000") + second;
}

/** SVG of 128 x 128 pixels, black on white, the design's 122 units round the middle with a margin. */
export function svgOf(design, from) {
  const punches = design.punches.map((punch) => {
    const ink = punch.frame?.dark ? "#fff" : "#000";
    const parts = punch.parts.map((part) => painters[part.kind](part, ink, from)).join("");
    return `<g transform="translate(${punch.x} ${punch.y}) scale(${punch.scale})">${punch.frame ? drawFrame(punch.frame) : ""}${parts}</g>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${PIXELS}" height="${PIXELS}" viewBox="-70 -70 140 140"><rect x="-70" y="-70" width="140" height="140" fill="#fff"/>${punches.join("")}</svg>`;
}

/** @returns {{bits: Buffer, ink: number}} 2048 bytes, most significant bit leftmost, 1 = ink; and how many are 1 */
export function rasterOf(svg) {
  const { pixels } = new Resvg(svg, { font: { loadSystemFonts: false }, shapeRendering: 2 }).render();
  const bits = Buffer.alloc(PACKED);
  let ink = 0;
  for (let p = 0; p < PIXELS * PIXELS; p++) {
    if (0.299 * pixels[4 * p] + 0.587 * pixels[4 * p + 1] + 0.114 * pixels[4 * p + 2] < 128) {
      bits[p >> 3] |= 128 >> (p & 7);
      ink++;
    }
  }
  return { bits, ink };
}
