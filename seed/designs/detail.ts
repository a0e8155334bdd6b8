import type { Design } from "./design.ts";

const f = (n: number): string => n.toFixed(3);
const around = (count: number, draw: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => draw(i)).join("");

interface Drawing {
  /** Height over width. */
  aspect: number;
  /** SVG in a box 2 wide about (0, 0). */
  drawing: string;
}

/** Things a maker's hand or tool leaves that tell as much as a mark does. */
const DETAILS: Record<string, Drawing> = {
  knurl: {
    aspect: 0.36,
    drawing: `<path fill="F" d="M-1-.36H1v.05H-1ZM-1 .31H1v.05H-1Z"/>${around(27, (i) => `<path stroke="F" stroke-width=".022" d="M${f(-1.02 + i * 0.074)} -.26l.2.52M${f(-0.98 + i * 0.074)} -.26l-.2.52"/>`)}`,
  },
  thumbs: {
    aspect: 0.62,
    drawing: [-0.6, 0, 0.6]
      .map(
        (x, i) =>
          `<ellipse fill="F" cx="${x}" cy="${i === 1 ? 0.06 : -0.06}" rx=".27" ry="${i === 1 ? 0.5 : 0.4}"/>`,
      )
      .join(""),
  },
  comb: {
    aspect: 0.42,
    drawing: `<g fill="none" stroke="F" stroke-width=".035">${around(4, (i) => `<path d="M-1 ${f(-0.12 + i * 0.085)}${around(6, () => "q.083-.22.1665 0t.1665 0")}"/>`)}<path d="M-1-.36H1M-1 .38H1" stroke-width=".05"/></g>`,
  },
  whorl: {
    aspect: 1,
    drawing: `<g fill="none" stroke="F" stroke-width=".03">${around(11, (i) => {
      const r = 0.1 + i * 0.085;
      return `<path d="M${f(-r * 0.9 + 0.12)} ${f(0.34 - r * 0.2)}A${f(r)} ${f(r * 0.92)} ${i * 4} 1 1 ${f(r * 0.7 + 0.12)} ${f(0.34 + r * 0.36)}"/>`;
    })}</g>`,
  },
  winding: {
    aspect: 0.5,
    drawing: [
      [-0.72, 0.14],
      [0, -0.16],
      [0.72, 0.14],
    ]
      .map(
        ([x = 0, y = 0]) =>
          `<g transform="translate(${x} ${y})"><circle r=".13" fill="F"/><g fill="none" stroke="F" stroke-width=".03"><circle r=".2"/><circle r=".27"/></g></g>`,
      )
      .join(""),
  },
  tabs: {
    aspect: 0.26,
    drawing: `<path fill="F" d="M-1-.015H1v.03H-1Z"/>${around(6, (i) => `<path fill="F" d="M${f(-0.9 + i * 0.34)} ${i % 2 ? -0.22 : 0.02}h.15v.2h-.15Z"/>`)}`,
  },
  "tabs-one-way": {
    aspect: 0.26,
    drawing: `<path fill="F" d="M-1-.015H1v.03H-1Z"/>${around(6, (i) => `<path fill="F" d="M${f(-0.9 + i * 0.34)} .02h.15v.2h-.15Z"/>`)}`,
  },
  claws: {
    aspect: 0.72,
    drawing: `${around(5, (i) => {
      const a = ((-34 + i * 17) * Math.PI) / 180;
      return `<path stroke="F" stroke-width=".1" stroke-linecap="round" d="M${f(Math.sin(a) * 0.75)} ${f(0.5 - Math.cos(a) * 0.35)}L${f(Math.sin(a) * 1.4)} ${f(0.62 - Math.cos(a) * 1.2)}"/>`;
    })}<path fill="none" stroke="F" stroke-width=".07" d="M-.5.22Q0 .05.5.22"/>`,
  },
  ladder: {
    aspect: 0.3,
    drawing: `<path fill="none" stroke="F" stroke-width=".035" d="M-1 .02Q0-.04 1 .02"/>${around(10, (i) => `<path stroke="F" stroke-width=".06" stroke-linecap="round" d="M${f(-0.9 + i * 0.2)} -.22L${f(-0.86 + i * 0.2)} .22"/>`)}`,
  },
  rivets: {
    aspect: 0.62,
    drawing: `${[
      [-0.7, -0.4],
      [0.7, -0.4],
      [-0.7, 0.4],
      [0.7, 0.4],
    ]
      .map(([x = 0, y = 0]) => `<circle cx="${x}" cy="${y}" r=".14" fill="F"/>`)
      .join("")}<circle r=".24" fill="F"/>`,
  },
  pontil: {
    aspect: 1,
    drawing: `<circle r=".46" fill="F"/>${around(20, (i) => `<circle cx="${f(0.78 * Math.cos((i * Math.PI) / 10))}" cy="${f(0.78 * Math.sin((i * Math.PI) / 10))}" r="${i % 3 ? 0.06 : 0.09}" fill="F"/>`)}<circle r=".97" fill="none" stroke="F" stroke-width=".05"/>`,
  },
};

/** A construction detail of the given width in millimetres. */
export function drawDetail(name: string, width: number): Design {
  const found = DETAILS[name];
  if (!found)
    throw new Error(`detail: must be one of ${Object.keys(DETAILS).join(", ")}. Received "${name}".`);
  return {
    width,
    height: Math.round(width * found.aspect * 10) / 10,
    field: "",
    device: [{ ink: 1, drawing: `<g transform="scale(${f(width / 2)})">${found.drawing}</g>` }],
    words: "",
    emblem: "",
    frame: "",
  };
}
