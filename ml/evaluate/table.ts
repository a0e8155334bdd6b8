import type { GlyphFigures } from "./glyphs.ts";
import type { Figures } from "./measure.ts";
import type { PlanarFigures } from "./planar.ts";
import type { RegionFigures } from "./regions.ts";
import type { TwinFigures } from "./twins.ts";

const share = (value: number | null): string => (value === null ? "-" : value.toFixed(3));

/** The figures of several methods, one a line, in aligned columns. */
export function retrievalTable(
  rows: readonly { readonly name: string; readonly figures: Figures }[],
): string {
  const head = [
    "",
    "references",
    "classes",
    "queries",
    "recall@1",
    "@5",
    "@10",
    "mAP",
    "ECE",
    "ROC area",
    "median ms",
  ];
  const body = rows.map(({ name, figures: f }) => [
    name,
    `${f.references}`,
    `${f.classes}`,
    `${f.queries}`,
    share(f.recall1),
    share(f.recall5),
    share(f.recall10),
    share(f.map),
    share(f.ece),
    share(f.auroc),
    f.medianMs.toFixed(1),
  ]);
  return align([head, ...body]);
}

/** The glyph test of several methods, one a line. */
export function glyphTable(
  rows: readonly { readonly name: string; readonly figures: GlyphFigures }[],
): string {
  const head = ["", "runs", "drawings", "accuracy"];
  return align([
    head,
    ...rows.map(({ name, figures: f }) => [name, `${f.runs}`, `${f.drawings}`, share(f.accuracy)]),
  ]);
}

/** Near twins told apart by several methods, one a line. */
export function twinTable(rows: readonly { readonly name: string; readonly figures: TwinFigures }[]): string {
  const head = ["", "queries", "right variant first"];
  return align([head, ...rows.map(({ name, figures: f }) => [name, `${f.queries}`, share(f.accuracy)])]);
}

/** The alignment test, one pair a line. */
export function planarTable({ meanCornerError, points, boxFound, boxPoints, ms }: PlanarFigures): string {
  return align([
    ["", "points that agree", "mean corner error, px", "ms"],
    ["graf1 to graf3", `${points}`, meanCornerError.toFixed(2), ms.toFixed(0)],
    ["box in box_in_scene", `${boxPoints}`, boxFound ? "found" : "not found", ""],
  ]);
}

/** How well several methods find the mark in whole photographs, one a line. */
export function regionsTable(
  rows: readonly { readonly name: string; readonly figures: RegionFigures }[],
): string {
  const head = [
    "",
    "photographs",
    "marks",
    "mean IoU",
    "above 0.5",
    "above 0.75",
    "above 0.5, best of 3",
    "ROC area",
    "median ms",
  ];
  const body = rows.map(({ name, figures: f }) => [
    name,
    `${f.photographs}`,
    `${f.marks}`,
    share(f.meanIou),
    share(f.above50),
    share(f.above75),
    share(f.above50OfThree),
    share(f.auroc),
    f.medianMs.toFixed(1),
  ]);
  return align([head, ...body]);
}

function align(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
        .join("  "),
    )
    .join("\n");
}
