import type { ReportBlock } from "#core/object-files/report/blocks";
import { chartHeight, drawChart } from "./draw-chart.ts";
import { drawLaid, laidHeight } from "./draw-laid.ts";
import { drawPhotographs, firstRowHeight, type PdfImage } from "./draw-photographs.ts";
import { drawTable, tableBeginning } from "./draw-table.ts";
import { columnOf, GREY, heightOf, keepTogether, type Style, write } from "./sheet.ts";

export const STYLES = {
  title: { face: "strong", size: 22, gap: 2 },
  section: { face: "sans-strong", size: 13, gap: 4 },
  heading: { face: "strong", size: 11, gap: 3 },
  lead: { face: "strong", size: 16, gap: 4 },
  text: { face: "text", size: 10, gap: 3 },
  quoted: { face: "text", size: 10, gap: 3, colour: GREY },
  note: { face: "sans", size: 8, gap: 3, colour: GREY },
} as const satisfies Readonly<Record<string, Style>>;

type Images = ReadonlyMap<string, PdfImage>;
type Block = ReportBlock<string>;

/** What is broken over two pages is at least so high; all else stays whole. */
const BREAKABLE = 90;

/** Draws the blocks of a section; a heading stays with what it is the heading of. */
export function drawBlocks(
  doc: PDFKit.PDFDocument,
  section: PDFKit.PDFStructureElement,
  blocks: readonly Block[],
  images: Images,
): void {
  blocks.forEach((block, i) => {
    if (block.is === "heading") {
      if (i > 0) doc.y += 5;
      keepTogether(doc, beginningOf(doc, blocks.slice(i), images));
    }
    drawBlock(doc, section, block, images);
  });
}

/** How much has to fit on the page for some blocks to begin there. */
export function beginningOf(doc: PDFKit.PDFDocument, blocks: readonly Block[], images: Images): number {
  const [block, ...rest] = blocks;
  if (!block) return 0;
  const { width } = columnOf(doc);
  switch (block.is) {
    case "heading":
      return textHeight(doc, block.says, STYLES.heading) + beginningOf(doc, rest, images);
    case "photographs":
      return firstRowHeight(doc, block, images);
    case "laid":
      return laidHeight(doc, block);
    case "chart":
      return chartHeight(doc, block);
    case "table":
      return tableBeginning(doc, block);
    case "points":
      return heightOf(doc, block.points[0] ?? "", STYLES.text, width);
    default:
      return textHeight(doc, block.says, STYLES[block.is]);
  }
}

function textHeight(doc: PDFKit.PDFDocument, text: string, style: Style): number {
  return Math.min(heightOf(doc, text, style, columnOf(doc).width), BREAKABLE) + (style.gap ?? 0);
}

function drawBlock(
  doc: PDFKit.PDFDocument,
  section: PDFKit.PDFStructureElement,
  block: Block,
  images: Images,
): void {
  switch (block.is) {
    case "table":
      drawTable(doc, section, block);
      return;
    case "chart":
      drawChart(doc, section, block);
      return;
    case "photographs":
      drawPhotographs(doc, section, block, images);
      return;
    case "laid":
      drawLaid(doc, section, block, images);
      return;
    case "points":
      drawPoints(doc, section, block.points);
      return;
    case "heading":
      section.add(doc.struct("H3", {}, () => write(doc, block.says, STYLES.heading)));
      return;
    default:
      keepTogether(doc, textHeight(doc, block.says, STYLES[block.is]));
      section.add(doc.struct("P", {}, () => write(doc, block.says, STYLES[block.is])));
  }
}

/** Points with their text hung beside the sign. */
function drawPoints(
  doc: PDFKit.PDFDocument,
  section: PDFKit.PDFStructureElement,
  points: readonly string[],
): void {
  const list = doc.struct("L");
  section.add(list);
  const { left, width } = columnOf(doc);
  const hung = { x: left + HANG, width: width - HANG };
  for (const point of points) {
    keepTogether(doc, Math.min(heightOf(doc, point, STYLES.text, hung.width), BREAKABLE));
    const item = doc.struct("LI");
    list.add(item);
    const y = doc.y;
    item.add(doc.struct("Lbl", {}, () => write(doc, "•", STYLES.text, { x: left, y, width: HANG })));
    item.add(doc.struct("LBody", {}, () => write(doc, point, STYLES.text, { ...hung, y })));
    item.end();
  }
  list.end();
}

const HANG = 11;
