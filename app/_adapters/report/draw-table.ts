import type { ReportBlock } from "#core/object-files/report/blocks";
import { columnOf, decorate, heightOf, keepTogether, LINE, type Style, write } from "./sheet.ts";

type Table = Extract<ReportBlock<string>, { readonly is: "table" }>;
type Parent = PDFKit.PDFStructureElement;

const CELL: Style = { face: "text", size: 9.5 };
const HEAD: Style = { face: "sans-strong", size: 8 };
const GAP = 10;

/** A table with its heads, rows kept whole where pages break. */
export function drawTable(doc: PDFKit.PDFDocument, parent: Parent, { caption, head, rows }: Table): void {
  const widths = widthsOf(doc, head, rows);
  keepTogether(doc, 60);
  const table = doc.struct("Table");
  parent.add(table);
  table.add(
    doc.struct("Caption", {}, () =>
      write(doc, caption, { face: "sans", size: 8.5, colour: "#5b605d", gap: 4 }),
    ),
  );
  drawRow(doc, table, head, widths, "TH");
  for (const row of rows) drawRow(doc, table, row, widths, "TD");
  table.end();
  doc.y += 8;
}

function drawRow(
  doc: PDFKit.PDFDocument,
  table: Parent,
  cells: readonly string[],
  widths: readonly number[],
  type: "TH" | "TD",
): void {
  const style = type === "TH" ? HEAD : CELL;
  const height = Math.max(...cells.map((cell, i) => heightOf(doc, cell, style, widths[i] ?? 0)), 10) + 7;
  keepTogether(doc, height);
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
  const row = doc.struct("TR");
  table.add(row);
  let x = left;
  cells.forEach((cell, i) => {
    const at = { x, y: top + 3, width: widths[i] ?? 0 };
    row.add(doc.struct(type, {}, () => write(doc, cell, style, at)));
    x += (widths[i] ?? 0) + GAP;
  });
  row.end();
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
