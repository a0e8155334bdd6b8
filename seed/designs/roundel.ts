import { FRAMES } from "./frames.ts";
import { BORDER_SAID, border, fit, type Part, panel, placeRows, rowsOf, type Settings } from "./panel.ts";
import { setOnCircle } from "./row.ts";

const f = (n: number): string => n.toFixed(3);

/** A ring of words about a middle; the radius is 10 capitals of the smallest ring. */
export function roundel(edge: string, segments: readonly string[], settings: Settings): Part {
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
export function punches(segments: readonly string[], settings: Settings): Part {
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
