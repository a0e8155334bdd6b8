import type { ReportBlock } from "#core/object-files/report/blocks";
import { ACCENT, columnOf, GREY, keepTogether, LINE, type Style, write } from "./sheet.ts";

type Chart = Extract<ReportBlock<string>, { readonly is: "chart" }>;

const LABEL: Style = { face: "sans", size: 7.5 };
const ROW = 22;
const CURVE = 60;

/** Years from left to right: the curve of how likely each is, then a bar for everything dated. Drawn as lines. */
export function drawChart(doc: PDFKit.PDFDocument, parent: PDFKit.PDFStructureElement, chart: Chart): void {
  const height = (chart.curve ? CURVE : 0) + ROW * chart.bars.length + 34;
  keepTogether(doc, Math.min(height, columnOf(doc).height));
  const alt = [chart.caption, ...chart.bars.map(({ label, when }) => `${label}: ${when}`)].join(". ");
  parent.add(
    doc.struct("Figure", { alt }, () => {
      write(doc, chart.caption, { face: "sans", size: 8.5, colour: GREY, gap: 4 });
      draw(doc, chart);
    }),
  );
  doc.y += 8;
}

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
  for (const { label, when, from: first, to: last } of bars) {
    write(doc, shorten(`${label}: ${when}`), LABEL, { x: left, y, width: width * 0.4 });
    const begins = x(first ?? from);
    const ends = x(last === null ? to : last + 1);
    doc
      .rect(begins, y + 5, Math.max(1.5, ends - begins), 5)
      .fillColor(ACCENT)
      .fill();
    y += ROW;
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
