import type { ReportBlock } from "#core/object-files/report/blocks";
import { ACCENT, columnOf, GREY, heightOf, keepTogether, LINE, type Style, write } from "./sheet.ts";

type Chart = Extract<ReportBlock<string>, { readonly is: "chart" }>;

const LABEL: Style = { face: "sans", size: 7.5 };
/** The least that a bar takes; its label may ask for more. */
const ROW = 14;
const CURVE = 60;
/** The part of the column in which the labels stand. */
const LABELS = 0.4;

/** Years from left to right: the curve of how likely each is, then a bar for everything dated. Drawn as lines. */
export function drawChart(doc: PDFKit.PDFDocument, parent: PDFKit.PDFStructureElement, chart: Chart): void {
  keepTogether(doc, Math.min(chartHeight(doc, chart), columnOf(doc).height));
  const alt = [chart.caption, ...chart.bars.map(({ label, when }) => `${label}: ${when}`)].join(". ");
  parent.add(
    doc.struct("Figure", { alt }, () => {
      write(doc, chart.caption, { face: "sans", size: 8.5, colour: GREY, gap: 4 });
      draw(doc, chart);
    }),
  );
  doc.y += 8;
}

export const chartHeight = (doc: PDFKit.PDFDocument, { curve, bars }: Chart): number =>
  bars.reduce((all, bar) => all + rowHeight(doc, bar), (curve ? CURVE : 0) + 36);

const labelOf = ({ label, when }: Chart["bars"][number]) => shorten(`${label}: ${when}`);
const rowHeight = (doc: PDFKit.PDFDocument, bar: Chart["bars"][number]) =>
  Math.max(ROW, heightOf(doc, labelOf(bar), LABEL, columnOf(doc).width * LABELS) + 3);

function draw(doc: PDFKit.PDFDocument, { years, curve, bars }: Chart): void {
  const { left, width } = columnOf(doc);
  const [from, to] = [years.from - 2, years.to + 3];
  const axisLeft = left + width * 0.42;
  const axisWidth = width * 0.58;
  const x = (year: number) =>
    axisLeft + (axisWidth * (Math.min(to, Math.max(from, year)) - from)) / (to - from);
  let y = doc.y;
  const top = y;
  if (curve) {
    drawCurve(doc, curve, x, { from, to, foot: y + CURVE });
    y += CURVE + 4;
  }
  for (const bar of bars) {
    const { from: first, to: last } = bar;
    write(doc, labelOf(bar), LABEL, { x: left, y, width: width * LABELS });
    const begins = x(first ?? from);
    const ends = x(last === null ? to : last + 1);
    doc
      .rect(begins, y + 2.5, Math.max(1.5, ends - begins), 5)
      .fillColor(ACCENT)
      .fill();
    y += rowHeight(doc, bar);
  }
  const step = [1, 2, 5, 10, 20, 25, 50, 100, 200].find((each) => (to - from) / each <= 7) ?? 500;
  for (let year = Math.ceil(from / step) * step; year <= to; year += step) {
    doc.moveTo(x(year), top).lineTo(x(year), y).lineWidth(0.3).strokeColor(LINE).stroke();
    write(doc, String(year), LABEL, { x: x(year) - 12, y: y + 2, width: 40 });
  }
  doc.x = left;
  doc.y = y + 16;
}

function drawCurve(
  doc: PDFKit.PDFDocument,
  { from: first, likely }: NonNullable<Chart["curve"]>,
  x: (year: number) => number,
  { from, to, foot }: { readonly from: number; readonly to: number; readonly foot: number },
): void {
  const shown = likely.flatMap((p, i) =>
    first + i >= from && first + i <= to ? [{ year: first + i, p }] : [],
  );
  const most = Math.max(...shown.map(({ p }) => p), Number.MIN_VALUE);
  for (const { year, p } of shown) {
    const height = ((CURVE - 6) * p) / most;
    if (height > 0.05)
      doc
        .rect(x(year), foot - height, Math.max(0.2, x(year + 1) - x(year)), height)
        .fillColor(ACCENT)
        .fill();
  }
}

const shorten = (text: string) => (text.length > 84 ? `${text.slice(0, 82)}…` : text);
