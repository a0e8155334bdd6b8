import type { ReportBlock } from "#core/object-files/report/blocks";
import { columnOf, decorate, fits, GREY, heightOf, keepTogether, LINE, type Style, write } from "./sheet.ts";

type Table = Extract<ReportBlock<string>, { readonly is: "table" }>;
type Parent = PDFKit.PDFStructureElement;
type Row = {
  readonly cells: readonly string[];
  readonly widths: readonly number[];
  readonly style: Style;
  readonly height: number;
};

const CELL: Style = { face: "text", size: 9 };
const HEAD: Style = { face: "sans-strong", size: 7.5 };
const CAPTION: Style = { face: "sans", size: 8, colour: GREY, gap: 3 };
const GAP = 10;

/** A table with its heads, which stand again where a page breaks; rows are kept whole. */
export function drawTable(doc: PDFKit.PDFDocument, parent: Parent, { caption, head, rows }: Table): void {
  const widths = widthsOf(doc, head, rows);
  const heads = rowOf(doc, head, widths, HEAD);
  const body = rows.map((cells) => rowOf(doc, cells, widths, CELL));
  keepTogether(doc, captionHeight(doc, caption) + heads.height + (body[0]?.height ?? 0));
  const table = doc.struct("Table");
  parent.add(table);
  table.add(doc.struct("Caption", {}, () => write(doc, caption, CAPTION)));
  drawRow(doc, table, heads, "TH");
  for (const row of body) {
    if (!fits(doc, row.height)) {
      doc.addPage();
      decorate(doc, () => writeCells(doc, heads, (_, draw) => draw()));
    }
    drawRow(doc, table, row, "TD");
  }
  table.end();
  doc.y += 5;
}

/** How high the part is that is never torn: caption, heads and the first row. */
export function tableBeginning(doc: PDFKit.PDFDocument, { caption, head, rows }: Table): number {
  const widths = widthsOf(doc, head, rows);
  const first = rowOf(doc, rows[0] ?? [], widths, CELL);
  return captionHeight(doc, caption) + rowOf(doc, head, widths, HEAD).height + first.height;
}

const captionHeight = (doc: PDFKit.PDFDocument, caption: string) =>
  heightOf(doc, caption, CAPTION, columnOf(doc).width) + 4;

function rowOf(
  doc: PDFKit.PDFDocument,
  cells: readonly string[],
  widths: readonly number[],
  style: Style,
): Row {
  const heights = cells.map((cell, i) => heightOf(doc, cell, style, widths[i] ?? 0));
  return { cells, widths, style, height: Math.max(...heights, 10) + 5 };
}

function drawRow(doc: PDFKit.PDFDocument, table: Parent, row: Row, type: "TH" | "TD"): void {
  const { left, width } = columnOf(doc);
  const top = doc.y;
  decorate(doc, () =>
    doc
      .moveTo(left, top)
      .lineTo(left + width, top)
      .lineWidth(0.5)
      .strokeColor(LINE)
      .stroke(),
  );
  const tagged = doc.struct("TR");
  table.add(tagged);
  // The first cell of a row is what the others speak of.
  writeCells(doc, row, (i, draw) => {
    const isHead = type === "TH" || i === 0;
    tagged.add(
      isHead ? doc.struct("TH", scoped(type === "TH" ? "Column" : "Row"), draw) : doc.struct("TD", {}, draw),
    );
  });
  tagged.end();
}

/** Known to the library, not to its types. */
const scoped = (scope: "Column" | "Row"): Parameters<PDFKit.PDFDocument["struct"]>[1] => {
  const options: object = { scope };
  return options;
};

function writeCells(
  doc: PDFKit.PDFDocument,
  { cells, widths, style, height }: Row,
  put: (i: number, draw: () => void) => void,
): void {
  const { left } = columnOf(doc);
  const top = doc.y;
  let x = left;
  cells.forEach((cell, i) => {
    const at = { x, y: top + 3, width: widths[i] ?? 0 };
    put(i, () => write(doc, cell, style, at));
    x += (widths[i] ?? 0) + GAP;
  });
  doc.x = left;
  doc.y = top + height;
}

/** Columns as wide as what they hold asks for: a long text does not crowd out a short one. */
function widthsOf(doc: PDFKit.PDFDocument, head: readonly string[], rows: Table["rows"]): readonly number[] {
  const { width } = columnOf(doc);
  const wants = head.map((name, i) => {
    const lengths = [name, ...rows.map((row) => row[i] ?? "")].map((text) => Math.min(140, text.length));
    return 6 + Math.max(...lengths) ** 0.75;
  });
  const all = wants.reduce((a, b) => a + b, 0);
  return wants.map((each) => ((width - GAP * (head.length - 1)) * each) / all);
}
