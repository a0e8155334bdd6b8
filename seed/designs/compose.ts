import type { Design } from "./design.ts";
import { drawDetail } from "./detail.ts";
import { panel, type Settings } from "./panel.ts";
import { punches, roundel } from "./roundel.ts";
import { isFace } from "./typeface.ts";

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
